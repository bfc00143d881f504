package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;

/** The instance with kerfs folded into all extents, and what follows from it once for all. */
final class Model {

    final Instance instance;
    final int types;
    final int stocks;
    final long kerfX;
    final long kerfY;
    /** What goes on a board together: single types, or one set of a group. */
    final List<Unit> units;
    /** True if the goal pays for kept offcuts. */
    final boolean paysOffcuts;

    private final boolean[][] straight;
    private final boolean[][] turned;
    private final double[] area;
    private final Staircase[] leastRest;

    /** One thing to place: so many of each of these types, on one board. */
    record Unit(int[] types, int[] counts) {
        boolean isSingle() {
            return types.length == 1 && counts[0] == 1;
        }
    }

    Model(Instance instance) {
        this.instance = instance;
        this.types = instance.items().size();
        this.stocks = instance.stocks().size();
        this.kerfX = instance.crosscutKerf();
        this.kerfY = instance.ripKerf();
        this.straight = new boolean[stocks][types];
        this.turned = new boolean[stocks][types];
        this.leastRest = new Staircase[stocks];
        this.paysOffcuts =
                !instance.keep().isEmpty() && instance.stocks().stream().anyMatch(s -> s.offcutValue() != 0);
        for (int s = 0; s < stocks; s++) {
            readPlaces(s);
        }
        for (int s = 0; s < stocks; s++) {
            keepSetsTogether(s);
            leastRest[s] = leastRest(s);
        }
        this.area = new double[types];
        for (int t = 0; t < types; t++) {
            area[t] = leastArea(t);
        }
        this.units = unitsOf(instance);
    }

    private void readPlaces(int s) {
        StockType stock = instance.stocks().get(s);
        for (int t = 0; t < types; t++) {
            StockType.Placing place = stock.places().get(t);
            ItemType item = instance.items().get(t);
            straight[s][t] = place.straight()
                    && item.perBoard() > 0
                    && length(s, t, false) <= boardLength(s)
                    && width(s, t, false) <= boardWidth(s)
                    && isReached(s, length(s, t, false), width(s, t, false));
            turned[s][t] = place.turned()
                    && item.perBoard() > 0
                    && item.width() > 0
                    && length(s, t, true) <= boardLength(s)
                    && width(s, t, true) <= boardWidth(s)
                    && isReached(s, length(s, t, true), width(s, t, true));
        }
    }

    /** What is shorter than the board takes a crosscut at least as wide as itself, what is narrower a rip as long. */
    private boolean isReached(int s, long length, long width) {
        return (length == boardLength(s) || width - kerfY <= instance.limits().crosscutCapacity())
                && (width == boardWidth(s)
                        || length - kerfX <= instance.limits().longestRip());
    }

    /** A stock that can't hold one piece of a set can't hold any of them. */
    private void keepSetsTogether(int s) {
        for (Instance.Group group : instance.groups()) {
            boolean whole = true;
            for (int i = 0; i < group.items().size(); i++) {
                int t = group.items().get(i);
                whole &= hasPlace(s, t) && item(t).perBoard() >= group.perSet().get(i);
            }
            for (int t : group.items()) {
                straight[s][t] &= whole;
                turned[s][t] &= whole;
            }
        }
    }

    private Staircase leastRest(int s) {
        Staircase least = new Staircase();
        for (int t = 0; t < types; t++) {
            for (boolean isTurned : new boolean[] {false, true}) {
                if (allows(s, t, isTurned)) {
                    least.add(length(s, t, isTurned), width(s, t, isTurned));
                }
            }
        }
        return least;
    }

    private double leastArea(int t) {
        ItemType item = instance.items().get(t);
        double least = Double.MAX_VALUE;
        for (int s = 0; s < stocks; s++) {
            if (straight[s][t]) {
                least = Math.min(least, (double) length(s, t, false) * width(s, t, false));
            }
            if (turned[s][t]) {
                least = Math.min(least, (double) length(s, t, true) * width(s, t, true));
            }
        }
        return least == Double.MAX_VALUE ? (double) item.length() * Math.max(1, item.width()) : least;
    }

    private static List<Unit> unitsOf(Instance instance) {
        List<Unit> units = new ArrayList<>();
        boolean[] grouped = new boolean[instance.items().size()];
        for (Instance.Group group : instance.groups()) {
            int[] types = group.items().stream().mapToInt(Integer::intValue).toArray();
            int[] counts = group.perSet().stream().mapToInt(Integer::intValue).toArray();
            units.add(new Unit(types, counts));
            for (int t : types) {
                grouped[t] = true;
            }
        }
        for (int t = 0; t < grouped.length; t++) {
            if (!grouped[t]) {
                units.add(new Unit(new int[] {t}, new int[] {1}));
            }
        }
        return List.copyOf(units);
    }

    StockType stock(int s) {
        return instance.stocks().get(s);
    }

    ItemType item(int t) {
        return instance.items().get(t);
    }

    long boardLength(int s) {
        return stock(s).length() + kerfX;
    }

    long boardWidth(int s) {
        return stock(s).width() + kerfY;
    }

    double boardArea(int s) {
        return (double) boardLength(s) * boardWidth(s);
    }

    /** Least padded area that one piece takes on any stock. */
    double area(int t) {
        return area[t];
    }

    /** Padded extent along x of a piece. */
    long length(int s, int t, boolean isTurned) {
        ItemType item = item(t);
        return (isTurned ? item.width() : item.length()) + kerfX;
    }

    /** Padded extent along y of a piece; as wide as the board where the board is taken as it comes. */
    long width(int s, int t, boolean isTurned) {
        ItemType item = item(t);
        if (isTurned) {
            return item.length() + kerfY;
        }
        return (item.width() == 0 ? stock(s).width() : item.width()) + kerfY;
    }

    /** True if the piece may lie so, and is no larger than the usable rectangle. */
    boolean allows(int s, int t, boolean isTurned) {
        return isTurned ? turned[s][t] : straight[s][t];
    }

    boolean hasPlace(int s, int t) {
        return straight[s][t] || turned[s][t];
    }

    boolean hasPlace(int t) {
        for (int s = 0; s < stocks; s++) {
            if (hasPlace(s, t)) {
                return true;
            }
        }
        return false;
    }

    boolean isLimited(int s) {
        return stock(s).copies() != StockType.UNLIMITED;
    }

    boolean hasZones(int s) {
        return !stock(s).zones().isEmpty();
    }

    /** True if a piece of this type must keep clear of the zone. */
    boolean blocks(int s, StockType.ZoneRect zone, int t) {
        return zone.blocks(stock(s).places().get(t).woodClass());
    }

    /** True if a piece at this place, given its padded extents, covers no zone that it does not take. */
    boolean isClear(int s, int t, long x, long y, long length, long width) {
        for (StockType.ZoneRect zone : stock(s).zones()) {
            if (blocks(s, zone, t)
                    && x < zone.x1()
                    && x + length - kerfX > zone.x0()
                    && y < zone.y1()
                    && y + width - kerfY > zone.y0()) {
                return false;
            }
        }
        return true;
    }

    /** True if pieces mostly have their like: boards that are cut alike, and patterns that hold a type more than once, are then of use. */
    boolean hasRepeats() {
        long pieces = instance.items().stream().mapToLong(i -> i.demand()).sum();
        return pieces >= 2L * types;
    }

    /** How much a rest is worth to the search: large rests more than in proportion; 0 where nothing could fit. */
    double restValue(int s, long length, long width) {
        if (!leastRest[s].holds(length, width)) {
            return 0;
        }
        double size = (double) length * width;
        return size * Math.sqrt(Math.sqrt(size));
    }
}
