package org.stockcutting.solve.guillotine;

import java.util.stream.LongStream;
import org.jspecify.annotations.Nullable;

/** The model with empty boards, saw rules and worths of rests of every stock, and a count of the elementary operations done on them. */
final class Yard {

    final Model model;
    private final SawRules[] rules;
    private final boolean[] free;
    private final PartOrder[] orders;
    private final Board[][] empty;
    private final ZonedRest[] rests;
    private final long[][] startsX;
    private final long[][] startsY;
    private final boolean zoned;
    private final @Nullable FillTable fill;
    private long operations;

    Yard(Model model) {
        this.model = model;
        this.rules = new SawRules[model.stocks];
        this.zoned = model.instance.stocks().stream()
                .anyMatch(stock -> !stock.zones().isEmpty());
        this.fill = zoned ? FillTable.of(this) : null;
        this.free = new boolean[model.stocks];
        this.orders = new PartOrder[model.stocks];
        this.empty = new Board[model.stocks][RootCut.values().length];
        this.rests = new ZonedRest[model.stocks];
        this.startsX = new long[model.stocks][];
        this.startsY = new long[model.stocks][];
        for (int s = 0; s < model.stocks; s++) {
            rules[s] = new SawRules(model, s);
            free[s] = rules[s].allowEverything();
            orders[s] = rules[s].order();
            rests[s] = new ZonedRest(this, s);
            startsX[s] = starts(s, true);
            startsY[s] = starts(s, false);
        }
        for (int s = 0; s < model.stocks; s++) {
            for (RootCut first : RootCut.values()) {
                Cell whole = Cell.rest(model.boardLength(s), model.boardWidth(s));
                empty[s][first.ordinal()] = new Board(this, s, first, whole);
            }
        }
    }

    /** Where pieces may start behind a zone, and where the cut before the piece just misses metal. */
    private long[] starts(int s, boolean alongX) {
        return model.stock(s).zones().stream()
                .flatMapToLong(zone -> {
                    long end = alongX ? zone.x1() : zone.y1();
                    long kerf = alongX ? model.kerfX : model.kerfY;
                    return zone.metal() ? LongStream.of(end, end + kerf) : LongStream.of(end);
                })
                .distinct()
                .sorted()
                .toArray();
    }

    /** Places along the length worth a try besides a rest's own corner, ascending. */
    long[] startsX(int s) {
        return startsX[s];
    }

    /** Places along the width worth a try besides a rest's own corner, ascending. */
    long[] startsY(int s) {
        return startsY[s];
    }

    /** Worth to the search of a clear rest: large rests more than in proportion; 0 where nothing could fit. */
    double clearValue(int s, long length, long width) {
        if (fill == null) {
            return model.restValue(s, length, width);
        }
        double size = fill.area(length, width);
        return size * Math.sqrt(Math.sqrt(size));
    }

    /** Worth to the search of a rest with this corner and these padded extents. */
    double restValue(int s, long x, long y, long length, long width) {
        return rests[s].value(x, y, length, width);
    }

    Board empty(int s) {
        return empty(s, RootCut.ANY);
    }

    Board empty(int s, RootCut first) {
        return empty[s][first.ordinal()];
    }

    /** True if it pays to try both ways to cut boards first: there are zones, and the shop leaves it open. */
    boolean choosesFirstCut() {
        return zoned && model.instance.limits().firstCut() == null;
    }

    /** How a board with this tree is cut first, whatever else of it changes. */
    RootCut firstOf(Cell root) {
        if (!choosesFirstCut() || !root.isSplit()) {
            return RootCut.ANY;
        }
        return root.crosscut ? RootCut.CROSSCUT : RootCut.RIP;
    }

    SawRules rules(int s) {
        return rules[s];
    }

    /** True if the shop's saws can cut this tree. */
    boolean allows(int s, Cell root) {
        if (free[s]) {
            return true;
        }
        count(20L * root.pieces);
        return rules[s].allow(root);
    }

    boolean isFree(int s) {
        return free[s];
    }

    boolean isOrdered(int s) {
        return rules[s].ordered();
    }

    /** True if the parts of a cut may change places. */
    boolean isMovable(int s) {
        return orders[s].movable();
    }

    PartOrder order(int s) {
        return orders[s];
    }

    void count(long more) {
        operations += more;
    }

    /** Operations since the last call. */
    long takeOperations() {
        long taken = operations;
        operations = 0;
        return taken;
    }
}
