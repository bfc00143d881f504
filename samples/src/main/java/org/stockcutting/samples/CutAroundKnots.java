package org.stockcutting.samples;

import java.util.List;
import org.stockcutting.Optimizer;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.material.Grain;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/** I measured a board and noted its bad stretches: where do my parts lie? */
public final class CutAroundKnots {

    private CutAroundKnots() {}

    static String answer() {
        JobBuilder job = JobBuilder.inches("Towel rail").material("white oak");
        Length knotFrom = job.length("31");
        Length knotTo = job.length("33-1/2");
        StockItem.OnHand board = new StockItem.OnHand(
                "oak-1",
                Form.BOARD,
                null,
                job.length("74"),
                job.length("3-1/2"),
                job.length("13/16"),
                "white oak",
                Grain.LENGTH,
                null,
                1,
                List.of(new Zone(knotFrom, knotTo, null, null, Zone.Severity.UNUSABLE, Zone.Face.BOTH, false)));
        CuttingPlan plan = new Optimizer()
                .plan(job.part("rail", 2, "28", "3-1/2", "13/16").stock(board).build());
        LengthWriter lengths = new LengthWriter(LengthUnit.INCH, '.');
        StringBuilder out = new StringBuilder();
        for (Layout layout : plan.layouts()) {
            layout.pieces()
                    .forEach(piece -> out.append(piece.part())
                            .append(" from ")
                            .append(lengths.exact(piece.x()))
                            .append(" to ")
                            .append(lengths.exact(piece.x().plus(piece.length())))
                            .append('\n'));
        }
        return out.toString();
    }

    public static void main(String[] args) {
        System.out.print(answer());
    }
}
