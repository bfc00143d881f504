package org.stockcutting.solve.instance;

/**
 * A rough size that is wanted a number of times. Parts of equal rough size, class, grain, group and eligible stock are one type.
 *
 * @param length own length in instance units
 * @param width own width in instance units; where the board is taken as it comes this is 0 and the piece spans any board's full width
 * @param weight finished volume of one piece in some common unit, at least 1: placing more weight comes before any cost
 * @param demand how many must be placed, at least 1
 * @param perBoard most copies on one board (demand where nothing restricts it)
 */
public record ItemType(long length, long width, long weight, int demand, int perBoard) {}
