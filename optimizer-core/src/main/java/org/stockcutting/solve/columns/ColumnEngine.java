package org.stockcutting.solve.columns;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.function.Consumer;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Engine;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * The engine for one dimension: boards cut by crosscuts, several stock lengths at once, limited boards, bad zones, groups.
 *
 * <p>Column generation (Gilmore, Gomory, Operations Research 9, 1961; 11, 1963) with bounded pricing, diving for whole boards, exact
 * dynamic programme or pattern tree for jobs small enough. It reads saw limits as crosscuts first, rips after; where a limit could be met
 * by ripping first only, it places nothing and proves nothing.
 */
public final class ColumnEngine implements Engine {

    @Override
    public Answer solve(Instance instance, WorkMeter meter, long seed, EngineListener listener) {
        LineModel whole = new LineModel(instance);
        LineModel model = whole.withDemands(whole.placeable());
        Consumer<Packing> report = packing -> listener.improved(
                answer(whole, packing, new double[whole.units.size()], false, Answer.NO_BOUND), packing.cost);
        LineSearch.Outcome outcome = new LineSearch(model, meter, seed, report).run();
        boolean free = model.lines.stream().noneMatch(Line::isLimited);
        Packing best = outcome.best();
        if (best.isComplete()) {
            long bound = free ? outcome.bound() : Answer.NO_BOUND;
            return answer(whole, best, outcome.worth(), free, bound);
        }
        // Bound and duals are for what can be placed, so the rest is left out and the same is solved again.
        int[] placed = model.demands();
        Arrays.setAll(placed, u -> placed[u] - best.left[u]);
        LineSearch.Outcome again = new LineSearch(model.withDemands(placed), meter, seed, packing -> {}).run();
        boolean cheaper = again.best().isComplete() && again.best().cost < best.cost;
        Packing last = cheaper ? again.best() : best;
        boolean proved = free && outcome.exact();
        return answer(whole, last, again.worth(), proved, proved ? best.cost : Answer.NO_BOUND);
    }

    private static Answer answer(LineModel model, Packing packing, double[] worth, boolean proved, long bound) {
        int items = model.instance.items().size();
        int[] placed = new int[items];
        for (int p = 0; p < packing.patterns.size(); p++) {
            Pattern pattern = packing.patterns.get(p);
            for (int i = 0; i < pattern.units().length; i++) {
                for (int item : model.units.get(pattern.units()[i]).items()) {
                    placed[item] += pattern.counts()[i] * packing.copies.get(p);
                }
            }
        }
        List<Integer> unplaced = new ArrayList<>();
        for (int i = 0; i < items; i++) {
            unplaced.add(model.instance.items().get(i).demand() - placed[i]);
        }
        return new Answer(new LayoutWriter(model).uses(packing), unplaced, duals(model, worth), proved, bound);
    }

    /** A set's worth is shared out by size. */
    private static List<Double> duals(LineModel model, double[] worth) {
        List<Double> duals =
                new ArrayList<>(Collections.nCopies(model.instance.items().size(), 0.0));
        for (int u = 0; u < worth.length; u++) {
            Unit unit = model.units.get(u);
            for (int item : unit.items()) {
                double size = model.instance.items().get(item).length() + model.kerf;
                duals.set(item, Math.max(0, worth[u]) * size / Math.max(1, unit.size()));
            }
        }
        return duals;
    }
}
