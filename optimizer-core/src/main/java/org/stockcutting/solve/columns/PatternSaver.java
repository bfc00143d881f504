package org.stockcutting.solve.columns;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * Makes do with fewer patterns on the boards of a given plan. Never dearer, never more on bought boards, and, if asked for, never a
 * shorter longest leftover. Nothing is known of the least number of patterns there is. Stateless; same input, meter limit and seed, same answer.
 */
public final class PatternSaver {

    /**
     * Saves patterns until the meter is spent or nothing has come of it for long.
     *
     * @param instance a one-dimensional instance; any other is left as it is
     * @param start a plan for it
     * @param onHand for each stock type of the instance, true if it is owned already
     * @param keepsLongest true if the longest leftover may not get shorter
     * @return patterns that place the same pieces on the same boards, or on fewer
     */
    public List<Answer.PatternUse> improve(
            Instance instance,
            List<Answer.PatternUse> start,
            List<Boolean> onHand,
            boolean keepsLongest,
            WorkMeter meter,
            long seed) {
        if (meter.isExhausted() || start.size() < 2 || !instance.isOneDimensional()) {
            return start;
        }
        LineModel model = new LineModel(instance);
        UseReader reader = new UseReader(model, start);
        List<Cut> cuts = new PatternReduction(model, reader.cuts(), onHand, keepsLongest, seed, new Work(meter)).run();
        if (cuts.isEmpty()) {
            return start;
        }
        Packing packing = new Packing(model);
        cuts.forEach(cut -> packing.use(cut.pattern(), cut.copies()));
        List<Answer.PatternUse> uses = new ArrayList<>(reader.fixed());
        uses.addAll(new LayoutWriter(model).uses(packing));
        uses.sort(Comparator.comparingInt(Answer.PatternUse::stock));
        return uses;
    }
}
