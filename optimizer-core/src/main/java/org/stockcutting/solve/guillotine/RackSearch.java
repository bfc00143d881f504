package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * Racks of boards that are all different, with bad zones: column generation with {@link RackPricing}, one pattern at most of every board, and
 * dives. With few types and many boards nearly all boards have whole patterns in the programme; these are fixed at once, then the
 * most used one, with new patterns for what is missing; ruin and recreate fills the last boards. Where a little is missing at the end, other known
 * patterns are chosen ({@link RackChoice}). What is bought is chosen before a dive ({@link Purchases}, {@link RackAim}).
 *
 * <p>Boards ripped first and boards crosscut first are patterns among others here, so the search is drawn to neither. Patterns stay for
 * later dives, each of which leaves some out by chance.
 */
final class RackSearch {

    private static final int ROOT_ROUNDS = 40;
    /** Rounds before the first board of a later dive, which has the patterns of those before it. */
    private static final int LATER_ROUNDS = 10;

    private static final int LATER = 4;
    /** Share of the work that goes to patterns of the whole rack, even where there seems to be room enough. */
    private static final double PRICING = 0.4;
    /** Rounds after each fixed pattern. */
    private static final int ROUNDS = 8;
    /** Patterns kept; beyond that the oldest go. */
    private static final int MOST_KEPT = 4_000;
    /** Share of the patterns that a later dive does without. */
    private static final double LEFT_OUT = 0.1;
    /** The last boards, left to ruin and recreate: at least two, with so many more by chance. */
    private static final int LAST_BOARDS = 3;

    /** Work on the last boards by ruin and recreate. */
    private static final long REST_STEPS = 10_000;
    /** Of what may be bought, mostly one of so many with most area. */
    private static final int LIKELY = 4;
    /** What a dive may lose of the wood: at first, at least and at most; more after a failure, less after a gain. */
    private static final double FIRST_MARGIN = 0.02;

    private static final double LEAST_MARGIN = 0.0025;
    private static final double MOST_MARGIN = 0.05;
    private static final double MORE = 1.5;
    private static final double LESS = 0.7;
    /** Dives in a row whose programme costs too much, after which there is no hope. */
    private static final int MOST_HOPELESS = 4;

    private final Yard yard;
    private final Model model;
    private final Dice dice;
    private final RackDive.Kit kit;
    private final List<PriceList.Column> pool = new ArrayList<>();
    private final Set<String> known = new HashSet<>();
    private List<int[]> purchases = List.of();
    private long goal = -1;
    private double root;
    private int hopeless;
    /** The wood that the last programme within its room needed, 0 while purchases are not settled. */
    private double needed;
    /** The share of the wood that a dive may lose. */
    private double margin = FIRST_MARGIN;

    private int dives;
    /** True if many patterns were known before the first dive. */
    private boolean informed;
    /** Steps of this search so far, and those for patterns of the whole rack. */
    private long spent;

    private long priced;

    /** @param missing what a missing piece of each type counts */
    RackSearch(Yard yard, double[] missing, long seed) {
        this.yard = yard;
        this.model = yard.model;
        this.dice = new Dice(seed);
        this.kit = new RackDive.Kit(yard, missing, dice, this::keep);
    }

    /** True for boards with bad zones, in sizes that tables can hold. */
    static boolean suits(Yard yard) {
        Model model = yard.model;
        boolean zoned = false;
        for (int s = 0; s < model.stocks; s++) {
            zoned |= model.hasZones(s);
        }
        return zoned && !model.paysOffcuts && model.instance.groups().isEmpty() && RackPricing.suits(yard);
    }

    /** How often it has dived. */
    int dives() {
        return dives;
    }

    /** True once even fractions of boards seem to cost more than the goal. */
    boolean isHopeless() {
        return hopeless >= MOST_HOPELESS;
    }

    /** Takes a plan's boards as patterns. */
    void learn(Draft draft) {
        draft.boards.forEach(board -> keep(PriceList.Column.of(board)));
    }

    /** Takes the patterns of another search of the same boards and pieces, and how it cut them. */
    void learn(RackSearch other) {
        other.pool.forEach(this::keep);
        kit.pricing().learn(other.kit.pricing());
        informed = true;
    }

    private void keep(PriceList.Column column) {
        if (known.add(column.stock() + Arrays.toString(column.counts()))) {
            pool.add(column);
        }
    }

    /** Dives once; a draft without anything missing that costs no more than this, or null. */
    @Nullable Draft run(WorkMeter meter, long cost) {
        dives++;
        long before = meter.used();
        long aimed = aimed(cost);
        Draft found = within(meter, aimed);
        spent += meter.used() - before;
        margin = found == null ? Math.min(MORE * margin, MOST_MARGIN) : Math.max(LESS * margin, LEAST_MARGIN);
        hopeless = aimed < cost ? 0 : hopeless;
        return found;
    }

    /** The least cost that buys a little more wood than the last programme needed, so that a few dives get where most would fail. */
    private long aimed(long cost) {
        if (isWood() && root > 0) {
            return Math.min(cost, (long) (root * (1 + margin)));
        }
        long least = 0;
        long most = cost;
        while (needed > 0 && least < most) {
            long middle = (least + most) / 2;
            double room = Purchases.within(model, middle).stream()
                    .mapToDouble(
                            purchase -> RackAim.from(model, middle, purchase).room())
                    .max()
                    .orElse(0);
            if (room >= needed * (1 + margin)) {
                most = middle;
            } else {
                least = middle + 1;
            }
        }
        return most;
    }

    /** True if every board counts, so that there are too many ways to choose some. */
    private boolean isWood() {
        for (int s = 0; s < model.stocks; s++) {
            if (model.stock(s).cost() == 0) {
                return false;
            }
        }
        return purchases.isEmpty();
    }

    private @Nullable Draft within(WorkMeter meter, long cost) {
        if (cost != goal) {
            goal = cost;
            purchases = Purchases.within(model, cost);
            hopeless = 0;
        }
        if (purchases.isEmpty()) {
            needed = 0;
            return dive(RackAim.within(model, cost), meter);
        }
        int[] purchase = purchases.get(dives == 1 ? 0 : likely(purchases.size()));
        RackAim aim = RackAim.from(model, cost, purchase);
        Draft found = dive(aim, meter);
        needed = root <= aim.room() ? root : needed;
        if (hopeless > 0 && purchases.size() > 1) {
            purchases.remove(purchase);
        }
        return found;
    }

    /** Dives once where boards on hand do not give everything; a draft in which less than this weight is missing, or null. */
    @Nullable Draft runShort(WorkMeter meter, long missingWeight) {
        dives++;
        return dive(RackAim.lessMissing(model, missingWeight), meter);
    }

    private int likely(int choices) {
        return Math.min(dice.below(choices), dice.below(LIKELY));
    }

    private @Nullable Draft dive(RackAim aim, WorkMeter meter) {
        RackDive dive = new RackDive(kit, aim, patterns(), dives == 1 && !informed, root);
        long before = meter.used();
        long more = (long) (PRICING * spent) - priced;
        RestProgramme programme = dive.first(dives < LATER ? ROOT_ROUNDS : LATER_ROUNDS, more, meter);
        priced += meter.used() - before;
        root = dive.root();
        if (root > aim.room()) {
            hopeless++;
            return null;
        }
        hopeless = 0;
        int boards = 2 + dice.below(LAST_BOARDS);
        double noise = dives == 1 ? 0 : 0.5 * dice.unit();
        Draft fixed = dive.fixed(new Draft(yard), programme, boards, noise, ROUNDS, meter);
        Draft all = dive.filled(fixed, REST_STEPS, meter);
        if (aim.isMissing(all)) {
            all = RackChoice.improved(kit, dive, all, aim, meter);
            learn(all);
        }
        if (aim.isMissing(all)) {
            all = new RackMending(kit, dive.patterns()).mended(all, aim, meter);
            learn(all);
        }
        return aim.isMissing(all) ? null : all;
    }

    private List<PriceList.Column> patterns() {
        if (pool.size() > MOST_KEPT) {
            pool.subList(0, pool.size() - MOST_KEPT).clear();
        }
        List<PriceList.Column> patterns = new ArrayList<>();
        for (PriceList.Column column : pool) {
            if (dives == 1 || dice.unit() >= LEFT_OUT) {
                patterns.add(column);
            }
        }
        return patterns;
    }
}
