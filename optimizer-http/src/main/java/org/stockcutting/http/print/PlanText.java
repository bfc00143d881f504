package org.stockcutting.http.print;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.stockcutting.draw.PieceNames;
import org.stockcutting.draw.PrintedLengths;
import org.stockcutting.job.Job;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.LongestOffcut;
import org.stockcutting.plan.TradeOff;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.plan.WholeSets;
import org.stockcutting.stock.Money;
import org.stockcutting.stock.StockItem;

/** A whole plan for somebody at the bench: what to buy, how good that is, how to cut it, what stays on the rack. */
public final class PlanText {

    private final Job job;
    private final Amounts amounts;
    private final PrintedLengths lengths;

    public PlanText(Job job) {
        this.job = job;
        amounts = new Amounts(job.writing());
        lengths = new PrintedLengths(job.writing());
    }

    /** The text, lines ending with a line feed. */
    public String print(CuttingPlan plan) {
        TextPage page = new TextPage();
        page.line(job.name()).gap();
        new BuyingText(job, amounts, lengths).print(plan, page);
        if (!plan.layouts().isEmpty()) {
            page.wrapped(BoundText.sentence(plan, amounts), "  ");
        }
        unplaced(plan, page);
        wholeSets(plan, page);
        nearMisses(plan, page);
        tradeOff(plan, page);
        layouts(plan, page);
        new SequenceText(job, lengths)
                .print(plan.derived().cutSequence(), plan.derived().setUps(), page);
        leftovers(plan, page);
        longest(plan, page);
        new TradeText(job, amounts, lengths).movement(plan, page);
        cautions(plan, page);
        if (!plan.layouts().isEmpty()) {
            wood(plan, page);
        }
        return page.toString();
    }

    private static void unplaced(CuttingPlan plan, TextPage page) {
        if (plan.unplaced().isEmpty()) {
            return;
        }
        page.gap().line("Can't be made from this wood");
        for (Unplaced missing : plan.unplaced()) {
            page.wrapped("  " + UnplacedText.sentence(missing), "    ");
        }
    }

    private void wholeSets(CuttingPlan plan, TextPage page) {
        WholeSets sets = plan.derived().wholeSets();
        if (sets == null) {
            return;
        }
        String most = sets.complete() == job.sets()
                ? ""
                : sets.atMost() == sets.complete()
                        ? "; no plan makes more of them whole"
                        : "; whether " + sets.atMost() + " could be is not known";
        page.gap().wrapped(sets.complete() + " of " + counted(job.sets(), "set") + " whole" + most + ".", "  ");
        if (!sets.missing().isEmpty()) {
            List<String> lacks = sets.missing().stream()
                    .map(lack -> lack.quantity() + " " + Clip.to(lack.part(), 28))
                    .toList();
            page.wrapped("The next one lacks " + String.join(", ", lacks) + ".", "  ");
        }
    }

    private void nearMisses(CuttingPlan plan, TextPage page) {
        if (plan.derived().nearMisses().isEmpty()) {
            return;
        }
        LengthWriter exact =
                new LengthWriter(job.writing().unit(), job.writing().decimal());
        NearMissText text = new NearMissText(amounts, exact, lengths);
        page.gap().line("Nearly");
        plan.derived().nearMisses().forEach(miss -> page.wrapped("  " + text.sentence(miss), "    "));
    }

    private void tradeOff(CuttingPlan plan, TextPage page) {
        Money price = job.shop().setUpPrice();
        if (price == null || plan.derived().tradeOff().rows().isEmpty()) {
            return;
        }
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("cost", "set-ups", "set-ups counted at " + amounts.money(price), ""));
        for (TradeOff.Row row : plan.derived().tradeOff().rows()) {
            rows.add(List.of(
                    amounts.money(row.cost()),
                    Integer.toString(row.setUps()),
                    amounts.money(row.withSetUps(price)),
                    row.chosen() ? "<- this plan" : ""));
        }
        page.gap().line("Fewer set-ups for more money").table(List.of(true, true, true, false), rows);
        page.wrapped("Plans that were found; there may be better ones.", "  ");
    }

    private void layouts(CuttingPlan plan, TextPage page) {
        if (plan.layouts().isEmpty()) {
            return;
        }
        int boards = plan.layouts().stream().mapToInt(Layout::repeat).sum();
        page.gap()
                .line("Cutting plan: " + counted(boards, "board") + ", "
                        + counted(plan.layouts().size(), "layout")
                        + ". The origin end is on the left, the origin edge at the bottom.")
                .line("Dots mark leftovers, / trims, x bad wood; (3) is row 3 of the table below; ~ is rounded.");
        LayoutText text = new LayoutText(lengths, new PieceNames(job));
        for (BoardGroup group : BoardGroup.of(plan)) {
            page.gap();
            text.print(group.layout(), stockOf(group.layout()), group.first(), page);
        }
    }

    private StockItem stockOf(Layout layout) {
        return Stream.<StockItem>concat(job.forSale().stream(), job.onHand().stream())
                .filter(item -> item.id().equals(layout.stock()))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("the job has no stock called " + layout.stock()));
    }

    private void leftovers(CuttingPlan plan, TextPage page) {
        if (plan.derived().offcuts().isEmpty()) {
            return;
        }
        page.gap().line("Worth keeping");
        for (StockItem.OnHand offcut : plan.derived().offcuts()) {
            page.line("  " + offcut.quantity() + "  " + lengths.gap(offcut.length()) + " x "
                    + lengths.gap(offcut.width()) + " x " + lengths.gap(offcut.thickness()) + " " + lengths.unit()
                    + ", " + Clip.to(offcut.material(), 30)
                    + (offcut.grade() == null ? "" : " " + Clip.to(offcut.grade(), 30)) + "  ("
                    + Clip.to(offcut.id(), 30) + ")");
        }
    }

    /** What is known of the longest piece that is left of a bought board; none is nothing to speak of. */
    private void longest(CuttingPlan plan, TextPage page) {
        LongestOffcut longest = plan.derived().longestOffcut();
        if (longest == null || longest.length().isZero()) {
            return;
        }
        page.gap()
                .wrapped(
                        "The longest piece left of a bought board is " + lengths.gap(longest.length()) + " "
                                + lengths.unit()
                                + (longest.certified()
                                        ? ". No list as good can leave a longer one."
                                        : ". No list as good can leave more than " + lengths.part(longest.atMost())
                                                + " " + lengths.unit()
                                                + "; whether one leaves more than this is not known."),
                        "");
    }

    /** What is due at one cut stands in the cut sequence. */
    private static void cautions(CuttingPlan plan, TextPage page) {
        List<String> said = CautionText.warnings(plan);
        if (said.isEmpty()) {
            return;
        }
        page.gap().line("Take care");
        said.forEach(sentence -> page.wrapped("  " + sentence, "    "));
    }

    private void wood(CuttingPlan plan, TextPage page) {
        BigDecimal percent = plan.derived().yield().ratio().movePointRight(2).setScale(1, RoundingMode.DOWN);
        page.gap()
                .line("Yield: " + amounts.decimal(percent) + "% of the wood ends in finished parts. "
                        + counted(plan.derived().setUps(), "set-up") + " at the saw.");
    }

    static String counted(int count, String word) {
        return count + " " + word + (count == 1 ? "" : "s");
    }

    /** Statuses under which a plan leaves nothing undone. */
    public static boolean isComplete(CuttingPlan plan) {
        return Set.of(org.stockcutting.plan.Status.OPTIMAL, org.stockcutting.plan.Status.FEASIBLE)
                .contains(plan.header().status());
    }
}
