package org.stockcutting.plan;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.stock.StockItem;

/**
 * What follows from the core of a plan; anyone can recompute it, near misses by planning again.
 *
 * @param buyingList what to buy, by stock id
 * @param offcuts kept offcuts as stock on hand of the next job, by id
 * @param cutSequence one sequence over all boards
 * @param setUps how often a stop or fence is moved
 * @param yield where the wood goes
 * @param warnings what a maker should know
 * @param longestOffcut the longest leftover and how long it could be; null where no bought board is only crosscut
 * @param nearMisses what a slightly smaller part would save, by part id; empty where no part may be smaller
 * @param tradeOff what fewer set-ups cost; without rows where the job does not say what a set-up is worth
 * @param estimates what to buy of boards of random size, by stock id; empty where nothing is served by them
 * @param wholeSets how many sets come out whole; null where the job does not ask for whole sets first
 */
public record Derived(
        List<BuyingLine> buyingList,
        List<StockItem.OnHand> offcuts,
        List<SequenceStep> cutSequence,
        int setUps,
        YieldFigures yield,
        List<Warning> warnings,
        @Nullable LongestOffcut longestOffcut,
        List<NearMiss> nearMisses,
        TradeOff tradeOff,
        List<Estimate> estimates,
        @Nullable WholeSets wholeSets) {

    public Derived {
        buyingList = List.copyOf(buyingList);
        offcuts = List.copyOf(offcuts);
        cutSequence = List.copyOf(cutSequence);
        warnings = List.copyOf(warnings);
        nearMisses = List.copyOf(nearMisses);
        estimates = List.copyOf(estimates);
    }

    /** Nothing is known of the longest leftover, of near misses and of what fewer set-ups cost, and nothing is estimated. */
    public Derived(
            List<BuyingLine> buyingList,
            List<StockItem.OnHand> offcuts,
            List<SequenceStep> cutSequence,
            int setUps,
            YieldFigures yield,
            List<Warning> warnings) {
        this(
                buyingList,
                offcuts,
                cutSequence,
                setUps,
                yield,
                warnings,
                null,
                List.of(),
                TradeOff.NONE,
                List.of(),
                null);
    }

    /** The same with what is known of the longest leftover. */
    public Derived withLongestOffcut(@Nullable LongestOffcut longest) {
        return with(warnings, longest, nearMisses, tradeOff, estimates, wholeSets);
    }

    /** The same with what is known of whole sets. */
    public Derived withWholeSets(@Nullable WholeSets sets) {
        return with(warnings, longestOffcut, nearMisses, tradeOff, estimates, sets);
    }

    /** The same with these near misses. */
    public Derived withNearMisses(List<NearMiss> misses) {
        return with(warnings, longestOffcut, misses, tradeOff, estimates, wholeSets);
    }

    /** The same with what fewer set-ups cost. */
    public Derived withTradeOff(TradeOff other) {
        return with(warnings, longestOffcut, nearMisses, other, estimates, wholeSets);
    }

    /** The same with these estimates, and what has to be said about them behind the other warnings. */
    public Derived withEstimates(List<Estimate> others, List<Warning> said) {
        List<Warning> all = new ArrayList<>(warnings);
        all.addAll(said);
        return with(all, longestOffcut, nearMisses, tradeOff, others, wholeSets);
    }

    private Derived with(
            List<Warning> said,
            @Nullable LongestOffcut longest,
            List<NearMiss> misses,
            TradeOff traded,
            List<Estimate> estimated,
            @Nullable WholeSets sets) {
        return new Derived(
                buyingList, offcuts, cutSequence, setUps, yield, said, longest, misses, traded, estimated, sets);
    }
}
