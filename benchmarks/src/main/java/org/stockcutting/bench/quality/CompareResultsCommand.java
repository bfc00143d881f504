package org.stockcutting.bench.quality;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code compare-results}: fails if a new table of {@code yield} is worse than an old one. */
@Command(
        name = "compare-results",
        mixinStandardHelpOptions = true,
        description =
                "Compares two tables of the yield command job by job, and fails on a loss of quality beyond noise.",
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {"0:no loss", "1:a loss", "2:a table cannot be read, or they have no job in common"})
public final class CompareResultsCommand implements Callable<Integer> {

    private static final int NAMED = 20;

    @Parameters(index = "0", paramLabel = "OLD.csv", description = "the table to be as good as")
    private Path before = Path.of("");

    @Parameters(index = "1", paramLabel = "NEW.csv", description = "the table to judge")
    private Path after = Path.of("");

    @Option(
            names = "--strict",
            description = "every single job that got worse is a loss: for tables under a work limit")
    private boolean strict;

    @Spec
    private @Nullable CommandSpec spec;

    @Override
    public Integer call() {
        if (spec == null) {
            throw new IllegalStateException("run through picocli");
        }
        PrintWriter out = spec.commandLine().getOut();
        PrintWriter err = spec.commandLine().getErr();
        Comparison comparison;
        try {
            comparison = new Comparison(RowTable.read(before), RowTable.read(after), strict);
        } catch (IOException e) {
            err.println("cannot be read: " + e.getMessage());
            return 2;
        } catch (IllegalArgumentException e) {
            err.println(e.getMessage());
            return 2;
        }
        if (comparison.common() == 0) {
            err.println(before + " and " + after + " have no job in common");
            return 2;
        }
        out.print(comparison.text(NAMED));
        List<String> losses = comparison.losses();
        losses.forEach(loss -> out.println("LOSS: " + loss));
        out.flush();
        return losses.isEmpty() ? 0 : 1;
    }
}
