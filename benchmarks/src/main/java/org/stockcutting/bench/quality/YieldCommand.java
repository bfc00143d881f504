package org.stockcutting.bench.quality;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.stockcutting.bench.instances.Format;
import org.stockcutting.bench.instances.Generated;
import org.stockcutting.bench.instances.Instance;
import org.stockcutting.bench.instances.InstanceFiles;
import org.stockcutting.bench.instances.SawTerms;
import org.stockcutting.job.Effort;
import org.stockcutting.plan.CancelToken;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code yield}: plans many jobs and reports how well. */
@Command(
        name = "yield",
        mixinStandardHelpOptions = true,
        description = {
            "Plans every job document, job folder (parts.csv, stock.csv) and file of a public set, each on one thread with the same effort,",
            "and reports value against bound and best known, and where the wood goes. Ctrl-C ends it early; the report covers what is done."
        },
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {
            "0:done",
            "1:something cannot be true (better than a proved bound), or the library broke on a job",
            "2:a file cannot be read, or nothing to do"
        })
public final class YieldCommand implements Callable<Integer> {

    /** A guard that a work limit does not meet, so that tables are repeatable. */
    private static final int FAR_OFF = 3_600;

    @Parameters(paramLabel = "PATH", arity = "0..*", description = "files or folders")
    private List<Path> paths = new ArrayList<>();

    @Option(
            names = "--generate",
            paramLabel = "KIND:COUNT",
            description =
                    "jobs made by rule: U, T, CLASS1 to CLASS10, boards, sheets, mixed, measured, foot, shelf, scarce, saws, plywood; KIND-ITEMS:COUNT for another size")
    private List<String> generate = new ArrayList<>();

    @Option(
            names = "--format",
            paramLabel = "WORD",
            description = "how all files are written; else told by folder name")
    private @Nullable String format;

    @Option(names = "--seconds", paramLabel = "S", description = "clock limit a job")
    private @Nullable Integer seconds;

    @Option(
            names = "--work",
            paramLabel = "N",
            description = "work limit a job, repeatable (without both: the usual effort)")
    private @Nullable Long work;

    @Option(
            names = "--seed",
            paramLabel = "N",
            defaultValue = "1",
            description = "of search and generated jobs (${DEFAULT-VALUE})")
    private long seed = 1;

    @Option(
            names = "--threads",
            paramLabel = "N",
            defaultValue = "1",
            description = "jobs at a time, 1 or 2 (${DEFAULT-VALUE})")
    private int threads = 1;

    @Option(names = "--rotate", description = "rectangles of public sets and of generated classes may be turned")
    private boolean rotate;

    @Mixin
    private SawOptions saws = new SawOptions();

    @Option(names = "--resume", description = "goes on with the table of --csv; what is in it is not run again")
    private boolean resume;

    @Option(names = "--csv", paramLabel = "FILE", description = "a row a job, written as they come")
    private @Nullable Path csv;

    @Option(names = "--html", paramLabel = "FILE", description = "the report as one page")
    private @Nullable Path html;

    @Option(names = "--plans", paramLabel = "DIR", description = "every job and its plan as documents")
    private @Nullable Path plans;

    @Spec
    private @Nullable CommandSpec spec;

    @Override
    public Integer call() throws IOException {
        CommandSpec command = command();
        PrintWriter out = command.commandLine().getOut();
        PrintWriter err = command.commandLine().getErr();
        InstanceFiles files = new InstanceFiles(formatOrNull(), rotate, line -> say(err, line));
        List<Instance> instances = instances(files);
        Map<String, Row> done = resume ? earlier() : new LinkedHashMap<>();
        List<Instance> open = instances.stream()
                .filter(instance -> !done.containsKey(instance.group() + " : " + instance.file()))
                .toList();
        List<Row> rows = new ArrayList<>(done.values());
        CancelToken cancel = new CancelToken();
        try (Farewell farewell = new Farewell(cancel)) {
            solve(open, rows, cancel, err);
            report(rows, out);
        }
        return status(rows, files, err);
    }

    private static void say(PrintWriter err, String line) {
        err.println(line);
        err.flush();
    }

    private @Nullable Format formatOrNull() {
        if (format == null) {
            return null;
        }
        try {
            return Format.ofWord(format);
        } catch (IllegalArgumentException e) {
            throw wrong(e);
        }
    }

    private CommandSpec command() {
        if (spec == null) {
            throw new IllegalStateException("run through picocli");
        }
        return spec;
    }

    private ParameterException wrong(Exception e) {
        return new ParameterException(command().commandLine(), String.valueOf(e.getMessage()), e);
    }

    private ParameterException wrong(String text) {
        return new ParameterException(command().commandLine(), text);
    }

    private List<Instance> instances(InstanceFiles files) throws IOException {
        if (threads < 1 || threads > YieldRun.MOST_AT_A_TIME) {
            throw wrong("--threads is " + threads + "; wanted 1 or 2, since more at a time would falsify the seconds");
        }
        if (resume && csv == null) {
            throw wrong("--resume needs the table to go on with: --csv FILE");
        }
        List<Instance> instances = new ArrayList<>();
        for (Path path : paths) {
            try {
                instances.addAll(files.read(path));
            } catch (NoSuchFileException e) {
                throw wrong(e);
            }
        }
        for (String words : generate) {
            try {
                instances.addAll(Generated.of(words, seed, rotate));
            } catch (IllegalArgumentException e) {
                throw wrong(e);
            }
        }
        if (instances.isEmpty()) {
            throw wrong("nothing to plan: name files or folders, or --generate KIND:COUNT");
        }
        SawTerms terms = terms();
        return distinct(instances.stream().map(terms::over).toList());
    }

    private SawTerms terms() {
        try {
            return saws.terms();
        } catch (IllegalArgumentException e) {
            throw wrong(e);
        }
    }

    /** A file that two paths reach is solved once. */
    private static List<Instance> distinct(List<Instance> instances) {
        Map<String, Instance> byName = new LinkedHashMap<>();
        instances.forEach(instance -> byName.putIfAbsent(instance.group() + " : " + instance.file(), instance));
        return List.copyOf(byName.values());
    }

    private Map<String, Row> earlier() throws IOException {
        Map<String, Row> rows = new LinkedHashMap<>();
        if (csv != null && Files.exists(csv)) {
            try {
                RowTable.read(csv).forEach(row -> rows.put(row.key(), row));
            } catch (IllegalArgumentException e) {
                throw wrong(e);
            }
        }
        return rows;
    }

    private void solve(List<Instance> open, List<Row> rows, CancelToken cancel, PrintWriter err) throws IOException {
        Trial trial = new Trial(effort(), cancel, plans);
        Ticker ticker = new Ticker(err, System.console() != null, open.size());
        try (@Nullable RowTable table = csv == null ? null : RowTable.open(csv)) {
            if (table != null) {
                rows.forEach(table::add);
            }
            new YieldRun(trial, threads).run(open, row -> {
                rows.add(row);
                if (table != null) {
                    table.add(row);
                }
                ticker.tick(row);
                row.contradictions().forEach(line -> say(err, "WRONG: " + line));
            });
        } catch (InterruptedException e) {
            cancel.cancel();
            Thread.currentThread().interrupt();
        }
        ticker.end();
    }

    private Effort effort() {
        Integer guard = work != null && seconds == null ? Integer.valueOf(FAR_OFF) : seconds;
        return new Effort(work, guard, seed, 1);
    }

    private void report(List<Row> rows, PrintWriter out) throws IOException {
        Section.all(rows).forEach(section -> out.print(section.text()));
        out.flush();
        if (html != null) {
            Path folder = html.toAbsolutePath().getParent();
            if (folder != null) {
                Files.createDirectories(folder);
            }
            Files.writeString(html, HtmlReport.page(rows, heading(rows)), StandardCharsets.UTF_8);
        }
    }

    private static String heading(List<Row> rows) {
        String limits =
                String.join(", ", rows.stream().map(Row::limit).distinct().toList());
        return rows.size() + " jobs, one thread each, limit a job: " + (limits.isEmpty() ? "none" : limits) + ".";
    }

    private static int status(List<Row> rows, InstanceFiles files, PrintWriter err) {
        List<String> wrong = new ArrayList<>();
        rows.forEach(row -> wrong.addAll(row.contradictions()));
        rows.stream().filter(Row::isFailed).forEach(row -> wrong.add(row.file() + ": " + row.remark()));
        wrong.forEach(line -> say(err, "WRONG: " + line));
        if (!wrong.isEmpty()) {
            return 1;
        }
        return files.refused() > 0 ? 2 : 0;
    }
}
