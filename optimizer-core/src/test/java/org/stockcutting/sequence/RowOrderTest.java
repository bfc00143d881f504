package org.stockcutting.sequence;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.Direction;

/**
 * From which end a stick is cut. That work under twelve inches wants a second thought stands in trade articles; that a short part is not
 * cut from a stub is common practice, no source.
 */
class RowOrderTest {

    private static final CutNode PART = new CutNode.PartLeaf("p");
    private static final CutNode REST = CutNode.RestLeaf.OFFCUT;

    @Test
    void theOriginComesFirstWhereNothingSpeaksAgainstIt() {
        assertThat(order(sticks(60, 20, 13), PART, PART, REST)).containsExactly(false, false);
        assertThat(order(sticks(8, 60, 20), PART, PART, REST)).containsExactly(false, false);
    }

    /** 8 in would be sawn off a stub of 9-1/8; once the rest is off, the last cut frees it from 68-1/8. */
    @Test
    void aShortPieceIsNotSawnOffAStub() {
        assertThat(order(sticks(60, 8, 1), PART, PART, REST)).containsExactly(true, false);
    }

    /** A stick that is short as a whole offers no choice. */
    @Test
    void whatCannotBeHelpedIsDoneFromTheOrigin() {
        assertThat(order(sticks(5, 4), PART, PART)).containsExactly(false);
    }

    /** Against all orders in which the cuts of small random rows can be taken from either end. */
    @Test
    void noOrderHasFewerStubs() {
        for (long seed = 1; seed <= 2_000; seed++) {
            Random random = new Random(seed);
            int pieces = 2 + random.nextInt(6);
            int[] sizes = new int[pieces];
            CutNode[] nodes = new CutNode[pieces];
            for (int i = 0; i < pieces; i++) {
                sizes[i] = 1 + random.nextInt(14);
                nodes[i] = random.nextInt(3) == 0 ? REST : PART;
            }
            boolean[] order = order(sticks(sizes), nodes);
            int least = Integer.MAX_VALUE;
            for (int bits = 0; bits < 1 << (pieces - 1); bits++) {
                boolean[] other = new boolean[pieces - 1];
                for (int i = 0; i < other.length; i++) {
                    other[i] = (bits >> i & 1) == 1;
                }
                least = Math.min(least, stubs(sizes, nodes, other));
            }
            assertThat(stubs(sizes, nodes, order)).as("seed %d", seed).isEqualTo(least);
        }
    }

    /** Counts in eighths of an inch, kerf 1/8. */
    private static int stubs(int[] sizes, CutNode[] nodes, boolean[] order) {
        int first = 0;
        int last = sizes.length - 1;
        int stubs = 0;
        for (boolean far : order) {
            int stick = last - first;
            for (int i = first; i <= last; i++) {
                stick += 8 * sizes[i];
            }
            int taken = far ? last : first;
            int other = far ? first : last;
            boolean shortTaken = nodes[taken] == PART && sizes[taken] < 12;
            boolean shortOther = last == first + 1 && nodes[other] == PART && sizes[other] < 12;
            stubs += stick < 96 && (shortTaken || shortOther) ? 1 : 0;
            first += far ? 0 : 1;
            last -= far ? 1 : 0;
        }
        return stubs;
    }

    private record Sticks(List<CutNode.Slot> slots, Length length) {}

    private static Sticks sticks(int... inches) {
        List<CutNode.Slot> slots = new ArrayList<>();
        Length kerf = Length.inches("0.125");
        Length at = Length.ZERO;
        for (int i = 0; i < inches.length; i++) {
            at = at.plus(Length.inches("" + inches[i]));
            if (i < inches.length - 1) {
                slots.add(new CutNode.Slot(at, at.plus(kerf)));
                at = at.plus(kerf);
            }
        }
        return new Sticks(slots, at);
    }

    private static boolean[] order(Sticks sticks, CutNode... pieces) {
        Block block = new Block(Length.ZERO, Length.ZERO, sticks.length(), Length.inches("3.5"));
        return RowOrder.of(new CutNode.Cuts(Direction.CROSSCUT, sticks.slots(), List.of(pieces)), block, null);
    }
}
