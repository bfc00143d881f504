package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.solve.instance.Instance;

/** Takes pieces off boards and leaves tidy rests. */
final class Pruning {

    /** Rough work of taking one piece out of a tree. */
    private static final long OPERATIONS = 200;

    private Pruning() {}

    /**
     * The board with pieces taken out by chance, alone or with the whole cell some levels above them, so many times or until no more than
     * some are kept. The empty board where what is left couldn't be sawn.
     */
    static Board thinned(Board board, int keep, int times, Dice dice) {
        Cell root = board.root;
        for (int n = 0; n < times && root.pieces > keep; n++) {
            int index = dice.below(root.pieces);
            root = pruned(board, root, index, Math.max(0, depthOf(root, index) - dice.below(3)));
            board.yard.count(OPERATIONS);
        }
        return settled(board, new Board(board.yard, board.stock, board.first, root));
    }

    /** The board without one piece; the empty board where what is left couldn't be sawn or would break up a set. */
    private static Board without(Board board, int index) {
        Cell root = pruned(board, board.root, index, depthOf(board.root, index));
        return settled(board, new Board(board.yard, board.stock, board.first, root));
    }

    /** The board with no more pieces of a type than this many. */
    static Board within(Board board, int[] most) {
        Board within = board;
        for (int t = 0; t < most.length; t++) {
            while (within.counts[t] > most[t]) {
                within = without(within, firstOf(within.root, t));
            }
        }
        return within;
    }

    private static int depthOf(Cell root, int index) {
        int depth = 0;
        int rest = index;
        Cell cell = root;
        while (cell.isSplit()) {
            int i = 0;
            while (rest >= cell.parts[i].pieces) {
                rest -= cell.parts[i].pieces;
                i++;
            }
            cell = cell.parts[i];
            depth++;
        }
        return depth;
    }

    private static Cell pruned(Board board, Cell cell, int index, int depth) {
        if (depth == 0 || !cell.isSplit()) {
            return Cell.rest(cell.length, cell.width);
        }
        int rest = index;
        int i = 0;
        while (rest >= cell.parts[i].pieces) {
            rest -= cell.parts[i].pieces;
            i++;
        }
        List<Cell> parts = new ArrayList<>(List.of(cell.parts));
        Cell less = pruned(board, cell.parts[i], rest, depth - 1);
        parts.set(i, less);
        if (board.yard.isMovable(board.stock)) {
            drawIn(board, cell.crosscut, parts, i);
        }
        return board.join(cell.crosscut, cell.length, cell.width, parts);
    }

    /** If everything in part i ends short of its far side, makes the part smaller and gives the difference to its parent. */
    private static void drawIn(Board board, boolean crosscut, List<Cell> parts, int i) {
        Cell part = parts.get(i);
        if (!part.isSplit() || part.crosscut == crosscut) {
            return;
        }
        long spare = Long.MAX_VALUE;
        for (Cell inner : part.parts) {
            spare = Math.min(spare, inner.isRest() ? Long.MAX_VALUE : trailing(inner, crosscut));
        }
        if (spare == 0) {
            return;
        }
        List<Cell> drawn = new ArrayList<>(part.parts.length);
        for (Cell inner : part.parts) {
            drawn.add(shortened(board, inner, crosscut, spare));
        }
        Cell across = Cell.rest(crosscut ? spare : part.length, crosscut ? part.width : spare);
        parts.set(
                i,
                board.join(
                        part.crosscut,
                        crosscut ? part.length - spare : part.length,
                        crosscut ? part.width : part.width - spare,
                        drawn));
        parts.add(across);
    }

    private static long trailing(Cell cell, boolean crosscut) {
        if (!cell.isSplit() || cell.crosscut != crosscut) {
            return 0;
        }
        Cell last = cell.parts[cell.parts.length - 1];
        return last.isRest() ? last.along(crosscut) : 0;
    }

    private static Cell shortened(Board board, Cell cell, boolean crosscut, long spare) {
        long length = crosscut ? cell.length - spare : cell.length;
        long width = crosscut ? cell.width : cell.width - spare;
        if (cell.isRest()) {
            return Cell.rest(length, width);
        }
        int last = cell.parts.length - 1;
        List<Cell> parts = new ArrayList<>(List.of(cell.parts).subList(0, last));
        long left = cell.parts[last].along(crosscut) - spare;
        if (left > 0) {
            parts.add(crosscut ? Cell.rest(left, width) : Cell.rest(length, left));
        }
        return board.join(crosscut, length, width, parts);
    }

    /** Takes off what is left of broken sets, and everything if the saws couldn't make what remains. */
    private static Board settled(Board before, Board after) {
        Board board = after;
        for (Instance.Group group : board.yard.model.instance.groups()) {
            int sets = Integer.MAX_VALUE;
            for (int i = 0; i < group.items().size(); i++) {
                sets = Math.min(
                        sets,
                        board.counts[group.items().get(i)] / group.perSet().get(i));
            }
            for (int i = 0; i < group.items().size(); i++) {
                int type = group.items().get(i);
                while (board.counts[type] > sets * group.perSet().get(i)) {
                    int index = firstOf(board.root, type);
                    int depth = depthOf(board.root, index);
                    board = new Board(board.yard, board.stock, board.first, pruned(board, board.root, index, depth));
                }
            }
        }
        return board.yard.allows(board.stock, board.root) ? board : before.yard.empty(before.stock, before.first);
    }

    /** Index of the first piece of this type; there must be one. */
    private static int firstOf(Cell cell, int type) {
        if (!cell.isSplit()) {
            return 0;
        }
        int before = 0;
        for (Cell part : cell.parts) {
            if (holds(part, type)) {
                return before + firstOf(part, type);
            }
            before += part.pieces;
        }
        throw new IllegalStateException("no piece of type " + type);
    }

    private static boolean holds(Cell cell, int type) {
        if (cell.isPiece()) {
            return cell.type() == type;
        }
        for (Cell part : cell.parts) {
            if (holds(part, type)) {
                return true;
            }
        }
        return false;
    }
}
