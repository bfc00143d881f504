package org.stockcutting.http.print;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.stockcutting.draw.PrintedLengths;
import org.stockcutting.job.Job;
import org.stockcutting.material.NominalSize;
import org.stockcutting.plan.BuyingLine;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.StockItem;

/** The buying list, and what comes from the rack. */
public final class BuyingText {

    private static final List<Boolean> RIGHT = List.of(true, false, false, true, true, true);

    private final Job job;
    private final Amounts amounts;
    private final PrintedLengths lengths;

    public BuyingText(Job job, Amounts amounts, PrintedLengths lengths) {
        this.job = job;
        this.amounts = amounts;
        this.lengths = lengths;
    }

    void print(CuttingPlan plan, TextPage page) {
        if (plan.derived().buyingList().isEmpty()) {
            page.line(plan.derived().estimates().isEmpty() ? "Nothing to buy." : "Nothing to buy of fixed sizes.");
        } else {
            List<List<String>> clipped = new ArrayList<>();
            for (List<String> row : rows(plan)) {
                List<String> cells = new ArrayList<>(row);
                cells.set(1, Clip.to(row.get(1), 28));
                cells.set(2, Clip.to(row.get(2), 30));
                clipped.add(cells);
            }
            page.line("Buying list").table(RIGHT, clipped);
            notes(plan).forEach(note -> page.wrapped("  " + note, "    "));
        }
        TradeText trade = new TradeText(job, amounts, lengths);
        trade.bill(plan, page);
        trade.edging(plan, page);
        trade.load(plan, page);
        rack(plan, page);
        new EstimateText(job, amounts, lengths).print(plan.derived().estimates(), page);
    }

    /** Head, one row a line of the list, and the sums; six columns, the second and third to be read as text. */
    public List<List<String>> rows(CuttingPlan plan) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("how many", "what", "size", "price", "total", "board feet"));
        BigDecimal feet = BigDecimal.ZERO;
        int pieces = 0;
        for (BuyingLine line : plan.derived().buyingList()) {
            rows.add(List.of(
                    Integer.toString(line.quantity()),
                    line.stock(),
                    what(line.stock()),
                    line.price() == null ? "-" : amounts.money(line.price()),
                    line.total() == null ? "-" : amounts.money(line.total()),
                    line.boardFeet() == null ? "" : amounts.decimal(line.boardFeet())));
            feet = line.boardFeet() == null ? feet : feet.add(line.boardFeet());
            pieces += line.quantity();
        }
        rows.add(List.of(
                Integer.toString(pieces),
                "in all",
                "",
                "",
                plan.cost() == null ? "-" : amounts.money(plan.cost()),
                feet.signum() == 0 ? "" : amounts.decimal(feet)));
        return rows;
    }

    /** How it is sold, one sentence for each line that is not simply so many pieces at a price. */
    public List<String> notes(CuttingPlan plan) {
        List<String> notes = new ArrayList<>();
        for (BuyingLine line : plan.derived().buyingList()) {
            BuyingLine.Lot lot = line.lot();
            List<String> words = new ArrayList<>();
            if (lot.pack() > 1) {
                words.add(PlanText.counted(line.quantity() / lot.pack(), "pack") + " of " + lot.pack()
                        + (line.price() == null ? "" : " at " + amounts.money(line.price()) + " a pack"));
            }
            if (lot.breakFrom() > 0) {
                words.add("the price from " + lot.breakFrom() + " on");
            }
            if (lot.used() < line.quantity()) {
                words.add(lot.used() + " are cut, " + (line.quantity() - lot.used()) + " left whole");
            }
            if (lot.more() > 0) {
                words.add(lot.more() + " more would cost nothing more");
            }
            if (!words.isEmpty()) {
                notes.add(Clip.to(line.stock(), 28) + ": " + String.join("; ", words) + ".");
            }
        }
        return notes;
    }

    private String what(String id) {
        for (StockItem.ForSale item : job.forSale()) {
            if (item.id().equals(id)) {
                NominalSize nominal = item.nominal();
                String section = nominal == null
                        ? lengths.part(item.width()) + " x " + lengths.part(item.thickness())
                        : nominal.name();
                return section + ", " + lengths.part(item.length()) + " " + lengths.unit() + " long";
            }
        }
        return "";
    }

    /** How many of each piece on hand are used, by id. */
    public Map<String, Integer> fromOnHand(CuttingPlan plan) {
        Set<String> owned = job.onHand().stream().map(StockItem::id).collect(Collectors.toSet());
        Map<String, Integer> used = new TreeMap<>();
        for (Layout layout : plan.layouts()) {
            if (owned.contains(layout.stock())) {
                used.merge(layout.stock(), layout.repeat(), Integer::sum);
            }
        }
        return used;
    }

    private void rack(CuttingPlan plan, TextPage page) {
        Map<String, Integer> used = fromOnHand(plan);
        if (used.isEmpty()) {
            return;
        }
        List<String> names = new ArrayList<>();
        used.forEach((id, count) -> names.add(count == 1 ? id : count + " of " + id));
        page.wrapped("From the rack: " + String.join(", ", names) + ".", "  ");
    }
}
