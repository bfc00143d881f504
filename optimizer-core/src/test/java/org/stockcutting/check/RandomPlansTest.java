package org.stockcutting.check;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class RandomPlansTest {

    @Test
    void acceptsPlansThatAreSawnAtRandom() {
        for (long seed = 1; seed <= 120; seed++) {
            RandomPlans.Sample sample = RandomPlans.make(seed);
            assertThat(PlanChecker.check(sample.job(), sample.plan()))
                    .as("seed " + seed)
                    .isEmpty();
        }
    }
}
