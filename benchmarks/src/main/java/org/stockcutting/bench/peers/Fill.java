package org.stockcutting.bench.peers;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.Region;
import org.stockcutting.solve.instance.StockType;

/** One board that is filled piece by piece: a line with {@link LineFill}, shelves with {@link ShelfFill}. */
abstract class Fill {

    final Instance instance;
    final int stock;
    private final int[] counts;
    private long area;

    Fill(Instance instance, int stock) {
        this.instance = instance;
        this.stock = stock;
        this.counts = new int[instance.items().size()];
    }

    /** An empty board of this stock. */
    static Fill empty(Instance instance, int stock, Choice choice) {
        return instance.isOneDimensional()
                ? new LineFill(instance, stock, choice)
                : new ShelfFill(instance, stock, choice);
    }

    /** Where on the board a piece goes if there are several places. */
    enum Choice {
        FIRST,
        BEST
    }

    /** What is left of the place that the item would get, or -1 if there is none. */
    final long slack(int item) {
        return counts[item] < instance.items().get(item).perBoard() ? room(item) : -1;
    }

    /** Puts a piece where {@link #slack} said that there is room. */
    final void add(int item) {
        put(item);
        count(item);
    }

    final void count(int item) {
        counts[item]++;
        area += instance.items().get(item).length() * width(item);
    }

    abstract long room(int item);

    abstract void put(int item);

    abstract Region layout();

    final StockType type() {
        return instance.stocks().get(stock);
    }

    final long cost() {
        return type().cost();
    }

    final long area() {
        return area;
    }

    final int[] counts() {
        return counts;
    }

    final boolean isEmpty() {
        return area == 0;
    }

    /** The item's own width; an item that takes the board as it comes is as wide as this board. */
    final long width(int item) {
        ItemType type = instance.items().get(item);
        return type.width() == 0 ? type().width() : type.width();
    }

    /** Items from the one that is hardest to place to the easiest: by length, or by the least height of the shelf they need. */
    static List<Integer> decreasing(Instance instance) {
        Comparator<Integer> order = instance.isOneDimensional()
                ? Comparator.comparingLong(i -> -instance.items().get(i).length())
                : Comparator.<Integer>comparingLong(i -> -ShelfFill.leastHeight(instance, i))
                        .thenComparingLong(i -> -Math.max(
                                instance.items().get(i).length(),
                                instance.items().get(i).width()));
        return IntStream.range(0, instance.items().size())
                .boxed()
                .sorted(order.thenComparingInt(i -> i))
                .toList();
    }
}
