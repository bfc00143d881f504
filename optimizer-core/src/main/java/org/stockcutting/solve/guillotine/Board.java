package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.StockType;

/**
 * One board and its tree. Immutable apart from a memory of where each type would fit best, which stays right because the tree never
 * changes; boards that a search leaves alone are shared between its states.
 */
final class Board {

    final Yard yard;
    final int stock;
    /** How the board is cut first, whatever else changes. */
    final RootCut first;

    final Cell root;
    /** Pieces of each type. */
    final int[] counts;
    /** Padded area of the pieces. */
    final double area;
    /** Cost of the board less the worth of its kept offcuts. */
    final long cost;

    private final List<Opening> openings = new ArrayList<>();
    private final @Nullable Move[] best;
    private int cells;
    private double placed;
    private double kept;

    /**
     * A rest in which something may fit.
     *
     * @param path from the root
     * @param crowded true if it is ripped from a part that is more than the fence reaches
     * @param value what it is worth as it is
     */
    record Opening(int[] path, boolean crowded, long x, long y, long length, long width, double value) {}

    /**
     * A piece put into an opening.
     *
     * @param opening index of the opening, -1 where the piece fits nowhere
     * @param loss what the search loses in rests, infinite where the piece fits nowhere
     */
    record Move(int type, int opening, boolean turned, boolean crosscutFirst, long x, long y, double loss) {
        boolean isPossible() {
            return opening >= 0;
        }
    }

    /** A board that may be cut first either way. */
    Board(Yard yard, int stock, Cell root) {
        this(yard, stock, RootCut.ANY, root);
    }

    Board(Yard yard, int stock, RootCut first, Cell root) {
        this.yard = yard;
        this.stock = stock;
        this.first = first;
        this.root = root;
        this.counts = new int[yard.model.types];
        this.best = new Move[yard.model.types];
        walk(root, new int[16], 0, false, 0, 0);
        this.area = placed;
        StockType type = yard.model.stock(stock);
        this.cost = type.cost() - (type.offcutValue() == 0 ? 0 : (long) Math.floor(type.offcutValue() * kept));
        yard.count(60L * cells + 8L * counts.length);
    }

    private void walk(Cell cell, int[] path, int depth, boolean crowded, long x, long y) {
        cells++;
        Model model = yard.model;
        if (cell.isPiece()) {
            counts[cell.type()]++;
            placed += (double) cell.length * cell.width;
        } else if (cell.isRest()) {
            if (model.restValue(stock, cell.length, cell.width) > 0) {
                double value = yard.restValue(stock, x, y, cell.length, cell.width);
                openings.add(new Opening(Arrays.copyOf(path, depth), crowded, x, y, cell.length, cell.width, value));
            }
            if (model.paysOffcuts) {
                kept += keptArea(cell, x, y);
            }
        } else {
            int[] deeper = depth < path.length ? path : Arrays.copyOf(path, 2 * depth);
            long at = cell.crosscut ? x : y;
            boolean crowds = yard.order(stock).crowds(cell);
            for (int i = 0; i < cell.parts.length; i++) {
                deeper[depth] = i;
                walk(cell.parts[i], deeper, depth + 1, crowds, cell.crosscut ? at : x, cell.crosscut ? y : at);
                at += cell.parts[i].along(cell.crosscut);
            }
        }
    }

    /** Area of a rest if it is worth keeping, out to the raw end where nothing trims it. */
    private double keptArea(Cell rest, long x, long y) {
        Model model = yard.model;
        StockType type = model.stock(stock);
        long length = rest.length - model.kerfX + (x + rest.length == model.boardLength(stock) ? type.rawEnd() : 0);
        long width = rest.width - model.kerfY + (y + rest.width == model.boardWidth(stock) ? type.rawFarEdge() : 0);
        for (Instance.Keep keep : model.instance.keep()) {
            if (length > 0 && width > 0 && length >= keep.length() && width >= keep.width()) {
                return (double) length * width;
            }
        }
        return 0;
    }

    boolean isEmpty() {
        return root.pieces == 0;
    }

    /** Share of the board's padded area that pieces cover. */
    double density() {
        return area / yard.model.boardArea(stock);
    }

    /** Where a further piece of this type goes best. */
    Move bestMove(int type) {
        Move known = best[type];
        if (known == null) {
            known = findMove(type);
            best[type] = known;
        }
        return known;
    }

    List<Opening> openings() {
        return openings;
    }

    /** This board with the move made. */
    Board with(Move move) {
        Board more = new Board(yard, stock, first, inserted(move));
        if (yard.isFree(stock) && !yard.model.hasZones(stock)) {
            // Rests only get smaller, so what went nowhere still does.
            for (int t = 0; t < best.length; t++) {
                Move known = best[t];
                more.best[t] = known == null || known.isPossible() ? null : known;
            }
        }
        return more;
    }

    /** This board with one more unit, or null if it doesn't fit. */
    @Nullable Board with(Model.Unit unit) {
        Board board = this;
        for (int i = 0; i < unit.types().length; i++) {
            for (int n = 0; n < unit.counts()[i]; n++) {
                Move move = board.bestMove(unit.types()[i]);
                if (!move.isPossible()) {
                    return null;
                }
                board = board.with(move);
            }
        }
        return board;
    }

    private Move findMove(int type) {
        Model model = yard.model;
        Move found = new Move(type, -1, false, false, 0, 0, Double.POSITIVE_INFINITY);
        if (counts[type] >= model.item(type).perBoard()) {
            return found;
        }
        yard.count(12L * openings.size());
        for (int o = 0; o < openings.size(); o++) {
            for (int turn = 0; turn < 2; turn++) {
                boolean turned = turn == 1;
                Opening opening = openings.get(o);
                if (model.allows(stock, type, turned)
                        && model.length(stock, type, turned) <= opening.length()
                        && model.width(stock, type, turned) <= opening.width()) {
                    found = betterIn(o, type, turned, found);
                }
            }
        }
        return found;
    }

    private Move betterIn(int o, int type, boolean turned, Move best) {
        Opening opening = openings.get(o);
        if (!yard.model.hasZones(stock)) {
            return betterAt(o, type, turned, opening.x(), opening.y(), best);
        }
        Move found = best;
        long[] xs = yard.startsX(stock);
        long[] ys = yard.startsY(stock);
        long lastX = opening.x() + opening.length() - yard.model.length(stock, type, turned);
        long lastY = opening.y() + opening.width() - yard.model.width(stock, type, turned);
        for (int i = -1; i < xs.length; i++) {
            long x = i < 0 ? opening.x() : xs[i];
            if (i >= 0 && x <= opening.x() || x > lastX) {
                continue;
            }
            for (int j = -1; j < ys.length; j++) {
                long y = j < 0 ? opening.y() : ys[j];
                if (j < 0 || y > opening.y() && y <= lastY) {
                    found = betterAt(o, type, turned, x, y, found);
                }
            }
        }
        return found;
    }

    private Move betterAt(int o, int type, boolean turned, long x, long y, Move best) {
        Model model = yard.model;
        Opening opening = openings.get(o);
        long length = model.length(stock, type, turned);
        long width = model.width(stock, type, turned);
        long right = opening.x() + opening.length() - x - length;
        long above = opening.y() + opening.width() - y - width;
        if (right < 0 || above < 0 || !model.isClear(stock, type, x, y, length, width)) {
            return best;
        }
        yard.count(25);
        long left = x - opening.x();
        long below = y - opening.y();
        Move found = best;
        double crosscutFirst = opening.value()
                - rest(opening.x(), opening.y(), left, opening.width())
                - rest(x + length, opening.y(), right, opening.width())
                - rest(x, opening.y(), length, below)
                - rest(x, y + width, length, above);
        found = better(new Move(type, o, turned, true, x, y, crosscutFirst), found);
        if (length < opening.length() && width < opening.width()) {
            double ripFirst = opening.value()
                    - rest(opening.x(), opening.y(), opening.length(), below)
                    - rest(opening.x(), y + width, opening.length(), above)
                    - rest(opening.x(), y, left, width)
                    - rest(x + length, y, right, width);
            found = better(new Move(type, o, turned, false, x, y, ripFirst), found);
        }
        return found;
    }

    private double rest(long x, long y, long length, long width) {
        return length == 0 || width == 0 ? 0 : yard.restValue(stock, x, y, length, width);
    }

    private Move better(Move move, Move best) {
        if (move.loss() >= best.loss()) {
            return best;
        }
        boolean atRoot = first != RootCut.ANY && openings.get(move.opening()).path().length == 0;
        if (yard.isFree(stock) && !atRoot) {
            return move;
        }
        if (yard.rules(stock).isLocal() && !atRoot) {
            return yard.rules(stock).allowLocally(openings.get(move.opening()), move) ? move : best;
        }
        Cell tree = inserted(move);
        return first.allows(tree) && yard.allows(stock, tree) ? move : best;
    }

    private Cell inserted(Move move) {
        return insert(root, openings.get(move.opening()).path(), 0, move);
    }

    private Cell insert(Cell cell, int[] path, int depth, Move move) {
        if (depth == path.length) {
            return filled(openings.get(move.opening()), move);
        }
        List<Cell> parts = new ArrayList<>(List.of(cell.parts));
        parts.set(path[depth], insert(cell.parts[path[depth]], path, depth + 1, move));
        return join(cell.crosscut, cell.length, cell.width, parts);
    }

    private Cell filled(Opening opening, Move move) {
        Model model = yard.model;
        long length = model.length(stock, move.type(), move.turned());
        long width = model.width(stock, move.type(), move.turned());
        Cell piece = Cell.piece(move.type(), move.turned(), length, width);
        long before = move.crosscutFirst() ? move.y() - opening.y() : move.x() - opening.x();
        if (move.crosscutFirst()) {
            Cell column = framed(false, length, opening.width(), before, piece);
            return framed(true, opening.length(), opening.width(), move.x() - opening.x(), column);
        }
        Cell row = framed(true, opening.length(), width, before, piece);
        return framed(false, opening.length(), opening.width(), move.y() - opening.y(), row);
    }

    /** A cell of these extents with the part in it and rest before and behind. */
    private Cell framed(boolean crosscut, long length, long width, long before, Cell part) {
        List<Cell> parts = new ArrayList<>(3);
        long whole = crosscut ? length : width;
        addRest(parts, crosscut, before, crosscut ? width : length);
        parts.add(part);
        addRest(parts, crosscut, whole - before - part.along(crosscut), crosscut ? width : length);
        return join(crosscut, length, width, parts);
    }

    private static void addRest(List<Cell> parts, boolean crosscut, long along, long across) {
        if (along > 0) {
            parts.add(crosscut ? Cell.rest(along, across) : Cell.rest(across, along));
        }
    }

    Cell join(boolean crosscut, long length, long width, List<Cell> parts) {
        return Cell.join(crosscut, length, width, parts, yard.order(stock));
    }
}
