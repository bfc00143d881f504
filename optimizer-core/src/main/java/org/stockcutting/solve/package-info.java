/**
 * From rough pieces and stock to patterns: independent components, the reduction to small integers, and the ladder that decides which
 * engine works on what, in which order, for how long.
 */
@NullMarked
package org.stockcutting.solve;

import org.jspecify.annotations.NullMarked;
