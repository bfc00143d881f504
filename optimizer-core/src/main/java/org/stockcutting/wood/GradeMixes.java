package org.stockcutting.wood;

import java.math.BigDecimal;
import java.util.Collections;
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
 * @param families parts that share wood and could come from several grades, in the order of their first part; empty where no part has a choice
 * @param together the whole job, each family from its cheapest mix, bought so that all of it is finished with the wanted chance; null where a
 *     family has no mix that reaches it
 */
public record GradeMixes(
        long seed,
        BigDecimal wanted,
        List<Family> families,
        @Nullable Mix together) {

    public GradeMixes {
        families = List.copyOf(families);
    }

    /**
     * Parts that share wood with each other and with nothing else of the job.
     *
     * @param parts ids of the parts, also of those that take one grade only
     * @param mixes each grade alone by its name, then mixes in the order in which they were tried; for these parts, as if nothing else were made
     * @param best index of the cheapest that reaches the wanted chance, or -1
     */
    public record Family(List<String> parts, List<Mix> mixes, int best) {

        public Family {
            parts = List.copyOf(parts);
            mixes = List.copyOf(mixes);
        }
    }

    /**
     * One way to share the parts out among grades.
     *
     * @param grades grade of each part that could come from several, by part id; in a mix parts of the cheaper grade may also come from what
     *     is left of the dearer
     * @param planned cost of the plan, for wood without knots; null where nothing complete was planned or a price is missing
     * @param expected cost on average, each purchase with no more boards than it turns out to need; null where that is not known
     * @param cost cost with the boards beyond the plan; null where that is not known or the wanted chance is not reached
     * @param boards boards to buy in all; 0 where the plan leaves parts out
     * @param chance chance to finish with them, or null where the plan leaves parts out
     */
    public record Mix(
            SortedMap<String, String> grades,
            @Nullable Money planned,
            @Nullable Money expected,
            @Nullable Money cost,
            int boards,
            @Nullable Chance chance) {

        public Mix {
            grades = Collections.unmodifiableSortedMap(new TreeMap<>(grades));
        }

        /** The grade of all parts, or null for a mix. */
        public @Nullable String alone() {
            List<String> names = grades.values().stream().distinct().toList();
            return names.size() == 1 ? names.get(0) : null;
        }
    }
}
