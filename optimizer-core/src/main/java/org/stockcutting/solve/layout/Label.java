package org.stockcutting.solve.layout;

import org.stockcutting.blank.RoughPiece;

/**
 * Which piece of which part a place on a board is for.
 *
 * @param piece the rough piece
 * @param number copy of the part, from 1; above the demand for a spare
 * @param member stave or ply of that part from 1, or 0 where the part is one piece
 */
public record Label(RoughPiece piece, int number, int member) {}
