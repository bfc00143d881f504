package org.stockcutting.wood;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.stockcutting.Optimizer;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.job.ShopRules;
import org.stockcutting.length.Length;
import org.stockcutting.material.WoodClass;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/** The quick look never contradicts the planner, whose plans the independent checker has seen. */
class QuickCutTest {

    @Test
    void theQuickLookAndThePlannerAgree() {
        Optimizer optimizer = new Optimizer();
        int[] seen = new int[QuickCut.Verdict.values().length];
        for (long seed = 1; seed <= 150; seed++) {
            Random random = new Random(seed);
            JobBuilder builder = JobBuilder.inches("random").material("oak").effort(new Effort(50_000L, null, 1, 1));
            List<Slice> slices = new ArrayList<>();
            for (int i = 0; i < 3; i++) {
                int length = 6 + random.nextInt(25);
                int count = 1 + random.nextInt(4);
                builder.part("p" + i, count, Integer.toString(length), "4", "1");
                slices.add(new Slice(
                        Length.inches(Integer.toString(length)).nanometres(), WoodClass.CLEAR, count, List.of(1)));
            }
            List<Line> lines = new ArrayList<>();
            for (int b = 0; b < 3; b++) {
                int at = random.nextInt(50);
                Zone bad = builder.bad(Integer.toString(at), at + (random.nextBoolean() ? ".0625" : ".75"));
                builder.measured("b" + b, Integer.toString(50 + random.nextInt(20)), "4", "1", bad);
            }
            Job job = builder.build();
            for (StockItem.OnHand board : job.onHand()) {
                lines.add(Line.of(0, board, board.zones(), ShopRules.defaults()));
            }
            QuickCut.Verdict verdict =
                    new QuickCut(slices, Length.inches("0.125").nanometres(), true).decide(lines, Noise.of(seed));
            seen[verdict.ordinal()]++;
            boolean planned = optimizer.plan(job).unplaced().isEmpty();
            if (verdict != QuickCut.Verdict.UNKNOWN) {
                assertThat(planned).as("seed %d says %s", seed, verdict).isEqualTo(verdict == QuickCut.Verdict.YES);
            }
        }
        assertThat(seen[QuickCut.Verdict.YES.ordinal()]).isGreaterThan(20);
        assertThat(seen[QuickCut.Verdict.NO.ordinal()]).isGreaterThan(20);
    }
}
