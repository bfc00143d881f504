package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.List;

/** A state of the search: boards, what is still missing, and the sum of costs. */
final class Draft {

    final Yard yard;
    final List<Board> boards;
    /** Missing pieces of each type. */
    final int[] left;

    private final int[] used;
    private long cost;

    Draft(Yard yard) {
        this.yard = yard;
        this.boards = new ArrayList<>();
        this.left = yard.model.instance.items().stream()
                .mapToInt(item -> item.demand())
                .toArray();
        this.used = new int[yard.model.stocks];
    }

    private Draft(Draft other) {
        this.yard = other.yard;
        this.boards = new ArrayList<>(other.boards);
        this.left = other.left.clone();
        this.used = other.used.clone();
        this.cost = other.cost;
    }

    /** What is left to do once this draft's boards are fixed: their cost and their pieces count, they themselves are not in it. */
    Draft rest() {
        Draft rest = new Draft(this);
        rest.boards.clear();
        return rest;
    }

    Draft copy() {
        yard.count(8L * boards.size() + left.length);
        return new Draft(this);
    }

    /** The same boards in a shop with other saw limits, each cut first as it is. */
    Draft on(Yard other) {
        Draft draft = new Draft(other);
        for (Board board : boards) {
            draft.add(new Board(other, board.stock, other.firstOf(board.root), board.root));
        }
        return draft;
    }

    long cost() {
        return cost;
    }

    /** Boards of this stock that may still be taken. */
    int available(int stock) {
        int copies = yard.model.stock(stock).copies();
        return yard.model.isLimited(stock) ? copies - used[stock] : Integer.MAX_VALUE;
    }

    /** Boards of this stock that are taken. */
    int used(int stock) {
        return used[stock];
    }

    void add(Board board) {
        boards.add(board);
        take(board, 1);
    }

    void remove(int index) {
        take(boards.remove(index), -1);
    }

    void replace(int index, Board board) {
        take(boards.get(index), -1);
        boards.set(index, board);
        take(board, 1);
    }

    private void take(Board board, int sign) {
        used[board.stock] += sign;
        cost += sign * board.cost;
        for (int t = 0; t < left.length; t++) {
            left[t] -= sign * board.counts[t];
        }
    }

    /** Weight of everything missing. */
    long missingWeight() {
        long weight = 0;
        for (int t = 0; t < left.length; t++) {
            weight += left[t] * yard.model.item(t).weight();
        }
        return weight;
    }

    /** Most weight placed first, then least cost. */
    boolean isBetterThan(Draft other) {
        long mine = missingWeight();
        long theirs = other.missingWeight();
        return mine != theirs ? mine < theirs : cost < other.cost;
    }

    /** How many whole units are missing. */
    int missing(Model.Unit unit) {
        int units = Integer.MAX_VALUE;
        for (int i = 0; i < unit.types().length; i++) {
            units = Math.min(units, left[unit.types()[i]] / unit.counts()[i]);
        }
        return units;
    }
}
