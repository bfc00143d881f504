package org.stockcutting.samples;

import org.stockcutting.Optimizer;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;

/** How does what is left of one job get used by the next? The offcuts of a plan are stock on hand, as they are. */
public final class UseTheLeftovers {

    private UseTheLeftovers() {}

    static String answer() {
        Optimizer optimizer = new Optimizer();
        CuttingPlan first = optimizer.plan(JobBuilder.inches("Coat rack")
                .material("pine")
                .boardTrim("1/2", "1/2")
                .keep(Form.BOARD, "18", "1-1/2")
                .part("rail", 1, "60", "1x6")
                .part("shelf", 1, "58", "1x6")
                .board("1x6-8", "1x6", "8'", "9.80")
                .build());
        JobBuilder second = JobBuilder.inches("Key box")
                .material("pine")
                .boardTrim("1/2", "1/2")
                .part("side", 2, "14", "1x6")
                .part("end", 2, "9", "1x6")
                .board("1x6-8", "1x6", "8'", "9.80");
        LengthWriter lengths = new LengthWriter(LengthUnit.INCH, '.');
        StringBuilder out =
                new StringBuilder("first job: ").append(first.cost()).append('\n');
        for (StockItem.OnHand offcut : first.derived().offcuts()) {
            out.append("on the rack: ")
                    .append(offcut.id())
                    .append(", ")
                    .append(lengths.exact(offcut.length()))
                    .append(" long")
                    .append('\n');
            second.stock(offcut);
        }
        CuttingPlan next = optimizer.plan(second.build());
        out.append("second job: ").append(next.cost()).append('\n');
        next.layouts()
                .forEach(
                        layout -> out.append("cut from ").append(layout.stock()).append('\n'));
        return out.toString();
    }

    public static void main(String[] args) {
        System.out.print(answer());
    }
}
