package org.stockcutting.plan;

import org.stockcutting.length.Length;

/**
 * The longest leftover at the end of a bought board that is only crosscut, and how long it could be at all.
 *
 * @param length from the last cut up to the far raw end, over the whole width; zero where no such board leaves any
 * @param atMost no plan that places the same parts at this plan's value or below leaves a longer one; follows from the certificate
 * @param certified true if the two are equal: then it is the longest there is
 */
public record LongestOffcut(Length length, Length atMost, boolean certified) {}
