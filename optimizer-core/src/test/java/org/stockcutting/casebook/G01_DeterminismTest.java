package org.stockcutting.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.stockcutting.Optimizer;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.JobReading;
import org.stockcutting.io.PlanWriter;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.ProgressListener;

/** G: the document is the same to the byte: twice, on one thread and two, and with the lists of the job in another order. */
class G01_DeterminismTest {

    private static String plan(Optimizer optimizer, String json, int threads) {
        JobReading reading = new JobReader().read(json);
        Job job = reading.orThrow();
        Effort effort = new Effort(
                job.effort().work(), job.effort().seconds(), job.effort().seed(), threads);
        return new PlanWriter(job)
                .write(optimizer.plan(job, effort, ProgressListener.NONE, new CancelToken()), reading.defaults());
    }

    @ParameterizedTest
    @ValueSource(strings = {"typical", "tool-cabinet", "knotty-boards", "wardrobe-metric", "rack-shelves", "too-long"})
    void theDocumentDependsOnNothingButTheJob(String name) throws IOException {
        String json = Files.readString(Path.of("..", "samples", "jobs", name + ".json"));
        String document = plan(new Optimizer(), json, 1);
        assertThat(plan(new Optimizer(), json, 1)).as("again").isEqualTo(document);
        assertThat(plan(new Optimizer(), json, 2)).as("two threads").isEqualTo(document);
        for (long seed = 1; seed <= 2; seed++) {
            assertThat(plan(new Optimizer(), shuffled(json, seed), 2))
                    .as("shuffled with seed %d", seed)
                    .isEqualTo(document);
        }
    }

    private static String shuffled(String json, long seed) throws IOException {
        Random random = new Random(seed);
        ObjectMapper mapper = new ObjectMapper();
        ObjectNode doc = (ObjectNode) mapper.readTree(json);
        for (String list : List.of("parts", "stock", "onHand")) {
            if (doc.has(list)) {
                shuffle((ArrayNode) doc.get(list), random);
                for (JsonNode entry : doc.get(list)) {
                    if (entry.has("zones")) {
                        shuffle((ArrayNode) entry.get("zones"), random);
                    }
                }
            }
        }
        return doc.toString();
    }

    private static void shuffle(ArrayNode list, Random random) {
        List<JsonNode> entries = new ArrayList<>();
        list.forEach(entries::add);
        Collections.shuffle(entries, random);
        list.removeAll();
        list.addAll(entries);
    }
}
