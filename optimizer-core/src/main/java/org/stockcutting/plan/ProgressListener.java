package org.stockcutting.plan;

/** Hears of every improvement; called from the searching thread, so it must be quick. */
@FunctionalInterface
public interface ProgressListener {

    /** Listens to nothing. */
    ProgressListener NONE = progress -> {};

    void onProgress(Progress progress);
}
