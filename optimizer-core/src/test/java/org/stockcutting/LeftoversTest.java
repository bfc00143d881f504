package org.stockcutting;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.generate.RandomJobs;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.JobReading;
import org.stockcutting.io.JobWriter;
import org.stockcutting.io.PlanWriter;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.stock.StockItem;

/** What one job leaves is stock on hand of the next, word for word as it stands in the plan document. */
class LeftoversTest {

    private static final int JOBS = 150;
    private static final Effort SMALL = new Effort(10_000L, null, 1, 1);

    private final JsonMapper json = new JsonMapper();
    private final Optimizer optimizer = new Optimizer();

    @Test
    void offcutsOfAPlanAreOnHandOfTheNextJobVerbatim() throws IOException {
        int handedOn = 0;
        int used = 0;
        for (long seed = 1; seed <= JOBS; seed++) {
            Job first = RandomJobs.job(seed).withEffort(SMALL);
            CuttingPlan plan = optimizer.plan(first);
            ObjectNode document = (ObjectNode) json.readTree(new PlanWriter(first).write(plan, new TreeMap<>()));
            ArrayNode offcuts = (ArrayNode) document.get("offcuts");
            ObjectNode next = (ObjectNode)
                    json.readTree(JobWriter.write(RandomJobs.job(seed + 1_000).withEffort(SMALL)));
            next.set("onHand", offcuts);
            JobReading reading = new JobReader().read(json.writeValueAsString(next));
            assertThat(reading.faults()).as("seed %d", seed).isEmpty();
            Job second = reading.orThrow();
            assertThat(second.onHand())
                    .as("seed %d", seed)
                    .isEqualTo(plan.derived().offcuts());
            handedOn += offcuts.size();
            CuttingPlan secondPlan = optimizer.plan(second);
            assertThat(PlanChecker.check(second, secondPlan))
                    .as("seed %d", seed)
                    .isEmpty();
            used += (int) secondPlan.layouts().stream()
                    .filter(layout ->
                            second.onHand().stream().map(StockItem.OnHand::id).anyMatch(layout.stock()::equals))
                    .count();
        }
        System.out.println(handedOn + " offcuts handed on, " + used + " layouts of the next jobs are cut from them");
        assertThat(handedOn).isGreaterThan(JOBS / 2);
        assertThat(used).isPositive();
    }
}
