package org.stockcutting.solve.guillotine;

import java.util.Arrays;

/**
 * Ruin and recreate with late acceptance: a walk from a draft to others with no more boards than allowed, downhill in what is still
 * missing. The fixed boards of a draft are no part of it, only their cost is.
 */
final class Walk {

    private final Model model;
    private final Filling filling;
    private final Dice dice;
    private double[] history = {};
    private double[] price = {};
    private Draft current;
    private double energy;
    private double reached;
    private Allowance cap;
    private int step;

    Walk(Yard yard, Dice dice) {
        this.model = yard.model;
        this.filling = new Filling(yard);
        this.dice = dice;
        this.current = new Draft(yard);
        this.cap = Allowance.of(model, Long.MAX_VALUE);
    }

    /**
     * Begins anew.
     *
     * @param start taken as it is, its boards may be more than allowed
     * @param most no new board is taken that is not allowed
     * @param prices what a missing piece of each type counts
     * @param memory a move is also accepted where it is no worse than what was current so many moves ago
     */
    void start(Draft start, Allowance most, double[] prices, int memory) {
        current = start.copy();
        cap = most;
        price = prices;
        if (cap.cost() < Long.MAX_VALUE) {
            filling.recreate(current, cap, dice);
        }
        energy = energy(current);
        reached = energy;
        history = new double[memory];
        Arrays.fill(history, energy);
        step = 0;
    }

    /** Makes one move and returns the draft that was tried, accepted or not. */
    Draft move() {
        Draft next = current.copy();
        ruin(next);
        filling.recreate(next, cap, dice);
        reached = energy(next);
        if (reached <= energy || reached <= history[step]) {
            current = next;
            energy = reached;
        }
        history[step] = Math.min(history[step], energy);
        step = step + 1 == history.length ? 0 : step + 1;
        return next;
    }

    Draft current() {
        return current;
    }

    /** The energy of the draft that was tried last; at first that of the start. */
    double reached() {
        return reached;
    }

    private double energy(Draft draft) {
        double sum = model.paysOffcuts ? draft.cost() : 0;
        for (int t = 0; t < model.types; t++) {
            sum += draft.left[t] * price[t];
        }
        return sum;
    }

    /** Takes a few pieces, cells or whole boards out. */
    private void ruin(Draft draft) {
        if (draft.boards.isEmpty()) {
            return;
        }
        if (dice.below(12) == 0) {
            draft.remove(dice.below(draft.boards.size()));
            return;
        }
        int boards = Math.min(draft.boards.size(), 1 + dice.below(3));
        int goal = 1 + dice.below(8);
        for (int n = 0; n < boards && !draft.boards.isEmpty(); n++) {
            ruinBoard(draft, dice.below(draft.boards.size()), Math.max(1, goal / boards));
        }
    }

    private void ruinBoard(Draft draft, int index, int goal) {
        Board board = draft.boards.get(index);
        board = Pruning.thinned(board, Math.max(0, board.root.pieces - goal), goal, dice);
        if (board.isEmpty()) {
            draft.remove(index);
        } else {
            draft.replace(index, board);
        }
    }
}
