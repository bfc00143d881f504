package org.stockcutting.http.cli;

import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Effort;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** How hard to search; what is given here replaces what the job says. */
final class EffortOptions {

    private static final int MOST_SECONDS = 86_400;
    private static final int MOST_THREADS = 256;

    @Spec(Spec.Target.MIXEE)
    private @Nullable CommandSpec spec;

    @Option(names = "--seconds", paramLabel = "N", description = "Stop after N seconds of the clock.")
    private @Nullable Integer seconds;

    @Option(
            names = "--work",
            paramLabel = "N",
            description = "Stop after N steps of search: repeatable on any machine.")
    private @Nullable Long work;

    @Option(names = "--seed", paramLabel = "N", description = "Seed of every random choice.")
    private @Nullable Long seed;

    @Option(names = "--threads", paramLabel = "N", description = "Threads to use; the answer stays the same.")
    private @Nullable Integer threads;

    /** The job's effort with the options put in. Seconds without work mean the clock alone, as in a job. */
    Effort over(Effort job) {
        checkRange("--seconds", seconds == null ? 1 : seconds, MOST_SECONDS);
        checkRange("--work", work == null ? 1 : work, Long.MAX_VALUE);
        checkRange("--threads", threads == null ? 1 : threads, MOST_THREADS);
        return new Effort(
                work != null ? work : seconds != null ? null : job.work(),
                seconds != null ? seconds : work != null ? null : job.seconds(),
                seed != null ? seed : job.seed(),
                threads != null ? threads : job.threads());
    }

    private void checkRange(String option, long value, long most) {
        if (value < 1 || value > most) {
            String text = option + " takes a whole number from 1 to " + most + ", got " + value;
            if (spec == null) {
                throw new IllegalStateException(text);
            }
            throw new ParameterException(spec.commandLine(), text);
        }
    }
}
