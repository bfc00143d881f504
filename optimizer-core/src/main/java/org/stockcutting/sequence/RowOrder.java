package org.stockcutting.sequence;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.Direction;

/**
 * From which end the cuts of one row are made. The origin comes first by custom: one tape, hooked once. A stick is cut from its far end
 * where that saves sawing a short piece off a stub. What is best is found exactly, over all ways to take pieces from either end.
 */
final class RowOrder {

    /** Rows longer than this are cut from one end throughout. */
    private static final int LONGEST_TABLE = 400;

    /** A cut below the shop's least piece weighs more than any number of stubs, a stub more than any number of cuts from the far end. */
    private static final long FAR = 1;

    private static final long STUB = 1_000_000;
    private static final long TOO_SHORT = 1_000_000_000_000L;

    private final CutNode.Cuts node;
    private final Block block;
    private final @Nullable Length minimumPiece;

    private RowOrder(CutNode.Cuts node, Block block, @Nullable Length minimumPiece) {
        this.node = node;
        this.block = block;
        this.minimumPiece = minimumPiece;
    }

    /** For each cut in the order of sawing: true if it takes the piece at the far end. */
    static boolean[] of(CutNode.Cuts node, Block block, @Nullable Length minimumPiece) {
        int slots = node.slots().size();
        boolean[] far = new boolean[slots];
        if (isFarTrim(node)) {
            far[slots - 1] = true;
            return far;
        }
        RowOrder order = new RowOrder(node, block, minimumPiece);
        if (node.cut() == Direction.RIP || order.cost(far) == 0) {
            return far;
        }
        if (slots <= LONGEST_TABLE) {
            return order.best();
        }
        boolean[] all = new boolean[slots];
        Arrays.fill(all, true);
        return order.cost(all) < order.cost(far) ? all : far;
    }

    /** The last cut only trims a block that is cut further and has nothing else beside it. */
    private static boolean isFarTrim(CutNode.Cuts node) {
        int last = node.slots().size();
        return isTrimmedOff(node.pieces().get(last))
                && node.pieces().get(last - 1) instanceof CutNode.Cuts
                && node.pieces().stream().filter(piece -> !isTrimmedOff(piece)).count() == 1;
    }

    static boolean isTrimmedOff(CutNode node) {
        return node == CutNode.RestLeaf.TRIM || node == CutNode.RestLeaf.SLIVER;
    }

    private long cost(boolean[] far) {
        long sum = 0;
        int first = 0;
        int last = node.slots().size();
        for (boolean takesFar : far) {
            sum += cost(first, last, takesFar);
            first += takesFar ? 0 : 1;
            last -= takesFar ? 1 : 0;
        }
        return sum;
    }

    private boolean[] best() {
        int pieces = node.slots().size() + 1;
        long[][] least = new long[pieces][pieces];
        for (int size = 1; size < pieces; size++) {
            for (int first = 0; first + size < pieces; first++) {
                least[first][first + size] =
                        Math.min(near(least, first, first + size), far(least, first, first + size));
            }
        }
        boolean[] order = new boolean[pieces - 1];
        int first = 0;
        int last = pieces - 1;
        for (int i = 0; i < order.length; i++) {
            order[i] = far(least, first, last) < near(least, first, last);
            first += order[i] ? 0 : 1;
            last -= order[i] ? 1 : 0;
        }
        return order;
    }

    private long near(long[][] least, int first, int last) {
        return cost(first, last, false) + least[first + 1][last];
    }

    private long far(long[][] least, int first, int last) {
        return cost(first, last, true) + least[first][last - 1];
    }

    /** What it costs to take a piece off the stick that holds pieces first to last. */
    private long cost(int first, int last, boolean far) {
        Length stick = block.pieces(node, first, last).length();
        boolean stub = stick.isLessThan(Limits.SHORT_WORK)
                && (isShortPart(far ? last : first) || (last == first + 1 && isShortLeaf(far ? first : last)));
        boolean tooShort = minimumPiece != null && stick.isLessThan(minimumPiece);
        return (far ? FAR : 0) + (stub ? STUB : 0) + (tooShort ? TOO_SHORT : 0);
    }

    private boolean isShortPart(int piece) {
        return holdsPart(node.pieces().get(piece))
                && block.piece(node, piece).length().isLessThan(Limits.SHORT_WORK);
    }

    /** What stays in hand after the last cut counts only if it is a part already. */
    private boolean isShortLeaf(int piece) {
        return node.pieces().get(piece) instanceof CutNode.PartLeaf && isShortPart(piece);
    }

    static boolean holdsPart(CutNode node) {
        return node instanceof CutNode.PartLeaf
                || (node instanceof CutNode.Cuts cuts && cuts.pieces().stream().anyMatch(RowOrder::holdsPart));
    }
}
