package org.stockcutting.solve.columns;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * One long leftover at frozen value: the leftover is a further part that costs nothing, and how long it can be is found by bisection.
 * A length is refused where the bound, or exact search, says that no plan of this value has room for it. Stateless; same input, meter
 * limit and seed, same answer.
 */
public final class LongLeftover {

    /** Steps for one length; where it is not settled by then, shorter ones are tried. */
    private static final long PER_LENGTH = 150_000;

    /**
     * What came out.
     *
     * @param uses patterns that place the same pieces, not dearer, with no more on bought boards
     * @param length the longest leftover of one board up to its raw end, in units
     * @param certified true if no plan of at most this value has a longer one
     */
    public record Result(List<Answer.PatternUse> uses, long length, boolean certified) {
        public Result {
            uses = List.copyOf(uses);
        }
    }

    /** A plan for the real parts, and how long its longest leftover is. */
    private record Found(List<Cut> cuts, long length) {}

    /**
     * Looks for a longer leftover.
     *
     * @param instance a one-dimensional instance
     * @param start a plan for it
     * @param onHand for each stock type of the instance, true if it is owned already
     * @return the start, not certified, where the shop's saw limits, bad zones or a value of leftovers themselves are in the way
     */
    public Result stretch(
            Instance instance, List<Answer.PatternUse> start, List<Boolean> onHand, WorkMeter meter, long seed) {
        LineModel model = new LineModel(instance);
        boolean plain = instance.isOneDimensional()
                && instance.limits().equals(Instance.Limits.NONE)
                && instance.stocks().stream()
                        .allMatch(stock ->
                                stock.offcutValue() == 0 && stock.zones().isEmpty());
        UseReader reader = new UseReader(model, plain ? start : List.of());
        if (!plain || !reader.fixed().isEmpty() || reader.cuts().isEmpty()) {
            return new Result(start, 0, false);
        }
        return new Task(model, reader.cuts(), onHand, meter, seed).run(start);
    }

    /** One plan that is being stretched. */
    private static final class Task {
        private final LineModel model;
        private final List<Boolean> onHand;
        private final WorkMeter meter;
        private final long seed;
        private final long value;
        private final long bought;
        private final int[] demands;
        private Found best;

        Task(LineModel model, List<Cut> cuts, List<Boolean> onHand, WorkMeter meter, long seed) {
            this.model = model;
            this.onHand = onHand;
            this.meter = meter;
            this.seed = seed;
            this.best = new Found(cuts, longest(cuts));
            this.value = cost(cuts);
            this.bought = bought(cuts);
            this.demands = new int[model.units.size()];
            for (Cut cut : cuts) {
                for (int i = 0; i < cut.pattern().units().length; i++) {
                    demands[cut.pattern().units()[i]] +=
                            cut.copies() * cut.pattern().counts()[i];
                }
            }
        }

        Result run(List<Answer.PatternUse> start) {
            long startLength = best.length();
            long refused = most() + 1;
            boolean certified = true;
            while (best.length() + 1 < refused && meter.spend(100)) {
                long middle = best.length() + 1 + (refused - best.length() - 1) / 2;
                LineSearch.Outcome outcome = search(middle);
                Found found =
                        outcome.best().isComplete() && outcome.best().cost <= value ? found(outcome.best()) : null;
                if (found != null && found.length() > best.length()) {
                    best = found;
                } else {
                    // What refuses a length refuses every longer one.
                    certified = outcome.bound() > value
                            || outcome.exact() && !outcome.best().isComplete();
                    refused = middle;
                }
            }
            certified &= best.length() + 1 >= refused && best.length() >= mostOnHand();
            return new Result(best.length() > startLength ? uses() : start, best.length(), certified);
        }

        /** No board with a piece on it leaves more. */
        private long most() {
            return mostLeft(false);
        }

        /** Boards on hand are not asked, since the leftover alone would lie on one for nothing. */
        private long mostOnHand() {
            return mostLeft(true);
        }

        private long mostLeft(boolean onlyFree) {
            long most = 0;
            for (Line line : model.lines) {
                for (int u = 0; u < demands.length; u++) {
                    boolean usable = demands[u] > 0
                            && model.takes[line.index][u]
                            && (!onlyFree || isFree(line) && line.copies(1) > 0);
                    most = Math.max(
                            most, usable ? line.leftover(model.units.get(u).size()) : 0);
                }
            }
            return most;
        }

        private boolean isFree(Line line) {
            return onHand.get(line.index) || line.stock.cost() == 0;
        }

        private LineSearch.Outcome search(long length) {
            LineModel phantom = withPhantom(length);
            int units = phantom.units.size();
            int[] wanted = new int[units];
            int real = 0;
            int last = model.instance.items().size();
            for (int u = 0; u < units; u++) {
                wanted[u] = phantom.units.get(u).items()[0] == last ? 1 : demands[real++];
            }
            WorkMeter part = meter.part(PER_LENGTH);
            LineSearch.Outcome outcome =
                    new LineSearch(phantom.withDemands(wanted), part, seed, value, packing -> {}).run();
            meter.absorb(part);
            return outcome;
        }

        /** The instance with one more item that stands for a leftover of at least this length. */
        private LineModel withPhantom(long length) {
            Instance instance = model.instance;
            long rawEnd = model.lines.stream()
                    .filter(line -> !isFree(line))
                    .mapToLong(line -> line.stock.rawEnd())
                    .max()
                    .orElse(0);
            List<ItemType> items = new ArrayList<>(instance.items());
            items.add(new ItemType(Math.max(1, length - rawEnd), 0, 1, 1, 1));
            List<StockType> stocks = new ArrayList<>();
            for (Line line : model.lines) {
                List<StockType.Placing> places = new ArrayList<>(line.stock.places());
                places.add(isFree(line) ? StockType.Placing.NOWHERE : new StockType.Placing(true, false, 2));
                stocks.add(withPlaces(line.stock, places));
            }
            return new LineModel(new Instance(
                    items,
                    stocks,
                    instance.crosscutKerf(),
                    instance.ripKerf(),
                    instance.limits(),
                    instance.keep(),
                    instance.groups()));
        }

        private static StockType withPlaces(StockType stock, List<StockType.Placing> places) {
            return new StockType(
                    stock.length(),
                    stock.width(),
                    stock.rawEnd(),
                    stock.rawFarEdge(),
                    stock.cost(),
                    stock.copies(),
                    stock.offcutValue(),
                    stock.zones(),
                    places);
        }

        /** The packing without the leftover's stand-in; null if it moves pieces onto bought boards. */
        private @Nullable Found found(Packing packing) {
            int last = model.instance.items().size();
            List<Cut> cuts = new ArrayList<>();
            for (int p = 0; p < packing.patterns.size(); p++) {
                Pattern pattern = packing.patterns.get(p);
                int[] pieces = new int[last + 1];
                for (int i = 0; i < pattern.units().length; i++) {
                    for (int item : packing.unit(pattern.units()[i]).items()) {
                        pieces[item] += pattern.counts()[i];
                    }
                }
                TreeMap<Integer, Integer> counts = UseReader.counts(model, pieces);
                if (!counts.isEmpty()) {
                    Line line = model.lines.get(pattern.line());
                    cuts.add(new Cut(model.follow(line, counts), packing.copies.get(p)));
                }
            }
            return bought(cuts) <= bought ? new Found(cuts, longest(cuts)) : null;
        }

        private List<Answer.PatternUse> uses() {
            Packing packing = new Packing(model);
            best.cuts().forEach(cut -> packing.use(cut.pattern(), cut.copies()));
            List<Answer.PatternUse> uses = new ArrayList<>(new LayoutWriter(model).uses(packing));
            uses.sort(Comparator.comparingInt(Answer.PatternUse::stock));
            return uses;
        }

        private long longest(List<Cut> cuts) {
            return cuts.stream()
                    .mapToLong(cut -> model.lines.get(cut.pattern().line()).leftover(model.size(cut.pattern())))
                    .max()
                    .orElse(0);
        }

        private static long cost(List<Cut> cuts) {
            return cuts.stream()
                    .mapToLong(cut -> cut.copies() * cut.pattern().cost())
                    .sum();
        }

        private long bought(List<Cut> cuts) {
            return cuts.stream()
                    .filter(cut -> !onHand.get(cut.pattern().line()))
                    .mapToLong(cut -> cut.copies() * model.size(cut.pattern()))
                    .sum();
        }
    }
}
