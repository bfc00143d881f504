package org.stockcutting.http.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.stockcutting.JobRefusedException;
import org.stockcutting.http.Planner;
import org.stockcutting.http.print.ComparisonPage;
import org.stockcutting.http.print.ComparisonPicture;
import org.stockcutting.http.print.ComparisonText;
import org.stockcutting.io.ComparisonWriter;
import org.stockcutting.io.CsvTables;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.Comparison;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Compares the stock of a job and prints which of it is worth buying. */
@Command(
        name = "compare",
        mixinStandardHelpOptions = true,
        description =
                "Prints what a job comes to with each length or sheet alone, with all together, with pairs where there are"
                        + " few, and with the subsets that the job names; what each one saves, and what the shop's limits cost.")
final class CompareCommand implements Callable<Integer> {

    private final Planner planner;

    @Spec
    private @Nullable CommandSpec spec;

    @Parameters(arity = "0..*", paramLabel = "JOB", description = "Job document (JSON).")
    private List<Path> documents = new ArrayList<>();

    @Mixin
    private JobSource source = new JobSource();

    @Mixin
    private EffortOptions effort = new EffortOptions();

    @Option(names = "--json", description = "Print the comparison document and nothing else.")
    private boolean json;

    @Option(names = "--csv", paramLabel = "FILE", description = "Also write a table of all choices.")
    private @Nullable Path csv;

    @Option(names = "--html", paramLabel = "FILE", description = "Also write a page that needs nothing else.")
    private @Nullable Path html;

    @Option(names = "--svg", paramLabel = "FILE", description = "Also write a chart of the choices.")
    private @Nullable Path svg;

    CompareCommand(Planner planner) {
        this.planner = planner;
    }

    @Override
    public Integer call() {
        Job job = source.accepted(source.read(documents), documents);
        try (KeepBest keepBest = new KeepBest()) {
            Comparison comparison = compared(job, keepBest.token());
            write(job, comparison);
            PrintWriter out = Objects.requireNonNull(spec).commandLine().getOut();
            out.print(json ? new ComparisonWriter(job).write(comparison) : new ComparisonText(job).print(comparison));
            out.flush();
            return comparison.whole().allTogether().isComplete() ? ExitStatus.DONE : ExitStatus.INCOMPLETE;
        }
    }

    private Comparison compared(Job job, CancelToken cancel) {
        try {
            return planner.compare(job, effort.over(job.effort()), cancel);
        } catch (JobRefusedException e) {
            throw new RefusedException(source.name(documents), e.faults());
        }
    }

    private void write(Job job, Comparison comparison) {
        if (csv != null) {
            OutputFolder.file(csv, CsvTables.comparison(job, comparison).getBytes(StandardCharsets.UTF_8));
        }
        if (html != null) {
            OutputFolder.file(html, new ComparisonPage(job).print(comparison).getBytes(StandardCharsets.UTF_8));
        }
        if (svg != null) {
            OutputFolder.file(svg, new ComparisonPicture(job).svg(comparison));
        }
    }
}
