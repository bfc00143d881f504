package org.stockcutting.bench.firstcuts;

import java.io.IOException;
import java.io.PrintWriter;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.stockcutting.bench.instances.Generated;
import org.stockcutting.bench.instances.Instance;
import org.stockcutting.bench.quality.RowOptions;
import org.stockcutting.job.Effort;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code first-cuts}: the first cut free on every board, beside rips first only and crosscuts first only. */
@Command(
        name = "first-cuts",
        mixinStandardHelpOptions = true,
        description = {
            "Plans each job three times with the same limit: every board ripped or crosscut first as suits it, rips first only, crosscuts",
            "first only. A free plan takes up to three times the work, since it is the best of searches for either way and for both, each",
            "within the limit. Values in minor units of the currency, for shelf in cubic inches of waste; the bound is the certified one of the",
            "free plan. Kinds: measured (two sizes of clear boards for sale), foot (eight sizes by the foot), shelf (nothing for sale)."
        },
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {"0:no free plan is dearer than a restricted one", "1:some are", "2:there is no such kind of job"
        })
public final class FirstCutsCommand implements Callable<Integer> {

    @Option(
            names = "--generate",
            paramLabel = "KIND:COUNT",
            defaultValue = "measured:10",
            description = "jobs made by rule (${DEFAULT-VALUE})")
    private String generate = "measured:10";

    @Option(
            names = "--work",
            paramLabel = "N",
            defaultValue = "3000000",
            description = "steps a search (${DEFAULT-VALUE}: the usual effort)")
    private long work = Effort.DEFAULT_WORK;

    @Mixin
    private RowOptions options = new RowOptions();

    @Spec
    private @Nullable CommandSpec spec;

    @Override
    public Integer call() throws IOException {
        if (spec == null) {
            throw new IllegalStateException("run through picocli");
        }
        PrintWriter out = spec.commandLine().getOut();
        List<FirstCutRow> rows = new ArrayList<>();
        out.printf("%-34s %10s %10s %14s %10s%n", "job", "free", "rip first", "crosscut first", "bound");
        for (Instance instance : instances(spec)) {
            FirstCutRow row = FirstCutRow.of(instance.file(), instance.job(), work, options.seed());
            rows.add(row);
            line(out, row.job(), row.free(), row.rip(), row.crosscut(), row.bound(), row.complete());
        }
        line(
                out,
                "sum",
                sum(rows, FirstCutRow::free),
                sum(rows, FirstCutRow::rip),
                sum(rows, FirstCutRow::crosscut),
                sum(rows, FirstCutRow::bound),
                true);
        long dearer = rows.stream().filter(FirstCutRow::isDearer).count();
        out.printf(
                "free: better than both on %d of %d, dearer than one on %d%n",
                rows.stream().filter(FirstCutRow::isBetter).count(), rows.size(), dearer);
        out.flush();
        options.write(FirstCutRow.HEADER, rows.stream().map(FirstCutRow::cells).toList());
        return dearer == 0 ? 0 : 1;
    }

    private static void line(
            PrintWriter out,
            String name,
            BigDecimal free,
            BigDecimal rip,
            BigDecimal crosscut,
            BigDecimal bound,
            boolean complete) {
        out.printf(
                Locale.ROOT,
                "%-34s %10s %10s %14s %10s  %s%n",
                name,
                free,
                rip,
                crosscut,
                bound,
                complete ? "" : "PARTS LEFT OUT");
        out.flush();
    }

    private static BigDecimal sum(List<FirstCutRow> rows, Function<FirstCutRow, BigDecimal> column) {
        return rows.stream().map(column).reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    private List<Instance> instances(CommandSpec command) {
        try {
            return Generated.of(generate, options.seed());
        } catch (IllegalArgumentException e) {
            throw new ParameterException(command.commandLine(), String.valueOf(e.getMessage()), e);
        }
    }
}
