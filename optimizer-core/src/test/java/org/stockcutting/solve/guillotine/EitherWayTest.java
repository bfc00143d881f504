package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToLongFunction;
import org.junit.jupiter.api.Test;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Engine;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.WorkMeter;

/** Racks on which every board may be ripped or crosscut first, with so little work that which plan is cheaper would be chance. */
class EitherWayTest {

    private static final long STEPS = 40_000;
    private static final int RACKS = 20;

    private static WorkMeter steps() {
        return new WorkMeter(STEPS, System.nanoTime() + 600_000_000_000L, new CancelToken());
    }

    private static Instance rack(long seed) {
        return Racks.enough(seed, 14, 8);
    }

    private static Answer solve(Instance instance, WorkMeter meter, Engine.EngineListener listener) {
        Answer answer = new GuillotineEngine().solve(instance, meter, 7, listener);
        assertThat(LayoutCheck.faults(instance, answer)).isEmpty();
        return answer;
    }

    private static long solved(Instance instance) {
        return cost(instance, solve(instance, steps(), Engine.EngineListener.NONE));
    }

    private static long cost(Instance instance, Answer answer) {
        assertThat(answer.unplaced()).containsOnly(0);
        return answer.uses().stream()
                .mapToLong(
                        use -> use.copies() * instance.stocks().get(use.stock()).cost())
                .sum();
    }

    private static int dearer(ToLongFunction<Instance> free) {
        int dearer = 0;
        for (long seed = 0; seed < RACKS; seed++) {
            Instance instance = rack(seed);
            long restricted = Math.min(solved(instance.cutFirst(true)), solved(instance.cutFirst(false)));
            dearer += free.applyAsLong(instance) > restricted ? 1 : 0;
        }
        return dearer;
    }

    @Test
    void nobodyPaysLessForCuttingAllBoardsTheSameWayFirst() {
        assertThat(EitherWay.suits(new Yard(new Model(rack(0))))).isTrue();
        assertThat(dearer(EitherWayTest::solved)).isZero();
        ToLongFunction<Instance> once =
                instance -> cost(instance, new Attempt(instance, 7).run(steps(), null, Engine.EngineListener.NONE));
        assertThat(dearer(once))
                .as("racks on which one search for both ways pays more")
                .isPositive();
    }

    @Test
    void eachOfThreeSearchesHasTheWorkThatIsAllowed() {
        Instance rack = rack(3);
        int[] more = rack.items().stream().mapToInt(item -> 2 * item.demand()).toArray();
        Instance instance = Racks.wanting(rack, more);
        WorkMeter meter = steps();
        List<Long> costs = new ArrayList<>();
        Answer answer = solve(instance, meter, (better, cost) -> costs.add(cost));
        assertThat(meter.used()).isGreaterThan(STEPS).isLessThan(3 * STEPS + STEPS / 2);
        assertThat(costs).isSortedAccordingTo((a, b) -> Long.compare(b, a));
        assertThat(costs.get(costs.size() - 1)).isEqualTo(cost(instance, answer));
    }

    @Test
    void theSameSeedGivesTheSamePlan() {
        Instance instance = rack(5);
        assertThat(solve(instance, steps(), Engine.EngineListener.NONE))
                .isEqualTo(solve(instance, steps(), Engine.EngineListener.NONE));
    }

    @Test
    void whereOnlyTheClockLimitsTheyShareIt() {
        Instance instance = rack(3);
        long begin = System.nanoTime();
        WorkMeter meter = new WorkMeter(Long.MAX_VALUE, begin + 900_000_000L, new CancelToken());
        cost(instance, solve(instance, meter, Engine.EngineListener.NONE));
        assertThat(System.nanoTime() - begin).isLessThan(20_000_000_000L);
    }
}
