package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.StockType;

/**
 * Good patterns for every board of a rack when pieces have given worths, copies not capped, saw limits left out. One table tells what any
 * clear rest is worth (as in {@link ExactPricing}); a board is cut along the sides of its bad zones, and at a few places more that change
 * from call to call, in the best way that leaves clear rests. So a board takes a hundredth of the work of {@link ZonePricing}, and gives
 * nearly as much.
 */
final class RackPricing {

    /** Worth of the largest board by area, in whole units. */
    private static final double FULL = 1e9;
    /** Operations of one table that are still worth it. */
    private static final double MOST_WORK = 3e7;
    /** For {@link #places}. */
    static final int MOST_PLACES = 2;
    /** Places besides the sides of zones where a board may be cut, along and across, each time {@link #places}. */
    private static final int MORE_X = 3;

    private static final int MORE_Y = 1;
    /** A place is so many pieces away from a side at most. */
    private static final int MOST_AWAY = 3;
    /** More zones than this on one board are not looked at. */
    private static final int MOST_ZONES = 16;

    private final Yard yard;
    private final Model model;
    private final Dice dice;
    private final Points across;
    private final Points along;
    private List<ExactPricing.Lying> lyings = List.of();
    private double unit;
    private int places = MOST_PLACES;
    private @Nullable PricingTable table;

    RackPricing(Yard yard, Dice dice) {
        this.yard = yard;
        this.model = yard.model;
        this.dice = dice;
        double[] one = new double[model.types];
        Arrays.fill(one, 1);
        List<ExactPricing.Lying> all = lyings(one, 1);
        this.across = points(all, false);
        this.along = points(all, true);
    }

    /** True if tables stay small, and no piece takes a board as it comes. */
    static boolean suits(Yard yard) {
        Model model = yard.model;
        for (int s = 0; s < model.stocks; s++) {
            if (Math.max(model.boardLength(s), model.boardWidth(s)) >= Points.LONGEST / 2
                    || model.stock(s).zones().size() > MOST_ZONES) {
                return false;
            }
        }
        if (model.instance.items().stream().anyMatch(item -> item.width() == 0)) {
            return false;
        }
        RackPricing pricing = new RackPricing(yard, new Dice(0));
        double lines = pricing.across.count();
        return lines * pricing.along.count() * (1 + lines / 8) <= MOST_WORK;
    }

    private List<ExactPricing.Lying> lyings(double[] worth, double least) {
        List<ExactPricing.Lying> found = new ArrayList<>();
        for (int t = 0; t < model.types; t++) {
            for (boolean turned : new boolean[] {false, true}) {
                int stock = worth[t] > 0 ? holder(t, turned) : -1;
                if (stock >= 0) {
                    int value = (int) Math.ceil(worth[t] / least);
                    int length = (int) model.length(stock, t, turned);
                    int width = (int) model.width(stock, t, turned);
                    found.add(new ExactPricing.Lying(t, turned, width, length, value));
                }
            }
        }
        return found;
    }

    private int holder(int t, boolean turned) {
        for (int s = 0; s < model.stocks; s++) {
            if (model.allows(s, t, turned)) {
                return s;
            }
        }
        return -1;
    }

    /** Places up to the largest board, and behind it as far as the least piece: so all boards lie in the part where places are exact. */
    private Points points(List<ExactPricing.Lying> all, boolean alongX) {
        int[] sizes = all.stream()
                .mapToInt(l -> alongX ? l.along() : l.across())
                .distinct()
                .toArray();
        long most = 0;
        for (int s = 0; s < model.stocks; s++) {
            most = Math.max(most, alongX ? model.boardLength(s) : model.boardWidth(s));
        }
        return new Points((int) most + Arrays.stream(sizes).min().orElse(1), sizes);
    }

    /** How many places besides the sides of zones come in: from none at 0 to all at {@link #MOST_PLACES}, at which patterns take longest. */
    void places(int more) {
        places = more;
    }

    /** Sets what one piece of each type is worth; those at or below 0 are never cut. */
    void set(double[] worths) {
        double dense = 0;
        for (int t = 0; t < model.types; t++) {
            dense = Math.max(dense, worths[t] / model.area(t));
        }
        unit = dense * across.size() * along.size() / FULL;
        lyings = unit == 0 ? List.of() : lyings(worths, unit);
        table = null;
        if (unit > 0) {
            table = new PricingTable(across, along, lyings, Reach.FREE);
            yard.count(table.fill());
        }
    }

    /** A pattern of this board and its worth; the pattern may hold pieces that the board or the saws forbid. */
    ExactPricing.Priced price(int stock) {
        long length = model.boardLength(stock);
        long width = model.boardWidth(stock);
        if (table == null) {
            return new ExactPricing.Priced(0, Cell.rest(length, width));
        }
        return new Cuts(stock, table).priced();
    }

    /** The places where one board may be cut and the worth of what lies between them. */
    private final class Cuts {
        private final int stock;
        private final PricingTable clear;
        private final PatternReader reader;
        private final List<StockType.ZoneRect> zones;
        private final int[] xs;
        private final int[] ys;
        private final int[][] zonesAlong;
        private final int[][] zonesAcross;
        private final int[] known;

        Cuts(int stock, PricingTable clear) {
            this.stock = stock;
            this.clear = clear;
            this.reader = new PatternReader(clear, true, PartOrder.FREE);
            this.zones =
                    model.stock(stock).zones().stream().filter(this::matters).toList();
            this.xs = places(true);
            this.ys = places(false);
            this.zonesAlong = zonesBetween(xs, true);
            this.zonesAcross = zonesBetween(ys, false);
            this.known = new int[xs.length * xs.length * ys.length * ys.length];
            Arrays.fill(known, -1);
        }

        private boolean matters(StockType.ZoneRect zone) {
            for (ExactPricing.Lying lying : lyings) {
                if (model.blocks(stock, zone, lying.type())) {
                    return true;
                }
            }
            return false;
        }

        private int[] places(boolean alongX) {
            long kerf = alongX ? model.kerfX : model.kerfY;
            int end = (int) (alongX ? model.boardLength(stock) : model.boardWidth(stock));
            int more = RackPricing.this.places;
            TreeSet<Integer> places = new TreeSet<>();
            for (StockType.ZoneRect zone : zones) {
                places.add((int) ((alongX ? zone.x0() : zone.y0()) + kerf));
                places.add((int) (alongX ? zone.x1() : zone.y1()));
            }
            places.add(0);
            places.add(end);
            List<Integer> sides = new ArrayList<>(places);
            boolean choice = !zones.isEmpty() || model.instance.limits().firstCut() != null;
            for (int n = choice ? more * (alongX ? MORE_X : MORE_Y) : 0; n > 0; n--) {
                int place = sides.get(dice.below(sides.size()));
                int sign = dice.below(2) == 0 ? 1 : -1;
                for (int away = 1 + dice.below(MOST_AWAY); away > 0; away--) {
                    ExactPricing.Lying lying = lyings.get(dice.below(lyings.size()));
                    place += sign * (alongX ? lying.along() : lying.across());
                }
                places.add(place);
            }
            return places.subSet(0, true, end, true).stream()
                    .mapToInt(Integer::intValue)
                    .toArray();
        }

        /** Which zones lie between two places, as bits. */
        private int[][] zonesBetween(int[] places, boolean alongX) {
            int[][] between = new int[places.length][places.length];
            for (int z = 0; z < zones.size(); z++) {
                StockType.ZoneRect zone = zones.get(z);
                long from = alongX ? zone.x0() : zone.y0();
                long to = alongX ? zone.x1() : zone.y1();
                long kerf = alongX ? model.kerfX : model.kerfY;
                for (int i = 0; i < places.length; i++) {
                    for (int j = i + 1; j < places.length; j++) {
                        between[i][j] |= places[i] < to && places[j] - kerf > from ? 1 << z : 0;
                    }
                }
            }
            return between;
        }

        ExactPricing.Priced priced() {
            int j = xs.length - 1;
            int q = ys.length - 1;
            Boolean first = model.instance.limits().firstCut();
            int most = first == null ? value(0, j, 0, q) : best(0, j, 0, q, first, !first);
            Cell pattern = first == null ? read(0, j, 0, q) : cut(0, j, 0, q, most, first, !first);
            yard.count(2L * known.length);
            return new ExactPricing.Priced(most * unit, pattern);
        }

        private int value(int i, int j, int p, int q) {
            if ((zonesAlong[i][j] & zonesAcross[p][q]) == 0) {
                return clear.at(across.before(ys[q] - ys[p]), along.before(xs[j] - xs[i]));
            }
            int at = ((i * xs.length + j) * ys.length + p) * ys.length + q;
            int value = known[at];
            if (value < 0) {
                value = best(i, j, p, q, true, true);
                known[at] = value;
            }
            return value;
        }

        private int best(int i, int j, int p, int q, boolean crosscut, boolean rip) {
            int most = 0;
            for (int m = i + 1; m < j && crosscut; m++) {
                most = Math.max(most, value(i, m, p, q) + value(m, j, p, q));
            }
            for (int m = p + 1; m < q && rip; m++) {
                most = Math.max(most, value(i, j, p, m) + value(i, j, m, q));
            }
            yard.count(2L * (j - i + q - p));
            return most;
        }

        private Cell read(int i, int j, int p, int q) {
            if ((zonesAlong[i][j] & zonesAcross[p][q]) == 0) {
                return reader.read(ys[q] - ys[p], xs[j] - xs[i]);
            }
            return cut(i, j, p, q, value(i, j, p, q), true, true);
        }

        private Cell cut(int i, int j, int p, int q, int most, boolean crosscut, boolean rip) {
            long length = xs[j] - xs[i];
            long width = ys[q] - ys[p];
            for (int m = i + 1; m < j && most > 0 && crosscut; m++) {
                if (value(i, m, p, q) + value(m, j, p, q) == most) {
                    return join(true, length, width, read(i, m, p, q), read(m, j, p, q));
                }
            }
            for (int m = p + 1; m < q && most > 0 && rip; m++) {
                if (value(i, j, p, m) + value(i, j, m, q) == most) {
                    return join(false, length, width, read(i, j, p, m), read(i, j, m, q));
                }
            }
            return Cell.rest(length, width);
        }

        private Cell join(boolean isCrosscut, long length, long width, Cell one, Cell other) {
            return Cell.join(isCrosscut, length, width, List.of(one, other), PartOrder.FIXED);
        }
    }
}
