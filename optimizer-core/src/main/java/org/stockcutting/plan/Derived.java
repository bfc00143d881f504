package org.stockcutting.plan;

import java.util.List;
import org.stockcutting.stock.StockItem;

/**
 * What follows from the core of a plan; anyone can recompute it.
 *
 * @param buyingList what to buy, by stock id
 * @param offcuts kept offcuts as stock on hand of the next job, by id
 * @param cutSequence one sequence over all boards
 * @param setUps how often a stop or fence is moved
 * @param yield where the wood goes
 * @param warnings what a maker should know
 */
public record Derived(
        List<BuyingLine> buyingList,
        List<StockItem.OnHand> offcuts,
        List<SequenceStep> cutSequence,
        int setUps,
        YieldFigures yield,
        List<Warning> warnings) {

    public Derived {
        buyingList = List.copyOf(buyingList);
        offcuts = List.copyOf(offcuts);
        cutSequence = List.copyOf(cutSequence);
        warnings = List.copyOf(warnings);
    }
}
