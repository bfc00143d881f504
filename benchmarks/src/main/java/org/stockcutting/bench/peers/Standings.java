package org.stockcutting.bench.peers;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Predicate;
import org.apache.commons.math3.stat.descriptive.rank.Median;
import org.jspecify.annotations.Nullable;

/** The comparison as text. */
final class Standings {

    private final List<Result> results;
    private final List<String> methods;

    Standings(List<Result> results, List<String> methods) {
        this.results = List.copyOf(results);
        this.methods = List.copyOf(methods);
    }

    String text() {
        StringBuilder text = new StringBuilder();
        overall(text);
        byKind(text);
        versus(text);
        lost(text);
        faults(text);
        return text.toString();
    }

    /** The two tables that say most, and where a peer wins, as Markdown. */
    String markdown() {
        StringBuilder text = new StringBuilder(
                "| method | plans | mean gap | worst | at bound | proved | s to best | ours better, equal, worse | p |\n");
        text.append("|---|--:|--:|--:|--:|--:|--:|--:|--:|\n");
        for (String method : methods) {
            text.append("| ").append(String.join(" | ", line(method))).append(" |\n");
        }
        text.append("\n| kind | ").append(String.join(" | ", methods)).append(" |\n|---|");
        text.append("--:|".repeat(methods.size())).append('\n');
        for (String kind : kinds()) {
            text.append("| ").append(kind);
            methods.forEach(method -> text.append(" | ").append(kindCell(kind, method)));
            text.append(" |\n");
        }
        List<String> lost = better();
        return text.append("\nA peer is better than ours on ")
                .append(lost.isEmpty() ? "no job.\n" : lost.size() + ": " + String.join("; ", lost) + ".\n")
                .toString();
    }

    private List<String> line(String method) {
        List<Result> all = of(method, r -> r.outcome() != Result.Outcome.DECLINED);
        List<Result> complete = of(method, Result::isComplete);
        double[] gaps = gaps(complete);
        SignedRanks test = SignedRanks.of(pairs(method));
        boolean other = !method.equals(Contest.OURS);
        return List.of(
                method,
                complete.size() + " of " + all.size(),
                percent(Arrays.stream(gaps).average().orElse(Double.NaN)),
                percent(Arrays.stream(gaps).max().orElse(Double.NaN)),
                share(complete.stream().filter(Result::isAtBound).count(), all.size()),
                share(complete.stream().filter(Result::proved).count(), all.size()),
                String.format(Locale.ROOT, "%.2f", toBest(complete)),
                other ? test.better() + ", " + test.equal() + ", " + test.worse() : "",
                other ? String.format(Locale.ROOT, "%.2g", test.p()) : "");
    }

    private String kindCell(String kind, String method) {
        List<Result> run = of(method, r -> r.kind().equals(kind) && r.outcome() != Result.Outcome.DECLINED);
        List<Result> complete = run.stream().filter(Result::isComplete).toList();
        String mean = percent(Arrays.stream(gaps(complete)).average().orElse(Double.NaN));
        String found = complete.size() == run.size() ? "" : " (" + complete.size() + " of " + run.size() + ")";
        return run.isEmpty() ? "-" : mean + found;
    }

    /** Jobs where a peer has more, or the same for less. */
    private List<String> better() {
        List<String> lines = new ArrayList<>();
        for (Result other : results) {
            Result ours = ours(other);
            if ((other.isComplete() && !ours.isComplete()) || isLess(other.value(), ours.value())) {
                lines.add(other.job() + " (" + other.method() + " " + other.value() + ", ours " + ours.value() + ")");
            }
        }
        return lines;
    }

    private Set<String> kinds() {
        Set<String> kinds = new LinkedHashSet<>();
        results.forEach(r -> kinds.add(r.kind()));
        return kinds;
    }

    private static double toBest(List<Result> complete) {
        return complete.stream().mapToDouble(Result::secondsToBest).average().orElse(Double.NaN);
    }

    /** Results of one method. */
    private List<Result> of(String method, Predicate<Result> which) {
        return results.stream()
                .filter(r -> r.method().equals(method) && which.test(r))
                .toList();
    }

    private void overall(StringBuilder text) {
        text.append("value over the best bound known; time in seconds\n");
        text.append(String.format(
                "%-22s %5s %8s %8s %8s %8s %8s %9s%n",
                "method", "plans", "mean", "median", "worst", "at bound", "proved", "to best"));
        for (String method : methods) {
            List<Result> all = of(method, r -> r.outcome() != Result.Outcome.DECLINED);
            List<Result> complete = of(method, Result::isComplete);
            double[] gaps = gaps(complete);
            text.append(String.format(
                    Locale.ROOT,
                    "%-22s %2d/%-2d %8s %8s %8s %8s %8s %9.2f%n",
                    method,
                    complete.size(),
                    all.size(),
                    percent(Arrays.stream(gaps).average().orElse(Double.NaN)),
                    percent(gaps.length == 0 ? Double.NaN : new Median().evaluate(gaps)),
                    percent(Arrays.stream(gaps).max().orElse(Double.NaN)),
                    share(complete.stream().filter(Result::isAtBound).count(), all.size()),
                    share(complete.stream().filter(Result::proved).count(), all.size()),
                    toBest(complete)));
        }
    }

    private void byKind(StringBuilder text) {
        text.append("\nmean value over the bound by kind (plans of jobs; - declined)\n");
        text.append(String.format("%-22s", "kind"));
        methods.forEach(method -> text.append(String.format(" %20s", method)));
        text.append('\n');
        for (String kind : kinds()) {
            text.append(String.format("%-22s", kind));
            for (String method : methods) {
                List<Result> run = of(method, r -> r.kind().equals(kind) && r.outcome() != Result.Outcome.DECLINED);
                List<Result> complete = run.stream().filter(Result::isComplete).toList();
                String mean = percent(Arrays.stream(gaps(complete)).average().orElse(Double.NaN));
                String cell = run.isEmpty() ? "-" : mean + " (" + complete.size() + "/" + run.size() + ")";
                text.append(String.format(" %20s", cell));
            }
            text.append('\n');
        }
    }

    private void versus(StringBuilder text) {
        text.append("\nours against each, job by job, where both have all pieces (Wilcoxon signed ranks, two-sided)\n");
        text.append(
                String.format("%-22s %7s %7s %7s %9s %10s%n", "method", "better", "equal", "worse", "p", "only ours"));
        for (String method : methods) {
            if (!method.equals(Contest.OURS)) {
                SignedRanks test = SignedRanks.of(pairs(method));
                long onlyOurs = of(method, r -> !r.isComplete() && r.outcome() != Result.Outcome.DECLINED).stream()
                        .filter(r -> ours(r).isComplete())
                        .count();
                text.append(String.format(
                        Locale.ROOT,
                        "%-22s %7d %7d %7d %9.2g %10d%n",
                        method,
                        test.better(),
                        test.equal(),
                        test.worse(),
                        test.p(),
                        onlyOurs));
            }
        }
    }

    /** Values in units of ours, so that jobs of any size weigh alike. */
    private List<SignedRanks.Pair> pairs(String method) {
        List<SignedRanks.Pair> pairs = new ArrayList<>();
        for (Result other : of(method, Result::isComplete)) {
            Result ours = ours(other);
            BigInteger first = ours.value();
            BigInteger second = other.value();
            if (first != null && second != null) {
                double unit = first.max(BigInteger.ONE).doubleValue();
                pairs.add(new SignedRanks.Pair(first.doubleValue() / unit, second.doubleValue() / unit));
            }
        }
        return pairs;
    }

    private void lost(StringBuilder text) {
        List<String> lines = better();
        text.append("\nwhere a peer is better than ours: ").append(lines.isEmpty() ? "nowhere\n" : "\n");
        lines.forEach(line -> text.append("  ").append(line).append('\n'));
    }

    private void faults(StringBuilder text) {
        for (String line : contradictions()) {
            text.append("FAULT ").append(line).append('\n');
        }
        for (Result other : results) {
            if (other.outcome() == Result.Outcome.REFUSED) {
                text.append(String.format("refused: %s on %s: %s%n", other.method(), other.job(), other.remark()));
            }
        }
    }

    /** A plan below a bound, or one below what another method proved least: one of the two is wrong. */
    List<String> contradictions() {
        List<String> lines = new ArrayList<>();
        for (Result result : results) {
            if (isLess(result.value(), result.bound())) {
                lines.add(result.method() + " is below the bound on " + result.job());
            }
            for (Result other : results) {
                if (result.proved() && other.job().equals(result.job()) && isLess(other.value(), result.value())) {
                    lines.add(other.method() + " is below what " + result.method() + " proved on " + result.job());
                }
            }
        }
        return lines;
    }

    private static boolean isLess(@Nullable BigInteger a, @Nullable BigInteger b) {
        return a != null && b != null && a.compareTo(b) < 0;
    }

    private Result ours(Result other) {
        return results.stream()
                .filter(r -> r.method().equals(Contest.OURS) && r.job().equals(other.job()))
                .findFirst()
                .orElse(other);
    }

    private static double[] gaps(List<Result> complete) {
        return complete.stream()
                .mapToDouble(Result::gap)
                .filter(gap -> !Double.isNaN(gap))
                .toArray();
    }

    private static String percent(double share) {
        return Double.isNaN(share) ? "-" : String.format(Locale.ROOT, "%.2f %%", 100 * share);
    }

    private static String share(long part, int whole) {
        return whole == 0 ? "-" : String.format(Locale.ROOT, "%.0f %%", 100.0 * part / whole);
    }
}
