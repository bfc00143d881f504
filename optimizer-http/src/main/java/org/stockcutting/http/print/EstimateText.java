package org.stockcutting.http.print;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.draw.PrintedLengths;
import org.stockcutting.job.Job;
import org.stockcutting.plan.Estimate;
import org.stockcutting.stock.Money;

/** What to buy of boards of random size, in sentences: an estimate, and it says so. */
public final class EstimateText {

    private static final BigDecimal CUBIC_METRE = BigDecimal.ONE.movePointRight(27);

    private final Amounts amounts;
    private final PrintedLengths lengths;
    private final boolean imperial;

    public EstimateText(Job job, Amounts amounts, PrintedLengths lengths) {
        this.amounts = amounts;
        this.lengths = lengths;
        this.imperial = job.writing().unit().isImperial();
    }

    void print(List<Estimate> estimates, TextPage page) {
        if (estimates.isEmpty()) {
            return;
        }
        page.gap().line("Rough boards to buy: an estimate, not a plan");
        for (Estimate estimate : estimates) {
            for (String sentence : sentences(estimate)) {
                page.wrapped("  " + sentence, "    ");
            }
        }
    }

    /** What is to be known of one estimate, a sentence each. */
    public List<String> sentences(Estimate estimate) {
        List<String> said = new ArrayList<>();
        Estimate.Sure sure = estimate.sure();
        said.add(Clip.to(estimate.stock(), 40) + ": about " + much(estimate.boardFeet(), estimate)
                + " on average, some " + PlanText.counted(estimate.boards(), "board") + costing(estimate.cost()) + ".");
        said.add("To be "
                + percent(sure.chance())
                + " sure to finish, take " + much(sure.boardFeet(), estimate) + ", some "
                + PlanText.counted(sure.boards(), "board") + costing(sure.cost()) + ".");
        for (Estimate.AtLeast row : estimate.atLeast()) {
            said.add("Among them at least " + PlanText.counted(row.boards(), "board") + " "
                    + lengths.part(row.width()) + " " + lengths.unit() + " wide and " + lengths.part(row.length())
                    + " " + lengths.unit() + " long, or more.");
        }
        List<String> parts = estimate.parts().stream()
                .map(served -> served.quantity() + " of " + Clip.to(served.part(), 30))
                .toList();
        said.add("For " + String.join(", ", parts) + ": " + percent(estimate.yield())
                + " of the wood ends up in rough pieces. Drawn " + estimate.trials() + " times, from "
                + estimate.wood() + ".");
        return said;
    }

    /** Whole board feet, rounded up; cubic metres where the job is metric. */
    private String much(BigDecimal boardFeet, Estimate estimate) {
        if (imperial) {
            return boardFeet.setScale(0, RoundingMode.CEILING).toPlainString() + " board feet";
        }
        // The ratio of the two measures is that of this estimate: thin boards are tallied an inch thick.
        BigDecimal volume = new BigDecimal(estimate.volume().cubicNanometres())
                .multiply(boardFeet)
                .divide(estimate.boardFeet().max(BigDecimal.ONE.movePointLeft(2)), 0, RoundingMode.CEILING);
        return amounts.decimal(volume.divide(CUBIC_METRE, 3, RoundingMode.CEILING)) + " cubic metres";
    }

    private String costing(@Nullable Money cost) {
        return cost == null ? "" : ", " + amounts.money(cost);
    }

    private String percent(BigDecimal share) {
        BigDecimal percent = share.movePointRight(2).setScale(1, RoundingMode.DOWN);
        return amounts.decimal(percent.stripTrailingZeros().scale() <= 0 ? percent.setScale(0) : percent) + " %";
    }
}
