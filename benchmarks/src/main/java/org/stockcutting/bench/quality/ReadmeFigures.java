package org.stockcutting.bench.quality;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.stockcutting.bench.peers.PeersReport;

/** The section of the README that is worked out from the newest table of results. */
final class ReadmeFigures {

    static final String START = "<!-- performance: start (written by benchmarks.jar readme) -->";
    static final String END = "<!-- performance: end -->";

    private static final Pattern DATED = Pattern.compile("[0-9]{4}-[0-9]{2}-[0-9]{2}\\.csv");
    private static final Pattern PEERS = Pattern.compile("peers-[0-9]{4}-[0-9]{2}-[0-9]{2}\\.csv");
    private static final int DATE = 10;

    private ReadmeFigures() {}

    /** The newest table of all files: the last by name of those whose names are a date; tables of one row have a word behind it. */
    static Optional<Path> newest(Path folder) throws IOException {
        return newest(folder, DATED);
    }

    /** What stands under the figures: the newest comparison with other methods, or nothing. */
    static String peers(Path folder) throws IOException {
        Optional<Path> table = newest(folder, PEERS);
        if (table.isEmpty()) {
            return "";
        }
        String name = String.valueOf(table.get().getFileName());
        int start = name.indexOf('-') + 1;
        return "\n" + PeersReport.markdown(table.get(), name.substring(start, start + DATE));
    }

    private static Optional<Path> newest(Path folder, Pattern names) throws IOException {
        if (!Files.isDirectory(folder)) {
            return Optional.empty();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file ->
                            names.matcher(String.valueOf(file.getFileName())).matches())
                    .max(Path::compareTo);
        }
    }

    /**
     * The text with its section written anew.
     *
     * @throws IllegalArgumentException if the text has no two markers in their order
     */
    static String replaced(String readme, String section) {
        int start = readme.indexOf(START);
        int end = readme.indexOf(END);
        if (start < 0 || end < start) {
            throw new IllegalArgumentException("wanted a line \"" + START + "\" and below it a line \"" + END + "\"");
        }
        return readme.substring(0, start + START.length()) + "\n\n" + section + "\n" + readme.substring(end);
    }

    /** The section. */
    static String section(Path table, List<Row> rows) {
        String name = String.valueOf(table.getFileName());
        List<String> limits = rows.stream().map(Row::limit).distinct().toList();
        List<String> seeds =
                rows.stream().map(row -> String.valueOf(row.seed())).distinct().toList();
        StringBuilder text = new StringBuilder();
        text.append("Measured on ")
                .append(name, 0, DATE)
                .append(", ")
                .append(rows.size())
                .append(" jobs, one thread each, limit a job ")
                .append(String.join(", ", limits))
                .append(", seed ")
                .append(String.join(", ", seeds))
                .append(" (`yield`; every job in `benchmarks/results/")
                .append(name)
                .append(
                        "`).\nGaps are over the better of the certified and the searched bound, or over the best value known.\n\n");
        text.append(
                "| jobs | how many | all placed | proved least | mean gap | known best reached | mean over known | mean s | mean yield |\n");
        text.append("|---|--:|--:|--:|--:|--:|--:|--:|--:|\n");
        for (Summary group : Summary.by(rows, ReadmeFigures::family)) {
            line(text, group);
        }
        line(text, Summary.all(rows));
        long wrong = rows.stream().filter(failed()).count();
        if (wrong > 0) {
            text.append("\n")
                    .append(wrong)
                    .append(" of these jobs broke or contradict what is known; see the table.\n");
        }
        return text.toString();
    }

    private static Predicate<Row> failed() {
        return row -> row.isFailed() || !row.contradictions().isEmpty();
    }

    private static void line(StringBuilder text, Summary group) {
        long known = group.withKnown();
        List<String> cells = new ArrayList<>(List.of(
                group.name(),
                String.valueOf(group.rows().size()),
                String.valueOf(group.complete()),
                String.valueOf(group.proved()),
                Figures.percent(group.gap().mean(), 3),
                known == 0 ? "-" : group.atKnown() + " of " + known,
                Figures.percent(group.gapToKnown().mean(), 3),
                String.format(Locale.ROOT, "%.1f", group.seconds().mean()),
                Figures.percent(group.yield().mean(), 1)));
        text.append("| ").append(String.join(" | ", cells)).append(" |\n");
    }

    /** The classes of one set together; all else by its group. */
    private static String family(Row row) {
        String group = row.group();
        int within = group.indexOf("/class ");
        return within < 0 ? group : group.substring(0, within) + (group.endsWith(" turned") ? " turned" : "");
    }
}
