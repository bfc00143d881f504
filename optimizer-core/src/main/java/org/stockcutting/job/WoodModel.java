package org.stockcutting.job;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;

/**
 * What a maker says about the knots of boards of one material that nobody has measured yet. What is null is taken from measured boards
 * and from the grade; what is given is taken as it stands.
 *
 * @param material material of the stock it speaks of
 * @param grade name of the grade that it speaks of, and whose usual figures apply, or null for all grades: those of the stock, or the usual
 *     ones where that is not graded
 * @param clearRun mean length between two bad zones
 * @param zone mean length of a bad zone; 0 for wood without any
 * @param endCheck mean length of the checked end of a board
 * @param unusableBoards share of boards that give nothing, 0 to 1
 * @param tightKnots share of zones that are tight knots, 0 to 1
 * @param blemishes share of zones that are blemishes, 0 to 1; what is left of the zones is unusable
 */
public record WoodModel(
        String material,
        @Nullable String grade,
        @Nullable Length clearRun,
        @Nullable Length zone,
        @Nullable Length endCheck,
        @Nullable BigDecimal unusableBoards,
        @Nullable BigDecimal tightKnots,
        @Nullable BigDecimal blemishes) {}
