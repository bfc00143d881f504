package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobOrder;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.plan.Enough;

/** Writes whether the boards on hand are enough yet, told after each of them. */
public final class EnoughWriter {

    private EnoughWriter() {}

    /**
     * The document.
     *
     * @param job the job
     * @param enough what was told of its boards
     */
    public static String write(Job job, Enough enough) {
        LengthWriter lengths =
                new LengthWriter(job.writing().unit(), job.writing().decimal());
        ObjectNode doc = JsonOutput.object()
                .put("format", JobReader.FORMAT)
                .put("job", job.name())
                .put("jobHash", JobHash.of(JobOrder.of(job).sorted()))
                .put("enough", enough.atLast().isEnough());
        enough.firstEnough().ifPresent(step -> doc.put("firstEnough", step.board()));
        ArrayNode steps = doc.putArray("steps");
        for (Enough.Step step : enough.steps()) {
            ObjectNode node = steps.addObject().put("board", step.board()).put("enough", step.isEnough());
            PlanWriter.unplaced(node.putArray("unplaced"), step.missing());
            ArrayNode unused = node.putArray("unused");
            step.unused().forEach(unused::add);
            JobWriter.put(node, "longestLeft", step.longestLeft(), lengths);
        }
        return JsonOutput.pretty(doc);
    }
}
