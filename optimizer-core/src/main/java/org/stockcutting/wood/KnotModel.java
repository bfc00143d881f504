package org.stockcutting.wood;

import java.math.BigDecimal;
import org.stockcutting.length.Length;

/**
 * Boards as a random process along the length.
 *
 * <p>A board is unusable as a whole with chance {@code unusableBoards}. Else each end is checked over an exponential length with mean
 * {@code endCheck}. Between the ends clear runs and bad zones follow each other: clear runs are exponential with mean {@code clearRun}, so
 * knots come as a Poisson process that does not age; zones are Erlang with shape {@value #SHAPE} (spread of half the mean), over the
 * board's whole width, which is on the safe side for boards that are ripped. Each zone is a tight knot, a blemish or unusable by its
 * share. Lengths are independent of each other. Both distributions have their mean as the only parameter, and the maximum of the
 * likelihood in closed form ({@link KnotFit}).
 *
 * @param clearRun mean clear run, more than 0
 * @param zone mean zone; 0 for wood without zones
 * @param endCheck mean check of one end; 0 for none
 * @param unusableBoards share of boards that give nothing
 * @param tightKnots share of zones that are tight knots
 * @param blemishes share of zones that are blemishes; the others are unusable
 * @param origin where the figures come from, in words
 */
public record KnotModel(
        Length clearRun,
        Length zone,
        Length endCheck,
        BigDecimal unusableBoards,
        BigDecimal tightKnots,
        BigDecimal blemishes,
        String origin) {

    /** Shape of the zones' Erlang distribution; from memory: knots of one board differ by about half their mean. */
    static final int SHAPE = 4;

    /** Wood without any defect. */
    public static KnotModel flawless() {
        return new KnotModel(
                Length.inches("1"),
                Length.ZERO,
                Length.ZERO,
                BigDecimal.ZERO,
                BigDecimal.ZERO,
                BigDecimal.ZERO,
                "no defects");
    }
}
