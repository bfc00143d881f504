package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.StockType;

/**
 * Good patterns for every board of a rack when pieces have given worths, copies not capped, saw limits left out. One table tells what any
 * clear rest is worth (as in {@link ExactPricing}); a board is cut at a few places in the best way that leaves clear rests
 * ({@link RackCuts}). Which places changes from call to call; those that the last patterns of a board were cut at stay
 * ({@link CutPlaces}), so that patterns get better while worths settle. So a board takes a hundredth of the work of {@link ZonePricing}.
 */
final class RackPricing {

    /** Worth of the largest board by area, in whole units. */
    private static final double FULL = 1e9;
    /** Operations of one table that are still worth it. */
    private static final double MOST_WORK = 3e7;
    /** For {@link #places}. */
    static final int MOST_PLACES = 2;
    /** Places by chance where a board may be cut, along and across, each time {@link #places}. */
    private static final int MORE_X = 5;

    private static final int MORE_Y = 10;
    /** More zones than this on one board are not looked at. */
    private static final int MOST_ZONES = 16;

    private final Yard yard;
    private final Model model;
    private final Dice dice;
    /** By stock, and by whether its patterns are crosscut first: the places of one are no good for the other. */
    private final CutPlaces[][] kept;

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
        this.kept = new CutPlaces[model.stocks][];
        Arrays.setAll(kept, s -> new CutPlaces[] {new CutPlaces(dice), new CutPlaces(dice)});
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

    /** How many places by chance come in: from none at 0 to all at {@link #MOST_PLACES}, at which patterns take longest. */
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
        List<StockType.ZoneRect> zones = zones(stock);
        Boolean first = model.instance.limits().firstCut();
        boolean choice = !zones.isEmpty() || first != null;
        boolean crosscut = first == null ? choice && dice.below(2) == 0 : first;
        CutPlaces.Of lengths = new CutPlaces.Of(true, length, model.kerfX, zones, sizes(true));
        CutPlaces.Of widths = new CutPlaces.Of(false, width, model.kerfY, zones, sizes(false));
        int[] xs = kept(stock, crosscut).draw(lengths, choice ? this.places * MORE_X : 0);
        int[] ys = kept(stock, crosscut).draw(widths, choice ? this.places * MORE_Y : 0);
        RackCuts cuts = new RackCuts(model, table, zones, xs, ys);
        ExactPricing.Priced priced = cuts.priced(unit);
        Cell pattern = priced.pattern();
        CutPlaces places = kept(stock, pattern.isSplit() ? pattern.crosscut : crosscut);
        places.keep(lengths, cuts.cutsX());
        places.keep(widths, cuts.cutsY());
        yard.count(cuts.operations());
        return priced;
    }

    private CutPlaces kept(int stock, boolean crosscut) {
        return kept[stock][crosscut ? 1 : 0];
    }

    /** Sizes of the pieces that are worth anything. */
    private int[] sizes(boolean alongX) {
        return lyings.stream().mapToInt(l -> alongX ? l.along() : l.across()).toArray();
    }

    /** The zones that such a piece must keep clear of, from the start. */
    private List<StockType.ZoneRect> zones(int stock) {
        return model.stock(stock).zones().stream()
                .filter(zone -> lyings.stream().anyMatch(lying -> model.blocks(stock, zone, lying.type())))
                .sorted(Comparator.comparing(StockType.ZoneRect::x0))
                .toList();
    }
}
