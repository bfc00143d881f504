package org.stockcutting.bench.peers;

import java.math.BigInteger;
import org.jspecify.annotations.Nullable;

/**
 * What one method reached on one job.
 *
 * @param job name of the job
 * @param kind group of the job
 * @param method who
 * @param outcome what became of it
 * @param value atomic units of the goal, or null without a plan that may be compared
 * @param bound the best lower bound known of the job: ours, certified, or closed by exact search
 * @param proved true if the method proved its own value least
 * @param secondsToBest when its best was found
 * @param seconds when it ended
 * @param remark why there is no plan, or nothing
 */
record Result(
        String job,
        String kind,
        String method,
        Outcome outcome,
        @Nullable BigInteger value,
        @Nullable BigInteger bound,
        boolean proved,
        double secondsToBest,
        double seconds,
        String remark) {

    /** What became of a run. Only the first kind is compared. */
    enum Outcome {
        /** All pieces placed, and the checker agrees. */
        COMPLETE("complete"),
        /** Pieces are missing. */
        PARTIAL("partial"),
        /** No plan in the time. */
        NOTHING("none"),
        /** The checker refused the plan. */
        REFUSED("refused"),
        /** The method is not made for such a job and was not run. */
        DECLINED("declined");

        private final String word;

        Outcome(String word) {
            this.word = word;
        }

        String word() {
            return word;
        }
    }

    /** (value - bound) / bound; not a number where there is no value or the bound is nothing. */
    double gap() {
        if (value == null || bound == null || bound.signum() == 0) {
            return Double.NaN;
        }
        return value.subtract(bound).doubleValue() / bound.doubleValue();
    }

    /** True if nothing can be cheaper. */
    boolean isAtBound() {
        return value != null && value.equals(bound);
    }

    boolean isComplete() {
        return outcome == Outcome.COMPLETE;
    }

    Result withBound(@Nullable BigInteger best) {
        return new Result(job, kind, method, outcome, value, best, proved, secondsToBest, seconds, remark);
    }
}
