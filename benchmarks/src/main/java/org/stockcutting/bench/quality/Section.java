package org.stockcutting.bench.quality;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * One table of a report, the same in text and in HTML.
 *
 * @param title what it shows
 * @param note how to read it, or nothing
 * @param headers names of its columns; the first is a name, the others are figures
 * @param lines its rows
 */
record Section(String title, String note, List<String> headers, List<List<String>> lines) {

    static final String VALUES = "Value against bound";
    static final String WOOD = "Where the wood goes";
    static final String YIELDS = "Yield over the jobs";

    private static final int NAMED = 10;

    Section {
        headers = List.copyOf(headers);
        lines = List.copyOf(lines);
    }

    /** Everything that is said about rows in tables; tables without lines are left out. */
    static List<Section> all(List<Row> rows) {
        Summary all = Summary.all(rows);
        List<Summary> groups = new ArrayList<>(Summary.byGroup(rows));
        if (groups.size() != 1) {
            groups.add(all);
        }
        return Stream.of(
                        values(groups),
                        known(groups),
                        wood(groups),
                        yields(groups),
                        filling("Wood filled by material", Filling.byMaterial(rows)),
                        filling("Wood filled by stock length, most used ones", Filling.byLength(rows)),
                        jobs("Slowest jobs", all.slowest(NAMED)),
                        jobs("Worst jobs", worst(all)))
                .filter(section -> !section.lines.isEmpty())
                .toList();
    }

    /** Left out something, broke, or over a bound. */
    private static List<Row> worst(Summary all) {
        return all.worst(NAMED).stream()
                .filter(row -> !row.isComplete() || row.gap() > 0)
                .toList();
    }

    private static Section values(List<Summary> groups) {
        List<List<String>> lines = new ArrayList<>();
        for (Summary g : groups) {
            Distribution gap = g.gap();
            lines.add(List.of(
                    g.name(),
                    String.valueOf(g.rows().size()),
                    String.valueOf(g.complete()),
                    String.valueOf(g.optimal()),
                    String.valueOf(g.proved()),
                    Figures.percent(gap.mean(), 3),
                    Figures.percent(gap.most(), 2),
                    Figures.seconds(g.seconds().mean()),
                    Figures.seconds(g.seconds().most())));
        }
        return new Section(
                VALUES,
                "Certified: value equals a bound that the checker confirmed in exact arithmetic. Proved: that, or closed by exact search. "
                        + "Gap: value over the better of both bounds, complete jobs only.",
                List.of(
                        "group",
                        "jobs",
                        "all placed",
                        "certified",
                        "proved",
                        "mean gap",
                        "worst gap",
                        "mean s",
                        "longest s"),
                lines);
    }

    private static Section known(List<Summary> groups) {
        List<List<String>> lines = new ArrayList<>();
        for (Summary g : groups) {
            if (g.withKnown() > 0) {
                Distribution over = g.gapToKnown();
                lines.add(List.of(
                        g.name(),
                        String.valueOf(g.withKnown()),
                        String.valueOf(g.atKnown()),
                        Figures.percent(over.mean(), 3),
                        Figures.percent(over.median(), 3),
                        Figures.percent(over.most(), 2)));
            }
        }
        return new Section(
                "Value against the best known",
                "Best values as the literature has them; some of sheets were found under wider rules and may be out of reach.",
                List.of("group", "jobs", "reached", "mean over", "median over", "most over"),
                lines);
    }

    private static Section wood(List<Summary> groups) {
        List<String> headers = new ArrayList<>(List.of("group"));
        headers.addAll(List.of("parts", "allowance", "kerf", "trim", "zones", "offcuts kept", "waste"));
        List<List<String>> lines = new ArrayList<>();
        for (Summary g : groups) {
            if (!g.yield().isEmpty()) {
                List<String> line = new ArrayList<>(List.of(g.name()));
                for (int i = 0; i < Shares.NAMES.size(); i++) {
                    line.add(Figures.percent(g.share(i).mean(), 2));
                }
                lines.add(line);
            }
        }
        return new Section(WOOD, "Mean share of the wood used, each job counted alike.", headers, lines);
    }

    private static Section yields(List<Summary> groups) {
        List<List<String>> lines = new ArrayList<>();
        for (Summary g : groups) {
            Distribution y = g.yield();
            if (!y.isEmpty()) {
                lines.add(distribution(g.name(), y.count(), y));
            }
        }
        return new Section(
                YIELDS,
                "Finished parts over wood used. The interval is that of the mean (95 %, Student's t).",
                List.of("group", "jobs", "mean", "95 % interval", "median", "least", "most"),
                lines);
    }

    private static Section filling(String title, List<Filling> fillings) {
        List<List<String>> lines = new ArrayList<>();
        fillings.forEach(f -> lines.add(distribution(f.name(), f.boards(), f.filled())));
        return new Section(
                title,
                "Share of the stock's area that became rough pieces, over the jobs that use it.",
                List.of("stock", "boards", "mean", "95 % interval", "median", "least", "most"),
                lines);
    }

    private static List<String> distribution(String name, int count, Distribution d) {
        return List.of(
                name,
                String.valueOf(count),
                Figures.percent(d.mean(), 2),
                Figures.interval(d, 2),
                Figures.percent(d.median(), 2),
                Figures.percent(d.least(), 2),
                Figures.percent(d.most(), 2));
    }

    private static Section jobs(String title, List<Row> rows) {
        List<List<String>> lines = new ArrayList<>();
        rows.forEach(row -> lines.add(job(row)));
        return new Section(
                title, "", List.of("job", "status", "stopped", "value", "bound", "gap", "pieces", "s"), lines);
    }

    static List<String> job(Row row) {
        return List.of(
                row.file(),
                row.isFailed() ? row.remark() : row.status(),
                row.stopReason().isEmpty() ? "-" : row.stopReason(),
                row.found() == null ? "-" : row.found().toString(),
                row.anyBound() == null ? "-" : String.valueOf(row.anyBound()),
                Figures.percent(row.gap(), 2),
                String.valueOf(row.pieces()),
                Figures.seconds(row.seconds()));
    }

    /** The table with its columns set under each other. */
    String text() {
        StringBuilder text = new StringBuilder(title).append('\n');
        int[] widths = new int[headers.size()];
        Stream.concat(Stream.of(headers), lines.stream()).forEach(line -> {
            for (int i = 0; i < widths.length; i++) {
                widths[i] = Math.max(widths[i], line.get(i).length());
            }
        });
        Stream.concat(Stream.of(headers), lines.stream()).forEach(line -> {
            StringBuilder row = new StringBuilder("  ");
            for (int i = 0; i < widths.length; i++) {
                row.append(String.format(
                        Locale.ROOT, (i == 0 ? "%-" : "  %") + Math.max(1, widths[i]) + "s", line.get(i)));
            }
            text.append(row.toString().stripTrailing()).append('\n');
        });
        return text.append('\n').toString();
    }
}
