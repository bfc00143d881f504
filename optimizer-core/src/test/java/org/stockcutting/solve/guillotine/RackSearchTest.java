package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.solve.instance.WorkMeter;

/** Dives on racks of boards that are known to give everything. */
class RackSearchTest {

    private static WorkMeter steps(long steps) {
        return new WorkMeter(steps, System.nanoTime() + 600_000_000_000L, new CancelToken());
    }

    private static RackSearch search(Yard yard, long seed) {
        double[] missing = new double[yard.model.types];
        Arrays.setAll(missing, yard.model::area);
        return new RackSearch(yard, missing, seed);
    }

    @Test
    void nothingIsBoughtWhereTheRackGivesAll() {
        int better = 0;
        for (long seed = 0; seed < 6; seed++) {
            Instance instance = Racks.enough(seed, 16, 8);
            Yard yard = new Yard(new Model(instance));
            Draft start = new Filling(yard).build(Filling.Order.AREA, Filling.BEST_TRIAL, RootCut.CROSSCUT);
            better += start.cost() > 0 ? 1 : 0;
            assertThat(RackSearch.suits(yard)).isTrue();
            RackSearch search = search(yard, seed);
            search.learn(start);
            WorkMeter meter = steps(3_000_000);
            Draft found = null;
            while (found == null && meter.spend(0)) {
                found = search.run(meter, 0);
            }
            assertThat(found).as("seed " + seed).isNotNull();
            if (found != null) {
                assertThat(found.cost()).isZero();
                assertThat(found.left).containsOnly(0);
                assertThat(LayoutCheck.faults(instance, new Answers(new AreaBound(yard.model)).interim(found)))
                        .isEmpty();
            }
        }
        assertThat(better).as("racks on which the first filling buys boards").isGreaterThan(3);
    }

    /** Of twice as many pieces as the rack gives, at least what it is known to give is placed; the first filling places less. */
    @Test
    void fromBoardsOnHandNearlyAllIsPlacedThatTheyGive() {
        double known = 0;
        double first = 0;
        double placed = 0;
        for (long seed = 0; seed < 4; seed++) {
            Instance rack = Racks.onHand(Racks.enough(seed, 12, 8));
            int[] twice =
                    rack.items().stream().mapToInt(item -> 2 * item.demand()).toArray();
            Instance instance = Racks.wanting(rack, twice);
            Yard yard = new Yard(new Model(instance));
            Draft best = new Filling(yard).build(Filling.Order.AREA, Filling.BEST_TRIAL, RootCut.CROSSCUT);
            known += weight(rack) / (double) weight(instance);
            first += 1 - best.missingWeight() / (double) weight(instance);
            assertThat(RackAim.isAllOnHand(yard.model)).isTrue();
            RackSearch search = search(yard, seed);
            WorkMeter meter = steps(400_000);
            while (!search.isHopeless() && meter.spend(0)) {
                search.learn(best);
                Draft found = search.runShort(meter, best.missingWeight());
                if (found != null) {
                    assertThat(found.missingWeight()).isLessThan(best.missingWeight());
                    best = found;
                }
            }
            assertThat(LayoutCheck.faults(instance, new Answers(new AreaBound(yard.model)).interim(best)))
                    .isEmpty();
            placed += 1 - best.missingWeight() / (double) weight(instance);
        }
        assertThat(placed).isGreaterThanOrEqualTo(known).isGreaterThan(first);
    }

    private static long weight(Instance instance) {
        return instance.items().stream()
                .mapToLong(item -> item.weight() * item.demand())
                .sum();
    }

    @Test
    void itGivesUpWhereTheWoodIsTooLittle() {
        Instance instance = Racks.enough(3, 4, 4);
        int[] demand =
                instance.items().stream().mapToInt(item -> 3 * item.demand()).toArray();
        Yard yard = new Yard(new Model(Racks.wanting(instance, demand)));
        RackSearch search = search(yard, 1);
        WorkMeter meter = steps(3_000_000);
        while (!search.isHopeless() && meter.spend(0)) {
            assertThat(search.run(meter, 0)).isNull();
        }
        assertThat(search.isHopeless()).isTrue();
    }

    @Test
    void theSameSeedGivesTheSamePlan() {
        String[] plans = new String[2];
        for (int n = 0; n < 2; n++) {
            Yard yard = new Yard(new Model(Racks.enough(2, 8, 6)));
            Draft found = search(yard, 9).run(steps(1_000_000), 2 * Racks.PRICE);
            StringBuilder plan = new StringBuilder();
            if (found != null) {
                found.boards.forEach(board -> plan.append(board.stock).append(Arrays.toString(board.counts)));
            }
            plans[n] = plan.toString();
        }
        assertThat(plans[0]).isNotEmpty().isEqualTo(plans[1]);
    }

    /** Under the goal waste every board has a worth of offcuts; where the shop keeps none, none is paid for, and wood is all that counts. */
    @Test
    void whereNoOffcutIsKeptNoneIsPaidFor() {
        Instance rack = Racks.enough(1, 3, 4);
        List<StockType> stocks = rack.stocks().stream()
                .map(s -> new StockType(
                        s.length(), s.width(), 0, 0, s.length() * s.width(), s.copies(), 1, s.zones(), s.places()))
                .toList();
        for (boolean keeps : new boolean[] {true, false}) {
            List<Instance.Keep> keep = keeps ? List.of(new Instance.Keep(12, 2)) : List.of();
            Model model = new Model(new Instance(
                    rack.items(), stocks, rack.crosscutKerf(), rack.ripKerf(), rack.limits(), keep, rack.groups()));
            assertThat(model.paysOffcuts).isEqualTo(keeps);
            assertThat(RackSearch.suits(new Yard(model))).isEqualTo(!keeps);
        }
    }

    @Test
    void boardsWithoutZonesAreLeftToOthers() {
        assertThat(RackSearch.suits(new Yard(new Model(SheetJobs.typical(1, 5, 20)))))
                .isFalse();
    }
}
