package org.stockcutting.io;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.BooleanNode;
import com.fasterxml.jackson.databind.node.IntNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.stockcutting.job.Fault;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.length.Length;
import org.stockcutting.length.Volume;
import org.stockcutting.plan.Choice;
import org.stockcutting.plan.Comparison;
import org.stockcutting.plan.Difference;
import org.stockcutting.plan.Estimate;
import org.stockcutting.plan.Objective;
import org.stockcutting.plan.Status;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.plan.YieldFigures;
import org.stockcutting.stock.Money;

/** Comparison documents are read back as they were, and hold the fields of the table and no others. */
class ComparisonDocumentTest {

    private static Job job(Goal goal) {
        return JobBuilder.inches("Shelf")
                .part("board", 3, "30", "2x6")
                .board("a", "2x6", "8'", "9.00")
                .board("b", "2x6", "10'", "11.00")
                .goal(goal)
                .build();
    }

    private static Choice choice(Job job, boolean complete, String... stock) {
        Volume all = Volume.of(Length.inches("96"), Length.inches("5.5"), Length.inches("1.5"));
        Volume parts = Volume.of(Length.inches("90"), Length.inches("5.5"), Length.inches("1.5"));
        Unplaced missing = new Unplaced(
                "board", 1, Unplaced.Reason.LONGER_THAN_ANY_STOCK, "30", "29-1/2", "add a length of 4' or more");
        return new Choice(
                List.of(stock),
                complete ? Status.FEASIBLE : Status.INFEASIBLE,
                Money.ofMinor(1_100, job.writing().currency()),
                new Objective(
                        job.goal(), BigInteger.valueOf(1_100), BigInteger.valueOf(900), BigInteger.valueOf(1_000)),
                1,
                new YieldFigures(
                        all,
                        parts,
                        Volume.ZERO,
                        Volume.ZERO,
                        Volume.ZERO,
                        Volume.ZERO,
                        Volume.ZERO,
                        all.minus(parts),
                        new BigDecimal("0.9375")),
                2,
                12_345L,
                Length.inches("120"),
                complete ? List.of() : List.of(missing));
    }

    private static Comparison comparison(Job job) {
        Choice one = choice(job, false, "a");
        Choice all = choice(job, true, "a", "b");
        Difference saved = new Difference(BigInteger.valueOf(200), BigInteger.ONE, BigInteger.valueOf(300), false);
        Difference needed = new Difference(null, null, null, true);
        Comparison.Section section = new Comparison.Section(
                List.of("board"),
                List.of(one, all),
                new Comparison.Best(1, 1, 1, 1),
                List.of(1),
                List.of(new Comparison.Saving("a", all, saved), new Comparison.Saving("b", one, needed)));
        Comparison.Section whole =
                new Comparison.Section(section.parts(), section.choices(), section.best(), section.front(), List.of());
        return new Comparison(
                "Shelf",
                "sha-256:00",
                job.goal(),
                false,
                7,
                1_234,
                1,
                "1.0.0",
                List.of(section),
                whole,
                List.of(
                        new Comparison.LimitPrice(Comparison.Limit.CAR_LENGTH, null, all, saved),
                        new Comparison.LimitPrice(Comparison.Limit.AVAILABLE, "b", all, needed)),
                List.of(new Estimate(
                        "rough",
                        List.of(new Estimate.Served("seat", 2)),
                        Volume.of(Length.inches("10"), Length.inches("5"), Length.inches("2")),
                        new BigDecimal("0.5"),
                        Volume.of(Length.inches("20"), Length.inches("5"), Length.inches("2")),
                        new BigDecimal("1.39"),
                        1,
                        Money.ofMinor(700, job.writing().currency()),
                        new Estimate.Sure(
                                new BigDecimal("0.9"),
                                new BigDecimal("1.50"),
                                2,
                                Money.ofMinor(800, job.writing().currency())),
                        List.of(new Estimate.AtLeast(1, Length.inches("4"), Length.inches("60.25"))),
                        200,
                        "grade fas")));
    }

    @ParameterizedTest
    @EnumSource(Goal.class)
    void isReadBackAsItWas(Goal goal) {
        Job job = job(goal);
        String text = new ComparisonWriter(job).write(comparison(job));
        ComparisonReading reading = new ComparisonReader(job).read(text);
        assertThat(reading.faults()).as(text).isEmpty();
        assertThat(reading.orThrow()).isEqualTo(comparison(job));
        assertThat(new ComparisonWriter(job).write(reading.orThrow())).isEqualTo(text);
        assertThat(Documents.patterns(Documents.parse(text)).keySet())
                .isSubsetOf(ComparisonFields.COMPARISON.all().stream()
                        .map(Field::pointer)
                        .toList());
    }

    @Test
    void everyFieldIsReadAndItsTypeIsChecked() {
        Job job = job(Goal.COST);
        ObjectNode whole = Documents.parse(new ComparisonWriter(job).write(comparison(job)));
        for (Map.Entry<String, String> place : Documents.patterns(whole).entrySet()) {
            Field field = ComparisonFields.COMPARISON.find(place.getKey());
            JsonNode wrong = switch (field.type()) {
                case TEXT, WORD -> IntNode.valueOf(7);
                case INTEGER, BOOLEAN -> TextNode.valueOf("two");
                default -> BooleanNode.TRUE;
            };
            ObjectNode doc = whole.deepCopy();
            Documents.set(doc, place.getValue(), wrong);
            assertThat(new ComparisonReader(job).read(doc.toString()).faults())
                    .as(place.getValue())
                    .extracting(Fault::pointer)
                    .contains(place.getValue());
        }
    }

    @Test
    void theTableHasARowAChoiceAndNoFormula() {
        Job job = job(Goal.COST);
        List<String> rows = CsvTables.comparison(job, comparison(job)).lines().toList();
        assertThat(rows).hasSize(1 + 2 + 2 + 1);
        assertThat(rows.get(1))
                .isEqualTo("1,a,infeasible,11.00,USD,11.00,9.00,1,2,792,742.5,49.5,0.9375,12.345,120,,no");
        assertThat(rows.get(4)).startsWith("0,a; b,feasible,").endsWith(",cost waste boards setUps,yes");
        assertThat(rows.get(5)).isEqualTo(",rough,estimate,7.00,USD,,,1,,200,,,,,,,no");
    }
}
