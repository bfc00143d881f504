package org.stockcutting.check;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.Violation;
import org.stockcutting.stock.StockItem;

/**
 * Checks a finished plan against its job: rough sizes, fit, every cut, counts, money, yield, and the bound in exact arithmetic. Works
 * on any plan, also one made by hand, and owes nothing to the planner.
 *
 * <p>The job must have passed its review. Stateless and safe to use from any thread.
 */
public final class PlanChecker {

    private PlanChecker() {}

    /**
     * All rules that the plan breaks, sorted by pointer then cause; empty for a valid plan. Causes are the words of {@link Cause}. The
     * plan's own list of violations is not looked at.
     *
     * @throws IllegalArgumentException if the job names an allowance profile that neither it nor the library has
     */
    public static List<Violation> check(Job job, CuttingPlan plan) {
        Facts facts = Facts.of(job);
        Inspection inspection = new Inspection();
        List<LayoutCheck.Checked> layouts = new LayoutCheck(facts, inspection).check(plan.layouts());
        SortedMap<String, Integer> used = used(plan.layouts());
        availability(facts, used, inspection);
        Census census = Census.of(plan.layouts(), facts, inspection);
        new CopyCheck(facts, census, inspection).check();
        SortedMap<String, Integer> estimated = new EstimateCheck(facts, inspection).check(plan.derived());
        new UnplacedCheck(facts, census, used, inspection).check(plan.unplaced(), estimated);
        SetsCheck.check(facts, census, plan.derived().wholeSets(), inspection);
        WoodTally tally = WoodTally.of(facts, census, layouts);
        new ValueCheck(facts, census, tally, used, inspection).check(plan);
        DerivedCheck derived = new DerivedCheck(facts, used, inspection);
        derived.check(plan.derived(), layouts);
        derived.tradeOff(plan.derived().tradeOff(), plan.cost(), plan.derived().setUps());
        RackCheck.check(plan.derived().offcuts(), layouts, uncut(facts, used), inspection);
        tally.check(plan.derived().yield(), inspection);
        return inspection.violations().stream()
                .sorted(Comparator.comparing(Violation::pointer).thenComparing(Violation::cause))
                .toList();
    }

    /** Boards that are bought with the others and stay whole. */
    private static Map<Board, Integer> uncut(Facts facts, SortedMap<String, Integer> used) {
        Map<Board, Integer> uncut = new LinkedHashMap<>();
        for (StockItem.ForSale stock : facts.job().forSale()) {
            int cut = used.getOrDefault(stock.id(), 0);
            Board board = facts.boards().get(stock.id());
            long pieces =
                    Tariff.sale(stock, cut, facts.job().goal() == Goal.BOARDS).pieces();
            if (board != null && cut > 0 && pieces > cut) {
                uncut.put(board, (int) Math.min(Integer.MAX_VALUE, pieces - cut));
            }
        }
        return uncut;
    }

    private static SortedMap<String, Integer> used(List<Layout> layouts) {
        SortedMap<String, Integer> used = new TreeMap<>();
        for (Layout layout : layouts) {
            used.merge(layout.stock(), Math.max(0, layout.repeat()), PlanChecker::added);
        }
        return used;
    }

    /** Far beyond any count of boards the sum only has to stay large. */
    private static int added(int a, int b) {
        return (int) Math.min(Integer.MAX_VALUE, (long) a + b);
    }

    private static void availability(Facts facts, SortedMap<String, Integer> used, Inspection inspection) {
        used.forEach((stock, count) -> {
            Board board = facts.boards().get(stock);
            if (board != null && board.copies().isPresent()) {
                inspection.require(
                        count <= board.copies().getAsInt(),
                        Cause.AVAILABILITY,
                        "/layouts",
                        count + " boards of " + stock + " are cut, there are "
                                + board.copies().getAsInt());
            }
        });
    }
}
