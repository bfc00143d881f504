package org.stockcutting.job;

import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.material.Weight;

/**
 * What is reckoned about the load, and never decides how boards are cut.
 *
 * @param carLoad what may be loaded at once, or null
 * @param woods what the maker knows about materials, by their name in the job
 * @param seasons between which moistures wide parts move
 */
public record TradeTerms(@Nullable Weight carLoad, SortedMap<String, OwnWood> woods, Seasons seasons) {

    /** Nothing said. */
    public static final TradeTerms NONE = new TradeTerms(null, new TreeMap<>(), Seasons.HEATED_ROOM);

    public TradeTerms {
        woods = Collections.unmodifiableSortedMap(new TreeMap<>(woods));
    }
}
