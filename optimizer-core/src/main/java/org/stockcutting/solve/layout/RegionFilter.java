package org.stockcutting.solve.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.Region;

/** Renumbers the places of a region in the order in which they are cut, leaving out those that get no label. */
final class RegionFilter {

    private final IntFunction<@Nullable Label> labelOfPlace;
    private final List<Label> labels = new ArrayList<>();
    private int place;

    private RegionFilter(IntFunction<@Nullable Label> labelOfPlace) {
        this.labelOfPlace = labelOfPlace;
    }

    /** The labelled board, or null if no place got a label. */
    static @Nullable Board apply(
            org.stockcutting.stock.StockItem stock, Region region, IntFunction<@Nullable Label> labelOfPlace) {
        RegionFilter filter = new RegionFilter(labelOfPlace);
        Region kept = filter.keep(region);
        return kept == null ? null : new Board(stock, kept, filter.labels);
    }

    private @Nullable Region keep(Region region) {
        if (region instanceof Region.Item item) {
            Label label = labelOfPlace.apply(place++);
            if (label == null) {
                return null;
            }
            labels.add(label);
            return new Region.Item(labels.size() - 1, item.turned(), item.x(), item.y(), item.length(), item.width());
        }
        Region.Split split = (Region.Split) region;
        List<Region> parts = new ArrayList<>();
        for (Region part : split.parts()) {
            Region kept = keep(part);
            if (kept != null) {
                parts.add(kept);
            }
        }
        return parts.isEmpty()
                ? null
                : new Region.Split(split.crosscut(), split.x(), split.y(), split.length(), split.width(), parts);
    }
}
