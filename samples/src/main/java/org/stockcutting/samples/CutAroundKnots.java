package org.stockcutting.samples;

import org.stockcutting.Optimizer;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;

/** I measured two boards and noted their bad stretches: where do my parts lie? */
public final class CutAroundKnots {

    private CutAroundKnots() {}

    static String answer() {
        JobBuilder builder = JobBuilder.inches("Towel rail").material("white oak");
        Job job = builder.boardTrim("1/2", "1/2")
                .part("rail", 2, "28", "3-1/2", "13/16")
                .part("bracket", 2, "9", "3-1/2", "13/16")
                .measured("oak-1", "74", "3-1/2", "13/16", builder.bad("31", "33-1/2"))
                .measured("oak-2", "40", "3-5/8", "13/16", builder.bad("0", "2-3/4"), builder.bad("22", "22-3/4"))
                .build();
        CuttingPlan plan = new Optimizer().plan(job);
        LengthWriter lengths =
                new LengthWriter(job.writing().unit(), job.writing().decimal());
        StringBuilder out = new StringBuilder();
        for (Layout layout : plan.layouts()) {
            out.append(layout.stock()).append('\n');
            for (PlacedPiece piece : layout.pieces()) {
                out.append("  ").append(piece.part());
                out.append(" from ").append(lengths.exact(piece.x()));
                out.append(" to ").append(lengths.exact(piece.x().plus(piece.length())));
                out.append('\n');
            }
        }
        return out.toString();
    }

    public static void main(String[] args) {
        System.out.print(answer());
    }
}
