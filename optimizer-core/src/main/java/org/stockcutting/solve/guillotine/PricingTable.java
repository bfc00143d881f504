package org.stockcutting.solve.guillotine;

import java.util.Arrays;
import java.util.List;

/** The table of {@link ExactPricing}: for every point across, a line with the most worth up to every point along. */
final class PricingTable {

    /** Cells of one vector maximum that cost about as much as one elementary operation. */
    private static final int VECTOR = 2;

    final Points across;
    final Points along;
    final List<ExactPricing.Lying> lyings;
    final Reach reach;

    private final int[][] lines;
    /** Lines worth joining with others, ascending, and the first cell of each that holds anything. */
    private final int[] joining;

    private final int[] first;
    /** Cells up to here are short enough to be ripped. */
    private final int ripped;

    private int joins;
    private final int[] base;
    private final int[] pushed;
    private final int[] jumps;
    private long operations;

    /** @param reach what the saws reach; where not everything, lines must run along x */
    PricingTable(Points across, Points along, List<ExactPricing.Lying> lyings, Reach reach) {
        this.across = across;
        this.along = along;
        this.lyings = lyings;
        this.reach = reach;
        this.ripped = reach.rip() >= along.size() ? along.count() : along.before(reach.rip()) + 1;
        this.lines = new int[across.count()][];
        this.joining = new int[across.count()];
        this.first = new int[across.count()];
        this.base = new int[along.count()];
        this.pushed = new int[along.count()];
        this.jumps = new int[along.count()];
    }

    int at(int a, int b) {
        return lines[a][b];
    }

    /** The worth of everything up to a point across, by points along. */
    int[] line(int a) {
        return lines[a];
    }

    int most() {
        return lines[lines.length - 1][along.count() - 1];
    }

    /** Fills all lines and returns what it cost. */
    long fill() {
        lines[0] = new int[along.count()];
        for (int a = 1; a < lines.length; a++) {
            int[] line = lines[a - 1].clone();
            join(a, line);
            System.arraycopy(line, 0, base, 0, line.length);
            boolean single = putSingles(a);
            operations += line.length / VECTOR;
            if (!single && Arrays.equals(line, lines[a - 1])) {
                lines[a] = lines[a - 1];
                continue;
            }
            lines[a] = line;
            // What is joined from smaller lines alone gives nothing that joining those lines would not.
            if (push(line, across.at[a] <= reach.crosscut())) {
                joining[joins] = a;
                first[joins] = firstWorth(line);
                joins++;
            }
        }
        return operations;
    }

    private void join(int a, int[] line) {
        int size = across.at[a];
        int most = Math.min(size / 2, reach.fence());
        for (int k = 0; k < joins && across.at[joining[k]] <= most; k++) {
            int[] other = lines[across.before(size - across.at[joining[k]])];
            raise(line, lines[joining[k]], other, first[k], ripped);
            operations += 2 + (line.length - first[k]) / VECTOR;
        }
    }

    /** Kept this plain so that the compiler turns it into vector instructions. */
    private static void raise(int[] line, int[] left, int[] right, int from, int to) {
        for (int b = from; b < to; b++) {
            line[b] = Math.max(line[b], left[b] + right[b]);
        }
    }

    private boolean putSingles(int a) {
        boolean any = false;
        for (ExactPricing.Lying lying : lyings) {
            if (across.behind(lying.across()) == a) {
                int b = along.behind(lying.along());
                any |= lying.value() > base[b];
                base[b] = Math.max(base[b], lying.value());
            }
        }
        return any;
    }

    /** Cuts the line's strip crosswise, if it can be; true if that or a piece gives more than the joined lines did. */
    private boolean push(int[] line, boolean cut) {
        Arrays.fill(pushed, 0);
        int[] at = along.at;
        int size = along.size();
        int count = 0;
        boolean more = false;
        for (int b = 1; b < line.length; b++) {
            int known = Math.max(pushed[b], line[b - 1]);
            int value = Math.max(base[b], known);
            more |= value > line[b];
            line[b] = value;
            if (value == line[b - 1] || !cut) {
                continue;
            }
            if (base[b] > known) {
                jumps[count++] = b;
            }
            int room = size - at[b];
            int k = 0;
            for (; k < count && at[jumps[k]] <= room; k++) {
                int to = along.behind(at[b] + at[jumps[k]]);
                pushed[to] = Math.max(pushed[to], value + line[jumps[k]]);
            }
            operations += 2L * k;
        }
        operations += line.length;
        return more;
    }

    private static int firstWorth(int[] line) {
        int b = 0;
        while (line[b] == 0) {
            b++;
        }
        return b;
    }
}
