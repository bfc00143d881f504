package org.stockcutting.bench.quality;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.stockcutting.bench.instances.Known;
import org.stockcutting.plan.Status;

/**
 * One job and what became of it. Values are in atomic units of the goal.
 *
 * @param file name of the job
 * @param group what it is summed up with
 * @param goal word of the goal
 * @param pieces pieces wanted
 * @param found value reached, or null without a plan
 * @param bound certified bound, or null
 * @param searchedBound closed by exact search, or null where not better
 * @param known what others say
 * @param status word of the status, or {@link #FAILED}
 * @param stopReason why the search ended
 * @param unplaced pieces left out
 * @param seconds wall clock
 * @param work weighted steps
 * @param limit what limited the search
 * @param seed seed of the search
 * @param yield parts over wood used, as the plan says it
 * @param shares where the wood went
 * @param stock what was used
 * @param remark why there is no plan, or nothing
 */
record Row(
        String file,
        String group,
        String goal,
        int pieces,
        @Nullable BigInteger found,
        @Nullable BigInteger bound,
        @Nullable BigInteger searchedBound,
        Known known,
        String status,
        String stopReason,
        int unplaced,
        double seconds,
        long work,
        String limit,
        long seed,
        double yield,
        Shares shares,
        List<StockUse> stock,
        String remark) {

    /** Status of a job on which the library broke. */
    static final String FAILED = "failed";

    private static final Set<String> COMPLETE = Set.of(Status.OPTIMAL.word(), Status.FEASIBLE.word());

    Row {
        stock = List.copyOf(stock);
    }

    /** Tells the same job with other rules apart. */
    String key() {
        return group + " : " + file;
    }

    boolean isComplete() {
        return found != null && COMPLETE.contains(status);
    }

    boolean isFailed() {
        return status.equals(FAILED);
    }

    /** The best of both bounds, or null. */
    @Nullable BigInteger anyBound() {
        return searchedBound == null ? bound : bound == null ? searchedBound : bound.max(searchedBound);
    }

    /** True if nothing can be better, with or without a certificate. */
    boolean isProved() {
        return isComplete() && found != null && found.equals(anyBound());
    }

    /** True if the value is the best known one or better. */
    boolean isAtKnown() {
        return isComplete() && found != null && known.best() != null && found.compareTo(known.best()) <= 0;
    }

    /** How far over the bounds; not a number where something is left out or no bound is over 0. */
    double gap() {
        return over(anyBound());
    }

    /** How far over the best known value, below 0 where better; not a number where none is known. */
    double gapToKnown() {
        return over(known.best());
    }

    private double over(@Nullable BigInteger base) {
        if (!isComplete() || found == null || base == null) {
            return Double.NaN;
        }
        if (base.signum() == 0) {
            return found.signum() == 0 ? 0 : Double.NaN;
        }
        return found.subtract(base).doubleValue() / base.doubleValue();
    }

    /** Sentences about what cannot be: better than a proved bound, or a bound above a value that can be had. */
    List<String> contradictions() {
        List<String> wrong = new ArrayList<>();
        if (!isComplete() || found == null) {
            return wrong;
        }
        if (known.bound() != null && found.compareTo(known.bound()) < 0) {
            wrong.add(file + ": found " + found + " is below " + known.bound() + ", which nothing can be");
        }
        for (BigInteger own : bounds()) {
            if (own.compareTo(found) > 0) {
                wrong.add(file + ": found " + found + " is below our own bound " + own);
            }
            if (known.reachable() && known.best() != null && own.compareTo(known.best()) > 0) {
                wrong.add(file + ": our bound " + own + " is above " + known.best() + ", which can be had");
            }
        }
        return wrong;
    }

    private List<BigInteger> bounds() {
        List<BigInteger> bounds = new ArrayList<>();
        if (bound != null) {
            bounds.add(bound);
        }
        if (searchedBound != null) {
            bounds.add(searchedBound);
        }
        return bounds;
    }
}
