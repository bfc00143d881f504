package org.stockcutting.http.print;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.draw.PrintedLengths;
import org.stockcutting.job.Job;
import org.stockcutting.job.Seasons;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.material.Weight;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Warning;
import org.stockcutting.report.TradeSums;

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
