package org.stockcutting.samples;

import org.stockcutting.Optimizer;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.plan.BuyingLine;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;

/** What must I buy, what does it cost, and how is each board cut? */
public final class HelloPlan {

    private HelloPlan() {}

    static String answer() {
        StringBuilder out = new StringBuilder();
        Job job = JobBuilder.inches("Ladder shelf")
                .material("spruce")
                .boardTrim("1/2", "1/4")
                .part("upright", 2, "72", "2x4")
                .part("rung", 8, "15-1/4", "2x4")
                .board("2x4-8", "2x4", "8'", "3.98")
                .board("2x4-10", "2x4", "10'", "5.48")
                .build();
        CuttingPlan plan = new Optimizer().plan(job);
        out.append(plan.header().status().word())
                .append(", ")
                .append(plan.cost())
                .append('\n');
        for (BuyingLine line : plan.derived().buyingList()) {
            out.append(line.quantity()).append(" x ").append(line.stock()).append('\n');
        }
        for (Layout layout : plan.layouts()) {
            out.append(layout.repeat()).append(" cut like this: ");
            layout.pieces().forEach(piece -> out.append(piece.part()).append(' '));
            out.append('\n');
        }
        return out.toString();
    }

    public static void main(String[] args) {
        System.out.print(answer());
    }
}
