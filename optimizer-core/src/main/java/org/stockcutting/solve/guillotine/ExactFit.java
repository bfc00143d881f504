package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.StockType;

/**
 * Decides exactly whether a handful of pieces can be cut from one board.
 *
 * <p>Top-down over rectangles: cut off a first part with some of the pieces, go on with the rest in the same direction, or turn to the
 * other direction in what was cut off. Cuts lie at normal positions only (Christofides, Whitlock, Operations Research 25, 1977),
 * widened for zones: sums of extents of a subset of the pieces, from the origin or from behind a zone, since pieces and cuts can be
 * moved towards the origin until they meet one of these. Limits that depend on the order of the cuts also need rest in front, so for
 * them sums counted back from the far end are positions too, and what the limits themselves
 * suggest; that is not all there is, so nothing is proved then.
 */
final class ExactFit {

    private final Model model;
    private final SawRules rules;
    private final Pieces pieces;
    private final int stock;
    private final boolean leading;
    private final long[] cutsX;
    private final long[] cutsY;
    private final Map<Key, Found> known = new HashMap<>();
    private long operations;
    private final long mostOperations;

    /** How far the cuts of a direction have come: no more of them, or more may follow, behind pieces or behind rest. */
    private enum Row {
        CLOSED,
        BEHIND_PIECES,
        BEHIND_REST
    }

    /** A cell with these pieces, reached by cuts of one direction. */
    private record Key(int mask, long x, long y, long length, long width, int direction, int stages, Row row) {}

    /** The cell found, or null where there is none. */
    private record Found(@Nullable Cell cell) {}

    private static final int NO_DIRECTION = 0;
    private static final int CROSSCUT = 1;
    private static final int RIP = 2;

    ExactFit(Yard yard, Pieces pieces, int stock, long mostOperations) {
        this.model = yard.model;
        this.rules = yard.rules(stock);
        this.pieces = pieces;
        this.stock = stock;
        this.mostOperations = mostOperations;
        this.leading = model.hasZones(stock) || yard.isOrdered(stock);
        this.cutsX = positions(true, yard.isOrdered(stock));
        this.cutsY = positions(false, yard.isOrdered(stock));
    }

    private long[] positions(boolean alongX, boolean fromFarEnd) {
        long whole = alongX ? model.boardLength(stock) : model.boardWidth(stock);
        TreeSet<Long> sums = new TreeSet<>(List.of(0L));
        for (int i = 0; i < pieces.size(); i++) {
            for (long sum : new ArrayList<>(sums)) {
                for (int turn = 0; turn < 2; turn++) {
                    boolean turned = turn == 1;
                    int t = pieces.type(i);
                    if (model.allows(stock, t, turned)) {
                        sums.add(sum + (alongX ? model.length(stock, t, turned) : model.width(stock, t, turned)));
                    }
                }
            }
        }
        TreeSet<Long> starts = new TreeSet<>(List.of(0L));
        long least = model.instance.limits().minimumPiece() + model.kerfX;
        if (alongX && fromFarEnd && least < whole) {
            starts.addAll(List.of(least, whole - least));
        }
        if (!alongX && rules.fenceBites()) {
            addFenceWidths(starts, whole);
        }
        for (StockType.ZoneRect zone : model.stock(stock).zones()) {
            long end = alongX ? zone.x1() : zone.y1();
            starts.add(end);
            if (zone.metal()) {
                starts.add(end + (alongX ? model.kerfX : model.kerfY));
            }
        }
        TreeSet<Long> cuts = new TreeSet<>();
        for (long sum : sums) {
            for (long start : starts) {
                cuts.add(start + sum);
            }
            if (fromFarEnd) {
                cuts.add(whole - sum);
            }
        }
        return cuts.stream()
                .mapToLong(Long::longValue)
                .filter(c -> c > 0 && c < whole)
                .toArray();
    }

    /** Rest that is wider than the fence reaches comes off in strips. */
    private void addFenceWidths(TreeSet<Long> starts, long whole) {
        long strip = Math.max(1, model.instance.limits().ripCapacity() + model.kerfY);
        for (int n = 1; n <= 2 && n * strip < whole; n++) {
            starts.add(n * strip);
        }
    }

    /** True if a missing tree proves that there is none; where the order of cuts matters, not all ways to take off rest are tried. */
    boolean proves() {
        return !gaveUp() && !rules.ordered();
    }

    /** True once the work ran out: a missing tree proves nothing then. */
    boolean gaveUp() {
        return operations >= mostOperations;
    }

    long operations() {
        return operations;
    }

    /** A tree with exactly these pieces, or null if there is none or the work ran out. */
    @Nullable Cell tree(int mask) {
        return cell(mask, 0, 0, model.boardLength(stock), model.boardWidth(stock), NO_DIRECTION, 0);
    }

    private @Nullable Cell cell(int mask, long x, long y, long length, long width, int direction, int stages) {
        if (mask == 0) {
            return Cell.rest(length, width);
        }
        Key key = new Key(mask, x, y, length, width, direction, stages, Row.CLOSED);
        Found found = known.get(key);
        if (found == null) {
            if (gaveUp() || !hasRoom(mask, length, width)) {
                return null;
            }
            found = new Found(search(mask, x, y, length, width, direction, stages));
            known.put(key, found);
        }
        return found.cell();
    }

    private @Nullable Cell search(int mask, long x, long y, long length, long width, int direction, int stages) {
        Cell single = Integer.bitCount(mask) == 1 ? exactPiece(mask, x, y, length, width) : null;
        if (single != null) {
            return single;
        }
        for (int next = CROSSCUT; next <= RIP; next++) {
            if (next != direction && rules.allowStage(next == CROSSCUT, stages + 1)) {
                List<Cell> parts =
                        row(mask, x, y, length, width, next, stages + 1, next == CROSSCUT ? x : y, Row.BEHIND_PIECES);
                if (parts != null) {
                    return Cell.join(next == CROSSCUT, length, width, parts, PartOrder.FIXED);
                }
            }
        }
        return null;
    }

    private @Nullable Cell exactPiece(int mask, long x, long y, long length, long width) {
        int t = pieces.type(Integer.numberOfTrailingZeros(mask));
        for (int turn = 0; turn < 2; turn++) {
            boolean turned = turn == 1;
            if (model.allows(stock, t, turned)
                    && model.length(stock, t, turned) == length
                    && model.width(stock, t, turned) == width
                    && rules.allowPiece(length, width, x, y)
                    && model.isClear(stock, t, x, y, length, width)) {
                return Cell.piece(t, turned, length, width);
            }
        }
        return null;
    }

    /** Parts of one direction that fill the node from {@code at} to its end with at least one cut, or null. */
    private @Nullable List<Cell> row(
            int mask, long x, long y, long length, long width, int direction, int stages, long at, Row row) {
        boolean crosscut = direction == CROSSCUT;
        long end = crosscut ? x + length : y + width;
        for (long cut : crosscut ? cutsX : cutsY) {
            if (cut > at && cut < end && rules.allowCut(crosscut, x, y, length, width, at, cut, end)) {
                List<Cell> parts = rowAt(mask, x, y, length, width, direction, stages, at, cut, row);
                if (parts != null) {
                    return parts;
                }
            }
        }
        return null;
    }

    private @Nullable List<Cell> rowAt(
            int mask, long x, long y, long length, long width, int direction, int stages, long at, long cut, Row row) {
        boolean crosscut = direction == CROSSCUT;
        long end = crosscut ? x + length : y + width;
        for (int first = mask; ; first = (first - 1) & mask) {
            operations++;
            if (gaveUp()) {
                return null;
            }
            // Rest behind rest would be one rest.
            boolean worthIt = first != 0 || (leading && row == Row.BEHIND_PIECES);
            if (worthIt
                    && pieces.isCanonical(first)
                    && hasRoom(first, crosscut ? cut - at : length, crosscut ? width : cut - at)) {
                Cell part = crosscut
                        ? cell(first, at, y, cut - at, width, direction, stages)
                        : cell(first, x, at, length, cut - at, direction, stages);
                List<Cell> behind = part == null
                        ? null
                        : behind(
                                pieces.canonical(mask & ~first),
                                x,
                                y,
                                length,
                                width,
                                direction,
                                stages,
                                cut,
                                end,
                                first == 0 ? Row.BEHIND_REST : Row.BEHIND_PIECES);
                if (part != null && behind != null) {
                    behind.add(0, part);
                    return behind;
                }
            }
            if (first == 0) {
                return null;
            }
        }
    }

    private @Nullable List<Cell> behind(
            int mask, long x, long y, long length, long width, int direction, int stages, long cut, long end, Row row) {
        boolean crosscut = direction == CROSSCUT;
        if ((mask == 0 && row == Row.BEHIND_REST)
                || !hasRoom(mask, crosscut ? end - cut : length, crosscut ? width : end - cut)) {
            return null;
        }
        Cell last = crosscut
                ? cell(mask, cut, y, end - cut, width, direction, stages)
                : cell(mask, x, cut, length, end - cut, direction, stages);
        if (last != null) {
            return new ArrayList<>(List.of(last));
        }
        // The node's own extents matter to the limits, so they stand in the key with where the open part starts.
        Key key = crosscut
                ? new Key(mask, cut, y, x + length - cut, width, direction, stages, row)
                : new Key(mask, x, cut, length, y + width - cut, direction, stages, row);
        Found found = known.get(key);
        if (found != null && found.cell() == null) {
            return null;
        }
        List<Cell> parts = row(mask, x, y, length, width, direction, stages, cut, row);
        if (parts == null && !gaveUp()) {
            known.put(key, new Found(null));
        }
        return parts;
    }

    /** Quick test: area, and each piece alone. */
    private boolean hasRoom(int mask, long length, long width) {
        double area = 0;
        for (int i = 0; i < pieces.size(); i++) {
            if (Pieces.has(mask, i)) {
                int t = pieces.type(i);
                area += model.area(t);
                boolean fits = false;
                for (int turn = 0; turn < 2; turn++) {
                    fits |= model.allows(stock, t, turn == 1)
                            && model.length(stock, t, turn == 1) <= length
                            && model.width(stock, t, turn == 1) <= width;
                }
                if (!fits) {
                    return false;
                }
            }
        }
        return area <= (double) length * width * (1 + 1e-12);
    }
}
