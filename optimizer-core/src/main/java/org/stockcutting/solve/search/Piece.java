package org.stockcutting.solve.search;

import org.jspecify.annotations.Nullable;
import org.optaplanner.core.api.domain.entity.PlanningEntity;
import org.optaplanner.core.api.domain.lookup.PlanningId;
import org.optaplanner.core.api.domain.variable.PlanningVariable;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;

/** One piece of an item type and the board it lies on: the planning entity. Mutable, so it never leaves this room. */
@PlanningEntity
final class Piece {

    @PlanningId
    private int id;

    @PlanningVariable(valueRangeProviderRefs = "boards")
    private @Nullable Board board;

    private int item;
    private long length;
    private long kerf;
    private long minimumPiece;
    private int perBoard;
    private long signature;
    private @Nullable SetGroup group;

    /** For the engine, which fills the fields of copies. */
    Piece() {}

    Piece(int id, Instance instance, int item, @Nullable SetGroup group, Board board) {
        ItemType type = instance.items().get(item);
        this.id = id;
        this.item = item;
        this.length = type.length();
        this.kerf = instance.crosscutKerf();
        this.minimumPiece = instance.limits().minimumPiece();
        this.perBoard = type.perBoard();
        this.signature = Load.scatter(item + 1L);
        this.group = group;
        this.board = board;
    }

    int id() {
        return id;
    }

    Board board() {
        if (board == null) {
            throw new IllegalStateException("piece " + id + " lies nowhere; every piece starts on a board");
        }
        return board;
    }

    void moveTo(Board other) {
        board = other;
    }

    int item() {
        return item;
    }

    long length() {
        return length;
    }

    long kerf() {
        return kerf;
    }

    long minimumPiece() {
        return minimumPiece;
    }

    int perBoard() {
        return perBoard;
    }

    long signature() {
        return signature;
    }

    @Nullable SetGroup group() {
        return group;
    }

    @Override
    public String toString() {
        return "piece " + id + " of item " + item;
    }
}
