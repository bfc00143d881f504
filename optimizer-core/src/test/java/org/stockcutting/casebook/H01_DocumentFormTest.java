package org.stockcutting.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.JobReading;
import org.stockcutting.io.PlanReader;

/** H: the form of plan documents: every key at its place, always in one order, numbers in one form. */
class H01_DocumentFormTest {

    private static final Path PROJECT = Path.of("..");

    private static final List<String> TOP = List.of(
            "format",
            "job",
            "jobHash",
            "status",
            "stopReason",
            "reproducible",
            "seed",
            "work",
            "workVersion",
            "engine",
            "cost",
            "objective",
            "layouts",
            "unplaced",
            "certificate",
            "check",
            "buyingList",
            "offcuts",
            "cutSequence",
            "setUps",
            "yield",
            "warnings",
            "longestOffcut",
            "wholeSets",
            "nearMisses",
            "tradeOff",
            "estimates",
            "defaults");

    private static final List<String> WHERE_DUE =
            List.of("cost", "longestOffcut", "wholeSets", "nearMisses", "tradeOff", "estimates");

    static List<Path> jobs() {
        return files("samples/jobs", ".json", 1);
    }

    private static List<Path> files(String folder, String ending, int depth) {
        try (Stream<Path> files = Files.walk(PROJECT.resolve(folder), depth)) {
            return files.filter(file ->
                            file.toString().endsWith(ending) && !file.toString().contains("target"))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<String> keys(JsonNode node) {
        List<String> keys = new ArrayList<>();
        node.fieldNames().forEachRemaining(keys::add);
        return keys;
    }

    @ParameterizedTest
    @MethodSource("jobs")
    void everyKeyInItsPlace(Path file) throws IOException {
        JobReading reading = new JobReader().read(Files.readAllBytes(file));
        String text = Door.document(reading);
        JsonNode plan = Door.tree(text);
        assertThat(text).endsWith("}\n").doesNotContain("\r").doesNotContain("\t");
        List<String> top = new ArrayList<>(TOP);
        top.removeIf(name -> WHERE_DUE.contains(name) && !plan.has(name));
        assertThat(keys(plan)).containsExactlyElementsOf(top);
        money(plan);
        plan.get("layouts").forEach(H01_DocumentFormTest::layout);
        plan.get("unplaced").forEach(node -> inOrder(node, "part quantity reason needs? limit? remedy"));
        inOrder(plan.get("certificate"), "components");
        plan.at("/certificate/components").forEach(node -> {
            inOrder(node, "stock duals rows? bound");
            dual(node.get("duals"));
            node.path("rows").forEach(H01_DocumentFormTest::dual);
        });
        inOrder(plan.get("check"), "valid violations");
        plan.get("buyingList")
                .forEach(node -> inOrder(node, "stock quantity price? total? boardFeet? used? pack? breakFrom? more?"));
        plan.path("tradeOff").forEach(node -> inOrder(node, "cost setUps chosen"));
        plan.path("estimates").forEach(H01_DocumentFormTest::estimate);
        plan.get("cutSequence").forEach(H01_DocumentFormTest::step);
        inOrder(plan.get("yield"), "used parts allowance kerf trim zones offcutsKept waste ratio");
        plan.get("warnings").forEach(node -> inOrder(node, "code pointer text"));
        yields(plan.get("yield"));
        assertThat(plan.get("jobHash").textValue()).matches("sha-256:[0-9a-f]{64}");
        assertThat(new PlanReader(reading.orThrow()).read(text).faults()).isEmpty();
    }

    private static void dual(JsonNode duals) {
        duals.forEach(dual -> assertThat(dual.get(1).textValue()).matches("[0-9]+(/[0-9]+)?"));
    }

    private static void estimate(JsonNode estimate) {
        inOrder(estimate, "stock parts net yield volume boardFeet boards cost? sure atLeast? trials wood");
        estimate.get("parts").forEach(node -> inOrder(node, "part quantity"));
        inOrder(estimate.get("sure"), "chance boardFeet boards cost?");
        estimate.path("atLeast").forEach(node -> inOrder(node, "boards width length"));
    }

    private static void step(JsonNode step) {
        inOrder(step, "step kind setUp? board? cut? part? number? stave? ply? behind? caution? reason? shape?");
        if (step.has("cut")) {
            inOrder(step.get("cut"), "direction on reading to? left? slack");
            inOrder(step.at("/cut/on"), "x y length width");
        }
    }

    private static void money(JsonNode plan) {
        boolean cost = plan.at("/objective/goal").textValue().equals("cost");
        inOrder(plan.get("objective"), cost ? "goal value bound" : "goal value bound searchedBound? gap");
        if (plan.has("cost")) {
            inOrder(plan.get("cost"), cost ? "amount currency bound searchedBound? gap" : "amount currency");
            assertThat(plan.at("/cost/amount").textValue()).matches("[0-9]+\\.[0-9]{2}");
        }
        JsonNode gap = cost ? plan.at("/cost/gap") : plan.at("/objective/gap");
        assertThat(gap.textValue()).matches("[01]\\.[0-9]{4}");
        if (cost) {
            BigDecimal value = new BigDecimal(plan.at("/cost/amount").textValue());
            BigDecimal bound = new BigDecimal(plan.at("/cost/bound").textValue());
            BigDecimal right = value.signum() == 0
                    ? new BigDecimal("0.0000")
                    : value.subtract(bound).divide(value, 4, RoundingMode.CEILING);
            assertThat(gap.textValue()).isEqualTo(right.toPlainString());
        }
    }

    private static void layout(JsonNode layout) {
        inOrder(layout, "stock repeat length width thickness pieces cuts offcuts");
        layout.get("pieces").forEach(piece -> {
            inOrder(piece, "part numbers gang? staves? plies? x y length width turned");
            assertThat(piece.get("numbers")).hasSize(layout.get("repeat").intValue());
        });
        tree(layout.get("cuts"));
        layout.get("offcuts").forEach(offcut -> inOrder(offcut, "x y length width keep"));
    }

    private static void tree(JsonNode node) {
        if (node.isObject()) {
            inOrder(node, "cut kerf pieces");
            assertThat(node.get("pieces")).hasSize(node.get("kerf").size() + 1);
            node.get("kerf").forEach(slot -> assertThat(slot).hasSize(2));
            node.get("pieces").forEach(H01_DocumentFormTest::tree);
        } else {
            assertThat(node.isTextual()).isTrue();
        }
    }

    /** Exact volumes add up in exact decimals, where all are decimals; the ratio has four decimals, rounded down. */
    private static void yields(JsonNode yield) {
        assertThat(yield.get("ratio").textValue()).matches("[01]\\.[0-9]{4}");
        boolean decimals = true;
        BigDecimal sum = BigDecimal.ZERO;
        for (String name : List.of("parts", "allowance", "kerf", "trim", "zones", "offcutsKept", "waste", "used")) {
            String text = yield.get(name).textValue();
            decimals &= text.matches("[0-9]+(\\.[0-9]+)?");
            sum = decimals && !name.equals("used") ? sum.add(new BigDecimal(text)) : sum;
        }
        if (decimals) {
            BigDecimal used = new BigDecimal(yield.get("used").textValue());
            assertThat(sum).isEqualByComparingTo(used);
            BigDecimal parts = new BigDecimal(yield.get("parts").textValue());
            BigDecimal ratio =
                    used.signum() == 0 ? new BigDecimal("0.0000") : parts.divide(used, 4, RoundingMode.FLOOR);
            assertThat(yield.get("ratio").textValue()).isEqualTo(ratio.toPlainString());
        }
    }

    /** The node's keys are these, in this order; a question mark lets one be absent. */
    private static void inOrder(JsonNode node, String keys) {
        List<String> expected = new ArrayList<>();
        for (String key : keys.split(" ")) {
            String name = key.replace("?", "");
            if (!key.endsWith("?") || node.has(name)) {
                expected.add(name);
            }
        }
        assertThat(keys(node)).containsExactlyElementsOf(expected);
    }

    /** Lengths are exact: read again they are the same, whatever they look like. */
    @Test
    void oddSizesStayExact() {
        JsonNode piece = Door.tree(
                        Door.document(
                                Door.read(
                                        "unit: in, goal: cost, parts: [{length: '3.14159', width: 2, thickness: 1},"
                                                + " {id: m, length: '12.345678 mm', width: 2, thickness: 1}], onHand: [{length: 20, width: 2, thickness: 1}]")))
                .at("/layouts/0/pieces");
        List<String> lengths = new ArrayList<>();
        piece.forEach(node -> lengths.add(node.get("length").textValue()));
        assertThat(lengths).containsExactlyInAnyOrder("3.14159", "12.345678 mm");
        lengths.forEach(text -> assertThat(Door.length(text).isPositive()).isTrue());
    }

    /** Every document in the project's pages is read: a job without faults, or a plan of one. */
    @Test
    void everyExampleInThePagesIsRead() throws IOException {
        Pattern fence = Pattern.compile("```json\\R(.*?)```", Pattern.DOTALL);
        TreeSet<String> pages = new TreeSet<>();
        for (Path page : files(".", ".md", 3)) {
            Matcher examples = fence.matcher(Files.readString(page));
            while (examples.find()) {
                JsonNode example = Door.tree(examples.group(1));
                pages.add(page + ": " + example);
                if (example.has("parts")) {
                    assertThat(new JobReader().read(example.toString()).faults())
                            .as("%s", page)
                            .isEmpty();
                }
            }
        }
        assertThat(files(".", ".md", 3)).isNotEmpty();
        assertThat(pages).allMatch(text -> text.contains("{"));
    }
}
