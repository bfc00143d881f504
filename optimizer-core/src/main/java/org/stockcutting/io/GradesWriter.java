package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobOrder;
import org.stockcutting.stock.Money;
import org.stockcutting.wood.Chance;
import org.stockcutting.wood.GradeMixes;

/** Writes what a job costs from each grade and from mixes of them: an estimate, and it says so. {@link GradesFields} has the fields. */
public final class GradesWriter {

    private GradesWriter() {}

    /** The document. */
    public static String write(Job job, GradeMixes grades) {
        ObjectNode doc = JsonOutput.object()
                .put("format", JobReader.FORMAT)
                .put("job", job.name())
                .put("jobHash", JobHash.of(JobOrder.of(job).sorted()))
                .put("estimate", true)
                .put("seed", grades.seed())
                .put("confidence", grades.wanted().toPlainString())
                .put("currency", job.writing().currency().getCurrencyCode());
        ArrayNode families = doc.putArray("families");
        for (GradeMixes.Family family : grades.families()) {
            ObjectNode node = families.addObject();
            family.parts().forEach(node.putArray("parts")::add);
            ArrayNode mixes = node.putArray("mixes");
            family.mixes().forEach(mix -> put(mixes.addObject(), mix));
            if (family.best() >= 0) {
                node.put("best", family.best());
            }
        }
        GradeMixes.Mix together = grades.together();
        if (together != null) {
            put(doc.putObject("together"), together);
        }
        return JsonOutput.pretty(doc);
    }

    private static void put(ObjectNode node, GradeMixes.Mix mix) {
        ArrayNode parts = node.putArray("grades");
        mix.grades()
                .forEach((part, grade) -> parts.addObject().put("part", part).put("grade", grade));
        put(node, "planned", mix.planned());
        put(node, "expected", mix.expected());
        put(node, "cost", mix.cost());
        node.put("boards", mix.boards());
        Chance chance = mix.chance();
        if (chance != null) {
            node.set("chance", RiskWriter.chance(chance));
        }
    }

    private static void put(ObjectNode node, String name, @Nullable Money money) {
        if (money != null) {
            node.put(name, money.amount().toPlainString());
        }
    }
}
