package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.SortedMap;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Replan;

/**
 * Writes what is left after a mishap as one document: what is finished, what stays and what changes, the job that is left and its plan.
 * The two are documents of their own: both can be posted again, and the next mishap starts from them.
 */
public final class ReplanWriter {

    private ReplanWriter() {}

    /**
     * The document.
     *
     * @param first the job that the first plan was made for
     * @param defaults defaults that were filled in when that job was read, by their pointers
     */
    public static String write(Job first, Replan replan, SortedMap<String, String> defaults) {
        ObjectNode doc = JsonOutput.object()
                .put("format", JobReader.FORMAT)
                .put("name", first.name())
                .put("after", JobHash.of(org.stockcutting.job.JobOrder.of(first).sorted()));
        texts(doc.putArray("notes"), replan.notes());
        ArrayNode finished = doc.putArray("finished");
        for (Replan.Finished line : replan.finished()) {
            ObjectNode node = finished.addObject().put("part", line.part());
            numbers(node.putArray("numbers"), line.numbers());
        }
        texts(doc.putArray("kept"), replan.kept());
        texts(doc.putArray("changed"), replan.changed());
        ArrayNode lines = doc.putArray("lines");
        for (Replan.Line line : replan.lines()) {
            ObjectNode node = lines.addObject().put("line", line.line()).put("part", line.part());
            numbers(node.putArray("numbers"), line.numbers());
            if (!line.members().isEmpty()) {
                numbers(node.putArray("members"), line.members());
            }
        }
        Job job = replan.job();
        CuttingPlan plan = replan.plan();
        if (job != null && plan != null) {
            doc.set("job", JobWriter.tree(job, true));
            doc.set("plan", new PlanWriter(job).tree(plan, defaults));
        }
        return JsonOutput.pretty(doc);
    }

    private static void texts(ArrayNode list, List<String> texts) {
        texts.forEach(list::add);
    }

    private static void numbers(ArrayNode list, List<Integer> numbers) {
        numbers.forEach(list::add);
    }
}
