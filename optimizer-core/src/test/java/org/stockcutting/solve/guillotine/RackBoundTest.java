package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.WorkMeter;

/** Worths of pieces on racks, judged by exact prices of every board with its zones. */
class RackBoundTest {

    private static WorkMeter steps(long steps) {
        return new WorkMeter(steps, System.nanoTime() + 600_000_000_000L, new CancelToken());
    }

    /** Half as many pieces again as the rack gives, so that boards are bought. */
    private static Instance halfAgain(long seed) {
        Instance rack = Racks.enough(seed, 10, 6);
        return Racks.wanting(
                rack,
                rack.items().stream().mapToInt(item -> 3 * item.demand() / 2).toArray());
    }

    /** What worths prove by weak duality: the worth of all pieces less what the rack is worth, scaled until no bought board gains. */
    private static double proved(Model model, List<Double> duals) {
        double[] worth = duals.stream().mapToDouble(Double::doubleValue).toArray();
        double factor = 1;
        double rack = 0;
        for (int s = 0; s < model.stocks; s++) {
            double most = model.hasZones(s)
                    ? new ZonePricing(model, s).price(worth).value()
                    : new ExactPricing(model, s).price(worth).value();
            if (model.isLimited(s)) {
                rack += most;
            } else {
                factor = Math.min(factor, model.stock(s).cost() / most);
            }
        }
        double all = 0;
        for (int t = 0; t < worth.length; t++) {
            all += worth[t] * model.item(t).demand();
        }
        return factor * (all - rack);
    }

    /** On such small racks areas say much already, and one of the six has patterns that few places do not show. */
    @Test
    void worthsProveMostOfTheProgrammeAndMoreThanAreasDo() {
        double proved = 0;
        double byArea = 0;
        double programmes = 0;
        for (long seed = 0; seed < 6; seed++) {
            Yard yard = new Yard(new Model(halfAgain(seed)));
            Draft draft = new Filling(yard).build(Filling.Order.AREA, Filling.BEST_TRIAL, RootCut.CROSSCUT);
            assertThat(draft.left).containsOnly(0);
            RackBound bound = new RackBound(yard, draft);
            WorkMeter meter = steps(1_000_000);
            bound.run(seed, meter);
            assertThat(meter.isExhausted()).isFalse();
            double one = proved(yard.model, bound.duals());
            assertThat(one)
                    .as("seed " + seed)
                    .isLessThanOrEqualTo(bound.value() + 1e-4)
                    .isLessThanOrEqualTo(draft.cost());
            proved += one;
            programmes += bound.value();
            byArea += proved(yard.model, new AreaBound(yard.model).duals(Answers.placed(draft)));
        }
        assertThat(proved).isGreaterThan(byArea).isGreaterThan(0.9 * programmes);
    }

    @Test
    void theSameSeedGivesTheSameWorths() {
        double[][] worths = new double[2][];
        for (int n = 0; n < 2; n++) {
            Yard yard = new Yard(new Model(halfAgain(3)));
            Draft draft = new Filling(yard).build(Filling.Order.AREA, Filling.BEST_TRIAL, RootCut.CROSSCUT);
            RackBound bound = new RackBound(yard, draft);
            bound.run(7, steps(1_000_000));
            worths[n] = bound.duals().stream().mapToDouble(Double::doubleValue).toArray();
        }
        assertThat(Arrays.stream(worths[0]).sum()).isPositive();
        assertThat(worths[0]).isEqualTo(worths[1]);
    }
}
