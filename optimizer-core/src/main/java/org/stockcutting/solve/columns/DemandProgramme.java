package org.stockcutting.solve.columns;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Tiny jobs to the very best: a dynamic programme over what is still to be placed. For every remainder the least weight left unplaced
 * and, at that, the least cost; boards without limit first, then each limited board as one more layer.
 */
final class DemandProgramme {

    private static final long MOST_STATES = 200_000;
    private static final long MOST_CELLS = 6_000_000;
    private static final int MOST_PATTERNS = 20_000;

    private final LineModel model;
    private final Work work;
    private final long mostWork;
    private final int[] demand;
    private final int[] stride;
    private long owed;
    private boolean stopped;
    private int states = 1;
    private long[] weight = new long[0];
    private long[] cost = new long[0];

    /**
     * @param mostWork give up if states times patterns are more than this
     */
    DemandProgramme(LineModel model, long mostWork, Work work) {
        this.model = model;
        this.mostWork = mostWork;
        this.work = work;
        this.demand = model.demands();
        this.stride = new int[demand.length];
    }

    private record Layer(List<Pattern> patterns, int[] choice) {}

    /** The best packing there is, or null if the job is too large for this. */
    @Nullable Packing solve() {
        if (!number()) {
            return null;
        }
        List<List<Pattern>> unlimited = new ArrayList<>();
        List<List<Pattern>> limited = new ArrayList<>();
        if (!collect(unlimited, limited)) {
            return null;
        }
        start();
        List<Layer> layers = new ArrayList<>();
        List<Pattern> free = unlimited.stream().flatMap(List::stream).toList();
        layers.add(new Layer(free, relax(free, true)));
        for (List<Pattern> patterns : limited) {
            layers.add(new Layer(patterns, relax(patterns, false)));
        }
        return stopped ? null : trace(layers);
    }

    private boolean number() {
        long product = 1;
        for (int u = 0; u < demand.length; u++) {
            stride[u] = (int) product;
            product *= demand[u] + 1L;
            if (product > MOST_STATES) {
                return false;
            }
        }
        states = (int) product;
        return true;
    }

    private boolean collect(List<List<Pattern>> unlimited, List<List<Pattern>> limited) {
        int pieces = Arrays.stream(demand).sum();
        long steps = 0;
        long cells = 0;
        for (Line line : model.lines) {
            // Fewer pieces may earn more for the offcut, so then every pattern counts, not only the full ones.
            List<Pattern> patterns =
                    BoardEnumeration.of(model, line, demand, line.stock.offcutValue() == 0, MOST_PATTERNS, work);
            if (patterns == null) {
                return false;
            }
            int layers = line.isUnlimited() ? 1 : line.copies(pieces);
            steps += (long) patterns.size() * layers * states;
            cells += (long) layers * states;
            if (steps > mostWork || cells > MOST_CELLS) {
                return false;
            }
            if (line.isUnlimited()) {
                unlimited.add(patterns);
            } else if (!patterns.isEmpty()) {
                for (int c = 0; c < layers; c++) {
                    limited.add(patterns);
                }
            }
        }
        return true;
    }

    private void start() {
        weight = new long[states];
        cost = new long[states];
        for (int state = 1; state < states; state++) {
            for (int u = 0; u < demand.length; u++) {
                weight[state] += (long) digit(state, u) * model.units.get(u).weight();
            }
        }
    }

    private int digit(int state, int u) {
        return state / stride[u] % (demand[u] + 1);
    }

    /** One layer; boards without limit look at results of the same layer, so they go upwards, others downwards. */
    private int[] relax(List<Pattern> patterns, boolean again) {
        int[] choice = new int[states];
        Arrays.fill(choice, -1);
        for (int i = 1; i < states; i++) {
            if (stopped) {
                break;
            }
            int state = again ? i : states - i;
            owed += patterns.size();
            if (owed > 100_000) {
                stopped = !work.spend(4 * owed);
                owed = 0;
            }
            for (int p = 0; p < patterns.size(); p++) {
                Pattern pattern = patterns.get(p);
                int rest = rest(state, pattern);
                if (rest != state) {
                    long newCost = cost[rest] + pattern.cost();
                    if (weight[rest] < weight[state] || (weight[rest] == weight[state] && newCost < cost[state])) {
                        weight[state] = weight[rest];
                        cost[state] = newCost;
                        choice[state] = p;
                    }
                }
            }
        }
        return choice;
    }

    private int rest(int state, Pattern pattern) {
        int rest = state;
        for (int i = 0; i < pattern.units().length; i++) {
            int u = pattern.units()[i];
            rest -= stride[u] * Math.min(digit(state, u), pattern.counts()[i]);
        }
        return rest;
    }

    private Packing trace(List<Layer> layers) {
        Packing packing = new Packing(model);
        int state = states - 1;
        for (int l = layers.size() - 1; l >= 0; l--) {
            Layer layer = layers.get(l);
            boolean again = l == 0;
            while (state > 0 && layer.choice()[state] >= 0) {
                Pattern pattern = layer.patterns().get(layer.choice()[state]);
                int next = rest(state, pattern);
                packing.use(model.trimmed(pattern, packing.left), 1);
                state = next;
                if (!again) {
                    break;
                }
            }
        }
        return packing;
    }
}
