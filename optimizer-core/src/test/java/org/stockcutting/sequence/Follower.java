package org.stockcutting.sequence;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.Direction;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.SequenceStep;

/** Follows a sequence with the wood in hand: what lies on the bench, and which cut is due on each piece of it. */
final class Follower {

    /**
     * A rectangle on the bench that is still to be cut, from its cut number {@code due} on. Steps do not say on which of two strips of one
     * board they are made where both would do: then it is the one nearer the origin, by the way down the tree.
     */
    private record Work(String board, int copy, CutNode.Cuts node, Length x, Length y, List<Integer> way, int due) {
        /** Where cut or piece i starts: at the end of the slot before. */
        private Length start(int i) {
            Length origin = node.cut() == Direction.CROSSCUT ? x : y;
            return i == 0 ? origin : node.slots().get(i - 1).to();
        }

        private int[] place() {
            return IntStream.concat(way.stream().mapToInt(Integer::intValue), IntStream.of(due))
                    .toArray();
        }
    }

    private final List<Work> bench = new ArrayList<>();
    private final TreeSet<String> freed = new TreeSet<>();

    void lay(Layout layout, int copy, String board) {
        put(board, copy, layout.cuts(), Length.ZERO, Length.ZERO, List.of());
    }

    private void put(String board, int copy, CutNode node, Length x, Length y, List<Integer> way) {
        if (node instanceof CutNode.Cuts cuts) {
            bench.add(new Work(board, copy, cuts, x, y, way, 0));
        } else if (node instanceof CutNode.PartLeaf part) {
            freed.add(board + " " + part.part());
        }
    }

    /** Makes the cut that a step asks for; an empty text, or what is wrong. */
    String follow(SequenceStep step) {
        Optional<Work> meant =
                bench.stream().filter(work -> isMeant(step, work)).min((a, b) -> Arrays.compare(a.place(), b.place()));
        if (meant.isEmpty()) {
            return step + " finds no piece of wood that it could be made on";
        }
        bench.remove(meant.get());
        saw(meant.get());
        return step.part() == null || freed.contains(step.board() + " " + step.part())
                ? ""
                : step + " frees " + step.part() + " too early";
    }

    private static boolean isMeant(SequenceStep step, Work work) {
        CutNode.Slot slot = work.node().slots().get(work.due());
        boolean waste = !holdsPart(work.node().pieces().get(work.due()));
        boolean stopFits = step.setUp() == null
                ? waste || step.kind().equals("trim")
                : !waste
                        && step.setUp().machine().equals(work.node().cut().word())
                        && slot.from()
                                .minus(work.start(work.due()))
                                .equals(step.setUp().stop());
        boolean machineFits = step.kind().equals("trim")
                || step.kind().equals(work.node().cut().word());
        boolean partFits = step.part() == null || Objects.equals(step.number(), work.copy() + 1) && yields(work, step);
        return step.board().equals(work.board())
                && slot.from().equals(step.reading())
                && stopFits
                && machineFits
                && partFits;
    }

    private static boolean holdsPart(CutNode node) {
        return node instanceof CutNode.PartLeaf
                || (node instanceof CutNode.Cuts cuts && cuts.pieces().stream().anyMatch(Follower::holdsPart));
    }

    private static boolean yields(Work work, SequenceStep step) {
        CutNode own = work.node().pieces().get(work.due());
        CutNode behind = work.node().pieces().get(work.due() + 1);
        CutNode part = new CutNode.PartLeaf(Objects.requireNonNull(step.part()));
        return own.equals(part) || behind.equals(part);
    }

    private void saw(Work work) {
        putPiece(work, work.due());
        if (work.due() + 1 < work.node().slots().size()) {
            bench.add(new Work(work.board(), work.copy(), work.node(), work.x(), work.y(), work.way(), work.due() + 1));
        } else {
            putPiece(work, work.due() + 1);
        }
    }

    private void putPiece(Work work, int i) {
        List<Integer> way = new ArrayList<>(work.way());
        way.add(i);
        boolean crosscut = work.node().cut() == Direction.CROSSCUT;
        Length x = crosscut ? work.start(i) : work.x();
        Length y = crosscut ? work.y() : work.start(i);
        put(work.board(), work.copy(), work.node().pieces().get(i), x, y, way);
    }

    boolean isDone() {
        return bench.isEmpty();
    }

    int parts() {
        return freed.size();
    }
}
