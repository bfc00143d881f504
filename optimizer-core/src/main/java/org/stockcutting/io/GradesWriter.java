package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.stock.Money;
import org.stockcutting.wood.Chance;
import org.stockcutting.wood.GradeMixes;

/** Writes what a job costs from each grade and from mixes of them: an estimate, and it says so. */
public final class GradesWriter {

    private GradesWriter() {}

    /** The document. */
    public static String write(Job job, GradeMixes grades) {
        ObjectNode doc = JsonOutput.object()
                .put("format", JobReader.FORMAT)
                .put("job", job.name())
                .put("estimate", true)
                .put("seed", grades.seed())
                .put("confidence", grades.wanted().toPlainString())
                .put("currency", job.writing().currency().getCurrencyCode());
        ArrayNode mixes = doc.putArray("mixes");
        for (GradeMixes.Mix mix : grades.mixes()) {
            ObjectNode node = mixes.addObject();
            ObjectNode parts = node.putObject("grades");
            mix.grades().forEach(parts::put);
            put(node, "planned", mix.planned());
            put(node, "cost", mix.cost());
            node.put("boards", mix.boards());
            Chance chance = mix.chance();
            if (chance != null) {
                node.put("chance", chance.share().toPlainString());
            }
        }
        if (grades.best() >= 0) {
            doc.put("best", grades.best());
        }
        return JsonOutput.pretty(doc);
    }

    private static void put(ObjectNode node, String name, @Nullable Money money) {
        if (money != null) {
            node.put(name, money.amount().toPlainString());
        }
    }
}
