package org.stockcutting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.io.JobReader;
import org.stockcutting.job.Fault;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.Violation;
import org.stockcutting.plan.Warning;

/** Jointer and planer with their limits, and sheets that another saw breaks down first. Common practice, no source. */
class MachinesTest {

    private static Job job(String fields) {
        return new JobReader().read("""
                {"material": "oak", "shop": {"kerf": {"crosscut": "1/8", "rip": "1/8"}, "sheetTrim": "1/4"}, %s
                 "parts": [
                   {"id": "case side", "quantity": 4, "length": "30", "width": "14", "thickness": "3/4", "material": "ply"},
                   {"id": "shelf", "quantity": 2, "length": "20", "width": "7", "thickness": "3/4", "allowance": "milled"},
                   {"id": "knob", "quantity": 2, "length": "7", "width": "2", "thickness": "3/4", "allowance": "milled", "gang": 1},
                   {"id": "top", "quantity": 1, "length": "30", "width": "14", "thickness": "3/4",
                    "make": {"as": "glue-up", "staves": {"min": "3", "max": "5"}}}],
                 "stock": [
                   {"id": "plank", "length": "120", "width": "8", "thickness": "1-1/16", "price": {"amount": "20"}},
                   {"id": "ply", "form": "sheet", "length": "96", "width": "48", "thickness": "3/4", "material": "ply",
                    "price": {"amount": "60"}}]}
                """.formatted(fields)).orThrow();
    }

    private static final String MACHINES =
            "\"machines\": {\"jointer\": {\"width\": \"6\"}, \"planer\": {\"width\": \"12\", \"shortest\": \"10\"}},";

    @Test
    void whatIsTooWideForJointerOrPlanerIsWarnedAboutAndCautioned() {
        Job job = job(MACHINES);
        CuttingPlan plan = new Optimizer().plan(job);
        assertThat(plan.derived().warnings())
                .filteredOn(warning -> warning.code().equals("wider-than-machine"))
                .extracting(Warning::text)
                .anySatisfy(
                        text -> assertThat(text)
                                .contains(
                                        "shelf is milled 7-1/8 in wide, and the jointer takes 6 in: rip it to narrower staves first"))
                .anySatisfy(text -> assertThat(text)
                        .contains("top is milled 15 in wide, and the planer takes 12 in: glue it up in parts that fit"))
                .noneSatisfy(text -> assertThat(text).contains("knob is milled"));
        assertThat(cautions(plan, "shelf", "joint"))
                .allSatisfy(text -> assertThat(text).contains("Wider than the jointer"));
        assertThat(cautions(plan, "knob", "plane"))
                .hasSize(4)
                .allSatisfy(text -> assertThat(text).contains("Shorter than the planer takes (10 in)"));
        assertThat(PlanChecker.check(job, plan)).isEmpty();
        CuttingPlan silent = Altered.warnings(plan, List.of());
        assertThat(PlanChecker.check(job, silent)).extracting(Violation::cause).contains("warning");
    }

    private static List<String> cautions(CuttingPlan plan, String part, String kind) {
        return plan.derived().cutSequence().stream()
                .filter(step -> step.kind().word().equals(kind)
                        && step.piece() != null
                        && step.piece().part().equals(part))
                .map(SequenceStep::caution)
                .toList();
    }

    /** Strips of 14 and a kerf of 1/8 from a sheet squared by 1/4: first cuts at 14-1/4 and 28-3/8, before any other step. */
    @Test
    void sheetsAreBrokenDownBeforeAnythingElse() {
        Job job = job("\"breakdown\": {\"kerf\": \"3/32\", \"over\": \"1/32\"},");
        CuttingPlan plan = new Optimizer().plan(job);
        List<SequenceStep> steps = plan.derived().cutSequence();
        long first = steps.stream().takeWhile(MachinesTest::isFirstCut).count();
        assertThat(first)
                .isPositive()
                .isEqualTo(steps.stream().filter(MachinesTest::isFirstCut).count());
        assertThat(steps.subList(0, (int) first)).allSatisfy(step -> {
            assertThat(step.board()).startsWith("ply");
            assertThat(step.setUp()).as("along a drawn line").isNull();
        });
        assertThat(steps.subList(0, (int) first))
                .anySatisfy(
                        step -> assertThat(step.caution()).contains("Leave 1/32 in on, and take it off at the fence"));
        List<SequenceStep> late = new ArrayList<>(steps);
        late.add(late.remove((int) first - 1));
        assertThat(PlanChecker.check(job, Altered.steps(plan, late)))
                .extracting(Violation::cause)
                .contains("sequence");
    }

    private static boolean isFirstCut(SequenceStep step) {
        return step.caution() != null && step.caution().startsWith("Break the sheet down");
    }

    @Test
    void aSawThatTakesMoreThanTheLayoutLeavesIsRefused() {
        List<Fault> faults = new JobReader().read("""
                {"breakdown": {"kerf": "1/8", "over": "1/4"}, "parts": [{"length": "20", "width": "7", "thickness": "3/4"}],
                 "stock": [{"id": "s", "form": "sheet", "length": "96", "width": "48", "thickness": "3/4", "price": {"amount": "9"}}]}
                """).faults();
        assertThat(faults).extracting(Fault::pointer).containsExactly("/breakdown");
    }
}
