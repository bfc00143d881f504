package org.stockcutting.solve.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.Region;
import org.stockcutting.stock.StockItem;

/**
 * One board of the plan: the stock it is, and the places on it in raw nanometres. The item index of every place points into
 * {@code labels}.
 *
 * @param stock what it is cut from
 * @param region how it is cut
 * @param labels what each place is for
 */
public record Board(StockItem stock, Region region, List<Label> labels) {

    public Board {
        labels = List.copyOf(labels);
    }

    /** A board whose places are numbered in the order in which they are cut. */
    public static Board renumbered(StockItem stock, Region region, List<Label> labels) {
        List<Region.Item> places = places(region);
        Board board = RegionFilter.apply(
                stock, region, place -> labels.get(places.get(place).item()));
        if (board == null) {
            throw new IllegalArgumentException("a board without places");
        }
        return board;
    }

    /** The board without the places of some labels, or null where nothing is left. */
    public @Nullable Board without(Predicate<Label> gone) {
        List<Region.Item> places = places(region);
        return RegionFilter.apply(stock, region, place -> {
            Label label = labels.get(places.get(place).item());
            return gone.test(label) ? null : label;
        });
    }

    /** The places of a region in the order in which they are cut. */
    public static List<Region.Item> places(Region region) {
        List<Region.Item> places = new ArrayList<>();
        collect(region, places);
        return places;
    }

    private static void collect(Region region, List<Region.Item> places) {
        if (region instanceof Region.Item item) {
            places.add(item);
        } else {
            for (Region part : ((Region.Split) region).parts()) {
                collect(part, places);
            }
        }
    }
}
