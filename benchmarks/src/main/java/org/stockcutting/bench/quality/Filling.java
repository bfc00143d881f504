package org.stockcutting.bench.quality;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;

/**
 * How full stock of one material or one length is cut, over all jobs that use it.
 *
 * @param name the material, or the length
 * @param boards boards of all jobs together
 * @param filled share of their area that became rough pieces, one figure a job
 */
record Filling(String name, int boards, Distribution filled) {

    private static final int MOST_LENGTHS = 20;

    /** Boards and what is filled of them, in one job. */
    private static final class Sum {
        private int boards;
        private double length;
        private double filled;

        private void add(StockUse use) {
            double reach = use.millimetres().doubleValue() * use.boards();
            boards += use.boards();
            length += reach;
            filled += reach * use.filled().doubleValue();
        }
    }

    /** By material. */
    static List<Filling> byMaterial(List<Row> rows) {
        return by(rows, StockUse::material, name -> name);
    }

    /** By length in millimetres, shortest first; only the most used ones, since every measured board has a length of its own. */
    static List<Filling> byLength(List<Row> rows) {
        List<Filling> all = by(rows, StockUse::millimetres, (BigDecimal length) -> length.toPlainString() + " mm");
        int least = all.stream()
                .map(Filling::boards)
                .sorted(Comparator.reverseOrder())
                .skip(MOST_LENGTHS)
                .findFirst()
                .orElse(0);
        return all.stream().filter(filling -> filling.boards > least).toList();
    }

    private static <K extends Comparable<K>> List<Filling> by(
            List<Row> rows, Function<StockUse, K> key, Function<K, String> name) {
        Map<K, List<Double>> shares = new TreeMap<>();
        Map<K, Integer> boards = new TreeMap<>();
        for (Row row : rows) {
            Map<K, Sum> sums = new TreeMap<>();
            row.stock()
                    .forEach(use ->
                            sums.computeIfAbsent(key.apply(use), k -> new Sum()).add(use));
            sums.forEach((k, sum) -> {
                shares.computeIfAbsent(k, x -> new ArrayList<>()).add(sum.length == 0 ? 0 : sum.filled / sum.length);
                boards.merge(k, sum.boards, Integer::sum);
            });
        }
        List<Filling> fillings = new ArrayList<>();
        shares.forEach((k, values) ->
                fillings.add(new Filling(name.apply(k), boards.getOrDefault(k, 0), Distribution.of(values))));
        return fillings;
    }
}
