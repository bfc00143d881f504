package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.solve.instance.WorkMeter;

/** Dives where no two pieces are alike: on sheets that were cut up, so that a plan is known which search does not come by. */
final class UnlikeDiveTest {

    private static final int SHEETS = 7;
    private static final long SIDE = 60;

    private static WorkMeter steps(long steps) {
        return new WorkMeter(steps, System.nanoTime() + 600_000_000_000L, new CancelToken());
    }

    /** Pieces of so many sheets, each parted by chance three times. */
    private static Instance cutUp(long seed) {
        Random random = new Random(seed);
        List<ItemType> items = new ArrayList<>();
        List<StockType.Placing> places = new ArrayList<>();
        for (int n = 0; n < SHEETS; n++) {
            List<long[]> parts = new ArrayList<>(List.of(new long[] {SIDE, SIDE}));
            for (int cut = 0; cut < 3; cut++) {
                long[] part = parts.remove(0);
                int axis = part[0] >= part[1] ? 0 : 1;
                long[] one = part.clone();
                one[axis] = part[axis] / 4 + random.nextInt((int) part[axis] / 2);
                long[] other = part.clone();
                other[axis] -= one[axis];
                parts.add(one);
                parts.add(other);
            }
            for (long[] part : parts) {
                items.add(new ItemType(part[0], part[1], part[0] * part[1], 1, 1));
                places.add(new StockType.Placing(true, true, 0));
            }
        }
        StockType sheet = new StockType(SIDE, SIDE, 0, 0, 1, StockType.UNLIMITED, 0, List.of(), places);
        return new Instance(items, List.of(sheet), 0, 0, Instance.Limits.NONE, List.of(), List.of());
    }

    private static UnlikeDive dive(Yard yard, BoardPool pool) {
        double[] missing = new double[yard.model.types];
        Arrays.setAll(missing, yard.model::area);
        return new UnlikeDive(yard, pool, missing, 1);
    }

    @Test
    void findsThePlanWithoutWaste() {
        for (long seed = 0; seed < 5; seed++) {
            Instance instance = cutUp(seed);
            Yard yard = new Yard(new Model(instance));
            assertThat(yard.model.hasRepeats()).isFalse();
            Draft start = new Filling(yard).build(Filling.Order.AREA, Filling.BEST_TRIAL);
            assertThat(start.cost()).as("seed " + seed).isGreaterThan(SHEETS);
            BoardPool pool = new BoardPool();
            pool.collect(start);
            UnlikeDive dive = dive(yard, pool);
            Draft found = null;
            while (found == null && dive.dives() < 20) {
                found = dive.run(steps(6_000_000), Allowance.of(yard.model, SHEETS));
            }
            assertThat(found).as("seed " + seed).isNotNull();
            if (found != null) {
                assertThat(found.cost()).isEqualTo(SHEETS);
                assertThat(found.left).containsOnly(0);
                assertThat(LayoutCheck.faults(instance, new Answers(new AreaBound(yard.model)).interim(found)))
                        .isEmpty();
            }
        }
    }

    @Test
    void knowsWhereLessWoodThanPiecesIsHopeless() {
        Yard yard = new Yard(new Model(cutUp(3)));
        UnlikeDive dive = dive(yard, new BoardPool());
        Allowance tooLittle = Allowance.of(yard.model, SHEETS - 1);
        assertThat(dive.isHopeless(tooLittle)).isFalse();
        assertThat(dive.run(steps(6_000_000), tooLittle)).isNull();
        assertThat(dive.isHopeless(tooLittle)).isTrue();
        assertThat(dive.isHopeless(Allowance.of(yard.model, SHEETS))).isFalse();
        assertThat(dive.dives()).isEqualTo(1);
    }

    /** Each board alone in a draft: the search never had two of them together. */
    @Test
    void boardsOfTheSearchAreJoinedToAPlanThatTheSearchNeverHad() {
        Instance instance = SheetJobs.typical(5, 40, 40);
        Yard yard = new Yard(new Model(instance));
        Draft whole = new Filling(yard).build(Filling.Order.AREA, 0);
        BoardPool pool = alone(yard, whole.boards);
        UnlikeDive dive = dive(yard, pool);
        assertThat(dive.run(steps(3_000_000), Allowance.of(yard.model, 0)))
                .as("no boards at all")
                .isNull();
        Draft found = dive.run(steps(6_000_000), Allowance.of(yard.model, whole.cost()));
        assertThat(found).isNotNull();
        if (found != null) {
            assertThat(found.cost()).isLessThanOrEqualTo(whole.cost());
            assertThat(found.left).containsOnly(0);
            assertThat(LayoutCheck.faults(instance, new Answers(new AreaBound(yard.model)).interim(found)))
                    .isEmpty();
        }
    }

    @Test
    void boardsOfOneContentArePooledOnce() {
        Yard yard = new Yard(new Model(SheetJobs.typical(5, 40, 40)));
        List<Board> boards = new Filling(yard).build(Filling.Order.AREA, 0).boards;
        BoardPool pool = alone(yard, boards);
        boards.forEach(board -> pool.collect(draft(yard, new Board(yard, 0, board.root))));
        assertThat(pool.take()).containsExactlyElementsOf(boards);
        assertThat(pool.take()).isEmpty();
    }

    private static BoardPool alone(Yard yard, List<Board> boards) {
        BoardPool pool = new BoardPool();
        boards.forEach(board -> pool.collect(draft(yard, board)));
        return pool;
    }

    private static Draft draft(Yard yard, Board board) {
        Draft draft = new Draft(yard);
        draft.add(board);
        return draft;
    }

    @Test
    void patternsThatWinMakeTheProgrammeCheaperThanTheBoardsOfAPlan() {
        Yard yard = new Yard(new Model(cutUp(4)));
        Draft start = new Filling(yard).build(Filling.Order.AREA, Filling.BEST_TRIAL);
        Draft none = new Draft(yard);
        Allowance allowed = Allowance.of(yard.model, start.cost());
        UnlikeColumns columns = new UnlikeColumns(yard);
        columns.learn(start.boards, allowed, steps(1_000_000));
        RestProgramme learnt = new RestProgramme(yard.model, none);
        start.boards.forEach(board -> learnt.add(PriceList.Column.of(board)));
        learnt.solve();
        RestProgramme solved = columns.solvedWell(none, Allowance.of(yard.model, SHEETS), steps(20_000_000));
        // No less than areas allow, and no more than the plan that the pieces were cut from.
        assertThat(solved.value()).isLessThan(learnt.value()).isBetween(SHEETS - 1e-6, SHEETS + 1e-3);
    }
}
