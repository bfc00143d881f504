package org.stockcutting.samples;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.Optimizer;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.Violation;

/** Somebody moved a piece by hand: does the plan still hold? */
public final class CheckAHandMadePlan {

    private CheckAHandMadePlan() {}

    static String answer() {
        Job job = JobBuilder.inches("Two rails")
                .material("spruce")
                .boardTrim("1/2", "1/2")
                .part("rail", 2, "40", "2x4")
                .board("2x4-8", "2x4", "8'", "3.98")
                .build();
        CuttingPlan plan = new Optimizer().plan(job);
        StringBuilder out = new StringBuilder("as planned: ")
                .append(PlanChecker.check(job, plan).size())
                .append(" violations\n");
        for (Violation violation : PlanChecker.check(job, moved(plan, job))) {
            out.append(violation.cause())
                    .append(" at ")
                    .append(violation.pointer())
                    .append(": ")
                    .append(violation.text())
                    .append('\n');
        }
        return out.toString();
    }

    /** The second rail of the first board, moved an inch towards the first: they overlap now. */
    private static CuttingPlan moved(CuttingPlan plan, Job job) {
        Layout layout = plan.layouts().get(0);
        List<PlacedPiece> pieces = new ArrayList<>(layout.pieces());
        PlacedPiece last = pieces.remove(pieces.size() - 1);
        Length inch = Length.inches("1");
        pieces.add(new PlacedPiece(
                last.part(),
                last.numbers(),
                last.members(),
                last.x().minus(inch),
                last.y(),
                last.length(),
                last.width(),
                last.turned()));
        List<Layout> layouts = new ArrayList<>(plan.layouts());
        layouts.set(
                0,
                new Layout(
                        layout.stock(),
                        layout.repeat(),
                        layout.length(),
                        layout.width(),
                        layout.thickness(),
                        pieces,
                        layout.cuts(),
                        layout.offcuts()));
        return new CuttingPlan(
                plan.header(),
                plan.cost(),
                plan.objective(),
                layouts,
                plan.unplaced(),
                plan.certificate(),
                plan.violations(),
                plan.derived());
    }

    public static void main(String[] args) {
        System.out.print(answer());
    }
}
