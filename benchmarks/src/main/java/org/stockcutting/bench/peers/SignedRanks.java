package org.stockcutting.bench.peers;

import java.util.List;
import org.apache.commons.math3.stat.inference.WilcoxonSignedRankTest;

/**
 * The paired signed-rank test (Wilcoxon, Biometrics Bulletin 1, 1945), two-sided. Pairs without a difference are dropped first, as Wilcoxon
 * does; the library would count them against one side. The distribution is exact up to {@value #MOST_EXACT} pairs with ranks of their own,
 * normal beyond.
 *
 * @param better pairs in which the first is less
 * @param equal pairs without a difference
 * @param worse pairs in which the first is more
 * @param p how likely so one-sided a result is if neither is better; 1 without any difference
 */
record SignedRanks(int better, int equal, int worse, double p) {

    /** The exact distribution goes through all 2^n signs. */
    static final int MOST_EXACT = 16;

    /** A pair of values on the same job. */
    record Pair(double first, double second) {}

    static SignedRanks of(List<Pair> pairs) {
        List<Pair> different =
                pairs.stream().filter(p -> p.first() != p.second()).toList();
        int better =
                (int) different.stream().filter(p -> p.first() < p.second()).count();
        double[] first = different.stream().mapToDouble(Pair::first).toArray();
        double[] second = different.stream().mapToDouble(Pair::second).toArray();
        double p = different.isEmpty()
                ? 1
                : new WilcoxonSignedRankTest().wilcoxonSignedRankTest(first, second, different.size() <= MOST_EXACT);
        return new SignedRanks(better, pairs.size() - different.size(), different.size() - better, Math.min(1, p));
    }
}
