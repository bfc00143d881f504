package org.stockcutting.solve.guillotine;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.Answer;

/** Puts drafts and bounds into answers. */
final class Answers {

    /** Share of the rack's programme from which on a bound by exact prices has the better worths. */
    private static final double NEARLY = 0.99;

    private final AreaBound area;
    private @Nullable ScaleBound scales;
    private @Nullable ColumnBound columns;
    private @Nullable RackBound rack;
    private @Nullable PurchaseRows purchases;
    private long stages = Answer.NO_BOUND;

    Answers(AreaBound area) {
        this.area = area;
    }

    /** From now on bounds come from here too, and worths where it says more than areas do. */
    void use(ScaleBound bound) {
        scales = bound;
    }

    /** From now on bounds and worths come from here too. */
    void use(ColumnBound bound) {
        columns = bound;
    }

    /** From now on worths come from here. */
    void use(RackBound bound) {
        rack = bound;
    }

    /** From now on rows come from here too. */
    void use(PurchaseRows known) {
        purchases = known;
    }

    /** From now on this bound holds too, for boards of as many stages as the shop cuts. */
    void use(long stageBound) {
        stages = Math.max(stages, stageBound);
    }

    /** A draft that exact search found. */
    Answer exact(Draft draft) {
        return answer(draft, true, draft.cost());
    }

    /** A draft on the way: bounds are not stated. */
    Answer interim(Draft draft) {
        return answer(draft, false, Answer.NO_BOUND);
    }

    /** The last draft. Bounds hold only where nothing that could be placed is missing: another choice of pieces might cost less. */
    Answer last(Draft draft, boolean placementProved) {
        boolean complete = isAllPlaceable(draft);
        return answer(draft, placementProved || complete, complete ? bound(draft) : Answer.NO_BOUND);
    }

    private long bound(Draft draft) {
        long least = Math.max(stages, area.of(placed(draft)));
        least = scales == null ? least : Math.max(least, scales.bound());
        least = columns == null ? least : Math.max(least, columns.raised());
        return purchases == null ? least : Math.max(least, purchases.bound(draft.cost()));
    }

    private Answer answer(Draft draft, boolean proved, long searchedBound) {
        return new Answer(
                new RegionWriter(draft.yard.model).uses(draft),
                Arrays.stream(draft.left).boxed().toList(),
                duals(draft),
                rows(draft, searchedBound),
                proved,
                searchedBound);
    }

    private List<List<Double>> rows(Draft draft, long searchedBound) {
        return purchases == null || searchedBound == Answer.NO_BOUND ? List.of() : purchases.needed(draft.cost() - 1);
    }

    private List<Double> duals(Draft draft) {
        boolean nearly = rack != null && columns != null && columns.value() > NEARLY * rack.value();
        if (rack != null && isAllPlaceable(draft) && !nearly) {
            return rack.duals();
        }
        boolean known = columns != null && columns.raised() > 0 && isAllPlaceable(draft);
        return known && columns != null ? columns.duals() : firstDuals(draft);
    }

    /** Worths before there is a linear programme: those of the better quick bound. */
    List<Double> firstDuals(Draft draft) {
        int[] placed = placed(draft);
        boolean scaled = scales != null && isAllPlaceable(draft) && scales.bound() > area.of(placed);
        return scaled && scales != null ? scales.duals() : area.duals(placed);
    }

    /** True if every piece that is missing fits no stock at all, zones and limits left aside. */
    static boolean isAllPlaceable(Draft draft) {
        Model model = draft.yard.model;
        for (int t = 0; t < model.types; t++) {
            if (draft.left[t] > 0 && model.hasPlace(t)) {
                return false;
            }
        }
        return true;
    }

    static int[] placed(Draft draft) {
        int[] placed = new int[draft.left.length];
        for (int t = 0; t < placed.length; t++) {
            placed[t] = draft.yard.model.item(t).demand() - draft.left[t];
        }
        return placed;
    }
}
