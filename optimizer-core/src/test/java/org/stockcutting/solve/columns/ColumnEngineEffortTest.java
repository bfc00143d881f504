package org.stockcutting.solve.columns;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Engine;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.solve.instance.WorkMeter;

/** Same work, same answer; little work, still an answer; a cancel is heard. */
class ColumnEngineEffortTest {

    private static final long MINUTE = 60_000_000_000L;

    /** Measured boards that cost what they hold, with bad zones, and two lengths for sale: too many for enumeration. */
    private static Instance measured(int boards, int types) {
        Random random = new Random(5);
        List<ItemType> items = new ArrayList<>();
        List<StockType.Placing> places = new ArrayList<>();
        for (int i = 0; i < types; i++) {
            long length = 120 + random.nextInt(900);
            int demand = 1 + random.nextInt(6);
            items.add(new ItemType(length, 0, length, demand, demand));
            places.add(new StockType.Placing(true, false, random.nextInt(3)));
        }
        List<StockType> stocks = new ArrayList<>();
        for (int b = 0; b < boards; b++) {
            int length = 1200 + random.nextInt(1100);
            int from = random.nextInt(length - 60);
            StockType.ZoneRect zone =
                    new StockType.ZoneRect(from, 0, from + 10 + random.nextInt(50), 56, random.nextInt(3), false);
            stocks.add(new StockType(length, 56, 4, 0, length / 4, 1, 0, List.of(zone), places));
        }
        stocks.add(new StockType(1524, 56, 4, 0, 398, StockType.UNLIMITED, 0, List.of(), places));
        stocks.add(new StockType(1908, 56, 4, 0, 548, StockType.UNLIMITED, 0, List.of(), places));
        return new Instance(items, stocks, 2, 2, Instance.Limits.NONE, List.of(), List.of());
    }

    private static Answer solve(Instance instance, long work, CancelToken cancel, Engine.EngineListener listener) {
        WorkMeter meter = new WorkMeter(work, System.nanoTime() + MINUTE, cancel);
        return new ColumnEngine().solve(instance, meter, 7, listener);
    }

    @Test
    void sameSeedAndWorkGiveTheSameAnswer() {
        Instance instance = measured(25, 20);
        Answer first = solve(instance, 300_000, new CancelToken(), Engine.EngineListener.NONE);
        Answer second = solve(instance, 300_000, new CancelToken(), Engine.EngineListener.NONE);
        assertThat(second).isEqualTo(first);
        assertThat(LineInspector.inspect("measured boards", instance, first)[0]).isZero();
    }

    @Test
    void eachBetterAnswerIsTold() {
        Instance instance = measured(25, 20);
        List<Long> costs = new ArrayList<>();
        Answer last = solve(instance, 300_000, new CancelToken(), (answer, cost) -> {
            assertThat(LineInspector.inspect("news", instance, answer)[1]).isEqualTo(cost);
            costs.add(cost);
        });
        assertThat(costs).isSortedAccordingTo((a, b) -> Long.compare(b, a));
        assertThat(costs.get(costs.size() - 1)).isEqualTo(LineInspector.inspect("last", instance, last)[1]);
    }

    @Test
    void oneStepOfWorkStillPlacesAll() {
        Instance instance = measured(25, 20);
        Answer answer = solve(instance, 1, new CancelToken(), Engine.EngineListener.NONE);
        assertThat(LineInspector.inspect("one step", instance, answer)[0]).isZero();
    }

    @Test
    void aCancelEndsTheWorkAndLeavesAValidAnswer() {
        Instance instance = measured(200, 60);
        CancelToken cancel = new CancelToken();
        long[] heard = {0};
        Answer answer = solve(instance, Long.MAX_VALUE, cancel, (better, cost) -> {
            cancel.cancel();
            heard[0] = System.nanoTime();
        });
        double seconds = (System.nanoTime() - heard[0]) / 1e9;
        LineInspector.inspect("cancelled", instance, answer);
        assertThat(seconds).as("seconds from cancel to answer").isLessThan(1);
    }

    @Test
    void aCancelBeforeTheStartIsAnsweredToo() {
        Instance instance = measured(25, 20);
        CancelToken cancel = new CancelToken();
        cancel.cancel();
        LineInspector.inspect("cancelled", instance, solve(instance, 1_000_000, cancel, Engine.EngineListener.NONE));
    }
}
