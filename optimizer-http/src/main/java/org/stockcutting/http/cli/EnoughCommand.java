package org.stockcutting.http.cli;

import org.stockcutting.Optimizer;
import org.stockcutting.http.print.EnoughText;
import org.stockcutting.io.EnoughWriter;
import org.stockcutting.job.Job;
import org.stockcutting.plan.Enough;
import picocli.CommandLine.Command;

/** Says after each board on hand whether all parts have their wood now. */
@Command(
        name = "enough",
        mixinStandardHelpOptions = true,
        description =
                "Says after each board on hand which parts still have none, whether this is enough yet, and what is"
                        + " to spare. Nothing is bought. Exit status 1 says that it is not enough.")
final class EnoughCommand extends JobCommand {

    @Override
    public Integer call() {
        Job job = job();
        try (KeepBest keepBest = new KeepBest()) {
            Enough enough = asked(() -> new Optimizer().enough(job, job.effort(), keepBest.token()));
            answer(json() ? EnoughWriter.write(job, enough) : new EnoughText(job).print(enough));
            return enough.atLast().isEnough() ? ExitStatus.DONE : ExitStatus.INCOMPLETE;
        }
    }
}
