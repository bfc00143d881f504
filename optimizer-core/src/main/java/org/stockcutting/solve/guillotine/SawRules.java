package org.stockcutting.solve.guillotine;

import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.StockType;

/**
 * Says whether the shop's saws can cut a tree: stages, first cut, capacities, least piece, and no cut through metal.
 *
 * <p>A cell at the usable end may or may not still carry the raw end behind it, depending on when the far trim is sawn. Upper limits
 * count the raw end, the least piece does not, so a tree that passes can be cut either way.
 */
final class SawRules {

    private final Model model;
    private final int stock;
    private final StockType type;
    private final Instance.Limits limits;
    private final boolean local;

    SawRules(Model model, int stock) {
        this.model = model;
        this.stock = stock;
        this.type = model.stock(stock);
        this.limits = model.instance.limits();
        this.local = type.zones().isEmpty()
                && type.rawEnd() == 0
                && type.rawFarEdge() == 0
                && limits.stages() == Integer.MAX_VALUE
                && limits.firstCut() == null
                && limits.longestRip() >= type.length()
                && limits.minimumPiece() == 0;
    }

    /** True if no limit can bite on this stock and it holds no metal. */
    boolean allowEverything() {
        return !ordered()
                && limits.stages() == Integer.MAX_VALUE
                && limits.firstCut() == null
                && limits.longestRip() >= type.length() + type.rawEnd()
                && limits.crosscutCapacity() >= type.width() + type.rawFarEdge()
                && type.zones().stream().noneMatch(StockType.ZoneRect::metal);
    }

    /** True if it matters in which order parts follow each other. */
    boolean ordered() {
        return limits.minimumPiece() > 0 || fenceBites();
    }

    /** True if some rip could have more than the fence's reach on both sides. */
    boolean fenceBites() {
        long both = type.width() + type.rawFarEdge() - model.kerfY;
        return limits.ripCapacity() < both - limits.ripCapacity();
    }

    /** In which order parts follow each other so that the saws can cut them, if any order will do. */
    PartOrder order() {
        if (model.hasZones(stock)) {
            return PartOrder.FIXED;
        }
        long reach = fenceBites() ? limits.ripCapacity() + model.kerfY : Long.MAX_VALUE;
        return new PartOrder(true, ordered(), reach, fenceBites() ? reach - type.rawFarEdge() : reach);
    }

    /** True if no more than what the saws reach matters, and nothing lies beyond the usable rectangle: then {@link #allowLocally} says all. */
    boolean isLocal() {
        return local;
    }

    /** May a piece be put so into a rest of a board that can be sawn? */
    boolean allowLocally(Board.Opening opening, Board.Move move) {
        long length = model.length(stock, move.type(), move.turned());
        long width = model.width(stock, move.type(), move.turned());
        boolean crosscut = length < opening.length();
        long strip = move.crosscutFirst() && crosscut ? opening.width() : width;
        return (!crosscut || strip - model.kerfY <= limits.crosscutCapacity())
                && (!opening.crowded() || strip <= limits.ripCapacity() + model.kerfY);
    }

    boolean allow(Cell root) {
        return root.isPiece() ? allowPiece(root, 0, 0) : !root.isSplit() || allowSplit(root, 0, 0, 0);
    }

    private boolean allowSplit(Cell split, long x, long y, int stagesBefore) {
        if (!allowStage(split.crosscut, stagesBefore + 1)) {
            return false;
        }
        long at = split.crosscut ? x : y;
        long end = at + split.along(split.crosscut);
        for (int i = 0; i < split.parts.length; i++) {
            Cell part = split.parts[i];
            long next = at + part.along(split.crosscut);
            long px = split.crosscut ? at : x;
            long py = split.crosscut ? y : at;
            if (i + 1 < split.parts.length
                    && !allowCut(split.crosscut, x, y, split.length, split.width, at, next, end)) {
                return false;
            }
            if (part.isSplit()
                    ? !allowSplit(part, px, py, stagesBefore + 1)
                    : part.isPiece() && !allowPiece(part, px, py)) {
                return false;
            }
            at = next;
        }
        return true;
    }

    /** May a cut of this direction be the n-th change of direction on its path? */
    boolean allowStage(boolean crosscut, int stage) {
        Boolean first = limits.firstCut();
        return stage <= limits.stages() && (stage > 1 || first == null || first == crosscut);
    }

    /**
     * May a node with this corner and these padded extents be cut at {@code next}, where what is not yet cut starts at {@code at} and
     * ends at {@code end}, all padded?
     */
    boolean allowCut(boolean crosscut, long x, long y, long length, long width, long at, long next, long end) {
        if (crosscut) {
            long realWidth = width - model.kerfY + rawBehind(false, y + width);
            return end - at - model.kerfX >= limits.minimumPiece()
                    && realWidth <= limits.crosscutCapacity()
                    && clearOfMetal(next - model.kerfX, next, y, y + width - model.kerfY, true);
        }
        long realLength = length - model.kerfX;
        long piece = next - at - model.kerfY;
        long behind = Math.max(0, end - next - model.kerfY + rawBehind(false, end));
        return realLength >= limits.minimumPiece()
                && realLength + rawBehind(true, x + length) <= limits.longestRip()
                && Math.min(piece, behind) <= limits.ripCapacity()
                && clearOfMetal(next - model.kerfY, next, x, x + length - model.kerfX, false);
    }

    private long rawBehind(boolean alongX, long paddedEnd) {
        if (alongX) {
            return paddedEnd == model.boardLength(stock) ? type.rawEnd() : 0;
        }
        return paddedEnd == model.boardWidth(stock) ? type.rawFarEdge() : 0;
    }

    /** A piece that reaches the usable end or far edge still has its raw end or edge to be trimmed off. */
    boolean allowPiece(Cell piece, long x, long y) {
        return allowPiece(piece.length, piece.width, x, y);
    }

    boolean allowPiece(long length, long width, long x, long y) {
        long rawX = rawBehind(true, x + length);
        long rawY = rawBehind(false, y + width);
        long realLength = length - model.kerfX;
        long realWidth = width - model.kerfY;
        if (rawX > 0 && (realWidth + rawY > limits.crosscutCapacity() || realLength + rawX < limits.minimumPiece())) {
            return false;
        }
        return rawY == 0 || (realLength + rawX <= limits.longestRip() && realLength >= limits.minimumPiece());
    }

    private boolean clearOfMetal(long from, long to, long acrossFrom, long acrossTo, boolean crosscut) {
        for (StockType.ZoneRect zone : type.zones()) {
            if (zone.metal()
                    && (crosscut
                            ? overlap(from, to, zone.x0(), zone.x1())
                                    && overlap(acrossFrom, acrossTo, zone.y0(), zone.y1())
                            : overlap(from, to, zone.y0(), zone.y1())
                                    && overlap(acrossFrom, acrossTo, zone.x0(), zone.x1()))) {
                return false;
            }
        }
        return true;
    }

    private static boolean overlap(long from, long to, long otherFrom, long otherTo) {
        return from < otherTo && to > otherFrom;
    }
}
