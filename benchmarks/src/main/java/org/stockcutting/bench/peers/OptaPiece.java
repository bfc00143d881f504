package org.stockcutting.bench.peers;

import java.util.Comparator;
import org.jspecify.annotations.Nullable;
import org.optaplanner.core.api.domain.entity.PlanningEntity;
import org.optaplanner.core.api.domain.lookup.PlanningId;
import org.optaplanner.core.api.domain.variable.PlanningVariable;

/** A piece and the bin it lies in: the planning entity. Mutable, so it never leaves the peer. Public because the engine makes it. */
@PlanningEntity(difficultyComparatorClass = OptaPiece.Harder.class)
public final class OptaPiece {

    /** Pieces that are harder to place count as greater: the construction starts with them. */
    public static final class Harder implements Comparator<OptaPiece> {
        @Override
        public int compare(OptaPiece a, OptaPiece b) {
            return Integer.compare(b.rank, a.rank);
        }
    }

    @PlanningId
    private int id;

    private int item;
    private int rank;
    private long size;
    private int perBoard;

    @PlanningVariable(valueRangeProviderRefs = "bins")
    private @Nullable OptaBin bin;

    /** For the engine, which fills the fields of copies. */
    OptaPiece() {}

    OptaPiece(int id, int item, int rank, long size, int perBoard) {
        this.id = id;
        this.item = item;
        this.rank = rank;
        this.size = size;
        this.perBoard = perBoard;
    }

    int item() {
        return item;
    }

    long size() {
        return size;
    }

    int perBoard() {
        return perBoard;
    }

    @Nullable OptaBin bin() {
        return bin;
    }

    /** Puts the piece where another method had it, before the search starts. */
    void startIn(OptaBin first) {
        bin = first;
    }

    OptaBin binOrThrow() {
        if (bin == null) {
            throw new IllegalStateException("piece " + id + " has no bin yet");
        }
        return bin;
    }

    @Override
    public String toString() {
        return "piece " + id + " of item " + item;
    }
}
