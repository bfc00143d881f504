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
 * ({@link RackCuts}). Which places changes from call to call ({@link CutPlaces}); ways to cut that were the best before
 * are tried again first ({@link KnownCuts}), so that patterns get better while worths settle. So a board takes a hundredth of the work of {@link ZonePricing}.
 */
final class RackPricing {

    /** Worth of the largest board by area, in whole units. */
    private static final double FULL = 1e9;
    /** Operations of one table that are still worth it. */
    private static final double MOST_WORK = 3e7;
    /** For {@link #places}. */
    static final int MOST_PLACES = 2;
    /** Places by chance where a board may be cut, along and across, each time {@link #places}. */
    private static final int MORE_X = 3;

    private static final int MORE_Y = 6;
    /** Ways to cut a board that are drawn for one pattern: so many take about as long as the table. */
    private static final int DRAWS = 2;

    /** One in so many draws starts from any known way to cut, not from the best. */
    private static final int ANY = 4;
    /** More zones than this on one board are not looked at. */
    private static final int MOST_ZONES = 16;

    private final Yard yard;
    private final Model model;
    private final Dice dice;
    private final KnownCuts[] known;
    private final @Nullable Boolean first;
    private final Points across;
    private final Points along;
    private List<ExactPricing.Lying> lyings = List.of();
    /** Sizes of the pieces that are worth anything. */
    private int[] sizesAlong = {};

    private int[] sizesAcross = {};
    private double unit;
    private int places = MOST_PLACES;
    private double[] last = {};
    private @Nullable PricingTable table;

    RackPricing(Yard yard, Dice dice) {
        this.yard = yard;
        this.model = yard.model;
        this.dice = dice;
        this.first = model.instance.limits().firstCut();
        this.known = new KnownCuts[model.stocks];
        Arrays.setAll(known, s -> new KnownCuts(model.boardLength(s), model.boardWidth(s)));
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

    /** Takes over the ways to cut that another pricing of the same boards knows. */
    void learn(RackPricing other) {
        for (int s = 0; s < known.length; s++) {
            known[s].learn(other.known[s]);
        }
    }

    /** How many places by chance come in: from none at 0 to all at {@link #MOST_PLACES}, at which patterns take longest. */
    void places(int more) {
        places = more;
    }

    /** Sets what one piece of each type is worth; those at or below 0 are never cut. */
    void set(double[] worths) {
        if (Arrays.equals(worths, last)) {
            return;
        }
        last = worths.clone();
        double dense = 0;
        for (int t = 0; t < model.types; t++) {
            dense = Math.max(dense, worths[t] / model.area(t));
        }
        unit = dense * across.size() * along.size() / FULL;
        lyings = unit == 0 ? List.of() : lyings(worths, unit);
        sizesAlong = lyings.stream().mapToInt(ExactPricing.Lying::along).toArray();
        sizesAcross = lyings.stream().mapToInt(ExactPricing.Lying::across).toArray();
        table = null;
        if (unit > 0) {
            table = new PricingTable(across, along, lyings, Reach.FREE);
            yard.count(table.fill());
        }
    }

    /** A pattern of this board and its worth; the pattern may hold pieces that the board or the saws forbid. */
    ExactPricing.Priced price(int stock) {
        int length = (int) model.boardLength(stock);
        int width = (int) model.boardWidth(stock);
        if (table == null) {
            return new ExactPricing.Priced(0, Cell.rest(length, width));
        }
        List<StockType.ZoneRect> zones = zones(stock);
        ClearRests rests = new ClearRests(model, table, zones);
        CutTree best = zones.isEmpty() && first == null ? CutTree.NO_CUT : best(stock, rests, zones);
        yard.count(rests.operations());
        if (!isAllowed(best, zones)) {
            return new ExactPricing.Priced(0, Cell.rest(length, width));
        }
        return new ExactPricing.Priced(known[stock].value(best, rests) * unit, rests.read(best, 0, length, 0, width));
    }

    private boolean isAllowed(CutTree tree, List<StockType.ZoneRect> zones) {
        CutTree.Cut cut = tree.first();
        return first == null || (cut == null ? first && !zones.isEmpty() : cut.crosscut() == first);
    }

    private CutTree best(int stock, ClearRests rests, List<StockType.ZoneRect> zones) {
        KnownCuts cuts = known[stock];
        CutTree best = cuts.best(rests);
        for (int n = places > 0 ? 0 : DRAWS - 1; n < DRAWS; n++) {
            CutTree start = best == null ? CutTree.NO_CUT : dice.below(ANY) == 0 ? cuts.any(dice) : best;
            CutTree drawn = drawn(stock, start, rests, zones);
            if (isAllowed(drawn, zones)) {
                if (best == null || cuts.value(drawn, rests) > cuts.value(best, rests)) {
                    best = drawn;
                }
                cuts.add(drawn);
            }
        }
        return best == null ? CutTree.NO_CUT : best;
    }

    private CutTree drawn(int stock, CutTree start, ClearRests rests, List<StockType.ZoneRect> zones) {
        CutPlaces.Of along = new CutPlaces.Of(true, model.boardLength(stock), model.kerfX, zones, sizesAlong);
        CutPlaces.Of across = new CutPlaces.Of(false, model.boardWidth(stock), model.kerfY, zones, sizesAcross);
        int[] xs = CutPlaces.draw(along, start.places(true), places * MORE_X, dice);
        int[] ys = CutPlaces.draw(across, start.places(false), places * MORE_Y, dice);
        RackCuts cuts = new RackCuts(model, rests, zones, xs, ys);
        CutTree best = cuts.best(first);
        yard.count(cuts.operations());
        return best;
    }

    /** The zones that such a piece must keep clear of, from the start. */
    private List<StockType.ZoneRect> zones(int stock) {
        return model.stock(stock).zones().stream()
                .filter(zone -> lyings.stream().anyMatch(lying -> model.blocks(stock, zone, lying.type())))
                .sorted(Comparator.comparing(StockType.ZoneRect::x0))
                .toList();
    }
}
