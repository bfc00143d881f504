package org.stockcutting.bench.peers;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.Region;

/** A board that is crosscut: its clear stretches, each a row of pieces. */
final class LineFill extends Fill {

    private final Choice choice;
    private final List<Segments.Segment> segments;
    private final long[] left;
    private final List<List<Integer>> rows = new ArrayList<>();

    LineFill(Instance instance, int stock, Choice choice) {
        super(instance, stock);
        this.choice = choice;
        this.segments = Segments.of(instance, stock).list();
        this.left = segments.stream().mapToLong(Segments.Segment::capacity).toArray();
        segments.forEach(segment -> rows.add(new ArrayList<>()));
    }

    /** True if the item may lie on this stock at all, length left aside. */
    static boolean takes(Instance instance, int stock, int item) {
        return instance.stocks().get(stock).places().get(item).straight()
                && instance.items().get(item).width()
                        <= instance.stocks().get(stock).width();
    }

    @Override
    long room(int item) {
        int segment = segmentFor(item);
        return segment < 0 ? -1 : left[segment] - size(item);
    }

    @Override
    void put(int item) {
        put(segmentFor(item), item);
    }

    /** Puts a piece on a stretch that another method chose, whether it fits or not: the checker will say. */
    void addTo(int segment, int item) {
        put(segment, item);
        count(item);
    }

    private void put(int segment, int item) {
        rows.get(segment).add(item);
        left[segment] -= size(item);
    }

    List<List<Integer>> rows() {
        return rows;
    }

    private int segmentFor(int item) {
        if (!takes(instance, stock, item)) {
            return -1;
        }
        int chosen = -1;
        for (int s = 0; s < left.length; s++) {
            boolean fits = left[s] >= size(item);
            if (fits && (chosen < 0 || (choice == Choice.BEST && left[s] < left[chosen]))) {
                chosen = s;
            }
        }
        return chosen;
    }

    private long size(int item) {
        return instance.items().get(item).length() + instance.crosscutKerf();
    }

    @Override
    Region layout() {
        List<Region> parts = new ArrayList<>();
        for (int s = 0; s < rows.size(); s++) {
            List<Integer> row = new ArrayList<>(rows.get(s));
            row.sort(Comparator.comparingLong(
                    (Integer i) -> -instance.items().get(i).length()));
            long x = segments.get(s).start();
            for (int item : row) {
                ItemType piece = instance.items().get(item);
                parts.add(new Region.Item(item, false, x, 0, piece.length(), width(item)));
                x += size(item);
            }
        }
        return new Region.Split(true, 0, 0, type().length(), type().width(), parts);
    }
}
