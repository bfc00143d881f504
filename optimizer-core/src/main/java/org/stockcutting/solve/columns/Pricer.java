package org.stockcutting.solve.columns;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;

/** Finds patterns whose worth exceeds their cost, over all lines at once. All amounts here are divided by the master's scale. */
final class Pricer {

    private static final double IMPROVING = 1e-8;
    /** Most patterns handed over at once: many near-equal columns only slow the linear programme down. */
    private static final int WANTED = 30;
    /** On few lines the best pattern is followed by others of different units, so that the programme hears of more at once. */
    private static final int OTHERS = 6;

    private static final int FEW_LINES = 6;

    private final LineModel model;
    private final double scale;
    private final Work work;
    private final ParetoKnapsack sparse;
    private final DenseKnapsack dense;
    private final PositionKnapsack zoneKnapsack;
    private final List<Family> families = new ArrayList<>();
    private final List<Line> zoned = new ArrayList<>();
    private int nextZoned;

    /** Lines without zones that take the same units, apart from those too long for the shorter ones: one table serves them all. */
    private record Family(List<Line> lines, boolean[] takes) {
        boolean admits(Line line, boolean[] lineTakes, LineModel model) {
            return IntStream.range(0, takes.length)
                    .allMatch(
                            u -> takes[u] == lineTakes[u] || model.units.get(u).size() > line.capacity);
        }
    }

    /**
     * What was found.
     *
     * @param patterns improving patterns, best first
     * @param excess for each line: no pattern is worth more than its cost and this
     * @param complete false if some lines were not looked at: no bound then
     */
    record Result(List<Pattern> patterns, double[] excess, boolean complete) {}

    private record Found(Pattern pattern, double reduced) {}

    Pricer(LineModel model, double scale, Work work) {
        this.model = model;
        this.scale = scale;
        this.work = work;
        this.sparse = new ParetoKnapsack(model, work);
        this.dense = new DenseKnapsack(model, work);
        this.zoneKnapsack = new PositionKnapsack(model);
        model.lines.stream()
                .sorted(Comparator.<Line>comparingLong(l -> -l.capacity).thenComparingInt(l -> l.index))
                .forEach(this::sort);
    }

    private void sort(Line line) {
        if (line.hasZones) {
            zoned.add(line);
            return;
        }
        boolean[] takes = model.takes[line.index];
        for (Family family : families) {
            if (family.admits(line, takes, model)) {
                family.lines().add(line);
                return;
            }
        }
        families.add(new Family(new ArrayList<>(List.of(line)), takes));
    }

    /**
     * Prices.
     *
     * @param worth dual of each unit
     * @param charge what a pattern of each line must be worth: its cost and the line's scarcity, leftover gains not counted
     * @param exact look at every line, and find a true upper limit for each
     */
    Result price(double[] worth, double[] charge, int[] left, int[] boards, boolean exact) {
        int[] caps = IntStream.range(0, left.length)
                .map(u -> Math.min(left[u], model.units.get(u).perBoard()))
                .toArray();
        double[] excess = new double[charge.length];
        for (Line line : model.lines) {
            excess[line.index] = charge[line.index] - line.stock.cost() / scale;
        }
        List<Found> found = new ArrayList<>();
        for (Family family : families) {
            priceFamily(family, worth, charge, caps, boards, excess, found);
        }
        boolean complete = priceZoned(worth, charge, caps, boards, exact, excess, found);
        found.sort(Comparator.comparingDouble(Found::reduced));
        List<Pattern> patterns =
                found.stream().limit(WANTED).map(Found::pattern).toList();
        return new Result(patterns, excess, complete && !work.isCutShort());
    }

    private void priceFamily(
            Family family,
            double[] worth,
            double[] charge,
            int[] caps,
            int[] boards,
            double[] excess,
            List<Found> found) {
        List<Line> lines =
                family.lines().stream().filter(l -> boards[l.index] > 0).toList();
        List<Integer> allowed = IntStream.range(0, worth.length)
                .filter(u -> family.takes()[u])
                .boxed()
                .toList();
        if (lines.isEmpty() || allowed.isEmpty()) {
            return;
        }
        double[] charges = lines.stream()
                .mapToDouble(l -> charge[l.index] - l.gain(0) / scale)
                .toArray();
        long capacity = lines.get(0).capacity;
        RowKnapsack knapsack = DenseKnapsack.suits(allowed, caps, capacity) ? dense : sparse;
        knapsack.fill(allowed, worth, caps, lines, charges);
        Set<Integer> used = new TreeSet<>();
        for (Line line : lines) {
            excess[line.index] += read(knapsack, line, worth, charge, found, used);
        }
        for (int other = 1; other < OTHERS && lines.size() <= FEW_LINES && !used.isEmpty(); other++) {
            int[] rest = caps.clone();
            used.forEach(u -> rest[u] = 0);
            int before = used.size();
            knapsack.fill(allowed, worth, rest, lines, charges);
            for (Line line : lines) {
                read(knapsack, line, worth, charge, found, used);
            }
            if (used.size() == before) {
                break;
            }
        }
    }

    /** Offers the line's best pattern if it improves and returns by how much it does. */
    private double read(
            RowKnapsack knapsack, Line line, double[] worth, double[] charge, List<Found> found, Set<Integer> used) {
        int state = knapsack.best(line, scale);
        if (state < 0) {
            return 0;
        }
        double gain = line.stock.offcutValue() == 0 ? 0 : line.gain(knapsack.size(state)) / scale;
        double over = knapsack.value(state) + gain - charge[line.index];
        if (over <= IMPROVING) {
            return 0;
        }
        TreeMap<Integer, Integer> counts = knapsack.counts(state);
        used.addAll(counts.keySet());
        offer(model.follow(line, counts), worth, charge, found);
        return over;
    }

    private void offer(Pattern pattern, double[] worth, double[] charge, List<Found> found) {
        double value = 0;
        for (int i = 0; i < pattern.units().length; i++) {
            value += pattern.counts()[i] * worth[pattern.units()[i]];
        }
        Line line = model.lines.get(pattern.line());
        double gain = (line.stock.cost() - pattern.cost()) / scale;
        double reduced = charge[pattern.line()] - gain - value;
        if (pattern.units().length > 0 && reduced < -IMPROVING) {
            found.add(new Found(pattern, reduced));
        }
    }

    private boolean priceZoned(
            double[] worth,
            double[] charge,
            int[] caps,
            int[] boards,
            boolean exact,
            double[] excess,
            List<Found> found) {
        int[] free = new int[caps.length];
        Arrays.setAll(free, u -> caps[u] > 0 ? Integer.MAX_VALUE : 0);
        int looked = 0;
        int before = found.size();
        for (; looked < zoned.size() && (exact || found.size() - before < WANTED); looked++) {
            Line line = zoned.get((nextZoned + looked) % zoned.size());
            if (boards[line.index] == 0) {
                continue;
            }
            if (line.capacity > PositionKnapsack.LONGEST) {
                excess[line.index] +=
                        Math.max(0, density(line, worth, caps) - charge[line.index] + line.gain(0) / scale);
                continue;
            }
            zoneKnapsack.fill(line, worth, caps, true, scale);
            boolean improving = !zoneKnapsack.isEmpty() && zoneKnapsack.most() > charge[line.index] + IMPROVING;
            if (improving) {
                offer(zoneKnapsack.pattern(line), worth, charge, found);
            }
            if (exact) {
                zoneKnapsack.fill(line, worth, free, false, scale);
                excess[line.index] += Math.max(0, zoneKnapsack.most() - charge[line.index]);
            }
            if (!work.spend(zoneKnapsack.takeOperations())) {
                return false;
            }
        }
        nextZoned = zoned.isEmpty() ? 0 : (nextZoned + looked) % zoned.size();
        return exact || zoned.isEmpty();
    }

    private double density(Line line, double[] worth, int[] caps) {
        double most = 0;
        for (int u = 0; u < worth.length; u++) {
            if (model.takes[line.index][u] && caps[u] > 0) {
                most = Math.max(most, worth[u] / Math.max(1, model.units.get(u).size()));
            }
        }
        return most * line.capacity;
    }
}
