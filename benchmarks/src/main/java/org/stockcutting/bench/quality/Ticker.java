package org.stockcutting.bench.quality;

import java.io.PrintWriter;
import java.time.Duration;
import java.util.Locale;

/** One line on a terminal that says how far a run is and when it may end; nothing where nobody looks. */
final class Ticker {

    private final PrintWriter out;
    private final boolean terminal;
    private final int jobs;
    private final long start = System.nanoTime();
    private int done;
    private double over;
    private int compared;

    /**
     * @param out where the line goes
     * @param terminal true if somebody looks
     * @param jobs how many there are
     */
    Ticker(PrintWriter out, boolean terminal, int jobs) {
        this.out = out;
        this.terminal = terminal;
        this.jobs = jobs;
    }

    void tick(Row row) {
        done++;
        if (!Double.isNaN(row.gap())) {
            over += row.gap();
            compared++;
        }
        if (terminal) {
            out.print("\r" + line(Duration.ofNanos(System.nanoTime() - start)) + "\u001b[K");
            out.flush();
        }
    }

    /** Leaves the line. */
    void end() {
        if (terminal && done > 0) {
            out.println();
            out.flush();
        }
    }

    String line(Duration gone) {
        long left = done == 0 ? 0 : gone.toSeconds() * (jobs - done) / done;
        String gap = compared == 0 ? "" : String.format(Locale.ROOT, ", %.3f %% over bounds", 100 * over / compared);
        return String.format(
                Locale.ROOT,
                "%d of %d jobs%s, %s gone, about %s left",
                done,
                jobs,
                gap,
                clock(gone.toSeconds()),
                clock(left));
    }

    private static String clock(long seconds) {
        return String.format(Locale.ROOT, "%d:%02d:%02d", seconds / 3600, seconds / 60 % 60, seconds % 60);
    }
}
