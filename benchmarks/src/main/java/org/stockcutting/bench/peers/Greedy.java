package org.stockcutting.bench.peers;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.StockType;

/**
 * First-fit and best-fit decreasing over several kinds of board. A piece that fits no open board opens one of the stock that, filled
 * greedily with what is left, costs least for the area placed. All pieces are also tried with each single stock preferred; at the end
 * every board moves to the cheapest stock that holds its pieces. The cheapest of all these counts.
 */
final class Greedy implements Peer {

    private static final int BY_RATE = -1;
    /** Stocks that are each tried as the preferred one. */
    private static final int MOST_PREFERRED = 12;

    private final String name;
    private final Fill.Choice choice;

    Greedy(String name, Fill.Choice choice) {
        this.name = name;
        this.choice = choice;
    }

    static Greedy firstFit() {
        return new Greedy("first-fit decreasing", Fill.Choice.FIRST);
    }

    static Greedy bestFit() {
        return new Greedy("best-fit decreasing", Fill.Choice.BEST);
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public Optional<String> declines(Instance instance) {
        return instance.groups().isEmpty() ? Optional.empty() : Optional.of("knows no groups");
    }

    @Override
    public Found solve(Instance instance, long nanos, long seed) {
        long start = System.nanoTime();
        Load load = load(instance, start + nanos);
        return new Found(load.uses(), System.nanoTime() - start, false);
    }

    /** The best load; after the first, no more are made once the time is over. */
    Load load(Instance instance, long deadline) {
        Load best = new Run(instance, BY_RATE).load();
        int preferred = Math.min(MOST_PREFERRED, instance.stocks().size());
        for (int s = 0; s < preferred && System.nanoTime() - deadline < 0; s++) {
            Load other = new Run(instance, s).load();
            best = other.isBetterThan(best) ? other : best;
        }
        return best;
    }

    /** One pass over all pieces. */
    private final class Run {
        private final Instance instance;
        private final int preferred;
        private final List<Integer> order;
        private final int[] left;
        private final int[] free;
        private final List<Fill> open = new ArrayList<>();

        Run(Instance instance, int preferred) {
            this.instance = instance;
            this.preferred = preferred;
            this.order = Fill.decreasing(instance);
            this.left = instance.items().stream().mapToInt(i -> i.demand()).toArray();
            this.free = instance.stocks().stream()
                    .mapToInt(s -> s.copies() == StockType.UNLIMITED ? Integer.MAX_VALUE : s.copies())
                    .toArray();
        }

        Load load() {
            int missing = 0;
            for (int item : order) {
                while (left[item] > 0 && placeOne(item)) {
                    left[item]--;
                }
                missing += left[item];
                left[item] = 0;
            }
            return new Load(cheaper(), missing);
        }

        private boolean placeOne(int item) {
            Fill chosen = null;
            long least = Long.MAX_VALUE;
            for (Fill board : open) {
                long slack = board.slack(item);
                if (slack >= 0 && slack < least) {
                    chosen = board;
                    least = slack;
                    if (choice == Fill.Choice.FIRST) {
                        break;
                    }
                }
            }
            if (chosen == null) {
                int stock = stockFor(item);
                if (stock < 0) {
                    return false;
                }
                free[stock]--;
                chosen = Fill.empty(instance, stock, choice);
                open.add(chosen);
            }
            chosen.add(item);
            return true;
        }

        private int stockFor(int item) {
            if (preferred >= 0 && holds(preferred, item)) {
                return preferred;
            }
            int best = -1;
            double rate = Double.POSITIVE_INFINITY;
            long area = 0;
            for (int s = 0; s < free.length; s++) {
                if (holds(s, item)) {
                    Fill trial = trial(s, item);
                    double here = (double) trial.cost() / trial.area();
                    if (here < rate || (here == rate && trial.area() > area)) {
                        best = s;
                        rate = here;
                        area = trial.area();
                    }
                }
            }
            return best;
        }

        private boolean holds(int stock, int item) {
            return free[stock] > 0 && Fill.empty(instance, stock, choice).slack(item) >= 0;
        }

        private Fill trial(int stock, int first) {
            Fill trial = Fill.empty(instance, stock, choice);
            for (int item : order) {
                int most = left[item];
                if (item == first || most > 0) {
                    for (int n = 0; n < most && trial.slack(item) >= 0; n++) {
                        trial.add(item);
                    }
                }
            }
            return trial;
        }

        /** Each board on the cheapest stock that holds what lies on it. */
        private List<Fill> cheaper() {
            List<Fill> moved = new ArrayList<>();
            for (Fill board : open) {
                Fill best = board;
                for (int s = 0; s < free.length; s++) {
                    if (free[s] > 0 && instance.stocks().get(s).cost() < best.cost()) {
                        Fill other = copied(board, s);
                        best = other == null ? best : other;
                    }
                }
                if (best != board) {
                    free[board.stock] += free[board.stock] == Integer.MAX_VALUE ? 0 : 1;
                    free[best.stock]--;
                }
                moved.add(best);
            }
            return Collections.unmodifiableList(moved);
        }

        private @Nullable Fill copied(Fill board, int stock) {
            Fill copy = Fill.empty(instance, stock, choice);
            for (int item : order) {
                for (int n = 0; n < board.counts()[item]; n++) {
                    if (copy.slack(item) < 0) {
                        return null;
                    }
                    copy.add(item);
                }
            }
            return copy;
        }
    }
}
