package org.stockcutting.http.print.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.stockcutting.draw.PrintedLengths;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.report.ChalkMarks;

/** The cut sequence, step by step with a box to tick, grouped by what stop and fence are set to. */
final class SequencePages {

    private final PrintedLengths lengths;
    private final ChalkMarks marks;
    private final List<String> cautions = new ArrayList<>();

    SequencePages(Job job) {
        lengths = new PrintedLengths(job.writing());
        marks = new ChalkMarks(job);
    }

    void print(CuttingPlan plan, Flow flow) {
        List<SequenceStep> steps = plan.derived().cutSequence();
        if (steps.isEmpty()) {
            return;
        }
        flow.title("Cut sequence");
        flow.paragraph(
                "In this order; readings are from the origin end or edge of the board as it came. A number in the last column"
                        + " is a caution below.");
        Table table = new Table()
                .numbers("step")
                .column("board")
                .column("what")
                .numbers("reading, " + lengths.unit())
                .column("frees")
                .column("part")
                .column("care");
        SequenceStep.@Nullable SetUp set = null;
        boolean first = true;
        for (SequenceStep step : steps) {
            if (first || !Objects.equals(set, step.setUp())) {
                table.heading(heading(step.setUp()));
            }
            set = step.setUp();
            first = false;
            row(step, table);
        }
        flow.table(table);
        if (!cautions.isEmpty()) {
            flow.heading("Cautions");
            for (int i = 0; i < cautions.size(); i++) {
                flow.paragraph((i + 1) + ". " + cautions.get(i), Flow.BODY, 14);
            }
        }
    }

    private void row(SequenceStep step, Table table) {
        String part = step.part();
        Integer number = step.number();
        table.tickRow(
                Integer.toString(step.step()),
                step.board(),
                step.kind().replace('-', ' '),
                lengths.position(step.reading()),
                part == null ? "" : marks.of(part) + (number == null ? "" : number),
                part == null ? "" : part + (number == null ? "" : " #" + number),
                caution(step.caution()));
    }

    private String heading(SequenceStep.@Nullable SetUp setUp) {
        if (setUp == null) {
            return "To a line: nothing to set";
        }
        String at = lengths.position(setUp.stop()) + " " + lengths.unit();
        return switch (setUp.machine()) {
            case "crosscut" -> "Set the stop to " + at;
            case "rip" -> "Set the fence to " + at;
            default -> "Set the " + setUp.machine().replace('-', ' ').toLowerCase(Locale.ROOT) + " to " + at;
        };
    }

    private String caution(@Nullable String caution) {
        if (caution == null) {
            return "";
        }
        int at = cautions.indexOf(caution);
        if (at < 0) {
            cautions.add(caution);
            at = cautions.size() - 1;
        }
        return Integer.toString(at + 1);
    }
}
