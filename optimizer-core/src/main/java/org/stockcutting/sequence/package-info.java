/**
 * One sequence of steps over all boards of a plan, from the first end squared to the last glued-up part trimmed: what one position of a
 * stop, fence or planer can do on every board, then the next position. A set-up is such a position on one machine until it is moved;
 * coming back to it counts again; rough crosscuts and cuts to a drawn line need none.
 *
 * <p>{@code BoardReader} turns each board's cut tree into steps that wait for each other, {@code RowOrder} says from which end a stick is
 * cut, {@code PieceWork} adds what is done to the pieces, {@code Bench} makes the steps.
 *
 * <p>Short parts that the job puts together in a gang stay in one blank until they are planed and ripped; then they are cut apart, one
 * behind the other, from the end that is squared.
 */
@NullMarked
package org.stockcutting.sequence;

import org.jspecify.annotations.NullMarked;
