package org.stockcutting.solve.instance;

/** Finds patterns for one independent component. Stateless and deterministic: same instance, meter limit and seed, same answer. */
public interface Engine {

    /**
     * Solves as far as the meter allows and always returns a valid answer, if need be one that places nothing.
     *
     * @param instance what to place on what
     * @param meter counts work and says when to stop
     * @param seed seed of every random choice
     * @param listener hears of every better answer
     */
    Answer solve(Instance instance, WorkMeter meter, long seed, EngineListener listener);

    /** Hears of improvements, from the solving thread. */
    @FunctionalInterface
    interface EngineListener {
        EngineListener NONE = (answer, cost) -> {};

        /**
         * Takes a better answer.
         *
         * @param answer the best answer so far
         * @param cost its cost
         */
        void improved(Answer answer, long cost);
    }
}
