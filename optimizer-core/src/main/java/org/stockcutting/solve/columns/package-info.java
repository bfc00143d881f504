/**
 * The one-dimensional engine: boards that are cut by crosscuts only. An instance becomes units (an item, or one whole set of a group)
 * and lines (the boards); patterns of units on lines are priced by dynamic programmes, a linear programme over patterns gives bound and
 * duals, and diving or exact search turns its fractions into whole boards.
 *
 * <p>P. C. Gilmore, R. E. Gomory, Operations Research 9 (1961) and 11 (1963); G. Belov, G. Scheithauer, EJOR 141 (2002).
 */
@NullMarked
package org.stockcutting.solve.columns;

import org.jspecify.annotations.NullMarked;
