package org.stockcutting.solve.guillotine;

import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.solve.instance.Weights;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * Exact answer for a handful of pieces: all ways to share them among boards, each board decided by {@link ExactFit}. Offcuts that are
 * paid for are not looked at, so then only the placed weight is exact.
 */
final class SmallSearch {

    /** More pieces than this are left to the search. */
    static final int MOST_PIECES = 6;

    private static final long MOST_OPERATIONS = 6_000_000;

    private final Yard yard;
    private final Model model;
    private final Pieces pieces;
    private final ExactFit[] fits;
    private final @Nullable Cell[][] trees;
    private final boolean[][] tried;
    private final int[] used;
    private final Board[] chosen = new Board[MOST_PIECES];
    private final long mostOperations;
    private long nodes;
    private long operations;
    private long bestWeight = -1;
    private long bestCost;
    private @Nullable Draft best;

    SmallSearch(Yard yard, WorkMeter meter) {
        this.yard = yard;
        this.model = yard.model;
        this.pieces = new Pieces(model);
        this.fits = new ExactFit[model.stocks];
        this.trees = new Cell[model.stocks][pieces.all() + 1];
        this.tried = new boolean[model.stocks][pieces.all() + 1];
        this.used = new int[model.stocks];
        this.mostOperations = MOST_OPERATIONS;
        for (int s = 0; s < model.stocks; s++) {
            fits[s] = new ExactFit(yard, pieces, s, MOST_OPERATIONS / model.stocks);
        }
        share(pieces.all(), 0, 0, 0);
        for (ExactFit fit : fits) {
            operations += fit.operations();
        }
        meter.spend(Weights.of(60 * operations + 40 * nodes));
    }

    static boolean suits(Model model) {
        return model.stocks > 0 && Pieces.count(model, MOST_PIECES) <= MOST_PIECES;
    }

    /** True if nothing was left out. */
    boolean isExact() {
        for (ExactFit fit : fits) {
            if (!fit.proves()) {
                return false;
            }
        }
        return nodes < mostOperations;
    }

    /** The best draft; the cheapest only where offcuts are not paid for. */
    Draft best() {
        return best == null ? new Draft(yard) : best;
    }

    /** Decides about the first open piece: one board with it and some of the others, or it stays missing. */
    private void share(int open, int boards, long weight, long cost) {
        nodes++;
        if (nodes >= mostOperations || weight + pieces.weight(open) < bestWeight) {
            return;
        }
        if (weight + pieces.weight(open) == bestWeight && cost >= bestCost) {
            return;
        }
        if (open == 0) {
            keep(boards, weight, cost);
            return;
        }
        int first = Integer.lowestOneBit(open);
        int others = open & ~first;
        for (int with = others; ; with = (with - 1) & others) {
            int mask = with | first;
            if (isFirstOfItsKind(open, mask) && pieces.mayShareBoard(pieces.canonical(mask))) {
                shareOn(mask, open, boards, weight, cost);
            }
            if (with == 0) {
                break;
            }
        }
        share(others, boards, weight, cost);
    }

    /** Of equal pieces in the open ones, the earliest are taken. */
    private boolean isFirstOfItsKind(int open, int mask) {
        for (int i = 1; i < pieces.size(); i++) {
            for (int j = 0; j < i; j++) {
                if (pieces.type(i) == pieces.type(j)
                        && Pieces.has(mask, i)
                        && Pieces.has(open, j)
                        && !Pieces.has(mask, j)) {
                    return false;
                }
            }
        }
        return true;
    }

    private void shareOn(int mask, int open, int boards, long weight, long cost) {
        long cheapest = Long.MAX_VALUE;
        for (int s = 0; s < model.stocks; s++) {
            long price = model.stock(s).cost();
            boolean available = model.stock(s).copies() == StockType.UNLIMITED
                    || used[s] < model.stock(s).copies();
            if (available && price < cheapest) {
                Cell tree = tree(s, pieces.canonical(mask));
                if (tree != null) {
                    cheapest = model.isLimited(s) ? cheapest : price;
                    used[s]++;
                    chosen[boards] = new Board(yard, s, tree);
                    share(open & ~mask, boards + 1, weight + pieces.weight(mask), cost + price);
                    used[s]--;
                }
            }
        }
    }

    private @Nullable Cell tree(int s, int mask) {
        if (!tried[s][mask]) {
            tried[s][mask] = true;
            trees[s][mask] = fits[s].tree(mask);
        }
        return trees[s][mask];
    }

    private void keep(int boards, long weight, long cost) {
        bestWeight = weight;
        bestCost = cost;
        Draft draft = new Draft(yard);
        for (int b = 0; b < boards; b++) {
            draft.add(chosen[b]);
        }
        best = draft;
    }
}
