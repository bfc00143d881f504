/**
 * One sequence of cuts over all boards of a plan: trims first, then what one position of a stop or fence can do on every board, then
 * the next position. A set-up is such a position on one machine until it is moved; coming back to it counts again.
 *
 * <p>{@code BoardReader} turns each board's cut tree into cuts that wait for each other; {@code Bench} makes them.
 */
@NullMarked
package org.stockcutting.sequence;

import org.jspecify.annotations.NullMarked;
