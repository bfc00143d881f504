package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.List;

/**
 * A node of an n-ary guillotine tree. Extents are padded: the real extent plus one kerf. So the parts of a split fill it without gaps,
 * every part but the last has its cut behind it, and a padded extent below one kerf is what the saw takes. Cells are immutable and
 * shared between boards; positions follow from the parent.
 */
final class Cell {

    private static final int REST = -1;
    private static final int SPLIT = -2;
    private static final Cell[] NONE = {};

    private final int kind;
    final boolean turned;
    final boolean crosscut;
    final long length;
    final long width;
    final Cell[] parts;
    /** Pieces in this cell and below. */
    final int pieces;

    private Cell(int kind, boolean turned, boolean crosscut, long length, long width, Cell[] parts, int pieces) {
        this.kind = kind;
        this.turned = turned;
        this.crosscut = crosscut;
        this.length = length;
        this.width = width;
        this.parts = parts;
        this.pieces = pieces;
    }

    static Cell rest(long length, long width) {
        return new Cell(REST, false, false, length, width, NONE, 0);
    }

    static Cell piece(int type, boolean turned, long length, long width) {
        return new Cell(type, turned, false, length, width, NONE, 1);
    }

    /**
     * The tidy cell for these parts: parts of the same direction are drawn in, rests are merged, and a split of one part is that part.
     *
     * @param order how they may follow each other
     */
    static Cell join(boolean crosscut, long length, long width, List<Cell> parts, PartOrder order) {
        List<Cell> flat = new ArrayList<>(parts.size() + 2);
        for (Cell part : parts) {
            if (part.isSplit() && part.crosscut == crosscut) {
                flat.addAll(List.of(part.parts));
            } else {
                flat.add(part);
            }
        }
        List<Cell> tidy = order.tidy(crosscut, flat);
        if (tidy.size() == 1) {
            return tidy.get(0);
        }
        int pieces = 0;
        for (Cell part : tidy) {
            pieces += part.pieces;
        }
        return pieces == 0
                ? rest(length, width)
                : new Cell(SPLIT, false, crosscut, length, width, tidy.toArray(NONE), pieces);
    }

    boolean isRest() {
        return kind == REST;
    }

    boolean isSplit() {
        return kind == SPLIT;
    }

    boolean isPiece() {
        return kind >= 0;
    }

    /** Type of the piece. */
    int type() {
        return kind;
    }

    /** Padded extent along x for crosscuts, along y for rips. */
    long along(boolean crosscutAxis) {
        return crosscutAxis ? length : width;
    }
}
