package org.stockcutting.solve.columns;

import java.util.Arrays;
import java.util.function.Consumer;
import org.stockcutting.solve.instance.WorkMeter;

/** The order of methods for one model: quick ones first, each stopping as soon as value and bound meet. */
final class LineSearch {

    /** A tiny job (states times patterns) is simply enumerated before anything else is tried. */
    private static final long TINY = 2_000_000;
    /** What enumeration may take where the linear bound is not met. */
    private static final long SMALL = 60_000_000;
    /** Steps for the pattern tree; where it has not closed by then, dives use the rest better. */
    private static final long TREE = 2_000_000;
    /** More rows than this are too many for a dense inverse. */
    private static final int MOST_ROWS = 1_500;

    private static final int FIRST_DIVES = 8;
    private static final int MOST_DIVES = 2_000;
    /** Dives without an improvement that are enough where no bound tells when to stop. */
    private static final int PATIENCE = 25;

    private final LineModel model;
    private final WorkMeter meter;
    private final long seed;
    /** Enough is known once a packing costs no more than this, or none can. */
    private final long target;

    private final Consumer<Packing> improved;
    private final Work work;
    private final Greedy greedy;
    private Packing best;
    private double[] worth;
    private long bound = Long.MIN_VALUE;
    private boolean exact;

    LineSearch(LineModel model, WorkMeter meter, long seed, Consumer<Packing> improved) {
        this(model, meter, seed, Long.MIN_VALUE, improved);
    }

    LineSearch(LineModel model, WorkMeter meter, long seed, long target, Consumer<Packing> improved) {
        this.model = model;
        this.meter = meter;
        this.seed = seed;
        this.target = target;
        this.improved = improved;
        this.work = new Work(meter);
        this.greedy = new Greedy(model, work);
        this.best = new Packing(model);
        this.worth = new double[model.units.size()];
    }

    /**
     * What came out.
     *
     * @param best the best packing found
     * @param worth worth of each unit in cost units
     * @param exact true if no packing places more weight, or as much at less cost
     * @param bound least cost of a packing that places everything; {@link Long#MIN_VALUE} if unknown
     */
    record Outcome(Packing best, double[] worth, boolean exact, long bound) {}

    Outcome run() {
        Packing start = new Packing(model);
        greedy.complete(start);
        take(start.onCheapestBoards());
        if (best.isComplete() && best.cost <= target) {
            return new Outcome(best, worth, false, bound);
        }
        enumerate(TINY);
        if (Master.rows(model) <= MOST_ROWS) {
            generate();
        } else {
            worth = sizes();
        }
        return new Outcome(best, worth, exact, exact && best.isComplete() ? best.cost : bound);
    }

    private void take(Packing packing) {
        if (best.patterns.isEmpty() || packing.isBetterThan(best)) {
            best = packing;
            improved.accept(packing);
        }
    }

    private boolean enumerate(long most) {
        if (exact) {
            return true;
        }
        Packing packing = new DemandProgramme(model, most, work).solve();
        if (packing != null) {
            take(packing);
            exact = true;
        }
        return exact;
    }

    private void generate() {
        Master master = new Master(model, new Packing(model), work);
        best.patterns.forEach(master::add);
        boolean going = master.generate(Integer.MAX_VALUE, true);
        worth = Arrays.stream(master.worth(master.simplex().duals()))
                .map(w -> w * master.scale)
                .toArray();
        CostGrid grid = new CostGrid(model, Math.max(best.cost, (long) Math.max(0, master.objective())));
        if (master.bound() > Double.NEGATIVE_INFINITY) {
            bound = grid.raise(master.bound());
        }
        if (isClosed()) {
            return;
        }
        Diving diving = new Diving(model, master, greedy, grid, seed);
        take(diving.round());
        if (!going) {
            return;
        }
        if (dive(diving, 0, FIRST_DIVES) || enumerate(SMALL) || tree(grid)) {
            return;
        }
        dive(diving, FIRST_DIVES, MOST_DIVES);
    }

    private boolean dive(Diving diving, int from, int to) {
        int idle = 0;
        for (int d = from; d < to && !isClosed() && !meter.isExhausted(); d++) {
            Packing packing = diving.dive(d, best);
            idle++;
            if (packing != null && packing.isBetterThan(best)) {
                take(packing);
                idle = 0;
            }
            if (idle > PATIENCE && !best.isComplete()) {
                return false;
            }
        }
        return isClosed() || meter.isExhausted();
    }

    private boolean tree(CostGrid grid) {
        if (!best.isComplete()) {
            return false;
        }
        WorkMeter part = meter.part(TREE);
        PatternTree.Result result = PatternTree.search(model, grid, best, new Work(part));
        meter.absorb(part);
        if (result == null) {
            return false;
        }
        take(result.best());
        exact = result.proved();
        return exact;
    }

    private boolean isClosed() {
        boolean refused = target != Long.MIN_VALUE && bound > target;
        return exact || refused || (best.isComplete() && best.cost <= Math.max(bound, target));
    }

    /** Worth by size at the best price per length: what a cut without any waste would cost. */
    private double[] sizes() {
        double rate = model.lines.stream()
                .mapToDouble(l -> (double) l.stock.cost() / Math.max(1, l.capacity))
                .min()
                .orElse(0);
        return model.units.stream().mapToDouble(u -> rate * u.size()).toArray();
    }
}
