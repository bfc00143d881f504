package org.stockcutting.check;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.CutNode.Cuts;
import org.stockcutting.pattern.CutNode.PartLeaf;
import org.stockcutting.pattern.Direction;

/**
 * How often a piece shorter than the safe length has to be sawn off a stick that is itself shorter, however the sticks of a cut tree are
 * turned: every row may be sawn from either end, and change ends at any cut.
 */
final class LeastStubs {

    /** Work under twelve inches: printed in trade articles as a limit below which to think again. Common practice. */
    static final long SAFE = Length.inches("12").nanometres();

    /** Longer rows are only tried from one end throughout. */
    private static final int LONGEST_ROW = 400;

    private static final long FORBIDDEN = 1L << 40;

    private final long minimumPiece;

    private LeastStubs(@Nullable Length minimumPiece) {
        this.minimumPiece = minimumPiece == null ? 0 : minimumPiece.nanometres();
    }

    static long of(CutNode tree, Rect board, @Nullable Length minimumPiece) {
        return new LeastStubs(minimumPiece).count(tree, board);
    }

    private long count(CutNode node, Rect rect) {
        if (!(node instanceof Cuts cuts)) {
            return 0;
        }
        boolean across = cuts.cut() == Direction.CROSSCUT;
        int pieces = cuts.pieces().size();
        long[] from = new long[pieces];
        long[] to = new long[pieces];
        long sum = 0;
        for (int i = 0; i < pieces; i++) {
            from[i] = i == 0
                    ? (across ? rect.x0() : rect.y0())
                    : cuts.slots().get(i - 1).to().nanometres();
            to[i] = i == pieces - 1
                    ? (across ? rect.x1() : rect.y1())
                    : cuts.slots().get(i).from().nanometres();
            sum += count(cuts.pieces().get(i), TreeWalk.part(rect, from[i], to[i], across));
        }
        if (!across) {
            return sum;
        }
        return sum + row(new Row(cuts.pieces(), from, to));
    }

    /** One row of pieces along a stick. */
    private record Row(List<CutNode> nodes, long[] from, long[] to) {
        long stick(int first, int last) {
            return to[last] - from[first];
        }

        boolean isShort(int i) {
            return to[i] - from[i] < SAFE;
        }
    }

    private long row(Row row) {
        int last = row.nodes().size() - 1;
        if (last > LONGEST_ROW) {
            long near = 0;
            long far = 0;
            for (int i = 0; i < last; i++) {
                near += price(row, i, last, i);
                far += price(row, 0, last - i, last - i);
            }
            return Math.min(near, far);
        }
        // least[i] is for the stick that starts at piece i and ends at the piece that the outer loop has reached.
        long[] least = new long[last + 1];
        for (int end = 1; end <= last; end++) {
            least[end] = 0;
            long[] shorter = least.clone();
            for (int start = end - 1; start >= 0; start--) {
                long offStart = price(row, start, end, start) + least[start + 1];
                long offEnd = price(row, start, end, end) + shorter[start];
                least[start] = Math.min(offStart, offEnd);
            }
        }
        return least[0];
    }

    /** One more stub, or none, if this piece is taken off the stick that reaches from piece first to piece last. */
    private long price(Row row, int first, int last, int taken) {
        long stick = row.stick(first, last);
        if (stick < minimumPiece) {
            return FORBIDDEN;
        }
        int other = taken == first ? last : first;
        boolean shortTaken = row.isShort(taken) && holdsPart(row.nodes().get(taken));
        boolean shortLeft =
                last == first + 1 && row.isShort(other) && row.nodes().get(other) instanceof PartLeaf;
        return stick < SAFE && (shortTaken || shortLeft) ? 1 : 0;
    }

    private static boolean holdsPart(CutNode node) {
        return node instanceof PartLeaf
                || (node instanceof Cuts cuts && cuts.pieces().stream().anyMatch(LeastStubs::holdsPart));
    }
}
