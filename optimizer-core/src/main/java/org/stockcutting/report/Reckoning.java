package org.stockcutting.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Delivery;
import org.stockcutting.job.Job;
import org.stockcutting.job.TradeTerms;
import org.stockcutting.job.YardCuts;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.Money;
import org.stockcutting.stock.StockItem;

/**
 * The bill at the till. A plan is made for the least money for material; cuts, delivery and tax come on top and are not part of the
 * plan's cost or of its bound.
 *
 * @param material the plan's cost
 * @param cuts how many cuts the yard makes
 * @param yardCuts what they cost, or null if the yard makes none
 * @param delivery what delivery costs, or null if nothing is brought
 * @param tax tax on all that, rounded half up once, or null
 * @param total what is paid
 */
public record Reckoning(
        Money material,
        int cuts,
        @Nullable Money yardCuts,
        @Nullable Money delivery,
        @Nullable Money tax,
        Money total) {

    /** Per cent. */
    private static final int HUNDRED_DECIMALS = 2;

    /**
     * The bill of a plan, or null where something bought has no price.
     *
     * @param job the job
     * @param plan a plan of this job
     */
    public static @Nullable Reckoning of(Job job, CuttingPlan plan) {
        Money material = plan.cost();
        if (material == null) {
            return null;
        }
        TradeTerms terms = job.terms();
        YardCuts yard = terms.yardCuts();
        int cuts = yard == null ? 0 : cuts(job, plan, yard);
        Money cutting = yard == null ? null : yard.price().times(Math.max(0, cuts - yard.free()));
        Money delivery = delivery(terms.delivery(), material);
        Money before = plus(plus(material, cutting), delivery);
        BigDecimal percent = terms.taxPercent();
        Money tax = percent == null
                ? null
                : Money.rounded(before.amount().multiply(percent).movePointLeft(HUNDRED_DECIMALS), before.currency());
        return new Reckoning(material, cuts, cutting, delivery, tax, plus(before, tax));
    }

    /**
     * What one of several sets comes to: what is paid, shared out evenly, half a minor unit up. Null for a single set, and where the plan
     * leaves parts out, as no set can be said to be paid then.
     */
    public @Nullable Money perSet(Job job, CuttingPlan plan) {
        if (job.sets() == 1 || !plan.unplaced().isEmpty()) {
            return null;
        }
        int decimals = total.currency().getDefaultFractionDigits();
        BigDecimal share = total.amount().divide(BigDecimal.valueOf(job.sets()), decimals, RoundingMode.HALF_UP);
        return new Money(share, total.currency());
    }

    /** True if anything comes on top of the material. */
    public boolean hasExtras() {
        return yardCuts != null || delivery != null || tax != null;
    }

    /** Nothing bought, nothing brought. */
    private static @Nullable Money delivery(@Nullable Delivery delivery, Money material) {
        if (delivery == null) {
            return null;
        }
        boolean free = delivery.freeFrom() != null && material.compareTo(delivery.freeFrom()) >= 0;
        return free || material.minorUnits() == 0 ? delivery.price().times(0) : delivery.price();
    }

    private static Money plus(Money sum, @Nullable Money more) {
        return more == null ? sum : sum.plus(more);
    }

    private static int cuts(Job job, CuttingPlan plan, YardCuts yard) {
        Map<String, StockItem.ForSale> sold = new TreeMap<>();
        job.forSale().forEach(item -> sold.put(item.id(), item));
        int cuts = 0;
        for (Layout layout : plan.layouts()) {
            StockItem.ForSale item = sold.get(layout.stock());
            if (item != null && item.form() == yard.form()) {
                cuts = Math.addExact(cuts, Math.multiplyExact(firstCuts(layout.cuts()), layout.repeat()));
            }
        }
        return cuts;
    }

    /** Cuts through the whole piece: those of the first node; where that only trims, what it leaves is still the whole piece. */
    static int firstCuts(CutNode root) {
        int cuts = 0;
        CutNode node = root;
        while (node instanceof CutNode.Cuts first) {
            cuts += first.slots().size();
            List<CutNode> left = new ArrayList<>(first.pieces());
            left.removeIf(piece -> piece == CutNode.RestLeaf.TRIM || piece == CutNode.RestLeaf.SLIVER);
            if (left.size() != 1) {
                break;
            }
            node = left.get(0);
        }
        return cuts;
    }
}
