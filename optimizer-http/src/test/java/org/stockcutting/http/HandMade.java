package org.stockcutting.http;

import com.fasterxml.jackson.core.io.JsonStringEncoder;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.stockcutting.io.JobHash;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.JobReading;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.Direction;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Certificate;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.Objective;
import org.stockcutting.plan.PlanHeader;
import org.stockcutting.plan.Status;
import org.stockcutting.plan.StopReason;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.report.Derivation;
import org.stockcutting.sequence.CutSequencer;
import org.stockcutting.stock.Money;

/**
 * A job and a plan for it that were worked out by hand, with names that mean something to browsers and spreadsheets.
 *
 * <p>Two boards of 96 in at $4.00 carry one part of 60 and one of 30 in each: 1/2 in trim, 60, a kerf, 30, a kerf, and 5-1/4 in left.
 */
public final class HandMade {

    public static final String SCRIPT = "<script>alert(1)</script>";
    public static final String FORMULA = "=1+1";

    public static final String JOB = """
            {"name": "Hand made", "unit": "in", "precision": "1/16", "currency": "USD", "material": "ash",
             "shop": {"kerf": {"crosscut": "1/8", "rip": "1/8"}, "boardTrim": {"start": "1/2"},
                      "keepOffcuts": [{"form": "board", "length": "5", "width": "1"}]},
             "parts": [{"id": "<script>alert(1)</script>", "quantity": 2, "length": "60", "width": "3-1/2", "thickness": "1-1/2"},
                       {"id": "=1+1", "quantity": 3, "length": "30", "width": "3-1/2", "thickness": "1-1/2"}],
             "stock": [{"id": "@plank", "length": "96", "width": "3-1/2", "thickness": "1-1/2",
                        "price": {"amount": "4.00", "per": "piece"}}],
             "goal": "cost"}
            """;

    private HandMade() {}

    public static Job job() {
        return read(JOB);
    }

    /** The same job with other names for its two parts. */
    public static Job job(String longPart, String shortPart) {
        String here = "HERE";
        return read(JOB.replace(FORMULA, here)
                .replace(SCRIPT, escaped(longPart))
                .replace("\"" + here + "\"", "\"" + escaped(shortPart) + "\""));
    }

    private static String escaped(String name) {
        return new String(JsonStringEncoder.getInstance().quoteAsString(name));
    }

    private static Job read(String document) {
        JobReading reading = new JobReader().read(document.getBytes(StandardCharsets.UTF_8));
        if (reading.job() == null) {
            throw new AssertionError("the hand-made job has faults: " + reading.faults());
        }
        return reading.job();
    }

    /** Both long parts and two of the three short ones; the third is said not to have been reached. */
    public static CuttingPlan plan(Job job) {
        String longPart = job.parts().get(0).id();
        String shortPart = job.parts().get(1).id();
        Length width = Length.inches("3.5");
        Layout layout = new Layout(
                "@plank",
                2,
                Length.inches("96"),
                width,
                Length.inches("1.5"),
                List.of(piece(longPart, "0.5", "60"), piece(shortPart, "60.625", "30")),
                new CutNode.Cuts(
                        Direction.CROSSCUT,
                        List.of(slot("0.375", "0.5"), slot("60.5", "60.625"), slot("90.625", "90.75")),
                        List.of(
                                CutNode.RestLeaf.TRIM,
                                new CutNode.PartLeaf(longPart),
                                new CutNode.PartLeaf(shortPart),
                                CutNode.RestLeaf.OFFCUT)),
                List.of(new Layout.LeftOver(Length.inches("90.75"), Length.ZERO, Length.inches("5.25"), width, true)));
        List<Layout> layouts = List.of(layout);
        CutSequencer.Sequence sequence = CutSequencer.sequence(job, layouts);
        return new CuttingPlan(
                new PlanHeader(
                        job.name(), JobHash.of(job), Status.PARTIAL, StopReason.WORK_LIMIT, true, 1, 100, 1, "1.0.0"),
                new Money(new BigDecimal("8.00"), job.writing().currency()),
                new Objective(Goal.COST, BigInteger.valueOf(800), BigInteger.valueOf(756), null),
                layouts,
                List.of(new Unplaced(
                        shortPart, 1, Unplaced.Reason.NOT_REACHED_BEFORE_LIMIT, null, null, "Let it search longer.")),
                Certificate.EMPTY,
                List.of(),
                Derivation.derive(job, layouts, sequence.steps(), sequence.setUps()));
    }

    private static PlacedPiece piece(String part, String x, String length) {
        return new PlacedPiece(
                part,
                List.of(1, 2),
                List.of(),
                Length.inches(x),
                Length.ZERO,
                Length.inches(length),
                Length.inches("3.5"),
                false);
    }

    private static CutNode.Slot slot(String from, String to) {
        return new CutNode.Slot(Length.inches(from), Length.inches(to));
    }
}
