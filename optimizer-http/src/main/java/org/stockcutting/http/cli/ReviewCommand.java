package org.stockcutting.http.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.stockcutting.io.JobReading;
import org.stockcutting.io.ReviewWriter;
import org.stockcutting.job.Job;
import org.stockcutting.part.Part;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Reads a job and says all that is wrong with it; plans nothing. */
@Command(
        name = "review",
        mixinStandardHelpOptions = true,
        description = "Lists every fault of a job at once. Nothing is planned.")
final class ReviewCommand implements Callable<Integer> {

    @Spec
    private @Nullable CommandSpec spec;

    @Parameters(arity = "0..*", paramLabel = "JOB", description = "Job document (JSON).")
    private List<Path> documents = new ArrayList<>();

    @Mixin
    private JobSource source = new JobSource();

    @Option(names = "--json", description = "Print the review document and nothing else.")
    private boolean json;

    @Override
    public Integer call() {
        JobReading reading = source.read(documents);
        PrintWriter out = Objects.requireNonNull(spec).commandLine().getOut();
        boolean valid = reading.faults().isEmpty() && reading.job() != null;
        if (json) {
            out.print(ReviewWriter.write(reading.faults()));
        } else if (valid) {
            out.println(summary(Objects.requireNonNull(reading.job())));
        } else {
            source.accepted(reading, documents);
        }
        out.flush();
        return valid ? ExitStatus.DONE : ExitStatus.REFUSED;
    }

    private static String summary(Job job) {
        long pieces = 0;
        for (Part part : job.parts()) {
            pieces += job.demand(part);
        }
        return "No faults: " + job.parts().size() + " lines of parts, " + pieces + " pieces, "
                + job.forSale().size() + " entries for sale, " + job.onHand().size() + " on hand.";
    }
}
