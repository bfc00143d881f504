package org.stockcutting.solve.search;

/**
 * What the boards that are searched must keep to.
 *
 * @param cap most that they may be worth together
 * @param longestFixed longest kept leftover of the boards that are not touched
 */
record Frame(long cap, long longestFixed) {}
