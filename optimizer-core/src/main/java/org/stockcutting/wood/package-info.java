/**
 * How many boards to be sure: real wood has knots and checked ends, so a purchase that is just enough on paper may fall short. This room
 * draws boards from a model of knots, plans whole purchases of them, and says how often they suffice. It asks for plans through
 * {@link org.stockcutting.wood.Planning} and never touches a plan's cost or its bound.
 */
@NullMarked
package org.stockcutting.wood;

import org.jspecify.annotations.NullMarked;
