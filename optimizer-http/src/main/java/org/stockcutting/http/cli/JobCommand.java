package org.stockcutting.http.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.stockcutting.JobRefusedException;
import org.stockcutting.io.JobReading;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;
import picocli.CommandLine;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A command that answers one question about a job: where the job comes from, how hard to search, in which form to answer. */
abstract class JobCommand implements Callable<Integer> {

    @Spec
    private @Nullable CommandSpec spec;

    @Parameters(arity = "0..*", paramLabel = "JOB", description = "Job document (JSON).")
    private List<Path> documents = new ArrayList<>();

    @Mixin
    private JobSource source = new JobSource();

    @Mixin
    private EffortOptions effort = new EffortOptions();

    @Option(names = "--json", description = "Print the answer as a document and nothing else.")
    private boolean json;

    JobReading reading() {
        return source.read(documents);
    }

    /** The job as it was read. */
    Job accepted(JobReading reading) {
        return source.accepted(reading, documents);
    }

    /** What the job asks for, replaced by what the options say. */
    Effort effort(Job job) {
        return effort.over(job.effort());
    }

    /** The job, its effort replaced by what the options say. */
    Job job() {
        Job job = accepted(reading());
        return job.withEffort(effort(job));
    }

    boolean json() {
        return json;
    }

    /** What is asked of the library; a job that it refuses is refused by its name. */
    <T> T asked(Supplier<T> question) {
        try {
            return question.get();
        } catch (JobRefusedException e) {
            throw new RefusedException(source.name(documents), e.faults());
        }
    }

    void answer(String text) {
        PrintWriter out = commandLine().getOut();
        out.print(text);
        out.flush();
    }

    /** There is no answer, and why. */
    int noAnswer(String reason) {
        errors().println(reason);
        errors().flush();
        return ExitStatus.INCOMPLETE;
    }

    PrintWriter errors() {
        return commandLine().getErr();
    }

    CommandLine commandLine() {
        return Objects.requireNonNull(spec).commandLine();
    }
}
