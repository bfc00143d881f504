package org.stockcutting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.length.Length;
import org.stockcutting.plan.Enough;
import org.stockcutting.plan.Unplaced;

/** Is this enough yet? Sums by hand. */
class EnoughTest {

    private static Job job(int boards) {
        JobBuilder builder = JobBuilder.inches("enough")
                .material("oak")
                .goal(Goal.WASTE)
                .effort(new Effort(100_000L, null, 1, 1))
                .part("rail", 3, "40", "5", "1");
        for (int i = 1; i <= boards; i++) {
            builder.measured("m" + i, "60", "5", "1");
        }
        return builder.build();
    }

    @Test
    void everyBoardIsAsked() {
        Enough enough = new Optimizer().enough(job(4));
        assertThat(enough.steps()).extracting(Enough.Step::board).containsExactly("m1", "m2", "m3", "m4");
        assertThat(enough.steps().get(0).missing())
                .extracting(Unplaced::part, Unplaced::quantity)
                .containsExactly(org.assertj.core.api.Assertions.tuple("rail", 2));
        assertThat(enough.steps()).extracting(Enough.Step::isEnough).containsExactly(false, false, true, true);
        assertThat(enough.firstEnough().orElseThrow().board()).isEqualTo("m3");
        // 60 in less 40 in and the cut
        assertThat(enough.steps().get(2).longestLeft()).isEqualTo(Length.inches("19.875"));
        assertThat(enough.steps().get(2).unused()).isEqualTo(List.of());
        assertThat(enough.steps().get(3).unused()).hasSize(1);
    }

    @Test
    void notEnoughIsSaid() {
        assertThat(new Optimizer().enough(job(2)).firstEnough()).isEmpty();
    }
}
