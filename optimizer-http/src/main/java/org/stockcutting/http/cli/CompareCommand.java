package org.stockcutting.http.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.stockcutting.http.Planner;
import org.stockcutting.http.print.ComparisonPage;
import org.stockcutting.http.print.ComparisonPicture;
import org.stockcutting.http.print.ComparisonText;
import org.stockcutting.io.ComparisonWriter;
import org.stockcutting.io.CsvTables;
import org.stockcutting.job.Job;
import org.stockcutting.plan.Comparison;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Compares the stock of a job and prints which of it is worth buying. */
@Command(
        name = "compare",
        mixinStandardHelpOptions = true,
        description =
                "Prints what a job comes to with each length or sheet alone, with all together, with pairs where there are"
                        + " few, and with the subsets that the job names; what each one saves, and what the shop's limits cost.")
final class CompareCommand extends JobCommand {

    private final Planner planner;

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
        Job job = job();
        try (KeepBest keepBest = new KeepBest()) {
            Comparison comparison = asked(() -> planner.compare(job, job.effort(), keepBest.token()));
            write(job, comparison);
            answer(json() ? new ComparisonWriter(job).write(comparison) : new ComparisonText(job).print(comparison));
            return comparison.whole().allTogether().isComplete() ? ExitStatus.DONE : ExitStatus.INCOMPLETE;
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
