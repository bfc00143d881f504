package org.stockcutting.samples;

import java.math.BigDecimal;
import java.util.Currency;
import org.stockcutting.Optimizer;
import org.stockcutting.blank.BlankPlanner;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.material.Grain;
import org.stockcutting.part.Making;
import org.stockcutting.part.Section;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Price;
import org.stockcutting.stock.PriceUnit;
import org.stockcutting.stock.StockItem;

/** Which staves does a glued-up top take, how big are they rough, and from which boards do they come? */
public final class GlueUpTabletop {

    private GlueUpTabletop() {}

    static String answer() {
        JobBuilder builder = JobBuilder.inches("Side table top").material("ash").boardTrim("2", "2");
        Job job = builder.part(
                        "top",
                        1,
                        "22",
                        new Section.Measured(builder.length("15"), builder.length("3/4")),
                        new Making.GlueUp(
                                builder.length("3"),
                                builder.length("5-1/4"),
                                null,
                                Making.StaveSource.DIFFERENT_BOARDS))
                .stock(new StockItem.ForSale(
                        "ash 4 ft",
                        Form.BOARD,
                        null,
                        builder.length("4'"),
                        builder.length("6"),
                        builder.length("1-1/16"),
                        "ash",
                        Grain.LENGTH,
                        null,
                        null,
                        new Price(new BigDecimal("7.25"), Currency.getInstance("USD"), PriceUnit.BOARD_FOOT)))
                .build();
        LengthWriter lengths = new LengthWriter(LengthUnit.INCH, '.');
        StringBuilder out = new StringBuilder();
        for (RoughPiece piece : BlankPlanner.plan(job)) {
            for (RoughPiece.Stage stage : piece.trail()) {
                out.append(stage.name()).append(": ").append(lengths.exact(stage.length()));
                if (stage.width() != null && stage.thickness() != null) {
                    out.append(" x ").append(lengths.exact(stage.width()));
                    out.append(" x ").append(lengths.exact(stage.thickness()));
                }
                out.append('\n');
            }
            out.append(piece.perPart()).append(" staves\n");
        }
        CuttingPlan plan = new Optimizer().plan(job);
        plan.derived()
                .buyingList()
                .forEach(line -> out.append(line.quantity())
                        .append(" x ")
                        .append(line.stock())
                        .append(", ")
                        .append(line.total())
                        .append('\n'));
        return out.toString();
    }

    public static void main(String[] args) {
        System.out.print(answer());
    }
}
