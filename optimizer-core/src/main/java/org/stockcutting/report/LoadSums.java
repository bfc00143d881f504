package org.stockcutting.report;

import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.length.Volume;
import org.stockcutting.material.Density;
import org.stockcutting.material.Weight;
import org.stockcutting.material.Wood;
import org.stockcutting.part.Section;
import org.stockcutting.plan.Warning;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;

/** Weight and length of what is bought, and what follows for the way home and for the wood's first weeks in the shop. */
final class LoadSums {

    static final String HEAVY_LOAD = "heavy-load";
    static final String UNKNOWN_WEIGHT = "unknown-weight";
    static final String DRY_FIRST = "dry-first";

    private final Lookup lookup;
    private final KnownWoods woods;
    private final List<TradeSums.Weighed> weights = new ArrayList<>();
    private final List<Warning> notes = new ArrayList<>();
    private Weight total = Weight.ZERO;
    private @Nullable Length longest;

    LoadSums(Lookup lookup, SortedMap<String, Integer> bought) {
        this.lookup = lookup;
        this.woods = new KnownWoods(lookup.job());
        bought.forEach((id, quantity) -> add(lookup.stock(id), quantity));
        noteUnknown();
        noteCar();
        noteDrying(bought);
    }

    List<TradeSums.Weighed> weights() {
        return weights;
    }

    Weight total() {
        return total;
    }

    @Nullable Length longest() {
        return longest;
    }

    List<Warning> notes() {
        return notes;
    }

    private void add(StockItem item, int quantity) {
        longest = longest == null ? item.length() : longest.max(item.length());
        Density density = woods.density(item.material());
        if (density == null) {
            weights.add(new TradeSums.Weighed(item.id(), null, null, null));
            return;
        }
        Weight each = density.of(Volume.of(item.length(), item.width(), item.thickness()));
        Weight all = each.times(quantity);
        total = total.plus(all);
        weights.add(new TradeSums.Weighed(item.id(), each, all, woods.weighedAs(item.material())));
    }

    private void noteUnknown() {
        TreeSet<String> unknown = new TreeSet<>();
        weights.stream()
                .filter(line -> line.each() == null)
                .forEach(line -> unknown.add(lookup.stock(line.stock()).material()));
        if (!unknown.isEmpty()) {
            notes.add(new Warning(
                    UNKNOWN_WEIGHT,
                    "/load",
                    "The weight of " + String.join(", ", unknown)
                            + " is not known and not in the sum; give woods a density, or say which wood it is like."));
        }
    }

    private void noteCar() {
        Weight car = lookup.job().terms().carLoad();
        if (car == null || total.compareTo(car) <= 0) {
            return;
        }
        int trips = total.kilograms()
                .divide(car.kilograms(), 0, RoundingMode.CEILING)
                .intValueExact();
        notes.add(new Warning(
                HEAVY_LOAD,
                "/load",
                "The load is heavier than the car takes at once: plan for at least " + trips
                        + " trips, or have it delivered."));
    }

    /**
     * Construction lumber is sold dry at up to 19 % moisture (PS 20); furniture wants 12 % or less, 7 to 9 % in a heated room (common
     * practice, as read in workshop magazines).
     */
    private void noteDrying(SortedMap<String, Integer> bought) {
        boolean measuredWork =
                lookup.job().parts().stream().anyMatch(part -> part.section() instanceof Section.Measured);
        boolean construction = bought.keySet().stream().map(lookup::stock).anyMatch(this::isConstruction);
        if (measuredWork && construction) {
            notes.add(new Warning(
                    DRY_FIRST,
                    "/buyingList",
                    "Construction lumber may hold up to 19 % moisture when it is sold. For furniture let it dry indoors, "
                            + "stickered, until it is at 12 % or less, measure again, and only then plane it: "
                            + "a 5-1/2 in face ends near 5-3/8 in."));
        }
    }

    private boolean isConstruction(StockItem item) {
        boolean dimension = item.form() == Form.BOARD
                && item.nominal() != null
                && item.nominal().source().contains("PS 20");
        boolean hardwood = woods.wood(item.material())
                .filter(wood -> wood.kind() == Wood.Kind.HARDWOOD)
                .isPresent();
        return dimension && !hardwood;
    }
}
