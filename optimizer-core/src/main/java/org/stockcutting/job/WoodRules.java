package org.stockcutting.job;

import java.math.BigDecimal;
import java.util.List;

/**
 * How sure the maker wants to be that real boards suffice, and what is known of them. It never changes a plan or its cost: it is only
 * asked when the question is how many boards more to take.
 *
 * @param confidence wanted chance to finish with what is bought, above 0 and below 1
 * @param trials simulated purchases, at least 1
 * @param models what is known, at most one for each material and grade, by material
 */
public record WoodRules(BigDecimal confidence, int trials, List<WoodModel> models) {

    /** Usual wanted chance: nine times in ten. */
    public static final BigDecimal USUAL_CONFIDENCE = new BigDecimal("0.9");
    /** Usual number of simulated purchases: the chance is then known to about 2 in 100. */
    public static final int USUAL_TRIALS = 1_000;

    public WoodRules {
        models = List.copyOf(models);
    }

    public static WoodRules defaults() {
        return new WoodRules(USUAL_CONFIDENCE, USUAL_TRIALS, List.of());
    }
}
