/**
 * One sequence of steps over all boards of a plan, from the first end squared to the last glued-up part trimmed: what one position of a
 * stop, fence or planer can do on every board, then the next position. A set-up is such a position on one machine until it is moved;
 * coming back to it counts again; rough crosscuts and cuts to a drawn line need none.
 *
 * <p>{@code BoardReader} turns each board's cut tree into steps that wait for each other, {@code RowOrder} says from which end a stick is
 * cut, {@code PieceWork} adds what is done to the pieces, {@code Bench} makes the steps.
 *
 * <p>Every rough piece is milled alone: short pieces are not kept together in one blank, since the layout has already given each its own
 * allowance and its own cut.
 */
@NullMarked
package org.stockcutting.sequence;

import org.jspecify.annotations.NullMarked;
