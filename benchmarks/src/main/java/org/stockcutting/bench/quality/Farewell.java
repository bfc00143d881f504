package org.stockcutting.bench.quality;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.stockcutting.plan.CancelToken;

/** On Ctrl-C: stops what is being solved, and holds the process until the report of what is done is written. */
final class Farewell implements AutoCloseable {

    private static final int SECONDS = 30;

    private final CancelToken cancel;
    private final CountDownLatch reported = new CountDownLatch(1);
    private final Thread hook = new Thread(this::stop, "farewell");

    Farewell(CancelToken cancel) {
        this.cancel = cancel;
        Runtime.getRuntime().addShutdownHook(hook);
    }

    private void stop() {
        cancel.cancel();
        try {
            if (!reported.await(SECONDS, TimeUnit.SECONDS)) {
                System.err.println("the report could not be written in time; --resume goes on with the table");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** The report is written. */
    @Override
    public void close() {
        reported.countDown();
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException e) {
            // The process is ending already, and waits for no more than the count.
            cancel.cancel();
        }
    }
}
