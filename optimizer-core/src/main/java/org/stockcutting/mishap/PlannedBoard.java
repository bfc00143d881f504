package org.stockcutting.mishap;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.StockItem;

/**
 * One physical board of a plan.
 *
 * @param name {@code {stock} #k}
 * @param stock what it is
 * @param layout how it is cut
 * @param copy which of the layout's equal boards it is, from 0
 */
record PlannedBoard(String name, StockItem stock, Layout layout, int copy) {

    /** The boards of a plan by name, in the plan's order; layouts of stock that the job does not have are left out. */
    static Map<String, PlannedBoard> of(Job job, CuttingPlan plan) {
        Map<String, StockItem> stock = new TreeMap<>();
        job.forSale().forEach(item -> stock.put(item.id(), item));
        job.onHand().forEach(item -> stock.put(item.id(), item));
        Map<String, Integer> counted = new TreeMap<>();
        Map<String, PlannedBoard> boards = new LinkedHashMap<>();
        for (Layout layout : plan.layouts()) {
            StockItem item = stock.get(layout.stock());
            for (int copy = 0; item != null && copy < layout.repeat(); copy++) {
                String name = layout.stock() + " #" + counted.merge(layout.stock(), 1, Integer::sum);
                boards.put(name, new PlannedBoard(name, item, layout, copy));
            }
        }
        return boards;
    }

    /** Names of all boards that are owned whether the plan uses them or not: {@code rack #3} of an entry of three. */
    static List<String> spareNames(Job job, Map<String, PlannedBoard> boards) {
        List<String> names = new ArrayList<>();
        for (StockItem.OnHand item : job.onHand()) {
            for (int k = 1; k <= item.quantity(); k++) {
                String name = item.id() + " #" + k;
                if (!boards.containsKey(name)) {
                    names.add(name);
                }
            }
        }
        return names;
    }
}
