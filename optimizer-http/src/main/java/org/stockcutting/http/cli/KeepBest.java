package org.stockcutting.http.cli;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.stockcutting.plan.CancelToken;

/**
 * Lets an interrupted command (Ctrl-C) finish with the best plan so far: the search is cancelled, and the machine waits a little until
 * the plan is printed.
 */
final class KeepBest implements AutoCloseable {

    private static final long MOST_SECONDS = 5;

    private final CancelToken cancel = new CancelToken();
    private final CountDownLatch printed = new CountDownLatch(1);
    private final Thread hook = new Thread(this::stopAndWait, "keep-best");

    KeepBest() {
        Runtime.getRuntime().addShutdownHook(hook);
    }

    CancelToken token() {
        return cancel;
    }

    private void stopAndWait() {
        cancel.cancel();
        try {
            if (!printed.await(MOST_SECONDS, TimeUnit.SECONDS)) {
                System.err.println("No plan could be finished within " + MOST_SECONDS + " s of the interrupt.");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void close() {
        printed.countDown();
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException e) {
            // The machine is going down already: that is what the hook was for.
            printed.countDown();
        }
    }
}
