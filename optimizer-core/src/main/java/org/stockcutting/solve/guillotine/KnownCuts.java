package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Ways to cut one board that were the best under some worths; those that have not been so for longest are forgotten. */
final class KnownCuts {

    private static final int MOST = 24;

    private final int length;
    private final int width;
    /** The latest last. */
    private final List<CutTree> trees = new ArrayList<>();

    /** @param length padded length of the board, as the width */
    KnownCuts(long length, long width) {
        this.length = (int) length;
        this.width = (int) width;
    }

    /** The way that leaves most worth, null if none is known. */
    @Nullable CutTree best(ClearRests rests) {
        int most = -1;
        int best = -1;
        for (int n = 0; n < trees.size(); n++) {
            int value = value(trees.get(n), rests);
            if (value > most) {
                most = value;
                best = n;
            }
        }
        if (best < 0) {
            return null;
        }
        CutTree tree = trees.remove(best);
        trees.add(tree);
        return tree;
    }

    /** What the board is worth cut this way. */
    int value(CutTree tree, ClearRests rests) {
        return rests.value(tree, 0, length, 0, width);
    }

    /** One of them by chance; there must be one. */
    CutTree any(Dice dice) {
        return trees.get(dice.below(trees.size()));
    }

    /** Adds all those of the same board under other limits. */
    void learn(KnownCuts other) {
        other.trees.forEach(this::add);
    }

    /** Adds one, or makes it the latest. */
    void add(CutTree tree) {
        trees.remove(tree);
        trees.add(tree);
        if (trees.size() > MOST) {
            trees.remove(0);
        }
    }
}
