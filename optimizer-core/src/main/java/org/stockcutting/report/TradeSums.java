package org.stockcutting.report;

import java.math.BigDecimal;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.material.Weight;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Warning;

/**
 * What else a maker wants to know before driving to the yard: how heavy the load is, how long its longest piece, how much wide parts will
 * move, whether the wood is dry enough. Nothing here decides how boards are cut.
 *
 * @param weights one line for each stock that is bought, by its id
 * @param load weight of everything bought whose weight is known
 * @param longest length of the longest piece bought, or null if nothing is bought
 * @param movements wide parts of solid wood, by part id
 * @param notes one sentence each, with pointers into the buying list document
 */
public record TradeSums(
        List<Weighed> weights, Weight load, @Nullable Length longest, List<Movement> movements, List<Warning> notes) {

    public TradeSums {
        weights = List.copyOf(weights);
        movements = List.copyOf(movements);
        notes = List.copyOf(notes);
    }

    /**
     * What one line of the buying list weighs.
     *
     * @param stock id of the stock
     * @param each one piece, or null if the weight of the material is not known
     * @param all all of them, or null
     * @param reckonedAs the wood that it was reckoned as, or null
     */
    public record Weighed(
            String stock,
            @Nullable Weight each,
            @Nullable Weight all,
            @Nullable String reckonedAs) {}

    /**
     * How much a wide part changes across its grain between the driest and the dampest season (Wood Handbook, FPL-GTR-190, chapter 13:
     * width times coefficient times points of moisture), as a flat-sawn board: the most to allow for.
     *
     * @param part id of the part
     * @param across its size across the grain
     * @param change exact change, in nanometres rounded up
     * @param coefficient share of the width for one per cent of moisture
     * @param reckonedAs the wood that it was reckoned as, or the material's own name
     */
    public record Movement(String part, Length across, Length change, BigDecimal coefficient, String reckonedAs) {}

    /**
     * Reckons the sums of a plan.
     *
     * @param job the job
     * @param plan a plan of this job
     */
    public static TradeSums of(Job job, CuttingPlan plan) {
        SortedMap<String, Integer> bought = new TreeMap<>();
        plan.derived().buyingList().forEach(line -> bought.merge(line.stock(), line.quantity(), Math::addExact));
        Lookup lookup = new Lookup(job);
        LoadSums load = new LoadSums(lookup, bought);
        List<Movement> movements = WoodMovement.of(job);
        return new TradeSums(load.weights(), load.total(), load.longest(), movements, load.notes());
    }
}
