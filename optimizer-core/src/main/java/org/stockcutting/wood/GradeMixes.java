package org.stockcutting.wood;

import java.math.BigDecimal;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.stock.Money;

/**
 * What a job costs from one grade or another, and from a mix of them, when enough is bought to finish with the wanted chance. An estimate: it
 * rests on a model of the wood, and only some mixes were tried.
 *
 * @param seed seed of all trials
 * @param wanted wanted chance to finish
 * @param mixes each grade alone by its name, then mixes in the order in which they were tried
 * @param best index of the cheapest that reaches the wanted chance, or -1
 */
public record GradeMixes(long seed, BigDecimal wanted, List<Mix> mixes, int best) {

    public GradeMixes {
        mixes = List.copyOf(mixes);
    }

    /**
     * One way to share the parts out among grades.
     *
     * @param grades grade of each part that could come from several, by part id; in a mix parts of the cheaper grade may also come from what
     *     is left of the dearer
     * @param planned cost of the plan, for wood without knots; null where nothing complete was planned or a price is missing
     * @param cost cost with the boards beyond the plan; null where that is not known or the wanted chance is not reached
     * @param boards boards to buy in all
     * @param chance chance to finish with them, or null where the plan leaves parts out
     */
    public record Mix(
            SortedMap<String, String> grades,
            @Nullable Money planned,
            @Nullable Money cost,
            int boards,
            @Nullable Chance chance) {

        public Mix {
            grades = java.util.Collections.unmodifiableSortedMap(new TreeMap<>(grades));
        }

        /** The grade of all parts, or null for a mix. */
        public @Nullable String alone() {
            List<String> names = grades.values().stream().distinct().toList();
            return names.size() == 1 ? names.get(0) : null;
        }
    }
}
