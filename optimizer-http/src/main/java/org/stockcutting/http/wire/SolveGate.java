package org.stockcutting.http.wire;

import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

/** Lets a bounded number of jobs be planned at a time; who has to wait too long is sent away with a time to come back. */
final class SolveGate {

    private static final String RETRY_SECONDS = "5";

    private final Semaphore turns;
    private final int waitMillis;

    SolveGate(int solves, int waitMillis) {
        this.turns = new Semaphore(solves, true);
        this.waitMillis = waitMillis;
    }

    <T> T solve(Supplier<T> work) {
        try {
            if (!turns.tryAcquire(waitMillis, TimeUnit.MILLISECONDS)) {
                throw busy("Every planner was busy for " + waitMillis + " ms.");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw busy("The service is stopping.");
        }
        try {
            return work.get();
        } finally {
            turns.release();
        }
    }

    private static ProblemException busy(String detail) {
        return new ProblemException(Problem.of(ProblemKind.BUSY, detail).with("Retry-After", RETRY_SECONDS));
    }
}
