package org.stockcutting.http.cli;

import java.io.PrintWriter;
import java.math.BigInteger;
import org.stockcutting.http.print.Amounts;
import org.stockcutting.job.Job;
import org.stockcutting.plan.Progress;
import org.stockcutting.plan.ProgressListener;

/** One line on the terminal, written over and over while a search runs: best so far, bound, time. */
final class ProgressLine implements ProgressListener {

    private static final int WIDTH = 79;
    private static final long QUIET_NANOS = 100_000_000L;

    private final PrintWriter out;
    private final Job job;
    private final Amounts amounts;
    private final long start = System.nanoTime();
    private long last = start - QUIET_NANOS;
    private boolean shown;

    ProgressLine(Job job, PrintWriter out) {
        this.job = job;
        this.out = out;
        amounts = new Amounts(job.writing());
    }

    @Override
    public synchronized void onProgress(Progress progress) {
        long now = System.nanoTime();
        if (now - last < QUIET_NANOS) {
            return;
        }
        last = now;
        BigInteger value = progress.value();
        BigInteger bound = progress.bound();
        String text = (value == null ? "searching" : "best so far " + amounts.value(job.goal(), value))
                + (bound == null ? "" : ", none under " + amounts.bound(job.goal(), bound))
                + ", " + (now - start) / 1_000_000_000L + " s";
        write(text.length() > WIDTH ? text.substring(0, WIDTH) : text);
        shown = true;
    }

    /** Wipes the line, so that what follows starts on a clean one. */
    synchronized void end() {
        if (shown) {
            write("");
            out.print('\r');
            out.flush();
        }
    }

    private void write(String text) {
        out.print("\r" + text + " ".repeat(WIDTH - text.length()));
        out.flush();
    }
}
