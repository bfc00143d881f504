package org.stockcutting.samples;

import org.stockcutting.Optimizer;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;

/** Does it all come out of one sheet, and where is each piece? */
public final class OneSheetOfPlywood {

    private OneSheetOfPlywood() {}

    static String answer() {
        CuttingPlan plan = new Optimizer()
                .plan(JobBuilder.millimetres("Stool with drawer")
                        .material("birch plywood")
                        .part("side", 2, "450", "300", "18")
                        .part("seat", 1, "420", "320", "18")
                        .part("shelf", 1, "384", "280", "18")
                        .part("drawer front", 1, "380", "120", "18")
                        .sheet("quarter sheet", "1250", "610", "18", "28.50")
                        .build());
        LengthWriter lengths = new LengthWriter(LengthUnit.MILLIMETRE, '.');
        StringBuilder out = new StringBuilder();
        out.append(plan.layouts().stream().mapToInt(Layout::repeat).sum()).append(" sheet(s), ");
        out.append(plan.header().status().word()).append('\n');
        for (Layout layout : plan.layouts()) {
            layout.pieces()
                    .forEach(piece -> out.append(piece.part())
                            .append(" at ")
                            .append(lengths.exact(piece.x()))
                            .append(" from the end, ")
                            .append(lengths.exact(piece.y()))
                            .append(" from the edge\n"));
        }
        return out.toString();
    }

    public static void main(String[] args) {
        System.out.print(answer());
    }
}
