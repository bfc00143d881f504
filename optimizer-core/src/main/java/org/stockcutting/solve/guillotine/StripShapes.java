package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * All that a board can be cut to in two or three stages, first cuts in one direction, whatever pieces are worth: strips, in these stacks
 * of pieces that end at one line, in these (three stages) the pieces on top of each other. "Across" is the way strips follow each
 * other, "along" the way stacks do. Extents are padded.
 *
 * <p>A strip is as high as one of its stacks: lower it would not hold it, higher it would waste. So heights are sums of pieces that are
 * equally long along the strip, and positions along it sums of their lengths (Gilmore, Gomory, Operations Research 13, 1965).
 */
final class StripShapes {

    /** More heights or cells than this are not worth a table a round. */
    private static final int MOST_HEIGHTS = 4_000;

    private static final long MOST_CELLS = 4_000_000;

    final Model model;
    final int stock;
    /** True if the first cuts are crosscuts, so that strips stand upright. */
    final boolean upright;

    final boolean stacked;
    final int across;
    final int along;
    /** Pieces by length along the strip, ascending; each list has one such length. */
    final List<List<Lying>> classes;
    /** For each class the extents across that its stacks can have, from 0. */
    final int[][] sums;
    /** Extents across that strips can have, ascending. */
    final int[] heights;

    /** Where stacks can begin along a strip. */
    final Points alongPlaces;

    /** For each class and height the highest of its sums that goes in, -1 for none. */
    final int[][] sumAt;

    private final PartOrder order;
    /** Of strips on a board, and of pieces in a stack, one may be more than this across: what the fence reaches. */
    final int reach;
    /** Strips may be crosscut up to this extent across. */
    final int crosscut;
    /** True if a class takes a strip's whole length, so that no crosscut is needed. */
    private final boolean spans;

    /** Most copies of each type that one board may hold. */
    final int[] most;

    /** One way a piece may lie. */
    record Lying(int type, boolean turned, int across, int along) {}

    private StripShapes(Model model, int stock, boolean upright, boolean stacked, List<List<Lying>> classes) {
        this.model = model;
        this.stock = stock;
        this.upright = upright;
        this.stacked = stacked;
        this.order = new SawRules(model, stock).order();
        Reach saws = Reach.of(model, stock);
        this.reach = upright ? Integer.MAX_VALUE : saws.fence();
        this.crosscut = upright ? Integer.MAX_VALUE : saws.crosscut();
        this.across = (int) (upright ? model.boardLength(stock) : model.boardWidth(stock));
        this.along = (int) (upright ? model.boardWidth(stock) : model.boardLength(stock));
        this.classes = classes;
        this.spans = classes.get(classes.size() - 1).get(0).along() == along;
        this.most = IntStream.range(0, model.types)
                .map(t -> Math.min(model.item(t).demand(), model.item(t).perBoard()))
                .toArray();
        this.sums = classes.stream().map(this::sums).toArray(int[][]::new);
        BitSet reached = new BitSet(across + 1);
        for (int[] sum : sums) {
            IntStream.of(sum).filter(h -> h > 0).forEach(reached::set);
        }
        this.heights = reached.stream().toArray();
        this.alongPlaces = new Points(
                along, classes.stream().mapToInt(c -> c.get(0).along()).toArray());
        this.sumAt = new int[classes.size()][heights.length];
        for (int c = 0; c < sumAt.length; c++) {
            int i = 0;
            for (int j = 0; j < heights.length; j++) {
                while (i + 1 < sums[c].length && sums[c][i + 1] <= heights[j]) {
                    i++;
                }
                sumAt[c][j] = i > 0 && (stacked || sums[c][i] == heights[j]) ? i : -1;
            }
        }
    }

    /**
     * The shapes of a board, or nothing where there are none or too many.
     *
     * @param stages 2 or 3
     */
    static List<StripShapes> of(Model model, int stock, boolean upright, int stages) {
        if (model.boardLength(stock) >= Points.LONGEST || model.boardWidth(stock) >= Points.LONGEST) {
            return List.of();
        }
        TreeMap<Integer, List<Lying>> byLength = new TreeMap<>();
        for (int t = 0; t < model.types; t++) {
            for (boolean turned : new boolean[] {false, true}) {
                if (model.allows(stock, t, turned)) {
                    int x = (int) model.length(stock, t, turned);
                    int y = (int) model.width(stock, t, turned);
                    Lying lying = new Lying(t, turned, upright ? x : y, upright ? y : x);
                    byLength.computeIfAbsent(lying.along(), a -> new ArrayList<>())
                            .add(lying);
                }
            }
        }
        boolean uncut =
                upright && model.boardWidth(stock) > Reach.of(model, stock).crosscut();
        if (byLength.isEmpty() || (uncut && model.instance.limits().firstCut() == null)) {
            return List.of();
        }
        List<List<Lying>> classes = List.copyOf(byLength.values());
        StripShapes shapes = new StripShapes(model, stock, upright, stages > 2, classes);
        long lines = Math.max(shapes.heights.length, shapes.alongPlaces.count());
        return shapes.heights.length > MOST_HEIGHTS || lines * classes.size() > MOST_CELLS
                ? List.of()
                : List.of(shapes);
    }

    private int[] sums(List<Lying> lyings) {
        BitSet reached = new BitSet(across + 1);
        reached.set(0);
        for (Lying lying : lyings) {
            if (lying.across() > reach) {
                continue;
            }
            int copies = stacked ? Math.min(most[lying.type()], across / lying.across()) : 0;
            for (int n = 0; n < copies; n++) {
                for (int p = reached.previousSetBit(across - lying.across());
                        p >= 0;
                        p = reached.previousSetBit(p - 1)) {
                    reached.set(p + lying.across());
                }
            }
            if (!stacked) {
                reached.set(lying.across());
            }
        }
        BitSet all = (BitSet) reached.clone();
        for (Lying lying : lyings) {
            if (lying.across() > reach) {
                int most = stacked ? across - lying.across() : 0;
                reached.stream().filter(p -> p <= most).forEach(p -> all.set(p + lying.across()));
            }
        }
        return all.stream().toArray();
    }

    /** True if strips of this height can be cut to stacks, or need not be. */
    boolean isCut(int height) {
        return height <= crosscut || spans;
    }

    /** Length along the strip of a class. */
    int length(int c) {
        return classes.get(c).get(0).along();
    }

    /** A rest, or the extents of a cell, in the board's own directions. */
    Cell rest(int acrossExtent, int alongExtent) {
        return upright ? Cell.rest(acrossExtent, alongExtent) : Cell.rest(alongExtent, acrossExtent);
    }

    Cell piece(Lying lying) {
        return Cell.piece(
                lying.type(),
                lying.turned(),
                upright ? lying.across() : lying.along(),
                upright ? lying.along() : lying.across());
    }

    /**
     * Parts that follow each other, the rest behind them.
     *
     * @param following true if they follow each other across, as strips do
     * @param used what they take of it
     */
    Cell join(boolean following, int acrossExtent, int alongExtent, List<Cell> parts, int used) {
        List<Cell> all = new ArrayList<>(parts);
        int whole = following ? acrossExtent : alongExtent;
        if (used < whole) {
            all.add(following ? rest(whole - used, alongExtent) : rest(acrossExtent, whole - used));
        }
        Cell extents = rest(acrossExtent, alongExtent);
        return Cell.join(following == upright, extents.length, extents.width, all, order);
    }
}
