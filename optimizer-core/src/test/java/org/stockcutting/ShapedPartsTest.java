package org.stockcutting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.generate.RandomJobs;
import org.stockcutting.generate.RandomShapings;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.PlanReader;
import org.stockcutting.io.PlanWriter;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobReview;
import org.stockcutting.length.Length;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.StepKind;

/** Marked, bored, tapered and fitted parts: from the parts list to the last step of the sequence. */
class ShapedPartsTest {

    private static final int JOBS = 200;

    private static final String STAND = """
            {"name": "stand", "material": "pine", "shop": {"kerf": {"crosscut": "1/8", "rip": "1/8"}},
             "parts": [
               {"id": "post", "quantity": 2, "length": "24", "width": "1-1/2", "thickness": "1-1/2", "hand": "pairs",
                "taper": {"foot": "1", "faces": "inside-two"},
                "marks": [{"purpose": "rail", "fromEnd": "4"},
                          {"purpose": "peg", "fromEnd": "9", "fromEdge": "3/4", "bore": "3/8", "depth": "1"}]},
               {"id": "rail", "quantity": 1, "length": "10", "width": "1-1/2", "thickness": "1-1/2", "allowance": "long",
                "fit": "after-assembly", "marks": [{"purpose": "groove", "fromEdge": "3/4", "depth": "1/4"}]}],
             "allowances": {"long": {"length": "1"}},
             "stock": [{"id": "s", "length": "70", "width": "1-1/2", "thickness": "1-1/2",
                        "price": {"amount": "5", "per": "piece"}}]}
            """;

    private static Job stand() {
        return new JobReader().read(STAND).orThrow();
    }

    /**
     * Marked from the stick, gauged, bored, tapered, in this order: common practice, no source. The default start of the taper is a quarter
     * of 24, which is 6, or below the lowest hole, at 9 and half of 3/8: the lower of the two.
     */
    @Test
    void aSmallStandIsMarkedBoredTaperedAndFittedInThisOrder() {
        CuttingPlan plan = new Optimizer().plan(stand());
        List<String> shaping = plan.derived().cutSequence().stream()
                .filter(step -> step.shape() != null)
                .map(ShapedPartsTest::line)
                .toList();
        assertThat(shaping)
                .containsExactly(
                        "mark rail post 1 left end 4",
                        "mark rail post 2 right end 4",
                        "mark peg post 1 left end 9",
                        "mark peg post 2 right end 9",
                        "mark peg gauge 0.75 post 1 left edge 0.75",
                        "mark peg gauge 0.75 post 2 right edge 0.75",
                        "mark groove gauge 0.75 rail 1 edge 0.75 deep 0.25",
                        "bore peg drill 0.375 post 1 left end 9 edge 0.75 bore 0.375 deep 1",
                        "bore peg drill 0.375 post 2 right end 9 edge 0.75 bore 0.375 deep 1",
                        "taper post 1 left end 9.1875 foot 1 inside-two",
                        "taper post 2 right end 9.1875 foot 1 inside-two",
                        "mark from the work rail 1");
        assertThat(plan.derived().cutSequence().stream()
                        .filter(step -> step.kind() == StepKind.MARK && step.cut() != null))
                .isEmpty();
        assertThat(sawnTo(plan, "rail")).as("no final cut for what is fitted").isEmpty();
    }

    /** Top 3-1/2, foot 1-3/4, length 17, start 4-1/4: 5.83 and a kerf of 1/8, to the next 64th. Common practice, no source. */
    @Test
    void aPairOfTaperedLegsIsNoted() {
        Job job = new JobReader().read("""
                {"material": "oak", "shop": {"kerf": {"crosscut": "1/8", "rip": "1/8"}},
                 "parts": [{"id": "leg", "quantity": 4, "length": "17", "width": "3-1/2", "thickness": "3-1/2",
                            "taper": {"foot": "1-3/4"}}],
                 "stock": [{"id": "s", "length": "96", "width": "7-1/2", "thickness": "3-1/2", "price": {"amount": "5"}}]}
                """).orThrow();
        assertThat(new Optimizer().plan(job).derived().warnings())
                .filteredOn(warning -> warning.code().equals("tapered-pair"))
                .singleElement()
                .satisfies(warning -> assertThat(warning.text())
                        .contains("one blank 5-31/32 in wide before allowances, 1-5/32 in less"));
    }

    private static List<SequenceStep> sawnTo(CuttingPlan plan, String part) {
        return plan.derived().cutSequence().stream()
                .filter(step -> step.cut() != null && step.cut().to() == null)
                .filter(step -> step.piece() != null && step.piece().part().equals(part))
                .toList();
    }

    private static String line(SequenceStep step) {
        SequenceStep.Shape shape = step.shape();
        StringBuilder line = new StringBuilder(step.kind().word());
        line.append(shape.purpose() == null ? "" : " " + shape.purpose());
        line.append(
                step.setUp() == null
                        ? ""
                        : " " + step.setUp().machine() + " "
                                + inches(step.setUp().stop()));
        line.append(' ')
                .append(step.piece().part())
                .append(' ')
                .append(step.piece().number());
        line.append(shape.hand() == null ? "" : " " + shape.hand().word());
        append(line, "end", shape.fromEnd());
        append(line, "edge", shape.fromEdge());
        append(line, "bore", shape.bore());
        append(line, "deep", shape.depth());
        append(line, "foot", shape.foot());
        return line.append(shape.faces() == null ? "" : " " + shape.faces().word())
                .toString();
    }

    private static void append(StringBuilder line, String word, Length length) {
        line.append(length == null ? "" : " " + word + " " + inches(length));
    }

    private static String inches(Length length) {
        return new java.math.BigDecimal(length.nanometres())
                .divide(new java.math.BigDecimal(25_400_000))
                .stripTrailingZeros()
                .toPlainString();
    }

    @Test
    void twoHundredRandomJobsAreSimulatedToTheLastTaper() {
        Optimizer optimizer = new Optimizer();
        Map<StepKind, Integer> kinds = new TreeMap<>();
        int hands = 0;
        int gaugings = 0;
        int planned = 0;
        for (long seed = 1; planned < JOBS; seed++) {
            assertThat(seed).isLessThan(JOBS + 20L);
            Job job = new RandomShapings(seed)
                    .shaped(RandomJobs.job(7_000 + seed))
                    .withEffort(new Effort(300L, null, 1, 1));
            assertThat(JobReview.review(job)).as("seed %d", seed).isEmpty();
            CuttingPlan plan = optimizer.plan(job);
            planned++;
            assertThat(PlanChecker.check(job, plan)).as("seed %d", seed).isEmpty();
            List<SequenceStep> steps = plan.derived().cutSequence();
            assertThat(settings(steps, "gauge"))
                    .as("each gauge setting once, seed %d", seed)
                    .doesNotHaveDuplicates();
            assertThat(new PlanReader(job)
                            .read(new PlanWriter(job).write(plan, new TreeMap<>()))
                            .orThrow())
                    .as("seed %d", seed)
                    .isEqualTo(plan);
            gaugings += settings(steps, "gauge").size();
            for (SequenceStep step : steps) {
                kinds.merge(step.kind(), 1, Integer::sum);
                hands += step.shape() != null && step.shape().hand() != null ? 1 : 0;
            }
        }
        assertThat(kinds).containsKeys(StepKind.MARK, StepKind.BORE, StepKind.TAPER);
        assertThat(hands).isGreaterThan(JOBS);
        assertThat(gaugings).isGreaterThan(JOBS);
    }

    /** The positions that something is set to, one after the other. */
    private static List<Length> settings(List<SequenceStep> steps, String machine) {
        List<Length> settings = new ArrayList<>();
        for (SequenceStep step : steps) {
            if (step.setUp() != null && step.setUp().machine().equals(machine)) {
                Length stop = step.setUp().stop();
                if (settings.isEmpty() || !settings.get(settings.size() - 1).equals(stop)) {
                    settings.add(stop);
                }
            }
        }
        return settings;
    }

    /** A step left out, made twice, made too early or with another reading: the checker refuses each. */
    @Test
    void everyMutantOfAShapedSequenceIsRefused() {
        Optimizer optimizer = new Optimizer();
        int tried = 0;
        for (long seed = 1; tried < 300; seed++) {
            Job job = new RandomShapings(seed)
                    .shaped(RandomJobs.job(8_000 + seed))
                    .withEffort(new Effort(300L, null, 1, 1));
            CuttingPlan plan = optimizer.plan(job);
            Random random = new Random(seed);
            for (Mutation mutation : Mutation.values()) {
                List<SequenceStep> mutant = mutation.of(plan.derived().cutSequence(), random);
                if (mutant == null) {
                    continue;
                }
                tried++;
                assertThat(PlanChecker.check(job, Altered.steps(plan, mutant)))
                        .as("seed %d, %s", seed, mutation)
                        .anyMatch(violation -> violation.cause().equals("sequence"));
            }
        }
    }

    private enum Mutation {
        DROPPED,
        TWICE,
        TAPER_FIRST,
        BORE_FIRST,
        MARK_BEFORE_SIZE,
        OTHER_READING,
        OTHER_HAND;

        List<SequenceStep> of(List<SequenceStep> all, Random random) {
            List<SequenceStep> steps = new ArrayList<>(all);
            int at = pick(steps, random);
            if (at < 0) {
                return null;
            }
            SequenceStep step = steps.get(at);
            switch (this) {
                case DROPPED -> steps.remove(at);
                case TWICE -> steps.add(at, step);
                case TAPER_FIRST, BORE_FIRST, MARK_BEFORE_SIZE -> {
                    int first = before(steps, at);
                    if (first < 0) {
                        return null;
                    }
                    steps.add(first, steps.remove(at));
                }
                case OTHER_READING -> steps.set(at, changed(step, true));
                default -> steps.set(at, changed(step, false));
            }
            return steps;
        }

        /** A step that this mutation can be made of, or -1. */
        private int pick(List<SequenceStep> steps, Random random) {
            List<Integer> fit = new ArrayList<>();
            for (int i = 0; i < steps.size(); i++) {
                SequenceStep step = steps.get(i);
                boolean wanted = switch (this) {
                    case TAPER_FIRST -> step.kind() == StepKind.TAPER;
                    case BORE_FIRST -> step.kind() == StepKind.BORE;
                    case MARK_BEFORE_SIZE ->
                        step.kind() == StepKind.MARK && step.shape().fromEnd() != null;
                    default -> step.shape() != null;
                };
                if (wanted) {
                    fit.add(i);
                }
            }
            return fit.isEmpty() ? -1 : fit.get(random.nextInt(fit.size()));
        }

        /** The first step that this one must not come before, or -1. */
        private int before(List<SequenceStep> steps, int at) {
            SequenceStep step = steps.get(at);
            for (int i = 0; i < at; i++) {
                SequenceStep other = steps.get(i);
                boolean same = step.piece().equals(other.piece());
                boolean must = switch (this) {
                    case TAPER_FIRST -> other.kind() == StepKind.MARK || other.kind() == StepKind.BORE;
                    case BORE_FIRST ->
                        other.kind() == StepKind.MARK
                                && other.shape().purpose().equals(step.shape().purpose())
                                && (step.shape().fromEnd().equals(other.shape().fromEnd())
                                        || step.shape()
                                                .fromEdge()
                                                .equals(other.shape().fromEdge()));
                    default ->
                        other.cut() != null
                                && other.cut().to() == null
                                && other.cut().direction().word().equals("crosscut");
                };
                if (same && must) {
                    return i;
                }
            }
            return -1;
        }

        private static SequenceStep changed(SequenceStep step, boolean reading) {
            SequenceStep.Shape s = step.shape();
            Length nm = Length.ofNanometres(1);
            org.stockcutting.part.Shaping.Hand other = s.hand() == org.stockcutting.part.Shaping.Hand.LEFT
                    ? org.stockcutting.part.Shaping.Hand.RIGHT
                    : org.stockcutting.part.Shaping.Hand.LEFT;
            SequenceStep.Shape shape = new SequenceStep.Shape(
                    s.purpose(),
                    reading ? s.hand() : other,
                    reading ? s.fromEnd() == null ? nm : s.fromEnd().plus(nm) : s.fromEnd(),
                    s.fromEdge(),
                    s.bore(),
                    s.depth(),
                    s.foot(),
                    s.faces());
            return new SequenceStep(
                    step.step(),
                    step.kind(),
                    step.setUp(),
                    step.board(),
                    step.cut(),
                    step.piece(),
                    step.behind(),
                    step.caution(),
                    step.reason(),
                    shape);
        }
    }
}
