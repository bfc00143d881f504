package org.stockcutting.solve.instance;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One independent component in small integers.
 *
 * <p>Fit along one axis: neighbours are at least a kerf apart, and a piece may end at the usable end with no cut behind it, so along
 * one line the sum of (piece + kerf) is at most usable + kerf.
 *
 * @param items item types, in a canonical order that does not depend on the order of the request
 * @param stocks stock types, in a canonical order
 * @param crosscutKerf kerf between neighbours along x
 * @param ripKerf kerf between neighbours along y
 * @param limits saw limits in instance units
 * @param keep least length and width of an offcut worth keeping, used only where a stock's offcutValue is not 0
 * @param groups items that must come from one board together
 */
public record Instance(
        List<ItemType> items,
        List<StockType> stocks,
        long crosscutKerf,
        long ripKerf,
        Limits limits,
        List<Keep> keep,
        List<Group> groups) {

    public Instance {
        items = List.copyOf(items);
        stocks = List.copyOf(stocks);
        keep = List.copyOf(keep);
        groups = List.copyOf(groups);
    }

    /**
     * Saw limits; {@link Long#MAX_VALUE} or {@link Integer#MAX_VALUE} never restrict. Meanings as in the shop's limits.
     *
     * @param firstCut null for any direction, TRUE for crosscut, FALSE for rip
     */
    public record Limits(
            long ripCapacity,
            long longestRip,
            long crosscutCapacity,
            int stages,
            @Nullable Boolean firstCut,
            long minimumPiece) {
        public static final Limits NONE =
                new Limits(Long.MAX_VALUE, Long.MAX_VALUE, Long.MAX_VALUE, Integer.MAX_VALUE, null, 0);
    }

    /**
     * The same with another first cut.
     *
     * @param first TRUE for crosscuts, FALSE for rips
     */
    public Instance cutFirst(boolean first) {
        Limits limited = new Limits(
                limits.ripCapacity,
                limits.longestRip,
                limits.crosscutCapacity,
                limits.stages,
                first,
                limits.minimumPiece);
        return new Instance(items, stocks, crosscutKerf, ripKerf, limited, keep, groups);
    }

    /**
     * On every board the copies of these items are c times {@code perSet} for some whole c at least 0. Each item is in one group at
     * most, and its demand is a multiple of its {@code perSet}.
     *
     * @param items indexes of item types
     * @param perSet how many of each one set takes
     */
    public record Group(List<Integer> items, List<Integer> perSet) {
        public Group {
            items = List.copyOf(items);
            perSet = List.copyOf(perSet);
        }
    }

    /** Least length (along x) and width of an offcut worth keeping. */
    public record Keep(long length, long width) {}

    /**
     * True if every board is cut by crosscuts only, apart from ripping a single piece to width after it is free: nothing may lie turned,
     * no two pieces fit side by side on any stock, and zones that matter are treated as running across the whole width.
     */
    public boolean isOneDimensional() {
        for (StockType stock : stocks) {
            long least = Long.MAX_VALUE;
            for (int i = 0; i < items.size(); i++) {
                StockType.Placing place = stock.places().get(i);
                if (place.turned()) {
                    return false;
                }
                if (place.straight()) {
                    long width = items.get(i).width() == 0
                            ? stock.width()
                            : items.get(i).width();
                    least = Math.min(least, width);
                }
            }
            if (least != Long.MAX_VALUE && 2 * least + ripKerf <= stock.width()) {
                return false;
            }
            if (least < stock.width() && stock.zones().stream().anyMatch(z -> z.y0() > 0 || z.y1() < stock.width())) {
                return false;
            }
        }
        return true;
    }
}
