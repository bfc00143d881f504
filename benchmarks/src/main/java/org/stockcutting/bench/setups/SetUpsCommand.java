package org.stockcutting.bench.setups;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.stockcutting.bench.instances.Generated;
import org.stockcutting.bench.instances.Instance;
import org.stockcutting.bench.instances.InstanceFiles;
import org.stockcutting.bench.quality.RowOptions;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code set-ups}: layouts and set-ups of each plan beside those of the first plan of the same value. */
@Command(
        name = "set-ups",
        mixinStandardHelpOptions = true,
        description = {
            "Plans jobs and compares what a user gets with what the engines had before patterns were saved at the same value:",
            "layouts; set-ups if one layout is cut after the other; set-ups in one sequence over all boards."
        },
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {"0:done", "1:a last plan is worse than its first", "2:a job cannot be read"})
public final class SetUpsCommand implements Callable<Integer> {

    @Parameters(paramLabel = "PATH", arity = "0..*", description = "job documents, or folders of them")
    private List<Path> paths = new ArrayList<>();

    @Option(names = "--generate", paramLabel = "KIND:COUNT", description = "jobs made by rule, as runs-30:4")
    private List<String> generate = new ArrayList<>();

    @Option(
            names = "--work",
            paramLabel = "N",
            defaultValue = "5000000",
            description = "steps a job (${DEFAULT-VALUE}: five seconds of one core of 2026)")
    private long work = 5_000_000;

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
        List<SetUpRow> rows = new ArrayList<>();
        out.printf("%-34s %6s  %-18s  %-18s  %-18s  %s%n", "job", "pieces", "layouts", "set-ups alone", "together", "");
        for (Instance instance : instances(spec)) {
            SetUpRow row = SetUpRow.of(instance.file(), instance.job(), work, options.seed());
            rows.add(row);
            line(out, row.job(), row.pieces(), row.first(), row.last(), row.same());
        }
        SetUpRow.Counts none = new SetUpRow.Counts(0, 0, 0, 0);
        SetUpRow.Counts first = rows.stream().map(SetUpRow::first).reduce(none, SetUpRow.Counts::plus);
        SetUpRow.Counts last = rows.stream().map(SetUpRow::last).reduce(none, SetUpRow.Counts::plus);
        boolean same = rows.stream().allMatch(SetUpRow::same);
        line(out, "sum", rows.stream().mapToInt(SetUpRow::pieces).sum(), first, last, same);
        out.printf(
                "against cutting the first plan layout by layout, our sequence has %s set-ups; %d different settings are the least%n",
                SetUpRow.saved(first.alone(), last.together()), last.settings());
        out.flush();
        options.write(SetUpRow.HEADER, rows.stream().map(SetUpRow::cells).toList());
        return same ? 0 : 1;
    }

    private static void line(
            PrintWriter out, String name, int pieces, SetUpRow.Counts first, SetUpRow.Counts last, boolean same) {
        out.printf(
                Locale.ROOT,
                "%-34s %6d  %-18s  %-18s  %-18s  %s%n",
                name,
                pieces,
                cell(first.layouts(), last.layouts()),
                cell(first.alone(), last.alone()),
                cell(first.together(), last.together()),
                same ? "same value" : "WORSE");
        out.flush();
    }

    private static String cell(int before, int after) {
        return before + " > " + after + " " + SetUpRow.saved(before, after);
    }

    private List<Instance> instances(CommandSpec command) throws IOException {
        InstanceFiles files = new InstanceFiles(
                null, false, line -> command.commandLine().getErr().println(line));
        List<Instance> instances = new ArrayList<>();
        try {
            for (Path path : paths) {
                instances.addAll(files.read(path));
            }
            for (String words : generate) {
                instances.addAll(Generated.of(words, options.seed()));
            }
        } catch (NoSuchFileException | IllegalArgumentException e) {
            throw new ParameterException(command.commandLine(), String.valueOf(e.getMessage()), e);
        }
        if (instances.isEmpty()) {
            throw new ParameterException(
                    command.commandLine(), "nothing to plan: name job documents, or --generate KIND:COUNT");
        }
        return instances;
    }
}
