package org.stockcutting.io;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.Optimizer;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.CuttingPlan;

/** The documents that rest on models of wood: each has a field table, and what is written is what the table says. */
class EstimateDocumentsTest {

    private static final Optimizer OPTIMIZER = new Optimizer();

    private static final String JOB = """
            {"material": "oak", "parts": [
              {"id": "pole", "quantity": 2, "length": %s, "width": 4, "thickness": 1},
              {"id": "rung", "quantity": 9, "length": 12, "width": 4, "thickness": 1, "material": "pine"}],
             "stock": [
              {"id": "good", "grade": "fas", "length": 96, "width": 4, "thickness": 1, "price": {"amount": "9.00"}},
              {"id": "poor", "grade": "2a-common", "length": 96, "width": 4, "thickness": 1, "price": {"amount": "6.00"}},
              {"id": "clear", "grade": "clear", "length": 96, "width": 4, "thickness": 1, "material": "pine", "price": {"amount": "8.00"}},
              {"id": "no2", "grade": "no2", "length": 96, "width": 4, "thickness": 1, "material": "pine", "price": {"amount": "3.00"}}],
             "wood": {"trials": 40}, "effort": {"work": 30000}}
            """;

    private static Job job(int pole) {
        return new JobReader().read(JOB.formatted(pole)).job();
    }

    private static void assertSame(ObjectNode doc, FieldTable table) {
        assertThat(Documents.patterns(doc).keySet())
                .containsExactlyInAnyOrderElementsOf(
                        table.all().stream().map(Field::pointer).toList());
    }

    private static void assertEnough(ObjectNode doc, FieldTable table, List<String> missing) {
        List<String> rows = table.all().stream().map(Field::pointer).toList();
        List<String> needed = table.all().stream()
                .filter(Field::required)
                .map(Field::pointer)
                .filter(row -> missing.stream().noneMatch(row::startsWith))
                .toList();
        assertThat(rows).containsAll(Documents.patterns(doc).keySet());
        assertThat(Documents.patterns(doc).keySet()).containsAll(needed).doesNotContainAnyElementsOf(missing);
    }

    @Test
    void chances() {
        Job job = job(40);
        CuttingPlan plan = OPTIMIZER.plan(job);
        ObjectNode doc = Documents.parse(RiskWriter.write(job, plan, OPTIMIZER.sure(job, plan)));
        assertSame(doc, RiskFields.RISK);
        // On average no purchase costs more than the one that is enough for most of them.
        assertThat(doc.at("/averageExtra/amount").decimalValue())
                .isLessThanOrEqualTo(doc.at("/extraCost/amount").decimalValue());
    }

    @Test
    void grades() {
        Job job = job(40);
        ObjectNode doc =
                Documents.parse(GradesWriter.write(job, OPTIMIZER.grades(job, job.effort(), new CancelToken())));
        assertSame(doc, GradesFields.GRADES);
        assertThat(doc.get("families")).hasSize(2);
        assertThat(doc.get("jobHash").asText())
                .isEqualTo(OPTIMIZER.plan(job).header().jobHash());
    }

    /** Poles that no board gives: that family has no mix, so the whole has none. */
    @Test
    void whatIsNotReachedIsAbsent() {
        Job job = job(100);
        ObjectNode doc =
                Documents.parse(GradesWriter.write(job, OPTIMIZER.grades(job, job.effort(), new CancelToken())));
        assertEnough(doc, GradesFields.GRADES, List.of("/together/"));
        assertThat(doc.get("families")).as("only the rungs have a choice").hasSize(1);
        assertThat(doc.has("together")).isTrue();
    }
}
