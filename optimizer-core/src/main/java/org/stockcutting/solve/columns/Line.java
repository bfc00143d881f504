package org.stockcutting.solve.columns;

import java.util.List;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.solve.instance.StockType.ZoneRect;

/** A board as a line along x: which items it takes, where they may start, what it costs with a given leftover. */
final class Line {

    final int index;
    final StockType stock;
    /** Usable length with one kerf, so that sizes (length and kerf) simply add up. */
    final long capacity;

    final boolean hasZones;
    private final Instance instance;
    private final List<ZoneRect> zones;
    private final boolean[] takes;
    private boolean limited;
    private final long lastCut;
    private final long smallest;
    private final long kerf;

    Line(Instance instance, int index) {
        this.instance = instance;
        this.index = index;
        this.stock = instance.stocks().get(index);
        this.kerf = instance.crosscutKerf();
        this.capacity = stock.length() + kerf;
        this.zones = stock.zones().stream()
                .filter(z -> z.x1() > 0 && z.x0() < stock.length())
                .sorted((a, b) -> Long.compare(a.x0(), b.x0()))
                .toList();
        this.hasZones = !zones.isEmpty();
        this.lastCut = stock.length() + stock.rawEnd() - instance.limits().minimumPiece();
        this.smallest = kerf
                + instance.items().stream().mapToLong(ItemType::length).min().orElse(0);
        this.takes = new boolean[instance.items().size()];
        for (int i = 0; i < takes.length; i++) {
            boolean fits = stock.places().get(i).straight()
                    && instance.items().get(i).length() <= stock.length()
                    && instance.items().get(i).width() <= stock.width();
            takes[i] = fits && sawCanFree(i) && earliest(i, 0) >= 0;
            limited |= fits
                    && (!sawCanFree(i)
                            || stock.length() - instance.items().get(i).length() > lastCut);
        }
    }

    /** Number of boards; unlimited ones count as many as anyone could need. */
    int copies(int need) {
        return stock.copies() == StockType.UNLIMITED ? need : Math.min(need, stock.copies());
    }

    boolean isUnlimited() {
        return stock.copies() == StockType.UNLIMITED;
    }

    boolean takes(int item) {
        return takes[item];
    }

    /**
     * True if the saw limits, read for crosscuts before rips and with all pieces moved to the start, may keep something off this board
     * that another order of cuts could free.
     */
    boolean isLimited() {
        return limited;
    }

    private boolean sawCanFree(int item) {
        ItemType type = instance.items().get(item);
        Instance.Limits limits = instance.limits();
        long length = type.length();
        boolean ripped = type.width() != 0 && type.width() < stock.width();
        if (stock.width() + stock.rawFarEdge() > limits.crosscutCapacity()) {
            return false;
        }
        // A piece as long as the board is freed by trims alone, so its first cut, if any, is the rip.
        boolean whole = length == stock.length();
        if (Boolean.FALSE.equals(limits.firstCut()) && !whole) {
            return false;
        }
        return !ripped ? stock.rawFarEdge() == 0 || length <= limits.longestRip() : canRip(type, whole);
    }

    private boolean canRip(ItemType type, boolean whole) {
        Instance.Limits limits = instance.limits();
        long rest = Math.max(0, stock.width() + stock.rawFarEdge() - type.width() - instance.ripKerf());
        return type.length() <= limits.longestRip()
                && Math.min(type.width(), rest) <= limits.ripCapacity()
                && type.length() >= limits.minimumPiece()
                && limits.stages() >= (whole ? 1 : 2)
                && !(whole && Boolean.TRUE.equals(limits.firstCut()));
    }

    /** Least start at or behind {@code from} where a piece of the item may lie, or -1. */
    long earliest(int item, long from) {
        long length = instance.items().get(item).length();
        int woodClass = stock.places().get(item).woodClass();
        long x = clear(item, length, woodClass, from);
        if (isSawn(length, from, x)) {
            return x;
        }
        long end = stock.length() - length;
        return end > x && isSawn(length, from, end) && clear(item, length, woodClass, end) == end ? end : -1;
    }

    /** True if a piece from x on can be freed where everything before {@code free} is cut off already. */
    private boolean isSawn(long length, long free, long x) {
        if (x + length > stock.length()) {
            return false;
        }
        // No cut is needed behind a piece that ends with the raw board, so it may start later than the last cut allows.
        boolean noCutBehind = x + length == stock.length() && stock.rawEnd() == 0;
        return x <= lastCut || (noCutBehind && (free <= lastCut || x - free < Math.max(1, kerf)));
    }

    private long clear(int item, long length, int woodClass, long from) {
        long x = from;
        boolean moved = hasZones;
        while (moved) {
            moved = false;
            for (ZoneRect zone : zones) {
                long margin = zone.metal() ? kerf : 0;
                if (zone.blocks(woodClass) && x < zone.x1() + margin && x + length + margin > zone.x0()) {
                    x = zone.x1() + margin;
                    moved = true;
                }
            }
        }
        return x;
    }

    /** True if a piece of the item may start exactly at x, everything before {@code free} being cut off already. */
    boolean mayStart(int item, long free, long x) {
        long length = instance.items().get(item).length();
        return isSawn(length, free, x)
                && clear(item, length, stock.places().get(item).woodClass(), x) == x;
    }

    /** Starts behind zones: nothing else than these, 0 and the ends of pieces is ever worth trying. */
    long[] zoneEnds() {
        return zones.stream()
                .mapToLong(z -> z.x1() + (z.metal() ? kerf : 0))
                .filter(x -> x < stock.length())
                .sorted()
                .distinct()
                .toArray();
    }

    /** True if pieces of total size {@code size}, the longest of size {@code longest} last, leave the saw enough to hold on to. */
    boolean isSafe(long size, long longest) {
        long start = size - longest;
        // A last piece that ends with the raw board needs no cut, but the one before it does, and starts at least its
        // own size earlier.
        boolean noCutBehind = size == capacity && stock.rawEnd() == 0;
        return start <= lastCut || (noCutBehind && (start == 0 || start - smallest <= lastCut));
    }

    /** Length of what is left up to the raw end when the next free position is {@code next}. */
    long leftover(long next) {
        return next == capacity ? 0 : Math.max(0, stock.length() + stock.rawEnd() - next);
    }

    /** Goal value of what is left when the next free position is {@code next}. */
    long gain(long next) {
        if (stock.offcutValue() == 0 || next == capacity) {
            return 0;
        }
        long left = stock.length() + stock.rawEnd() - next;
        for (Instance.Keep keep : instance.keep()) {
            if (left > 0 && left >= keep.length() && stock.width() >= keep.width()) {
                return (long) (stock.offcutValue() * left * stock.width());
            }
        }
        return 0;
    }

    long cost(long next) {
        return stock.cost() - gain(next);
    }
}
