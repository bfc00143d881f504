package org.stockcutting.bench.instances;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;

/**
 * Small examples of books and papers in one JSON document: under {@code 1d} entries with {@code stock} (length, copies or null, cost),
 * {@code parts} (length, demand), {@code optimum} and, where it was worked out, the optimum under a {@code kerf}. Each kerf is a job of
 * its own. What asks for the best pattern of one sheet is left out.
 */
final class WorkedExamples {

    private static final ObjectMapper JSON = new ObjectMapper();

    private WorkedExamples() {}

    static List<Instance> read(String file, String group, String text) {
        List<Instance> instances = new ArrayList<>();
        for (JsonNode entry : tree(text).path("1d")) {
            String name = file + "#" + entry.path("id").asText();
            if (entry.has("optimum")) {
                instances.add(example(name, group, entry, 0, entry.path("optimum")));
            }
            for (Map.Entry<String, JsonNode> kerf : entry.path("kerf").properties()) {
                long width = Long.parseLong(kerf.getKey());
                instances.add(example(name + " kerf " + width, group, entry, width, kerf.getValue()));
            }
        }
        if (instances.isEmpty()) {
            throw new InstanceFormatException("no examples with an optimum under \"1d\"");
        }
        return instances;
    }

    private static Instance example(String name, String group, JsonNode entry, long kerf, JsonNode optimum) {
        return new Instance(name, group, job(name, entry, kerf), Known.optimum(optimum.asLong()));
    }

    private static Job job(String name, JsonNode entry, long kerf) {
        long largest = 0;
        for (JsonNode stock : entry.path("stock")) {
            largest = Math.max(largest, stock.path(0).asLong());
        }
        PlainJob job = new PlainJob(name, Goal.COST, largest, kerf, false);
        for (JsonNode stock : entry.path("stock")) {
            Integer copies = stock.path(1).isNull()
                    ? null
                    : Integer.valueOf(stock.path(1).asInt());
            job.board(stock.path(0).asLong(), copies, stock.path(2).asLong());
        }
        for (JsonNode part : entry.path("parts")) {
            job.piece(part.path(0).asLong(), part.path(1).asInt());
        }
        return job.build();
    }

    private static JsonNode tree(String text) {
        try {
            return JSON.readTree(text);
        } catch (JsonProcessingException e) {
            throw new InstanceFormatException("not JSON: " + e.getOriginalMessage());
        }
    }
}
