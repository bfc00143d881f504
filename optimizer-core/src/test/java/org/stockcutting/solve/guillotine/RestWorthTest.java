package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.solve.instance.StockType.ZoneRect;

/** What rests are worth to the search, with and without bad zones. */
class RestWorthTest {

    private static final int UNUSABLE = 2;

    private static Yard yard(long length, long width, long kerf, List<ItemType> items, List<ZoneRect> zones) {
        List<StockType.Placing> places = new ArrayList<>();
        items.forEach(item -> places.add(new StockType.Placing(true, item.weight() == 2, 0)));
        StockType stock = new StockType(length, width, 0, 0, 1, 1, 0, zones, places);
        return new Yard(
                new Model(new Instance(items, List.of(stock), kerf, kerf, Instance.Limits.NONE, List.of(), List.of())));
    }

    private static ItemType item(long length, long width, boolean turns) {
        return new ItemType(length, width, turns ? 2 : 1, 5, 5);
    }

    /** Every whole place a cut, by plain recursion. */
    private static double naive(Model model, long length, long width, Map<String, Double> known) {
        String key = length + " " + width;
        Double before = known.get(key);
        if (before != null) {
            return before;
        }
        double best = 0;
        for (int t = 0; t < model.types; t++) {
            for (boolean turned : new boolean[] {false, true}) {
                boolean fits = model.length(0, t, turned) <= length && model.width(0, t, turned) <= width;
                if (fits && model.allows(0, t, turned)) {
                    best = Math.max(best, (double) model.length(0, t, turned) * model.width(0, t, turned));
                }
            }
        }
        for (long cut = 1; cut < length; cut++) {
            best = Math.max(best, naive(model, cut, width, known) + naive(model, length - cut, width, known));
        }
        for (long cut = 1; cut < width; cut++) {
            best = Math.max(best, naive(model, length, cut, known) + naive(model, length, width - cut, known));
        }
        known.put(key, best);
        return best;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void fillsAsMuchAsPlainRecursion(long seed) {
        Random random = new Random(seed);
        List<ItemType> items = new ArrayList<>();
        for (int n = 1 + random.nextInt(4); n > 0; n--) {
            items.add(item(2 + random.nextInt(9), 1 + random.nextInt(5), random.nextBoolean()));
        }
        Yard yard = yard(17 + random.nextInt(8), 9, random.nextInt(3), items, List.of());
        FillTable table = FillTable.of(yard);
        Map<String, Double> known = new HashMap<>();
        assertThat(table).isNotNull();
        for (long length = 1; length <= yard.model.boardLength(0); length++) {
            for (long width = 1; width <= yard.model.boardWidth(0); width++) {
                assertThat((double) table.area(length, width))
                        .as("%d x %d, seed %d", length, width, seed)
                        .isEqualTo(naive(yard.model, length, width, known));
            }
        }
    }

    @Test
    void takesBoardsAsTheyComeWithoutTable() {
        assertThat(FillTable.of(yard(20, 4, 1, List.of(new ItemType(5, 0, 1, 1, 1)), List.of())))
                .isNull();
    }

    @Test
    void aZoneAcrossTheMiddleLeavesTheTwoEnds() {
        List<ZoneRect> zones = List.of(new ZoneRect(8, 0, 10, 4, UNUSABLE, false));
        Yard yard = yard(20, 4, 1, List.of(item(3, 1, false)), zones);
        // In front of the zone 8 and the kerf, behind it 20 - 10 and the kerf at the end of the board.
        double ends = yard.clearValue(0, 9, 5) + yard.clearValue(0, 11, 5);
        assertThat(yard.restValue(0, 0, 0, 21, 5)).isCloseTo(ends, within(1e-9));
        assertThat(yard.restValue(0, 0, 0, 21, 5)).isLessThan(yard.clearValue(0, 21, 5));
    }

    @Test
    void aZoneAtTheEdgeLeavesTheLongStripBesideIt() {
        List<ZoneRect> zones = List.of(new ZoneRect(8, 0, 10, 1, UNUSABLE, false));
        Yard yard = yard(20, 6, 0, List.of(item(15, 2, false)), zones);
        assertThat(yard.restValue(0, 0, 0, 20, 6)).isCloseTo(yard.clearValue(0, 20, 5), within(1e-9));
    }

    @Test
    void aZoneThatEveryPieceTakesIsNone() {
        List<StockType.Placing> places = List.of(new StockType.Placing(true, false, 2));
        List<ZoneRect> zones = List.of(new ZoneRect(8, 0, 10, 4, 1, false));
        StockType stock = new StockType(20, 4, 0, 0, 1, 1, 0, zones, places);
        Yard yard = new Yard(new Model(new Instance(
                List.of(item(3, 1, false)), List.of(stock), 1, 1, Instance.Limits.NONE, List.of(), List.of())));
        assertThat(yard.restValue(0, 0, 0, 21, 5)).isEqualTo(yard.clearValue(0, 21, 5));
    }

    @Test
    void aStaircaseHoldsWhatSomeRectangleFitsInto() {
        Staircase stairs = new Staircase();
        stairs.add(10, 2);
        stairs.add(4, 6);
        stairs.add(12, 3);
        assertThat(stairs.holds(10, 2)).isTrue();
        assertThat(stairs.holds(9, 5)).isFalse();
        assertThat(stairs.holds(4, 6)).isTrue();
        assertThat(stairs.holds(3, 9)).isFalse();
        stairs.add(4, 1);
        assertThat(stairs.holds(5, 1)).isTrue();
    }

    @Test
    void aBoardKeepsItsFirstCut() {
        List<ZoneRect> zones = List.of(new ZoneRect(8, 0, 10, 1, UNUSABLE, false));
        Yard yard = yard(20, 6, 0, List.of(item(5, 2, false)), zones);
        for (RootCut first : List.of(RootCut.RIP, RootCut.CROSSCUT)) {
            Board board = yard.empty(0, first);
            while (board.bestMove(0).isPossible()) {
                board = board.with(board.bestMove(0));
                assertThat(board.root.crosscut).isEqualTo(first == RootCut.CROSSCUT);
            }
            assertThat(board.root.pieces).isGreaterThan(3);
        }
    }
}
