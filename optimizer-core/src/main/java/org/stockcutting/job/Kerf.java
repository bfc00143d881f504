package org.stockcutting.job;

import org.stockcutting.length.Length;

/**
 * What each saw removes. Every cut takes one kerf.
 *
 * @param crosscut kerf of cuts across the length, at least 0
 * @param rip kerf of cuts along the length, at least 0
 */
public record Kerf(Length crosscut, Length rip) {}
