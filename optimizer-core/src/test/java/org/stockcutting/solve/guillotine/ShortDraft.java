package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.WorkMeter;

/** A draft of which something is missing, on boards that are known to give everything, with patterns of other drafts. */
record ShortDraft(Instance instance, RackDive.Kit kit, RackAim aim, List<PriceList.Column> patterns, Draft start) {

    private static final long LIMIT = 600_000_000_000L;

    static ShortDraft of(long seed) {
        Instance instance = Racks.onHand(Racks.enough(seed, 20, 8));
        Yard yard = new Yard(new Model(instance));
        double[] missing = new double[yard.model.types];
        Arrays.setAll(missing, yard.model::area);
        List<PriceList.Column> patterns = new ArrayList<>();
        Draft start = new Filling(yard).build(Filling.Order.AREA, Filling.BEST_TRIAL, RootCut.RIP);
        for (Filling.Order order : Filling.Order.values()) {
            Draft other = new Filling(yard).build(order, Filling.BEST_TRIAL, RootCut.CROSSCUT);
            other.boards.forEach(board -> patterns.add(PriceList.Column.of(board)));
        }
        int[] all = new int[yard.model.stocks];
        Arrays.fill(all, 1);
        RackAim aim = RackAim.from(yard.model, 0, all);
        assertThat(aim.isMissing(start)).isTrue();
        return new ShortDraft(
                instance, new RackDive.Kit(yard, missing, new Dice(seed), column -> {}), aim, patterns, start);
    }

    static WorkMeter steps(long steps) {
        return new WorkMeter(steps, System.nanoTime() + LIMIT, new CancelToken());
    }

    /** Sound, and misses no more than the start; what it misses as a share of what is wanted. */
    double missed(Draft draft) {
        assertThat(draft.missingWeight()).isLessThanOrEqualTo(start.missingWeight());
        Answers answers = new Answers(new AreaBound(kit.yard().model));
        assertThat(LayoutCheck.faults(instance, answers.interim(draft))).isEmpty();
        long all = instance.items().stream()
                .mapToLong(item -> item.weight() * item.demand())
                .sum();
        return draft.missingWeight() / (double) all;
    }
}
