package org.stockcutting;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.mishap.LeftToDo;
import org.stockcutting.mishap.Unit;
import org.stockcutting.mishap.Want;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.BuyingLine;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Estimate;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.Replan;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.stock.StockItem;

/** Says what a new plan means for a maker who was following the old one. */
final class Replanning {

    private Replanning() {}

    static Replan describe(LeftToDo left, @Nullable CuttingPlan plan) {
        Job job = left.job();
        List<String> notes = new ArrayList<>(left.notes());
        if (job == null || plan == null) {
            notes.add("Nothing is left to cut: every part is finished.");
            return new Replan(null, null, left.finished(), List.of(), List.of(), List.of(), notes);
        }
        Map<String, Layout> layouts = new HashMap<>();
        plan.layouts().forEach(layout -> layouts.put(layout.stock(), layout));
        List<String> kept = new ArrayList<>();
        List<String> changed = new ArrayList<>();
        for (Unit unit : left.units()) {
            Layout now = layouts.get(unit.id());
            (now != null && places(now).equals(places(unit.layout())) ? kept : changed).add(unit.id());
        }
        summary(kept, changed, layouts, notes);
        replacements(job, left, plan, notes);
        buying(plan, notes);
        return new Replan(job, plan, left.finished(), left.lines(), kept, changed, notes);
    }

    private static Set<String> places(Layout layout) {
        Set<String> places = new HashSet<>();
        for (PlacedPiece piece : layout.pieces()) {
            places.add(
                    piece.part() + "@" + piece.x() + "," + piece.y() + "," + piece.extentX() + "," + piece.extentY());
        }
        return places;
    }

    private static void summary(
            List<String> kept, List<String> changed, Map<String, Layout> layouts, List<String> notes) {
        if (!kept.isEmpty()) {
            notes.add((kept.size() == 1 ? "1 piece of wood is" : kept.size() + " pieces of wood are")
                    + " cut as planned before.");
        }
        for (String id : changed) {
            notes.add(
                    layouts.containsKey(id)
                            ? id + " is cut another way: put its old sheet away and use the new one."
                            : id + " is not needed any more.");
        }
    }

    /** Where pieces come from that had lost their board. */
    private static void replacements(Job job, LeftToDo left, CuttingPlan plan, List<String> notes) {
        Set<Want> lost = new TreeSet<>(left.lost());
        Set<String> owned = new HashSet<>();
        for (StockItem.OnHand item : job.onHand()) {
            owned.add(item.id());
        }
        SortedMap<String, Integer> from = new TreeMap<>();
        for (Layout layout : plan.layouts()) {
            for (PlacedPiece piece : layout.pieces()) {
                for (int copy = 0; copy < layout.repeat(); copy++) {
                    if (lost.contains(Want.of(piece, copy)) && owned.contains(layout.stock())) {
                        from.merge(piece.part() + " from " + layout.stock(), 1, Integer::sum);
                    }
                }
            }
        }
        from.forEach((text, count) -> notes.add("Wood in hand serves: " + count + " x " + text + "."));
    }

    private static void buying(CuttingPlan plan, List<String> notes) {
        for (Unplaced line : plan.unplaced()) {
            boolean stopped = line.reason() == Unplaced.Reason.NOT_REACHED_BEFORE_LIMIT;
            notes.add(line.quantity() + " x " + line.part()
                    + (stopped ? " found no place before the search ended: " : " can't be made from this wood: ")
                    + line.remedy() + ".");
        }
        if (plan.derived().buyingList().isEmpty() && plan.derived().estimates().isEmpty()) {
            notes.add("Nothing has to be bought.");
        }
        for (Estimate estimate : plan.derived().estimates()) {
            notes.add("Buy about " + estimate.boardFeet() + " board feet of " + estimate.stock() + ", an estimate.");
        }
        for (BuyingLine line : plan.derived().buyingList()) {
            notes.add("Buy " + line.quantity() + " x " + line.stock()
                    + (line.total() == null ? "." : ", " + line.total() + "."));
        }
    }
}
