package org.stockcutting.mishap;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.plan.Replan;

/**
 * What is left after a mishap, not planned yet.
 *
 * @param job the job that is left, or null where every part is finished
 * @param units pieces of wood for which cuts are still planned
 * @param finished pieces that are cut and good
 * @param lines what the lines of the job stand for
 * @param lost pieces of the job that no unit gives any more, in the job's names
 * @param notes what a maker should know
 */
public record LeftToDo(
        @Nullable Job job,
        List<Unit> units,
        List<Replan.Finished> finished,
        List<Replan.Line> lines,
        List<Want> lost,
        List<String> notes) {

    public LeftToDo {
        units = List.copyOf(units);
        finished = List.copyOf(finished);
        lines = List.copyOf(lines);
        lost = List.copyOf(lost);
        notes = List.copyOf(notes);
    }
}
