package org.stockcutting;

import java.math.RoundingMode;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.length.Volume;
import org.stockcutting.material.Density;
import org.stockcutting.plan.BuyingLine;
import org.stockcutting.plan.Choice;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.report.KnownWoods;
import org.stockcutting.stock.StockItem;

/** What a plan says for a comparison: its figures, and what has to be carried home. */
final class Choices {

    private Choices() {}

    static Choice of(Job job, CuttingPlan plan) {
        Map<String, StockItem.ForSale> stock =
                job.forSale().stream().collect(Collectors.toMap(StockItem::id, item -> item));
        KnownWoods woods = new KnownWoods(job);
        int boards = 0;
        Long grams = 0L;
        Length longest = null;
        for (BuyingLine line : plan.derived().buyingList()) {
            StockItem.ForSale item = stock.get(line.stock());
            if (item == null) {
                throw new IllegalStateException("plan buys " + line.stock() + ", which is not for sale");
            }
            boards += line.quantity();
            Long each = grams(woods, item);
            grams = grams == null || each == null ? null : Long.valueOf(grams + each * line.quantity());
            longest = longest == null || item.length().isMoreThan(longest) ? item.length() : longest;
        }
        return new Choice(
                stock.keySet().stream().sorted().toList(),
                plan.header().status(),
                plan.cost(),
                plan.objective(),
                boards,
                plan.derived().yield(),
                plan.derived().setUps(),
                grams,
                longest,
                plan.unplaced());
    }

    /** Weight in grams, rounded up, or null where the wood's density is not known. */
    private static @Nullable Long grams(KnownWoods woods, StockItem.ForSale item) {
        Density density = woods.density(item.material());
        Volume volume = Volume.of(item.length(), item.width(), item.thickness());
        return density == null
                ? null
                : density.of(volume)
                        .kilograms()
                        .movePointRight(3)
                        .setScale(0, RoundingMode.UP)
                        .longValueExact();
    }
}
