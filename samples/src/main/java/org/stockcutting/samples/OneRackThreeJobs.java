package org.stockcutting.samples;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.stockcutting.Optimizer;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;

/**
 * How does a rack live through several jobs? Each job takes the rack as it is; what it cuts up leaves the rack, and what it leaves
 * that is worth keeping comes onto it.
 */
public final class OneRackThreeJobs {

    private final Optimizer optimizer = new Optimizer();
    private final LengthWriter lengths = new LengthWriter(LengthUnit.INCH, '.');
    private final StringBuilder out = new StringBuilder();
    private List<StockItem.OnHand> rack = new ArrayList<>();

    private OneRackThreeJobs() {}

    static String answer() {
        OneRackThreeJobs shop = new OneRackThreeJobs();
        shop.make(shop.job("Bench").part("leg", 4, "17", "2x4").part("rail", 3, "40", "2x4"));
        shop.make(shop.job("Boot rack").part("side", 2, "24", "2x4").part("bar", 3, "28", "2x4"));
        shop.make(shop.job("Step stool").part("foot", 2, "15", "2x4").part("tread", 2, "16", "2x4"));
        return shop.out.toString();
    }

    /** What all jobs of this shop have in common: its wood, its trims, what it keeps. */
    private JobBuilder job(String name) {
        return JobBuilder.inches(name)
                .material("spruce")
                .boardTrim("1/2", "1/4")
                .keep(Form.BOARD, "12", "1-1/2")
                .board("2x4-8", "2x4", "8'", "3.98")
                .board("2x4-10", "2x4", "10'", "5.25");
    }

    private void make(JobBuilder builder) {
        rack.forEach(builder::stock);
        Job job = builder.build();
        CuttingPlan plan = optimizer.plan(job);
        out.append(job.name()).append(": buy for ").append(plan.cost()).append('\n');
        for (Layout layout : plan.layouts()) {
            out.append("  cut ")
                    .append(layout.repeat())
                    .append(" x ")
                    .append(layout.stock())
                    .append('\n');
        }
        rack = after(plan);
        for (StockItem.OnHand piece : rack) {
            out.append("  on the rack: ")
                    .append(piece.quantity())
                    .append(" x ")
                    .append(lengths.exact(piece.length()))
                    .append(" (")
                    .append(piece.id())
                    .append(")\n");
        }
    }

    /** What was not cut stays, what is left over comes on. An id that is taken already gets another letter. */
    private List<StockItem.OnHand> after(CuttingPlan plan) {
        List<StockItem.OnHand> now = new ArrayList<>();
        Set<String> ids = new HashSet<>();
        for (StockItem.OnHand piece : rack) {
            int used = plan.layouts().stream()
                    .filter(layout -> layout.stock().equals(piece.id()))
                    .mapToInt(Layout::repeat)
                    .sum();
            if (used < piece.quantity()) {
                now.add(named(piece, piece.id(), piece.quantity() - used));
                ids.add(piece.id());
            }
        }
        for (StockItem.OnHand offcut : plan.derived().offcuts()) {
            String id = offcut.id();
            while (!ids.add(id)) {
                id += "x";
            }
            now.add(named(offcut, id, offcut.quantity()));
        }
        now.sort(Comparator.comparing(StockItem.OnHand::id));
        return now;
    }

    private static StockItem.OnHand named(StockItem.OnHand piece, String id, int quantity) {
        return new StockItem.OnHand(
                id,
                piece.form(),
                piece.nominal(),
                piece.length(),
                piece.width(),
                piece.thickness(),
                piece.material(),
                piece.grain(),
                piece.ownTrim(),
                quantity,
                piece.zones());
    }

    public static void main(String[] args) {
        System.out.print(answer());
    }
}
