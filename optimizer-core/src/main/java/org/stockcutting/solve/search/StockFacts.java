package org.stockcutting.solve.search;

import java.util.List;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;

/** What the search asks about one stock type, worked out once: which pieces it takes, what a board of it is worth when it is used. */
final class StockFacts {

    /** A board of the greatest length has this mark; marks keep squares far below the range of a long. */
    private static final double LONGEST_MARK = 10_000;

    private final int index;
    private final StockType stock;
    private final boolean onHand;
    private final long kerf;
    private final List<Instance.Keep> keeps;
    private final boolean[] takes;
    private final boolean[] fullWidth;
    private final long[] sideValueTrimmed;
    private final long[] sideValueRaw;
    private final double markPerUnit;
    private final double markPerWidth;

    StockFacts(Instance instance, int index, boolean onHand) {
        this.index = index;
        this.stock = instance.stocks().get(index);
        this.onHand = onHand;
        this.kerf = instance.crosscutKerf();
        this.keeps = instance.keep();
        int items = instance.items().size();
        takes = new boolean[items];
        fullWidth = new boolean[items];
        sideValueTrimmed = new long[items];
        sideValueRaw = new long[items];
        for (int i = 0; i < items; i++) {
            readItem(instance, i);
        }
        long longest = 1;
        long widest = 1;
        for (StockType other : instance.stocks()) {
            longest = Math.max(longest, other.length() + other.rawEnd());
            widest = Math.max(widest, other.width());
        }
        markPerUnit = LONGEST_MARK / longest;
        markPerWidth = LONGEST_MARK / widest;
    }

    private void readItem(Instance instance, int i) {
        ItemType item = instance.items().get(i);
        fullWidth[i] = item.width() == 0 || item.width() == stock.width();
        takes[i] = stock.places().get(i).straight()
                && item.length() <= stock.length()
                && item.width() <= stock.width()
                && canBeCrosscut(instance, i)
                && (fullWidth[i] || canBeRipped(instance, item));
        if (!fullWidth[i] && item.width() < stock.width()) {
            long trimmed = stock.width() - item.width() - instance.ripKerf();
            sideValueTrimmed[i] = keptValue(item.length(), trimmed);
            sideValueRaw[i] = keptValue(item.length(), trimmed + stock.rawFarEdge());
        }
    }

    /** A far edge that a full-width piece reaches is trimmed before anything is crosscut. */
    private boolean canBeCrosscut(Instance instance, int i) {
        long across = fullWidth[i] ? stock.width() : stock.width() + stock.rawFarEdge();
        return across <= instance.limits().crosscutCapacity();
    }

    private boolean canBeRipped(Instance instance, ItemType item) {
        Instance.Limits limits = instance.limits();
        long behind = stock.width() + stock.rawFarEdge() - item.width() - instance.ripKerf();
        // The rip of a piece as long as its board would be the first cut.
        boolean ripsFirst = item.length() == stock.length();
        return limits.stages() >= 2
                && !(ripsFirst && Boolean.TRUE.equals(limits.firstCut()))
                && item.length() <= limits.longestRip()
                && Math.min(item.width(), behind) <= limits.ripCapacity();
    }

    int index() {
        return index;
    }

    StockType stock() {
        return stock;
    }

    boolean onHand() {
        return onHand;
    }

    boolean takes(int item) {
        return takes[item];
    }

    boolean isFullWidth(int item) {
        return fullWidth[item];
    }

    long sideValueTrimmed(int item) {
        return sideValueTrimmed[item];
    }

    long sideValueRaw(int item) {
        return sideValueRaw[item];
    }

    /** How much the sum of (piece + kerf) is beyond usable length + kerf. */
    long overrun(Load load) {
        return Math.max(0, load.total() - stock.length() - kerf);
    }

    /** Length of what is left behind the last cut, up to the raw end. */
    long leftover(Load load) {
        boolean reachesEnd = load.total() - kerf == stock.length();
        return reachesEnd ? 0 : Math.max(0, stock.length() + stock.rawEnd() - load.total());
    }

    /** The leftover if it is worth keeping, else 0; where the shop names no least size every leftover is. */
    long keptLeftover(Load load) {
        long leftover = leftover(load);
        return keeps.isEmpty() || isKept(leftover, leftoverWidth(load)) ? leftover : 0;
    }

    /** Where a piece reaches the usable far edge, that edge is trimmed off the whole board. */
    private long leftoverWidth(Load load) {
        return load.fullWidth() > 0 ? stock.width() : stock.width() + stock.rawFarEdge();
    }

    /** What a board that is cut so costs under the goal. */
    long value(Load load) {
        if (stock.offcutValue() == 0) {
            return stock.cost();
        }
        long side = load.fullWidth() > 0 ? load.sideValueTrimmed() : load.sideValueRaw();
        return Math.max(0, stock.cost() - side - keptValue(leftover(load), leftoverWidth(load)));
    }

    private long keptValue(long length, long width) {
        return stock.offcutValue() != 0 && isKept(length, width) ? Math.round(stock.offcutValue() * length * width) : 0;
    }

    private boolean isKept(long length, long width) {
        for (Instance.Keep keep : keeps) {
            if (length >= keep.length() && width >= keep.width()) {
                return true;
            }
        }
        return false;
    }

    /** A length in ten-thousandths of the longest board, rounded up. */
    long mark(long length) {
        return (long) Math.ceil(length * markPerUnit);
    }

    /** The area of a whole board in the same manner. */
    long areaMark() {
        return Math.round(stock.length() * markPerUnit * stock.width() * markPerWidth);
    }
}
