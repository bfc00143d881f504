package org.stockcutting.plan;

/** Hears of every improvement; called from the searching thread, so it must be quick. */
@FunctionalInterface
public interface ProgressListener {

    /** Listens to nothing. */
    ProgressListener NONE = progress -> {};

    /** Hears of one step; called from the searching thread, or from one of them. */
    void onProgress(Progress progress);
}
