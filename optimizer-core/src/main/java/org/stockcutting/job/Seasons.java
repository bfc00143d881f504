package org.stockcutting.job;

import java.math.BigDecimal;

/**
 * How dry and how damp wood gets where the work will stand, in per cent of moisture. The coefficients of the Wood Handbook hold from 6
 * to 14 % (FPL-GTR-190, chapter 13).
 *
 * @param driest at least 6
 * @param dampest at most 14, more than the driest
 */
public record Seasons(BigDecimal driest, BigDecimal dampest) {

    /** A heated room over a year: 6 to 11 % (common practice, no source). */
    public static final Seasons HEATED_ROOM = new Seasons(new BigDecimal("6"), new BigDecimal("11"));
}
