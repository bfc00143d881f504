/** How many patterns and set-ups a plan saves beside the first plan of the same value. */
@NullMarked
package org.stockcutting.bench.setups;

import org.jspecify.annotations.NullMarked;
