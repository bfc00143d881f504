package org.stockcutting.plan;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Goal;

/**
 * Which stock to buy: each entry alone, all together, pairs where there are few, and the subsets the job names, for each independent
 * component and over the whole job.
 *
 * <p>No choice has a worse value than a choice that is part of it: a plan from less stock is a plan from more.
 *
 * @param job name of the job
 * @param jobHash hash of the job, as in a plan
 * @param goal what is least
 * @param reproducible false if the clock or a cancel cut a search short
 * @param seed seed used
 * @param work weighted steps used by all searches
 * @param workVersion version of the weights
 * @param engine version of the engine
 * @param components independent parts of the job, in the order of their first part
 * @param whole the same over the whole job: only the named stock is for sale at all
 * @param limits what the shop's limits cost
 * @param estimates what to buy of boards of random size for pieces that nothing of a fixed size serves; the same beside every choice, and no part
 *     of any cost, bound or rank
 */
public record Comparison(
        String job,
        String jobHash,
        Goal goal,
        boolean reproducible,
        long seed,
        long work,
        int workVersion,
        String engine,
        List<Section> components,
        Section whole,
        List<LimitPrice> limits,
        List<Estimate> estimates) {

    public Comparison {
        components = List.copyOf(components);
        limits = List.copyOf(limits);
        estimates = List.copyOf(estimates);
    }

    /**
     * Choices for the same parts.
     *
     * @param parts ids of the parts, sorted
     * @param choices each entry alone, pairs, named subsets, and last all together
     * @param best which choices are best
     * @param front choices that no other one beats: none is as good in cost, waste, boards and set-ups and better in one of them; ascending
     *     indexes, of complete choices only
     * @param savings what each entry saves beside all the others, by id; empty where there is only one, and for the whole job, where it
     *     is the same as in its component
     */
    public record Section(
            List<String> parts, List<Choice> choices, Best best, List<Integer> front, List<Saving> savings) {
        public Section {
            parts = List.copyOf(parts);
            choices = List.copyOf(choices);
            front = List.copyOf(front);
            savings = List.copyOf(savings);
        }

        /** The choice that may buy everything. */
        public Choice allTogether() {
            return choices.get(choices.size() - 1);
        }
    }

    /**
     * Indexes of the best choices among those that make every part; each null where there is none. Of equals the first.
     *
     * @param cost least money; null too where anything has no price
     * @param waste least wood lost
     * @param boards fewest boards bought
     * @param setUps fewest set-ups
     */
    public record Best(
            @Nullable Integer cost,
            @Nullable Integer waste,
            @Nullable Integer boards,
            @Nullable Integer setUps) {}

    /**
     * What it is worth that an entry can be bought.
     *
     * @param stock id of the entry
     * @param without all other entries together
     * @param difference what all together saves against that
     */
    public record Saving(String stock, Choice without, Difference difference) {}

    /**
     * What a limit costs: the whole job is planned without it.
     *
     * @param limit which kind
     * @param name name of the group or id of the stock, or null where the kind says it all
     * @param without everything for sale, without the limit
     * @param difference what lifting the limit saves
     */
    public record LimitPrice(Limit limit, @Nullable String name, Choice without, Difference difference) {}

    /** Limits that can be lifted. */
    public enum Limit {
        CAR_LENGTH("car-length"),
        STAGES("stages"),
        FIRST_CUT("first-cut"),
        GROUP("group"),
        AVAILABLE("available"),
        CUT_FROM("cut-from");

        private final String word;

        Limit(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }
}
