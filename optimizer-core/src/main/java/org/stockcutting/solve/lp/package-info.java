/**
 * The linear programme behind column generation: a revised simplex method that keeps its basis between calls, takes new columns, new
 * right-hand sides and new costs, and hands out duals. It knows nothing of wood.
 */
@NullMarked
package org.stockcutting.solve.lp;

import org.jspecify.annotations.NullMarked;
