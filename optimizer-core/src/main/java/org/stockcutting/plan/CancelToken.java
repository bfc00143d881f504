package org.stockcutting.plan;

/** Asks a running search to stop and return the best plan so far. Safe to use from any thread; cannot be undone. */
public final class CancelToken {

    private volatile boolean cancelled;

    public void cancel() {
        cancelled = true;
    }

    public boolean isCancelled() {
        return cancelled;
    }
}
