package org.stockcutting.solve.columns;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Exact search where all full patterns can be listed: at the linear optimum the most fractional pattern is either cut once more or never
 * again. Each node's bound is the linear programme's, raised to the next amount whole boards can come to.
 */
final class PatternTree {

    private static final int MOST_PATTERNS = 30_000;
    private static final int MOST_DEPTH = 400;
    /** What a banned pattern costs, in dearest boards: more than placing each of its pieces on a board of its own. */
    private static final double BANNED = 1_000;

    private final LineModel model;
    private final Master master;
    private final CostGrid grid;
    private final boolean[] banned;
    private Packing best;
    private boolean stopped;

    private PatternTree(LineModel model, Master master, CostGrid grid, Packing best) {
        this.model = model;
        this.master = master;
        this.grid = grid;
        this.best = best;
        this.banned = new boolean[master.patterns().size()];
    }

    /**
     * What the search ended with.
     *
     * @param best the best packing, at least as good as the one it started from
     * @param proved true if nothing cheaper exists
     */
    record Result(Packing best, boolean proved) {}

    /** Searches below a complete packing; null if there are too many patterns to list. */
    static @Nullable Result search(LineModel model, CostGrid grid, Packing start, Work work) {
        Master master = new Master(model, new Packing(model), work);
        int total = 0;
        for (Line line : model.lines) {
            if (line.stock.offcutValue() != 0) {
                return null;
            }
            List<Pattern> full = BoardEnumeration.of(model, line, model.demands(), true, 2 * MOST_PATTERNS, work);
            if (full == null || (total += full.size()) > MOST_PATTERNS) {
                return null;
            }
            full.stream().filter(p -> !isDominated(model, p)).forEach(master::add);
        }
        PatternTree tree = new PatternTree(model, master, grid, start);
        tree.branch(new Packing(model), 0);
        return new Result(tree.best, !tree.stopped);
    }

    /** True if a board without limit that costs no more, the first of equals, takes the same pieces. */
    private static boolean isDominated(LineModel model, Pattern pattern) {
        if (pattern.spots() != null) {
            return false;
        }
        long size = model.size(pattern);
        for (Line line : model.lines) {
            boolean cheaper = line.stock.cost() < pattern.cost()
                    || (line.stock.cost() == pattern.cost() && line.index < pattern.line());
            if (cheaper && line.isUnlimited() && size <= line.capacity) {
                boolean takes = true;
                for (int unit : pattern.units()) {
                    takes &= model.takes[line.index][unit];
                }
                if (takes) {
                    return true;
                }
            }
        }
        return false;
    }

    private void branch(Packing packing, int depth) {
        if (packing.isComplete()) {
            if (packing.isBetterThan(best)) {
                best = packing;
            }
            return;
        }
        master.set(packing.left, packing.boards);
        if (depth > MOST_DEPTH || !master.simplex().minimise()) {
            stopped = true;
            return;
        }
        if (grid.raise(packing.cost + master.objective()) >= best.cost) {
            return;
        }
        int[] basis = master.simplex().basis();
        int chosen = choose();
        if (chosen < 0) {
            return;
        }
        if (isWhole()) {
            Packing whole = whole(packing);
            if (whole.isComplete() && whole.isBetterThan(best)) {
                best = whole;
            }
            return;
        }
        Pattern pattern = master.patterns().get(chosen);
        if (packing.boards[pattern.line()] > 0) {
            Packing more = packing.copy();
            more.use(model.trimmed(pattern, more.left), 1);
            branch(more, depth + 1);
        }
        if (stopped) {
            return;
        }
        master.set(packing.left, packing.boards);
        master.simplex().restore(basis);
        banned[chosen] = true;
        master.simplex().setCost(chosen, BANNED);
        branch(packing, depth + 1);
        banned[chosen] = false;
        master.simplex().setCost(chosen, pattern.cost() / master.scale);
    }

    /** The fraction nearest to a whole number from below; -1 if nothing but banned patterns and shortfalls is left. */
    private int choose() {
        int chosen = -1;
        double most = -1;
        for (int c = 0; c < banned.length; c++) {
            double value = master.simplex().value(c);
            if (value > 1e-7 && !banned[c]) {
                double fraction = value - Math.floor(value + 1e-7);
                double score = fraction > 1e-7 ? fraction : 0;
                if (score > most) {
                    most = score;
                    chosen = c;
                }
            }
        }
        return chosen;
    }

    private boolean isWhole() {
        for (int u = 0; u < model.units.size(); u++) {
            if (master.simplex().shortfall(u) > 1e-7) {
                return false;
            }
        }
        for (int c = 0; c < banned.length; c++) {
            double value = master.simplex().value(c);
            if (Math.abs(value - Math.rint(value)) > 1e-7 || (value > 1e-7 && banned[c])) {
                return false;
            }
        }
        return true;
    }

    private Packing whole(Packing packing) {
        Packing whole = packing.copy();
        List<Integer> used = new ArrayList<>();
        for (int c = 0; c < banned.length; c++) {
            if (master.simplex().value(c) > 0.5) {
                used.add(c);
            }
        }
        for (int c : used) {
            for (long k = Math.round(master.simplex().value(c)); k > 0; k--) {
                Pattern pattern = model.trimmed(master.patterns().get(c), whole.left);
                if (pattern.units().length > 0 && whole.boards[pattern.line()] > 0) {
                    whole.use(pattern, 1);
                }
            }
        }
        return whole;
    }
}
