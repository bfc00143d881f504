package org.stockcutting.solve.guillotine;

import org.jspecify.annotations.Nullable;

/**
 * How much padded area of pieces the best edge-to-edge cuts make of a clear rest, for every size of rest up to the largest board: copies
 * not capped, saw limits left out (Gilmore, Gomory, Operations Research 14, 1966). A strip that is a hair too narrow for any piece
 * counts nothing, one that is just wide enough counts in full, which plain area does not tell.
 */
final class FillTable {

    /** Sizes of rest that are worth a table. */
    private static final long MOST_CELLS = 400_000;

    private static final double MOST_WORK = 2e8;

    private final int lengths;
    private final int widths;
    private final int[] most;

    private FillTable(int lengths, int widths) {
        this.lengths = lengths;
        this.widths = widths;
        this.most = new int[lengths * widths];
    }

    /** The table for a rack of boards, or null where it would be large or pieces take boards as they come. */
    static @Nullable FillTable of(Yard yard) {
        Model model = yard.model;
        long length = 0;
        long width = 0;
        for (int s = 0; s < model.stocks; s++) {
            length = Math.max(length, model.boardLength(s));
            width = Math.max(width, model.boardWidth(s));
        }
        boolean sized = model.instance.items().stream().noneMatch(item -> item.width() == 0);
        double cells = (length + 1.0) * (width + 1.0);
        if (!sized || cells > MOST_CELLS || cells * (length + width) / 4 > MOST_WORK) {
            return null;
        }
        FillTable table = new FillTable((int) length + 1, (int) width + 1);
        table.singles(model);
        table.joined();
        yard.count((long) (cells * (length + width) / 16));
        return table;
    }

    private void singles(Model model) {
        for (int s = 0; s < model.stocks; s++) {
            for (int t = 0; t < model.types; t++) {
                for (boolean turned : new boolean[] {false, true}) {
                    if (model.allows(s, t, turned)) {
                        long length = model.length(s, t, turned);
                        long width = model.width(s, t, turned);
                        int at = (int) (length * widths + width);
                        most[at] = Math.max(most[at], (int) (length * width));
                    }
                }
            }
        }
    }

    private void joined() {
        for (int l = 0; l < lengths; l++) {
            int row = l * widths;
            if (l > 0) {
                raise(row, row - widths, -1);
            }
            for (int i = 1; 2 * i <= l; i++) {
                if (most[i * widths + widths - 1] > 0) {
                    raise(row, i * widths, (l - i) * widths);
                }
            }
            for (int w = 1; w < widths; w++) {
                int best = Math.max(most[row + w], most[row + w - 1]);
                for (int j = 1; 2 * j <= w; j++) {
                    best = Math.max(best, most[row + j] + most[row + w - j]);
                }
                most[row + w] = best;
            }
        }
    }

    /** Raises a row to the sum of two others, or to one where there is no second; plain enough to become vector instructions. */
    private void raise(int row, int one, int other) {
        for (int w = 0; w < widths; w++) {
            int sum = most[one + w] + (other < 0 ? 0 : most[other + w]);
            most[row + w] = Math.max(most[row + w], sum);
        }
    }

    /** Padded area of pieces that come from a clear rest of these padded extents. */
    int area(long length, long width) {
        return most[(int) (length * widths + width)];
    }
}
