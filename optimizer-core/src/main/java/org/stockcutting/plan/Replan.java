package org.stockcutting.plan;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;

/**
 * What is left to do after a mishap: a job of its own, with its plan. Job and plan are null exactly when nothing is left to be cut.
 *
 * @param job the parts that are still wanted, the wood in hand, and what is for sale
 * @param plan the plan for them, accepted by the checker
 * @param finished pieces that are cut and good, by part
 * @param lines which pieces of the first job the lines of the new one stand for
 * @param kept pieces of wood that are cut as they were planned, by id
 * @param changed pieces of wood that were planned another way before, by id
 * @param notes what a maker should know, a sentence each
 */
public record Replan(
        @Nullable Job job,
        @Nullable CuttingPlan plan,
        List<Finished> finished,
        List<Line> lines,
        List<String> kept,
        List<String> changed,
        List<String> notes) {

    public Replan {
        finished = List.copyOf(finished);
        lines = List.copyOf(lines);
        kept = List.copyOf(kept);
        changed = List.copyOf(changed);
        notes = List.copyOf(notes);
    }

    /**
     * Pieces of one part that are cut and good; a glued-up part only when all its staves or plies are.
     *
     * @param part id of the part
     * @param numbers their numbers, ascending
     */
    public record Finished(String part, List<Integer> numbers) {
        public Finished {
            numbers = List.copyOf(numbers);
        }
    }

    /**
     * One line of the new parts list.
     *
     * @param line id of the line in the new job
     * @param part id of the part it comes from
     * @param numbers piece i of the line, counted from 1, is the i-th of these numbers of the part
     * @param members where the line is of single staves or plies, which of them each piece is; else empty
     */
    public record Line(String line, String part, List<Integer> numbers, List<Integer> members) {
        public Line {
            numbers = List.copyOf(numbers);
            members = List.copyOf(members);
        }
    }
}
