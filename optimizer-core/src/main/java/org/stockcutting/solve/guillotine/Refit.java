package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Ruin and recreate on one board, for the most worth with no more pieces of a type than may be cut; worse boards are accepted less and less. */
final class Refit {

    /** Most pieces or cells that one move takes out. */
    private static final int MOST_RUINED = 4;

    private final Model model;
    private final Dice dice;
    private final double warmth;

    /** @param warmth share of a board's worth by which the first moves may get worse */
    Refit(Model model, Dice dice, double warmth) {
        this.model = model;
        this.dice = dice;
        this.warmth = warmth;
    }

    /** The best board of so many moves that start from this one. */
    Board improved(Board start, int[] most, double[] worths, int moves) {
        List<Integer> types = new ArrayList<>();
        for (int t = 0; t < model.types; t++) {
            if (most[t] > 0 && worths[t] > 0 && model.hasPlace(start.stock, t)) {
                types.add(t);
            }
        }
        Board current = start;
        Board best = start;
        double value = worth(start, worths);
        double top = value;
        for (int n = 0; n < moves; n++) {
            Board next = filled(
                    n == 0 ? current : Pruning.thinned(current, 0, 1 + dice.below(MOST_RUINED), dice),
                    types,
                    most,
                    worths);
            double reached = worth(next, worths);
            if (reached >= value - warmth * top * (moves - n) / moves * dice.unit()) {
                current = next;
                value = reached;
            }
            if (reached > top) {
                top = reached;
                best = next;
            }
        }
        return best;
    }

    static double worth(Board board, double[] worths) {
        double sum = 0;
        for (int t = 0; t < worths.length; t++) {
            sum += board.counts[t] * worths[t];
        }
        return sum;
    }

    private Board filled(Board board, List<Integer> types, int[] most, double[] worths) {
        double[] rank = new double[model.types];
        double noise = dice.below(3) == 0 ? 0.8 : 0.2;
        boolean byDensity = dice.below(2) == 0;
        for (int t : types) {
            double size = byDensity ? worths[t] / model.area(t) : worths[t];
            rank[t] = size * (1 - noise + 2 * noise * dice.unit());
        }
        types.sort(Comparator.comparingDouble(t -> -rank[t]));
        Board filled = board;
        for (int t : types) {
            while (filled.counts[t] < most[t] && filled.bestMove(t).isPossible()) {
                filled = filled.with(filled.bestMove(t));
            }
        }
        return filled;
    }
}
