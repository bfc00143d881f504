package org.stockcutting;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.stockcutting.generate.RandomJobs;
import org.stockcutting.io.ComparisonWriter;
import org.stockcutting.io.JobReader;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.plan.Choice;
import org.stockcutting.plan.Comparison;
import org.stockcutting.plan.Status;
import org.stockcutting.plan.Unplaced;

/** Which stock to buy: what must hold of every comparison, and worked figures. */
class ComparisonTest {

    private static final int JOBS = 100;
    private static final Optimizer OPTIMIZER = new Optimizer();

    static Stream<Path> samples() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("..", "samples", "jobs"))) {
            return files.filter(file -> file.toString().endsWith(".json")).sorted().toList().stream();
        }
    }

    private static Job sample(Path file) throws IOException {
        return new JobReader().read(Files.readAllBytes(file)).orThrow();
    }

    private static Map<List<String>, Choice> byStock(Comparison.Section section) {
        Map<List<String>, Choice> choices = new TreeMap<>((a, b) -> a.toString().compareTo(b.toString()));
        section.choices().forEach(choice -> choices.put(choice.stock(), choice));
        return choices;
    }

    @ParameterizedTest
    @MethodSource("samples")
    void noSubsetBeatsAllTogetherOnTheSamples(Path file) throws IOException {
        Job job = sample(file);
        Job quick = job.withEffort(new Effort(30_000L, 60, 1, 1));
        Compared.of(OPTIMIZER, quick).holds(file.getFileName().toString());
    }

    @Test
    void noSubsetBeatsAllTogetherOnGeneratedJobs() {
        int bounded = 0;
        int choices = 0;
        for (long seed = 1; seed <= JOBS; seed++) {
            Job job = RandomJobs.job(seed).withEffort(new Effort(4_000L, 60, 1, 1));
            Compared compared = Compared.of(OPTIMIZER, job);
            compared.holds("RandomJobs seed " + seed);
            choices += compared.told().size();
            bounded += (int) compared.told().stream()
                    .filter(one -> one.choice().status() == Status.OPTIMAL)
                    .count();
        }
        System.out.println(JOBS + " jobs: " + choices + " choices, " + bounded + " of them proved to be the best");
        assertThat(bounded).as("choices proved to be the best").isGreaterThan(JOBS);
    }

    /** The twenty pieces and the nine of the potting table, each length alone: checked by exhaustive search outside this project. */
    @Test
    void thePottingTableCostsWhatExhaustiveSearchFound() throws IOException {
        Comparison comparison = OPTIMIZER.compare(sample(Path.of("..", "samples", "jobs", "potting-table.json")));
        Map<List<String>, Choice> legs = byStock(comparison.components().get(0));
        assertThat(cost(legs, "2x4-8")).isEqualTo("27.86 USD");
        assertThat(cost(legs, "2x4-10")).isEqualTo("32.88 USD");
        assertThat(cost(legs, "2x4-12")).isEqualTo("34.90 USD");
        assertThat(cost(legs, "2x4-10", "2x4-12", "2x4-8", "stud")).isEqualTo("24.36 USD");
        Comparison.Saving stud = comparison.components().get(0).savings().get(3);
        assertThat(stud.stock()).isEqualTo("stud");
        assertThat(stud.without().cost()).hasToString("25.38 USD");
        assertThat(stud.difference().saves()).isEqualTo("102");
        assertThat(comparison.components().get(1).allTogether().cost()).hasToString("59.92 USD");
        assertThat(comparison.whole().allTogether().cost()).hasToString("84.28 USD");
        assertThat(comparison.whole().choices().get(0).status()).isEqualTo(Status.INFEASIBLE);
        assertThat(comparison.whole().front()).containsExactly(8);
    }

    /** Eight lengths, sixty sizes: all searches together take less than four times the work of one plan. */
    @Test
    void eightLengthsTakeLessThanFourPlans() {
        JobBuilder builder = JobBuilder.inches("Sixty sizes").effort(new Effort(200_000L, 120, 1, 1));
        Random random = new Random(60);
        for (int i = 0; i < 60; i++) {
            builder.part("p" + i, 1 + random.nextInt(9), String.valueOf(9 + i + random.nextInt(3)), "2x4");
        }
        for (int feet = 6; feet <= 20; feet += 2) {
            builder.board("2x4-" + feet, "2x4", feet + "'", "%d.%02d".formatted(feet / 2, (feet * 37) % 100));
        }
        Job job = builder.build();
        long one = OPTIMIZER.plan(job).header().work();
        Compared compared = Compared.of(OPTIMIZER, job);
        compared.holds("sixty sizes");
        assertThat(compared.comparison().whole().choices()).hasSize(9);
        assertThat(compared.comparison().work()).isLessThan(4 * one);
        System.out.println(
                "eight lengths, sixty sizes: " + compared.comparison().work() + " steps, one plan " + one);
    }

    private static String cost(Map<List<String>, Choice> choices, String... stock) {
        return String.valueOf(choices.get(List.of(stock)).cost());
    }

    /** Twelve feet of 2x6 at 470.4 kg a cubic metre (Wood Handbook, from memory): 1-1/2 x 5-1/2 x 144 in are 0.0194678 cubic metres. */
    @Test
    void aChoiceSaysWhatHasToBeCarriedHome() {
        Comparison comparison = OPTIMIZER.compare(shelf().build());
        Choice all = comparison.whole().allTogether();
        assertThat(all.boards()).isEqualTo(1);
        assertThat(all.weightGrams()).isEqualTo(9158);
        assertThat(all.longest()).isEqualTo(shelf().length("12'"));
        assertThat(shelfOf("bog oak").whole().allTogether().weightGrams()).isNull();
    }

    private static JobBuilder shelf() {
        return JobBuilder.inches("Long shelf")
                .material("spruce")
                .part("shelf", 1, "130", "2x6")
                .board("2x6-12", "2x6", "12'", "12.00");
    }

    private static Comparison shelfOf(String material) {
        return OPTIMIZER.compare(JobBuilder.inches("Long shelf")
                .material(material)
                .part("shelf", 1, "130", "2x6")
                .board("2x6-12", "2x6", "12'", "12.00")
                .build());
    }

    /** 130 in fit no 8 ft board: alone it makes nothing, costs nothing, and is still no bargain. */
    @Test
    void whatLeavesPartsOutIsNeverCheaper() {
        Job job = shelf().part("slat", 1, "40", "2x6")
                .board("2x6-8", "2x6", "8'", "1.00")
                .build();
        Comparison.Section section = OPTIMIZER.compare(job).components().get(0);
        Choice eight = section.choices().get(1);
        assertThat(eight.stock()).containsExactly("2x6-8");
        assertThat(eight.cost()).hasToString("1.00 USD");
        assertThat(eight.status()).isEqualTo(Status.INFEASIBLE);
        assertThat(section.best().cost()).isNotEqualTo(1);
        assertThat(section.front()).doesNotContain(1);
        Comparison.Saving twelve = section.savings().get(0);
        assertThat(twelve.difference().needed()).isTrue();
        assertThat(twelve.difference().saves()).isNull();
    }

    /**
     * Poles of a trade size, a panel of rough ash: the panel is estimated beside every choice and none is called better for leaving it out. A beam that
     * only the longer length gives and rough boards could give too: without that length it is left out, whatever it costs.
     */
    @Test
    void boardsOfRandomSizeStandBesideEveryChoice() {
        String text = """
                {"name": "Racks", "material": "ash", "parts": [
                  {"id": "pole", "quantity": 6, "length": 40, "width": 4, "thickness": 1},
                  {"id": "beam", "quantity": 1, "length": 110, "width": 4, "thickness": 1},
                  {"id": "block", "quantity": 8, "length": 20, "width": 5, "thickness": 2}],
                 "stock": [
                  {"id": "b8", "length": 96, "width": 4, "thickness": 1, "price": {"amount": "8.00"}},
                  {"id": "b10", "length": 120, "width": 4, "thickness": 1, "price": {"amount": "10.00"}},
                  {"id": "rough 4/4", "form": "random", "nominal": "4/4", "leastLength": 72, "length": 144, "leastWidth": 5, "width": 10,
                   "price": {"amount": "5.00", "per": "board-foot"}},
                  {"id": "rough 8/4", "form": "random", "nominal": "8/4", "leastLength": 72, "length": 144, "leastWidth": 5, "width": 10,
                   "price": {"amount": "7.00", "per": "board-foot"}}],
                 "effort": {"work": 100000}}
                """;
        Job job = new JobReader().read(text).orThrow();
        Compared compared = Compared.of(OPTIMIZER, job);
        compared.holds("racks");
        Comparison comparison = compared.comparison();
        assertThat(comparison.estimates())
                .isEqualTo(OPTIMIZER.plan(job).derived().estimates());
        assertThat(comparison.estimates()).hasSize(1);
        assertThat(comparison.estimates().get(0).stock()).isEqualTo("rough 8/4");
        assertThat(comparison.components())
                .as("blocks are no choice of lengths")
                .hasSize(1);
        Comparison.Section whole = comparison.whole();
        Map<List<String>, Choice> choices = byStock(whole);
        Choice all = whole.allTogether();
        assertThat(all.isComplete()).isTrue();
        assertThat(all.status()).as("with an estimate beside it").isEqualTo(Status.FEASIBLE);
        assertThat(all.cost()).as("blocks are in no cost").hasToString("34.00 USD");
        assertThat(choices.get(List.of("b10")).isComplete()).isTrue();
        Choice eight = choices.get(List.of("b8"));
        assertThat(eight.unplaced()).extracting(Unplaced::part).containsExactly("beam");
        assertThat(eight.status()).isEqualTo(Status.INFEASIBLE);
        assertThat(whole.front()).doesNotContain(whole.choices().indexOf(eight));
        Comparison.Saving ten = comparison.components().get(0).savings().get(0);
        assertThat(ten.stock()).isEqualTo("b10");
        assertThat(ten.difference().needed()).isTrue();
    }

    @Test
    void aComparisonIsTheSameOnAnyNumberOfThreads() throws IOException {
        Job job = sample(Path.of("..", "samples", "jobs", "potting-table.json"));
        String one = new ComparisonWriter(job).write(OPTIMIZER.compare(job.withEffort(new Effort(20_000L, 60, 7, 1))));
        String two = new ComparisonWriter(job).write(OPTIMIZER.compare(job.withEffort(new Effort(20_000L, 60, 7, 2))));
        assertThat(two.replaceAll("\"jobHash\": \"[^\"]*\"", ""))
                .isEqualTo(one.replaceAll("\"jobHash\": \"[^\"]*\"", ""));
    }
}
