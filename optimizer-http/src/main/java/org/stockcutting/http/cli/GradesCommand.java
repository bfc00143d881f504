package org.stockcutting.http.cli;

import org.stockcutting.Optimizer;
import org.stockcutting.http.print.GradesText;
import org.stockcutting.io.GradesWriter;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.wood.GradeMixes;
import picocli.CommandLine.Command;

/** What a job costs from each grade of wood for sale, and from mixes of them. */
@Command(
        name = "grades",
        mixinStandardHelpOptions = true,
        description = "Compares the grades for sale: what each and mixes of them cost with enough boards to be sure.")
final class GradesCommand extends JobCommand {

    @Override
    public Integer call() {
        Job job = job();
        GradeMixes grades = asked(() -> new Optimizer().grades(job, job.effort(), new CancelToken()));
        if (grades.families().isEmpty()) {
            return noAnswer(
                    "No part could come from two grades for sale: give stock a grade, and parts no grades or several.");
        }
        answer(json() ? GradesWriter.write(job, grades) : new GradesText(job).print(grades));
        GradeMixes.Mix together = grades.together();
        return together == null || together.cost() == null ? ExitStatus.INCOMPLETE : ExitStatus.DONE;
    }
}
