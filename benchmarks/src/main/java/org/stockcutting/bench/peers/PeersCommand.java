package org.stockcutting.bench.peers;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.stockcutting.bench.instances.Generated;
import org.stockcutting.io.JobReader;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code peers}: the same jobs in one run by ours and by what a user would pick instead. */
@Command(
        name = "peers",
        mixinStandardHelpOptions = true,
        description = {
            "Runs first-fit and best-fit decreasing, OptaPlanner alone, OR-Tools CP-SAT and this library on the same jobs,",
            "each for the same time, and compares what they reach. Without a path or --generate: 40 built-in jobs of 6 kinds."
        },
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {"0:done", "1:two results contradict each other", "2:a job cannot be read"})
public final class PeersCommand implements Callable<Integer> {

    @Parameters(paramLabel = "PATH", arity = "0..*", description = "job documents, or folders of them")
    private List<Path> paths = new ArrayList<>();

    @Option(
            names = "--generate",
            paramLabel = "KIND:COUNT",
            description = "jobs made by rule, in the words of the command yield")
    private List<String> generate = new ArrayList<>();

    @Option(
            names = "--seconds",
            paramLabel = "S",
            defaultValue = "3",
            description = "time a job for each (${DEFAULT-VALUE})")
    private int seconds = 3;

    @Option(
            names = "--seed",
            paramLabel = "N",
            defaultValue = "1",
            description = "seed of jobs and methods (${DEFAULT-VALUE})")
    private long seed = 1;

    @Option(names = "--csv", paramLabel = "FILE", description = "also writes every result as a table")
    private @Nullable Path csv;

    @Option(
            names = "--cold",
            description = "leaves out the run before the run, which loads and compiles what all methods need")
    private boolean cold;

    @Spec
    private @Nullable CommandSpec spec;

    @Override
    public Integer call() throws IOException {
        PrintWriter out = commandLine().getOut();
        PrintWriter err = commandLine().getErr();
        List<PeerJobs.Named> jobs;
        try {
            jobs = paths.isEmpty() && generate.isEmpty() ? PeerJobs.all(seed) : named();
        } catch (IllegalArgumentException | IOException e) {
            err.println(e.getMessage());
            return 2;
        }
        Contest contest = new Contest(Contest.everyone(), seconds, seed);
        if (!cold) {
            warmUp();
        }
        List<Result> results = new ArrayList<>();
        for (PeerJobs.Named job : jobs) {
            results.addAll(contest.run(job));
            err.printf("%d of %d: %s%n", results.size() / contest.methods().size(), jobs.size(), job.name());
            err.flush();
        }
        Standings standings = new Standings(results, contest.methods());
        out.printf(
                "%d jobs, %d s each, seed %d, CP-SAT with %d workers, all others on one thread%n%n",
                jobs.size(), seconds, seed, CpSat.WORKERS);
        out.print(standings.text());
        out.flush();
        if (csv != null) {
            new PeersTable(seconds, seed, results).write(csv);
        }
        return standings.contradictions().isEmpty() ? 0 : 1;
    }

    /** Once before it counts: classes, native code and solvers are loaded, and hot loops are compiled. */
    private void warmUp() {
        Contest contest = new Contest(Contest.everyone(), 1, seed);
        PeerJobs.all(seed + 1).stream().filter(job -> job.name().endsWith(" 1")).forEach(contest::run);
    }

    private CommandLine commandLine() {
        if (spec == null) {
            throw new IllegalStateException("run through picocli");
        }
        return spec.commandLine();
    }

    private List<PeerJobs.Named> named() throws IOException {
        List<PeerJobs.Named> jobs = new ArrayList<>(paths.isEmpty() ? List.of() : read());
        for (String words : generate) {
            Generated.of(words, seed).stream()
                    .map(made -> new PeerJobs.Named(made.file(), made.group(), made.job()))
                    .forEach(jobs::add);
        }
        return jobs;
    }

    private List<PeerJobs.Named> read() throws IOException {
        List<PeerJobs.Named> jobs = new ArrayList<>();
        for (Path path : paths) {
            try (Stream<Path> files = Files.walk(path)) {
                for (Path file : files.filter(f -> f.toString().endsWith(".json"))
                        .sorted()
                        .toList()) {
                    jobs.add(read(file));
                }
            } catch (NoSuchFileException e) {
                throw new IllegalArgumentException(path + ": there is no such file or folder", e);
            }
        }
        if (jobs.isEmpty()) {
            throw new IllegalArgumentException("no job documents (*.json) in " + paths);
        }
        return jobs;
    }

    private static PeerJobs.Named read(Path file) throws IOException {
        try {
            Path folder = file.toAbsolutePath().getParent();
            String kind = folder == null ? "jobs" : String.valueOf(folder.getFileName());
            return new PeerJobs.Named(
                    String.valueOf(file.getFileName()),
                    kind,
                    new JobReader().read(Files.readAllBytes(file)).orThrow());
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(file + ": " + e.getMessage(), e);
        }
    }
}
