package org.stockcutting.sequence;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.Direction;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Layout;

/** Layouts with random cut trees, in whole millimetres, kerf 3. Few sizes, so that boards share stops. */
final class RandomTrees {

    private static final long[] SIZES = {60, 100, 150, 200, 320};
    private static final long KERF = 3;

    private final Random random;
    private final List<PlacedPiece> pieces = new ArrayList<>();
    private int parts;
    private int repeat;

    RandomTrees(Random random) {
        this.random = random;
    }

    Layout layout(String stock, long length, long width) {
        repeat = 1 + random.nextInt(3);
        pieces.clear();
        CutNode tree = random.nextBoolean() ? trimmed(length, width) : node(0, 0, length, width, 3);
        return new Layout(stock, repeat, mm(length), mm(width), mm(18), List.copyOf(pieces), tree, List.of());
    }

    /** A start trim of 10, its cut included, before everything else. */
    private CutNode trimmed(long length, long width) {
        return new CutNode.Cuts(
                Direction.CROSSCUT,
                List.of(new CutNode.Slot(mm(10 - KERF), mm(10))),
                List.of(CutNode.RestLeaf.TRIM, node(10, 0, length - 10, width, 3)));
    }

    private CutNode node(long x, long y, long length, long width, int depth) {
        boolean crosscut = random.nextBoolean();
        long extent = crosscut ? length : width;
        long start = crosscut ? x : y;
        if (depth == 0 || extent < 2 * SIZES[0]) {
            return leaf(x, y, length, width);
        }
        List<CutNode.Slot> slots = new ArrayList<>();
        List<CutNode> made = new ArrayList<>();
        long at = start;
        while (true) {
            long size = SIZES[random.nextInt(SIZES.length)];
            if (at + size + KERF > start + extent || (!slots.isEmpty() && random.nextInt(5) == 0)) {
                break;
            }
            made.add(child(crosscut, x, y, length, width, at, size, depth));
            slots.add(new CutNode.Slot(mm(at + size), mm(at + size + KERF)));
            at += size + KERF;
        }
        if (slots.isEmpty()) {
            return leaf(x, y, length, width);
        }
        long rest = start + extent - at;
        made.add(rest == 0 ? CutNode.RestLeaf.SLIVER : child(crosscut, x, y, length, width, at, rest, depth));
        return new CutNode.Cuts(crosscut ? Direction.CROSSCUT : Direction.RIP, slots, made);
    }

    private CutNode child(boolean crosscut, long x, long y, long length, long width, long at, long size, int depth) {
        return crosscut ? node(at, y, size, width, depth - 1) : node(x, at, length, size, depth - 1);
    }

    private CutNode leaf(long x, long y, long length, long width) {
        if (random.nextInt(4) == 0) {
            return CutNode.RestLeaf.OFFCUT;
        }
        String part = "part" + parts++;
        List<Integer> numbers = new ArrayList<>();
        for (int k = 1; k <= repeat; k++) {
            numbers.add(k);
        }
        pieces.add(new PlacedPiece(part, numbers, List.of(), mm(x), mm(y), mm(length), mm(width), false));
        return new CutNode.PartLeaf(part);
    }

    static Length mm(long millimetres) {
        return Length.ofNanometres(millimetres * 1_000_000);
    }
}
