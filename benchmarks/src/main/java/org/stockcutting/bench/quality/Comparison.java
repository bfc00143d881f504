package org.stockcutting.bench.quality;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Predicate;
import org.apache.commons.math3.distribution.BinomialDistribution;

/**
 * Two tables of the same jobs, old and new, job by job.
 *
 * <p>Single jobs go either way when the clock limits them, so a loss is one of these: a job that was complete is not so any more or
 * broke; something that cannot be true; values, or proofs, got worse more often than better and so often that chance would do it less
 * than once in twenty (one-sided sign test; Dixon, Mood, Journal of the American Statistical Association 41, 1946); the mean value of the
 * jobs got worse by more than a tenth of a percent; one job got worse by more than 5 % and more than one unit. Strictly, every single job
 * that got worse is a loss: for tables under a work limit.
 */
final class Comparison {

    private static final double CHANCE = 0.05;
    private static final double MEAN_LOSS = 0.001;
    private static final double JOB_LOSS = 0.05;
    private static final double PERCENT = 100;

    /** A job in both tables. */
    private record Pair(Row before, Row after) {

        boolean comparable() {
            return before.isComplete() && after.isComplete();
        }

        /** Below 0 where the new value is better. */
        int change() {
            return comparable() ? found(after).compareTo(found(before)) : 0;
        }

        double relative() {
            BigInteger old = found(before);
            if (change() == 0 || old.signum() == 0) {
                return 0;
            }
            return found(after).subtract(old).doubleValue() / old.doubleValue();
        }

        boolean isBigLoss() {
            return relative() > JOB_LOSS && found(after).subtract(found(before)).compareTo(BigInteger.ONE) > 0;
        }

        private static BigInteger found(Row row) {
            BigInteger found = row.found();
            return found == null ? BigInteger.ZERO : found;
        }

        String text() {
            return String.format(
                    Locale.ROOT,
                    "%s: %s (%s) -> %s (%s)",
                    after.key(),
                    before.found(),
                    before.status(),
                    after.found(),
                    after.status());
        }
    }

    private final List<Pair> pairs = new ArrayList<>();
    private final int onlyOld;
    private final int onlyNew;
    private final boolean strict;

    /**
     * @param before the old table
     * @param after the new one
     * @param strict true if every worse job is a loss
     */
    Comparison(List<Row> before, List<Row> after, boolean strict) {
        Map<String, Row> old = new LinkedHashMap<>();
        before.forEach(row -> old.put(row.key(), row));
        int fresh = 0;
        for (Row row : after) {
            Row other = old.remove(row.key());
            if (other == null) {
                fresh++;
            } else {
                pairs.add(new Pair(other, row));
            }
        }
        this.onlyOld = old.size();
        this.onlyNew = fresh;
        this.strict = strict;
    }

    /** How many jobs stand in both tables. */
    int common() {
        return pairs.size();
    }

    /** One sentence a loss; none if the new table is as good as the old one. */
    List<String> losses() {
        List<String> losses = new ArrayList<>();
        pairs.forEach(pair -> losses.addAll(pair.after().contradictions()));
        for (Pair pair : pairs) {
            if (pair.before().isComplete() && !pair.after().isComplete()) {
                losses.add("not complete any more: " + pair.text());
            } else if (pair.isBigLoss() || strict && pair.change() > 0) {
                losses.add("worse: " + pair.text());
            } else if (strict && lostProof(pair)) {
                losses.add("not proved any more: " + pair.text());
            }
        }
        if (meanChange() > MEAN_LOSS) {
            losses.add(String.format(Locale.ROOT, "the mean value got worse by %.3f %%", PERCENT * meanChange()));
        }
        sign("values", worse(), better(), losses);
        sign("proofs", count(Comparison::lostProof), count(Comparison::wonProof), losses);
        return losses;
    }

    private static void sign(String what, long worse, long better, List<String> losses) {
        int all = Math.toIntExact(worse + better);
        if (worse > better && 1 - new BinomialDistribution(all, 0.5).cumulativeProbability((int) worse - 1) < CHANCE) {
            losses.add(what + " got worse on " + worse + " jobs and better on " + better + ": more than chance");
        }
    }

    private static boolean lostProof(Pair pair) {
        return pair.before().isProved() && !pair.after().isProved();
    }

    private static boolean wonProof(Pair pair) {
        return !pair.before().isProved() && pair.after().isProved();
    }

    private long worse() {
        return count(pair -> pair.change() > 0);
    }

    private long better() {
        return count(pair -> pair.change() < 0);
    }

    private long count(Predicate<Pair> wanted) {
        return pairs.stream().filter(wanted).count();
    }

    private double meanChange() {
        return pairs.stream()
                .filter(Pair::comparable)
                .mapToDouble(Pair::relative)
                .average()
                .orElse(0);
    }

    /** What changed, the worst jobs first. */
    String text(int named) {
        StringBuilder text = new StringBuilder();
        text.append(String.format(
                Locale.ROOT,
                "%d jobs in both tables (%d only in the old one, %d only in the new one)%n",
                pairs.size(),
                onlyOld,
                onlyNew));
        text.append(String.format(
                Locale.ROOT,
                "value: better on %d, worse on %d, mean change %+.4f %%%n",
                better(),
                worse(),
                PERCENT * meanChange()));
        text.append(String.format(
                Locale.ROOT, "proved: won %d, lost %d%n", count(Comparison::wonProof), count(Comparison::lostProof)));
        pairs.stream()
                .filter(pair -> pair.relative() > 0)
                .sorted(Comparator.comparingDouble(Pair::relative).reversed().thenComparing(Pair::text))
                .limit(named)
                .forEach(pair -> text.append("  worse ").append(pair.text()).append(System.lineSeparator()));
        return text.toString();
    }
}
