package org.stockcutting.job;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.material.Weight;

/**
 * What is reckoned about the load and the bill beside the plan, and never decides how boards are cut.
 *
 * @param carLoad what may be loaded at once, or null
 * @param woods what the maker knows about materials, by their name in the job
 * @param seasons between which moistures wide parts move
 * @param taxPercent tax on everything paid, in per cent, or null
 * @param delivery what delivery costs, or null if the maker fetches the wood
 * @param yardCuts what cuts by the yard cost, or null if it makes none
 */
public record TradeTerms(
        @Nullable Weight carLoad,
        SortedMap<String, OwnWood> woods,
        Seasons seasons,
        @Nullable BigDecimal taxPercent,
        @Nullable Delivery delivery,
        @Nullable YardCuts yardCuts) {

    /** Nothing said. */
    public static final TradeTerms NONE = new TradeTerms(null, new TreeMap<>(), Seasons.HEATED_ROOM, null, null, null);

    public TradeTerms {
        woods = Collections.unmodifiableSortedMap(new TreeMap<>(woods));
    }
}
