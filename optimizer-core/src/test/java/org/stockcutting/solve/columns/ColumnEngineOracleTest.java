package org.stockcutting.solve.columns;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Engine;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.WorkMeter;

/** Tiny random instances against {@link LineOracle}. */
class ColumnEngineOracleTest {

    /** Returns how often an engine that need not be exact was. */
    private static int compare(int seeds, long base, boolean exact, Function<Long, Instance> make) {
        int equal = 0;
        for (long seed = base; seed < base + seeds; seed++) {
            Instance instance = make.apply(seed);
            String what = "seed " + seed;
            assertThat(instance.isOneDimensional()).as(what).isTrue();
            WorkMeter meter = new WorkMeter(3_000_000, System.nanoTime() + 20_000_000_000L, new CancelToken());
            Answer answer = new ColumnEngine().solve(instance, meter, 1, Engine.EngineListener.NONE);
            long[] found = LineInspector.inspect(what, instance, answer);
            long[] best = new LineOracle(instance).best();
            if (exact) {
                assertThat(found)
                        .as("%s: unplaced weight, cost of %s", what, instance)
                        .isEqualTo(best);
            } else {
                boolean better = found[0] < best[0] || (found[0] == best[0] && found[1] < best[1]);
                assertThat(better).as("%s: better than the best", what).isFalse();
                equal += found[0] == best[0] && found[1] == best[1] ? 1 : 0;
            }
            assertThat(answer.provedPlacement() && found[0] > best[0]).as(what).isFalse();
            if (answer.searchedBound() != Answer.NO_BOUND) {
                assertThat(answer.searchedBound()).as(what).isLessThanOrEqualTo(best[1]);
            }
        }
        return equal;
    }

    @Test
    void findsTheBestOfSeveralLengthsLimitedBoardsAndZones() {
        compare(2_000, 0, true, seed -> new TinyLines(seed, 24, 4).plain());
    }

    @Test
    void keepsAMinimumPieceAndIsSeldomFarFromTheBest() {
        // Pieces are moved to the start, which may waste a board whose last piece could have ended with the board.
        int equal = compare(300, 10_000, false, seed -> new TinyLines(seed, 16, 3).withMinimumPiece());
        assertThat(equal).isGreaterThanOrEqualTo(270);
    }

    @Test
    void findsTheBestWhereOffcutsEarn() {
        compare(300, 20_000, true, seed -> new TinyLines(seed, 18, 3).withOffcuts());
    }

    @Test
    void findsTheBestWithGroups() {
        compare(200, 30_000, true, seed -> new TinyLines(seed, 20, 4).withGroup());
    }
}
