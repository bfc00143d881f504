package org.stockcutting.bench.quality;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/**
 * The rows of one group, added up.
 *
 * @param name of the group
 * @param rows its jobs
 */
record Summary(String name, List<Row> rows) {

    Summary {
        rows = List.copyOf(rows);
    }

    /** One for each group, by name. */
    static List<Summary> byGroup(List<Row> rows) {
        return by(rows, Row::group);
    }

    /** One for each of whatever rows are told apart by, by name. */
    static List<Summary> by(List<Row> rows, Function<Row, String> word) {
        Map<String, List<Row>> groups = new TreeMap<>();
        rows.forEach(row ->
                groups.computeIfAbsent(word.apply(row), g -> new ArrayList<>()).add(row));
        List<Summary> summaries = new ArrayList<>();
        groups.forEach((name, group) -> summaries.add(new Summary(name, group)));
        return summaries;
    }

    static Summary all(List<Row> rows) {
        return new Summary("all", rows);
    }

    long complete() {
        return rows.stream().filter(Row::isComplete).count();
    }

    /** With a certificate. */
    long optimal() {
        return rows.stream().filter(row -> row.status().equals("optimal")).count();
    }

    /** With or without a certificate. */
    long proved() {
        return rows.stream().filter(Row::isProved).count();
    }

    /** Jobs that something is known about. */
    long withKnown() {
        return rows.stream().filter(row -> row.known().best() != null).count();
    }

    long atKnown() {
        return rows.stream().filter(Row::isAtKnown).count();
    }

    Distribution gap() {
        return of(Row::gap);
    }

    Distribution gapToKnown() {
        return of(Row::gapToKnown);
    }

    Distribution seconds() {
        return of(Row::seconds);
    }

    /** Yield of jobs that have a plan. */
    Distribution yield() {
        return of(row -> row.stock().isEmpty() ? Double.NaN : row.yield());
    }

    /** Mean share of jobs that have a plan, by its place in {@link Shares#NAMES}. */
    Distribution share(int index) {
        return of(row -> row.stock().isEmpty()
                ? Double.NaN
                : row.shares().values().get(index).doubleValue());
    }

    private Distribution of(ToDoubleFunction<Row> figure) {
        return Distribution.of(rows.stream().map(figure::applyAsDouble).toList());
    }

    List<Row> slowest(int count) {
        return first(count, Comparator.comparingDouble(Row::seconds).reversed());
    }

    /** Broken and incomplete ones first, then by how far they are over a bound. */
    List<Row> worst(int count) {
        return first(
                count,
                Comparator.comparing(Row::isComplete)
                        .thenComparing(row -> Double.isNaN(row.gap()) ? 0 : -row.gap())
                        .thenComparing(Row::key));
    }

    private List<Row> first(int count, Comparator<Row> order) {
        return rows.stream().sorted(order.thenComparing(Row::key)).limit(count).toList();
    }
}
