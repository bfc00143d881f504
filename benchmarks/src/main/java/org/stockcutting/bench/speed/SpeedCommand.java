package org.stockcutting.bench.speed;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.CommandLineOptionException;
import org.openjdk.jmh.runner.options.CommandLineOptions;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import picocli.CommandLine.Unmatched;

/** {@code speed}: the kernels under JMH, or with {@code --growth} how a whole solve grows. */
@Command(
        name = "speed",
        description = {
            "Measures the hot kernels with JMH; what is not one of the options below goes to JMH: a pattern of names, -f, -i, -prof gc."
        })
public final class SpeedCommand implements Callable<Integer> {

    @Option(names = "--growth", description = "measures how time and memory of a solve grow with the job, instead")
    private boolean growth;

    @Option(
            names = "--seconds",
            paramLabel = "S",
            defaultValue = "5",
            description = "with --growth: longest time of one solve (${DEFAULT-VALUE})")
    private int seconds = 5;

    @Option(
            names = "--seed",
            paramLabel = "N",
            defaultValue = "1",
            description = "with --growth: seed of the jobs (${DEFAULT-VALUE})")
    private long seed = 1;

    @Option(names = "--list", description = "lists the kernels")
    private boolean list;

    @Option(names = "--help", usageHelp = true, description = "shows this")
    private boolean help;

    @Unmatched
    private List<String> jmh = new ArrayList<>();

    @Spec
    private @Nullable CommandSpec spec;

    @Override
    public Integer call() throws RunnerException {
        if (spec == null) {
            throw new IllegalStateException("run through picocli");
        }
        if (growth) {
            new Growth(seconds, seed).run(spec.commandLine().getOut());
            return 0;
        }
        Runner runner;
        try {
            runner = new Runner(new CommandLineOptions(jmh.toArray(String[]::new)));
        } catch (CommandLineOptionException e) {
            spec.commandLine().getErr().println(e.getMessage());
            return 2;
        }
        if (list) {
            runner.list();
        } else {
            runner.run();
        }
        return 0;
    }
}
