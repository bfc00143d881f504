/**
 * The answer: layouts, offcuts, unplaced parts with reasons, cost, bound and certificate, progress.
 */
@NullMarked
package org.stockcutting.plan;

import org.jspecify.annotations.NullMarked;
