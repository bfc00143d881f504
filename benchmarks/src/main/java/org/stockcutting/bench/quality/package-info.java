/**
 * How good plans are: the yield report over any mix of jobs, the comparison of two result tables, and the figures of the README. A row of
 * a table is one job; everything that is reported is worked out from rows, so that a table can be continued and reported on later.
 */
@NullMarked
package org.stockcutting.bench.quality;

import org.jspecify.annotations.NullMarked;
