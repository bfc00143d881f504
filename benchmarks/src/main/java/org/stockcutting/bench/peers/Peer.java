package org.stockcutting.bench.peers;

import java.util.List;
import java.util.Optional;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Instance;

/** A method that places items on stock. One object serves many tasks, one after the other. */
interface Peer {

    String name();

    /** Why this method cannot be asked to solve such an instance; empty if it can. */
    Optional<String> declines(Instance instance);

    /** Builds what does not depend on the instance, before the clock starts. */
    default void prepare(long nanos, long seed) {}

    /**
     * Solves as well as it can in the time.
     *
     * @param instance what to place on what
     * @param nanos time allowed
     * @param seed seed of every random choice
     */
    Found solve(Instance instance, long nanos, long seed);

    /**
     * What a method found.
     *
     * @param uses patterns and copies; may leave items out
     * @param nanosToBest when the best was found, counted from the start
     * @param proved true if the method itself proved that nothing is cheaper, in a model that leaves no plan out
     */
    record Found(List<Answer.PatternUse> uses, long nanosToBest, boolean proved) {
        static final Found NOTHING = new Found(List.of(), 0, false);

        public Found {
            uses = List.copyOf(uses);
        }
    }
}
