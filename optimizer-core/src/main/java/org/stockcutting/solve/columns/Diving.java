package org.stockcutting.solve.columns;

import java.util.Arrays;
import java.util.Comparator;
import java.util.Random;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Makes whole boards of the linear programme's fractions: takes whole parts, then one board of the fraction nearest to one, solves and
 * prices again for the rest. Later dives leave the best choice now and then (limited discrepancy: Harvey, Ginsberg 1995).
 */
final class Diving {

    private static final int ROUNDS = 40;
    /** Zoned boards are priced one by one, so with many of them there is no time for more than this. */
    private static final int ROUNDS_ZONED = 2;

    private static final int MANY_ZONED = 50;

    private final LineModel model;
    private final Master master;
    private final Greedy greedy;
    private final CostGrid grid;
    private final Random random;
    private final int rounds;
    /** From here on a value counts as the next whole number. */
    private final double whole;

    private final int[] root;

    /** Takes the master as it stands after column generation for the whole demand. */
    Diving(LineModel model, Master master, Greedy greedy, CostGrid grid, long seed) {
        this.model = model;
        this.master = master;
        this.greedy = greedy;
        this.grid = grid;
        this.random = new Random(seed);
        long zoned = model.lines.stream().filter(l -> l.hasZones).count();
        this.rounds = zoned > MANY_ZONED ? ROUNDS_ZONED : ROUNDS;
        this.whole = zoned > MANY_ZONED ? 0.75 : 1 - 1e-6;
        this.root = master.simplex().basis();
    }

    /**
     * One dive.
     *
     * @param number 0 follows the linear programme; later ones deviate more and more
     * @param best the packing to beat
     * @return null if it cannot beat {@code best} or the work ended
     */
    @Nullable Packing dive(int number, Packing best) {
        Packing packing = new Packing(model);
        if (number > 0) {
            // From the last dive's end the dual method would need far longer than this.
            master.simplex().restore(root);
        }
        double deviate = number == 0 ? 0 : Math.min(0.5, 0.05 + 0.02 * number);
        while (!packing.isComplete()) {
            master.set(packing.left, packing.boards);
            if (!master.generate(rounds, false)) {
                return null;
            }
            if (best.isComplete() && grid.raise(packing.cost + master.objective()) >= best.cost) {
                return null;
            }
            if (!takeWhole(packing) && !takeOne(packing, deviate)) {
                break;
            }
        }
        greedy.complete(packing);
        return packing.onCheapestBoards();
    }

    /** Rounds the linear programme as it stands, largest values first, and fills up greedily: quick, and needs no further pricing. */
    Packing round() {
        Packing packing = new Packing(model);
        double[] values = new double[master.patterns().size()];
        Arrays.setAll(values, c -> master.simplex().value(c));
        int[] order = IntStream.range(0, values.length)
                .filter(c -> values[c] > 0.25)
                .boxed()
                .sorted(Comparator.comparingDouble(c -> -values[c]))
                .mapToInt(c -> c)
                .toArray();
        for (int c : order) {
            Pattern pattern = master.patterns().get(c);
            int times = (int) Math.min(Math.round(values[c]), packing.boards[pattern.line()]);
            times = Math.min(times, pattern.times(packing.left));
            if (times > 0) {
                packing.use(pattern, times);
            } else if (packing.boards[pattern.line()] > 0) {
                Pattern part = model.trimmed(pattern, packing.left);
                // What is left of a pattern is worth its board only if it is most of it.
                if (2 * model.size(part) > model.size(pattern)) {
                    packing.use(part, 1);
                }
            }
        }
        greedy.complete(packing);
        return packing.onCheapestBoards();
    }

    private boolean takeWhole(Packing packing) {
        boolean taken = false;
        for (int c = 0; c < master.patterns().size(); c++) {
            double value = master.simplex().value(c);
            if (value > whole) {
                Pattern pattern = master.patterns().get(c);
                int times = (int) Math.min(Math.floor(value + 1 - whole), packing.boards[pattern.line()]);
                times = Math.min(times, pattern.times(packing.left));
                if (times > 0) {
                    packing.use(pattern, times);
                    taken = true;
                }
            }
        }
        return taken;
    }

    private boolean takeOne(Packing packing, double deviate) {
        int chosen = -1;
        double most = 0;
        for (int c = 0; c < master.patterns().size(); c++) {
            double value = master.simplex().value(c);
            if (value > 1e-7 && packing.boards[master.patterns().get(c).line()] > 0) {
                double score = value - Math.floor(value + 1e-7);
                score = Math.max(score, 1e-6);
                score = random.nextDouble() < deviate ? score * random.nextDouble() : score;
                if (score > most) {
                    most = score;
                    chosen = c;
                }
            }
        }
        if (chosen < 0) {
            return false;
        }
        Pattern pattern = model.trimmed(master.patterns().get(chosen), packing.left);
        if (pattern.units().length == 0) {
            return false;
        }
        packing.use(pattern, 1);
        return true;
    }
}
