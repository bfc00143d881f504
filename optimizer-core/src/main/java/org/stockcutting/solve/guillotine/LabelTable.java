package org.stockcutting.solve.guillotine;

import java.util.Arrays;
import java.util.List;

/**
 * The table of {@link LabelPricing}: for every rectangle in the board's corner that ends at points, the few best ways found to fill it
 * with no piece used twice. A label is such a way: its set of pieces, what they are worth, and what it was joined from.
 */
final class LabelTable {

    /** Operations that it takes to look at a split, at two labels that may be joined, and to put a label in its place. */
    private static final long SPLIT = 5;

    private static final long PAIR = 10;
    private static final long PUT = 50;

    final Points across;
    final Points along;

    private final List<ExactPricing.Lying> lyings;
    /** Most labels of a cell. */
    private final int most;
    /** Words of a set. */
    private final int words;
    /** Cells of a line, which lie one behind the other. */
    private final int line;

    private final int[] sizes;
    private final int[] values;
    private final long[] sets;
    private final long[] origins;
    /** For each cell the worth of its best label; for joins across in columns, so that they too are read one behind the other. */
    private final int[] bestAlong;

    private final int[] bestAcross;
    /** For each line, and each column, the cells with labels that no smaller rectangle holds: of two that are joined, one can be such. */
    private final int[] tightsAlong;

    private final int[] tightsAcross;
    private final int[] placesAlong;
    private final int[] placesAcross;
    /** The best of these labels. */
    private final int[] tightAlong;

    private final int[] tightAcross;
    private final long[] joined;
    /** What a further label of the cell at hand must be worth more than. */
    private int floor;

    private long operations;

    /** Makes something of the parts of a label. */
    interface Reader<T> {

        /** The piece in a rectangle of these extents. */
        T piece(ExactPricing.Lying lying, int across, int along);

        /** @param stacked true if the parts follow each other across the lines */
        T join(boolean stacked, int across, int along, T one, T other);
    }

    /**
     * An empty table.
     *
     * @param lyings with pieces, counted from 0, in the place of types
     * @param pieces how many pieces there are
     * @param most labels kept in each cell
     */
    LabelTable(Points across, Points along, List<ExactPricing.Lying> lyings, int pieces, int most) {
        this.across = across;
        this.along = along;
        this.lyings = lyings;
        this.most = most;
        this.words = (pieces + Long.SIZE - 1) / Long.SIZE;
        this.line = along.count();
        int cells = across.count() * line;
        this.sizes = new int[cells];
        this.values = new int[cells * most];
        this.sets = new long[cells * most * words];
        this.origins = new long[cells * most];
        this.bestAlong = new int[cells];
        this.bestAcross = new int[cells];
        this.tightsAlong = new int[across.count()];
        this.tightsAcross = new int[line];
        this.placesAlong = new int[cells];
        this.placesAcross = new int[cells];
        this.tightAlong = new int[cells];
        this.tightAcross = new int[cells];
        this.joined = new long[words];
    }

    /** Fills all cells and returns what it cost. */
    long fill() {
        int[] next = new int[lyings.size()];
        int[] singles = singles(next);
        for (int a = 1; a < across.count(); a++) {
            for (int b = 1; b < line; b++) {
                int cell = a * line + b;
                inherit(cell);
                for (int l = singles[cell]; l >= 0; l = next[l]) {
                    putSingle(cell, l);
                }
                joinAcross(a, b, cell);
                joinAlong(a, b, cell);
                mark(a, b, cell);
            }
        }
        return operations;
    }

    /** For each cell the first piece that just fits there, -1 for none; the others follow one another. */
    private int[] singles(int[] next) {
        int[] singles = new int[sizes.length];
        Arrays.fill(singles, -1);
        for (int l = 0; l < next.length; l++) {
            ExactPricing.Lying lying = lyings.get(l);
            int cell = across.behind(lying.across()) * line + along.behind(lying.along());
            next[l] = singles[cell];
            singles[cell] = l;
        }
        return singles;
    }

    /** Takes the best of what the two next smaller rectangles hold. */
    private void inherit(int cell) {
        int shorter = (cell - 1) * most;
        int narrower = (cell - line) * most;
        int shorterEnd = shorter + sizes[cell - 1];
        int narrowerEnd = narrower + sizes[cell - line];
        while (sizes[cell] < most && (shorter < shorterEnd || narrower < narrowerEnd)) {
            boolean isShorter =
                    narrower >= narrowerEnd || (shorter < shorterEnd && values[shorter] >= values[narrower]);
            int from = isShorter ? shorter++ : narrower++;
            int same = find(cell, values[from], sets, from * words);
            if (same >= 0) {
                origins[same] &= ~(LabelOrigin.TIGHT_ACROSS | LabelOrigin.TIGHT_ALONG);
                continue;
            }
            int to = cell * most + sizes[cell]++;
            values[to] = values[from];
            System.arraycopy(sets, from * words, sets, to * words, words);
            long loose = isShorter ? LabelOrigin.TIGHT_ALONG : LabelOrigin.TIGHT_ACROSS;
            long still = origins[from] | ~(LabelOrigin.TIGHT_ACROSS | LabelOrigin.TIGHT_ALONG);
            origins[to] = LabelOrigin.of(LabelOrigin.SMALLER, from, 0) & still & ~loose;
        }
        floor = sizes[cell] < most ? 0 : values[cell * most + most - 1];
        operations += PUT * sizes[cell] / 2;
    }

    /** The label of the cell with this worth and set, -1 if there is none. */
    private int find(int cell, int value, long[] from, int at) {
        for (int i = cell * most + sizes[cell] - 1; i >= cell * most && values[i] <= value; i--) {
            if (values[i] == value && isSame(i, from, at)) {
                return i;
            }
        }
        return -1;
    }

    private boolean isSame(int label, long[] from, int at) {
        for (int w = 0; w < words; w++) {
            if (sets[label * words + w] != from[at + w]) {
                return false;
            }
        }
        return true;
    }

    private void putSingle(int cell, int l) {
        int piece = lyings.get(l).type();
        int value = lyings.get(l).value();
        Arrays.fill(joined, 0);
        joined[piece / Long.SIZE] = 1L << piece % Long.SIZE;
        if (value > floor && find(cell, value, joined, 0) < 0) {
            put(cell, value, LabelOrigin.of(LabelOrigin.PIECE, l, 0));
        }
    }

    private void joinAcross(int a, int b, int cell) {
        int size = across.at[a];
        int half = across.before(size / 2);
        int column = b * across.count();
        int k = column;
        for (; k < column + tightsAcross[b] && placesAcross[k] <= half; k++) {
            int i = placesAcross[k];
            int rest = across.before(size - across.at[i]);
            if (tightAcross[k] + bestAcross[column + rest] > floor) {
                join(cell, i * line + b, rest * line + b, LabelOrigin.TIGHT_ACROSS, LabelOrigin.ACROSS);
            }
        }
        operations += SPLIT * (k - column);
    }

    private void joinAlong(int a, int b, int cell) {
        int size = along.at[b];
        int half = along.before(size / 2);
        int first = a * line;
        int k = first;
        for (; k < first + tightsAlong[a] && placesAlong[k] <= half; k++) {
            int i = placesAlong[k];
            int rest = along.before(size - along.at[i]);
            if (tightAlong[k] + bestAlong[first + rest] > floor) {
                join(cell, first + i, first + rest, LabelOrigin.TIGHT_ALONG, LabelOrigin.ALONG);
            }
        }
        operations += SPLIT * (k - first);
    }

    /** Joins the tight labels of one cell with all of another. */
    private void join(int cell, int one, int other, long tight, int kind) {
        int endOne = one * most + sizes[one];
        int endOther = other * most + sizes[other];
        for (int i = one * most; i < endOne; i++) {
            boolean isTight = (origins[i] & tight) != 0;
            for (int j = other * most; isTight && j < endOther && values[i] + values[j] > floor; j++) {
                operations += PAIR;
                if (areDisjoint(i, j)) {
                    unite(i, j);
                    if (find(cell, values[i] + values[j], joined, 0) < 0) {
                        put(cell, values[i] + values[j], LabelOrigin.of(kind, i, j));
                    }
                }
            }
        }
    }

    private boolean areDisjoint(int one, int other) {
        for (int w = 0; w < words; w++) {
            if ((sets[one * words + w] & sets[other * words + w]) != 0) {
                return false;
            }
        }
        return true;
    }

    private void unite(int one, int other) {
        for (int w = 0; w < words; w++) {
            joined[w] = sets[one * words + w] | sets[other * words + w];
        }
    }

    /** Puts a label with the set at hand in its place by worth; the last one goes where there are too many. */
    private void put(int cell, int value, long origin) {
        int first = cell * most;
        sizes[cell] = Math.min(sizes[cell] + 1, most);
        int at = first + sizes[cell] - 1;
        for (; at > first && values[at - 1] < value; at--) {
            values[at] = values[at - 1];
            origins[at] = origins[at - 1];
            System.arraycopy(sets, (at - 1) * words, sets, at * words, words);
        }
        values[at] = value;
        origins[at] = origin;
        System.arraycopy(joined, 0, sets, at * words, words);
        floor = sizes[cell] < most ? 0 : values[first + most - 1];
        operations += PUT;
    }

    /** Notes what is best in a cell that is full now, and what of it no smaller cell holds. */
    private void mark(int a, int b, int cell) {
        int best = sizes[cell] == 0 ? 0 : values[cell * most];
        bestAlong[cell] = best;
        bestAcross[b * across.count() + a] = best;
        int tight = best(cell, LabelOrigin.TIGHT_ACROSS);
        if (tight > 0) {
            int k = b * across.count() + tightsAcross[b]++;
            placesAcross[k] = a;
            tightAcross[k] = tight;
        }
        tight = best(cell, LabelOrigin.TIGHT_ALONG);
        if (tight > 0) {
            int k = a * line + tightsAlong[a]++;
            placesAlong[k] = b;
            tightAlong[k] = tight;
        }
    }

    private int best(int cell, long tight) {
        for (int i = cell * most; i < cell * most + sizes[cell]; i++) {
            if ((origins[i] & tight) != 0) {
                return values[i];
            }
        }
        return 0;
    }

    /** How many labels the whole board has, best first. */
    int count() {
        return sizes[sizes.length - 1];
    }

    /** What the label of this rank is worth. */
    int value(int rank) {
        return values[(sizes.length - 1) * most + rank];
    }

    /** How the label of this rank fills the whole board. */
    <T> T read(int rank, Reader<T> reader) {
        return read((sizes.length - 1) * most + rank, across.size(), along.size(), reader);
    }

    private <T> T read(int label, int acrossSize, int alongSize, Reader<T> reader) {
        int one = LabelOrigin.one(origins[label]);
        int other = LabelOrigin.other(origins[label]);
        int cell = one / most;
        switch (LabelOrigin.kind(origins[label])) {
            case LabelOrigin.PIECE:
                return reader.piece(lyings.get(one), acrossSize, alongSize);
            case LabelOrigin.SMALLER:
                return read(one, acrossSize, alongSize, reader);
            case LabelOrigin.ACROSS:
                int width = across.at[cell / line];
                return reader.join(
                        true,
                        acrossSize,
                        alongSize,
                        read(one, width, alongSize, reader),
                        read(other, acrossSize - width, alongSize, reader));
            default:
                int length = along.at[cell % line];
                return reader.join(
                        false,
                        acrossSize,
                        alongSize,
                        read(one, acrossSize, length, reader),
                        read(other, acrossSize, alongSize - length, reader));
        }
    }
}
