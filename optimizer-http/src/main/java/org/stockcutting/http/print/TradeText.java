package org.stockcutting.http.print;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.draw.PrintedLengths;
import org.stockcutting.job.Job;
import org.stockcutting.job.Seasons;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.material.Weight;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Warning;
import org.stockcutting.report.BandLine;
import org.stockcutting.report.Reckoning;
import org.stockcutting.report.TradeSums;
import org.stockcutting.stock.Money;

/** The load, and how much wide parts move. */
final class TradeText {

    private static final Length SIXTY_FOURTH = Length.inches("0.015625");
    private static final Length TENTH = Length.ofNanometres(100_000L);

    private final Job job;
    private final Amounts amounts;
    private final PrintedLengths lengths;

    TradeText(Job job, Amounts amounts, PrintedLengths lengths) {
        this.job = job;
        this.amounts = amounts;
        this.lengths = lengths;
    }

    /** One line below the buying list, if anything is bought whose weight is known. */
    void load(CuttingPlan plan, TextPage page) {
        TradeSums sums = TradeSums.of(job, plan);
        Length longest = sums.longest();
        if (longest == null || sums.load().equals(Weight.ZERO)) {
            return;
        }
        List<String> woods = sums.weights().stream()
                .map(TradeSums.Weighed::reckonedAs)
                .filter(java.util.Objects::nonNull)
                .distinct()
                .sorted()
                .toList();
        page.wrapped(
                "Load: about " + weight(sums.load()) + " (as " + Clip.to(String.join("; ", woods), 60)
                        + "), longest piece " + lengths.part(longest) + " " + lengths.unit() + ".",
                "  ");
        for (Warning note : sums.notes()) {
            page.wrapped("  " + note.text(), "    ");
        }
    }

    /** What is paid beside the material, if anything is. */
    void bill(CuttingPlan plan, TextPage page) {
        Reckoning bill = Reckoning.of(job, plan);
        if (bill == null) {
            return;
        }
        Money perSet = bill.perSet(job, plan);
        if (!bill.hasExtras()) {
            perSet(perSet, page);
            return;
        }
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("material", amounts.money(bill.material())));
        if (bill.yardCuts() != null) {
            rows.add(List.of(PlanText.counted(bill.cuts(), "cut") + " by the yard", amounts.money(bill.yardCuts())));
        }
        if (bill.delivery() != null) {
            rows.add(List.of("delivery", amounts.money(bill.delivery())));
        }
        BigDecimal percent = job.terms().taxPercent();
        if (bill.tax() != null && percent != null) {
            rows.add(List.of("tax, " + amounts.decimal(percent) + "%", amounts.money(bill.tax())));
        }
        rows.add(List.of("to pay", amounts.money(bill.total())));
        page.table(List.of(false, true), rows);
        perSet(perSet, page);
    }

    private void perSet(@Nullable Money perSet, TextPage page) {
        if (perSet != null && perSet.minorUnits() > 0) {
            page.line("  One of " + job.sets() + " sets comes to " + amounts.money(perSet) + ".");
        }
    }

    /** Strips for edging, one line a kind. */
    void edging(CuttingPlan plan, TextPage page) {
        for (BandLine line : BandLine.of(job, plan)) {
            page.wrapped(
                    "Edging: " + PlanText.counted(line.strips(), "strip") + " " + lengths.part(line.thickness()) + " x "
                            + lengths.part(line.partThickness()) + ", " + lengths.part(line.length()) + " "
                            + lengths.unit() + " in all, the longest " + lengths.part(line.longest()) + " "
                            + lengths.unit() + " (for " + Clip.to(line.material(), 30)
                            + "; saw solid strips a little wider than the panel is thick).",
                    "  ");
        }
    }

    /** Wide parts, one line each. */
    void movement(CuttingPlan plan, TextPage page) {
        List<TradeSums.Movement> movements = TradeSums.of(job, plan).movements();
        if (movements.isEmpty()) {
            return;
        }
        Seasons seasons = job.terms().seasons();
        page.gap()
                .line("Let it move: width gained from " + amounts.decimal(seasons.driest()) + "% to "
                        + amounts.decimal(seasons.dampest()) + "% moisture, flat-sawn");
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("part", "width", "moves", "as"));
        for (TradeSums.Movement movement : movements) {
            rows.add(List.of(
                    Clip.to(movement.part(), 28),
                    lengths.part(movement.across()),
                    moves(movement.change()),
                    Clip.to(movement.reckonedAs(), 30)));
        }
        page.table(List.of(false, true, true, false), rows);
    }

    /** Never less than it is, in steps that a rule shows. */
    private String moves(Length change) {
        LengthWriter writer =
                new LengthWriter(job.writing().unit(), job.writing().decimal());
        boolean imperial = job.writing().unit().isImperial();
        return writer.rounded(change, imperial ? SIXTY_FOURTH : TENTH, LengthWriter.Rounding.UP);
    }

    private String weight(Weight weight) {
        return job.writing().unit().isImperial()
                ? amounts.decimal(weight.inPounds(0)) + " lb"
                : amounts.decimal(weight.inKilograms(0)) + " kg";
    }
}
