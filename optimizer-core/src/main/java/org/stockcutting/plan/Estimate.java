package org.stockcutting.plan;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.length.Volume;
import org.stockcutting.stock.Money;

/**
 * What has to be bought of boards of random size for parts that no measured board and nothing of a fixed size serves. It rests on drawn boards
 * and a model of their knots: it is never part of a plan's cost or bound, and nothing about it is proved but {@code atLeast}.
 *
 * @param stock id of the boards
 * @param parts what they are for, by part id
 * @param net volume of the rough pieces at the billed thickness
 * @param yield share of bought wood that becomes rough pieces, on average over the trials; four decimals, rounded down
 * @param volume volume to buy at the billed thickness: net over yield, rounded up to the cubic nanometre
 * @param boardFeet the same in board feet, rounded up to two decimals
 * @param boards about how many boards that is: the average, rounded up
 * @param cost its price, or null where the boards have none
 * @param sure what is enough with the wanted chance
 * @param atLeast boards of some size that there must be among them, whatever the others are
 * @param trials drawn purchases
 * @param wood what the boards are taken to be like, in words
 */
public record Estimate(
        String stock,
        List<Served> parts,
        Volume net,
        BigDecimal yield,
        Volume volume,
        BigDecimal boardFeet,
        int boards,
        @Nullable Money cost,
        Sure sure,
        List<AtLeast> atLeast,
        int trials,
        String wood) {

    public Estimate {
        parts = List.copyOf(parts);
        atLeast = List.copyOf(atLeast);
    }

    /**
     * Parts of one line that the boards are for.
     *
     * @param part id of the part
     * @param quantity finished pieces
     */
    public record Served(String part, int quantity) {}

    /**
     * What was enough in so many of the trials.
     *
     * @param chance wanted share of trials
     * @param boardFeet board feet, rounded up to two decimals; not less than the average
     * @param boards boards
     * @param cost its price, or null
     */
    public record Sure(
            BigDecimal chance,
            BigDecimal boardFeet,
            int boards,
            @Nullable Money cost) {}

    /**
     * Boards that are needed whatever the others are: even cut from the largest there can be, the pieces of this size take so many.
     *
     * @param boards how many
     * @param width at least so wide, trims included
     * @param length at least so long, trims included
     */
    public record AtLeast(int boards, Length width, Length length) {}
}
