package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.Weights;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * Racks of boards that are all different, with bad zones: column generation with {@link RackPricing}, one pattern at most of every board, and
 * dives. With few types and many boards nearly all boards have whole patterns in the programme; these are fixed at once, then the
 * most used one, with new patterns for what is missing; ruin and recreate fills the last boards. What is bought is chosen before a dive
 * ({@link Purchases}, {@link RackAim}).
 *
 * <p>Boards ripped first and boards crosscut first are patterns among others here, so the search is drawn to neither. Patterns stay for
 * later dives, each of which leaves some out by chance.
 */
final class RackSearch {

    private static final int ROOT_ROUNDS = 40;
    /** Rounds before the first board of a later dive, which has the patterns of those before it. */
    private static final int LATER_ROUNDS = 10;

    private static final int LATER = 4;
    /** Rounds after each fixed pattern. */
    private static final int ROUNDS = 8;
    /** Slow rounds in a row, with other places to cut at each time, after which the programme is solved; those without any gain count twice. */
    private static final int MOST_FRUITLESS = 4;
    /** A round that leaves more than this of the programme's cost is slow, and the next one looks at more places to cut. */
    private static final double SLOW = 0.998;
    /** Moves by which a pattern is refitted once boards are fixed and pieces get few. */
    private static final int MOVES = 4;
    /** Patterns kept; beyond that the oldest go. */
    private static final int MOST_KEPT = 4_000;
    /** Share of the patterns that a later dive does without. */
    private static final double LEFT_OUT = 0.1;
    /** Shares of the room between programme and cost that may be taken up without a further round, at the start and the end. */
    private static final double FIRST_SHARE = 0.1;

    private static final double LAST_SHARE = 0.3;
    private static final double LITTLE = 1e-7;
    private static final double WHOLE = 1 - 1e-6;
    /** Patterns that may be put back in a dive, in all and one after the other. */
    private static final int MOST_BANS = 12;

    private static final int BANS_IN_A_ROW = 4;
    /** The last boards, left to ruin and recreate: at least two, with so many more by chance. */
    private static final int LAST_BOARDS = 3;

    private static final int MEMORY = 100;
    /** Work on the last boards, and then on all. */
    private static final long REST_STEPS = 30_000;

    private static final long WHOLE_STEPS = 30_000;
    /** Of what may be bought, mostly one of so many with most area. */
    private static final int LIKELY = 4;
    /** After a gain a dive goes for this part of the cost at once. */
    private static final int MORE = 50;
    /** Dives in a row whose programme costs too much, after which there is no hope. */
    private static final int MOST_HOPELESS = 4;

    private final Yard yard;
    private final Model model;
    private final double[] missing;
    private final Dice dice;
    private final RackPricing pricing;
    private final Refit refit;
    private final Walk walk;
    private final List<PriceList.Column> pool = new ArrayList<>();
    private final Set<String> known = new HashSet<>();
    private List<PriceList.Column> used = List.of();
    private List<int[]> purchases = List.of();
    private RackAim aim;
    private long goal = -1;
    private double root;
    private int hopeless;
    /** How much more is to be saved at once: after a gain a share of the cost, twice as much after the next, nothing after a failure. */
    private long ambition;

    private int dives;

    /** @param missing what a missing piece of each type counts */
    RackSearch(Yard yard, double[] missing, long seed) {
        this.yard = yard;
        this.model = yard.model;
        this.missing = missing;
        this.dice = new Dice(seed);
        this.pricing = new RackPricing(yard, dice);
        this.refit = new Refit(model, dice);
        this.walk = new Walk(yard, dice);
        this.aim = RackAim.within(model, 0);
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

    private void keep(PriceList.Column column) {
        if (known.add(column.stock() + Arrays.toString(column.counts()))) {
            pool.add(column);
        }
    }

    /** Dives once; a draft without anything missing that costs no more than this, or null. */
    @Nullable Draft run(WorkMeter meter, long cost) {
        dives++;
        boolean ambitious = ambition > 0;
        Draft found = within(meter, Math.max(0, cost - ambition));
        ambition = found == null ? 0 : Math.max(2 * ambition, cost / MORE);
        hopeless = ambitious ? 0 : hopeless;
        return found;
    }

    private @Nullable Draft within(WorkMeter meter, long cost) {
        if (cost != goal) {
            goal = cost;
            purchases = Purchases.within(model, cost);
            hopeless = 0;
        }
        if (purchases.isEmpty()) {
            aim = RackAim.within(model, cost);
            return dive(meter);
        }
        int[] purchase = purchases.get(dives == 1 ? 0 : likely(purchases.size()));
        aim = RackAim.from(model, cost, purchase);
        Draft found = dive(meter);
        if (hopeless > 0 && purchases.size() > 1) {
            purchases.remove(purchase);
        }
        return found;
    }

    /** Dives once where boards on hand do not give everything; a draft in which less than this weight is missing, or null. */
    @Nullable Draft runShort(WorkMeter meter, long missingWeight) {
        dives++;
        aim = RackAim.lessMissing(model, missingWeight);
        return dive(meter);
    }

    private int likely(int choices) {
        return Math.min(dice.below(choices), dice.below(LIKELY));
    }

    private @Nullable Draft dive(WorkMeter meter) {
        choosePatterns();
        Draft fixed = new Draft(yard);
        RestProgramme programme = solved(fixed, dives < LATER ? ROOT_ROUNDS : LATER_ROUNDS, meter);
        root = programme.value();
        if (root > aim.room()) {
            hopeless++;
            return null;
        }
        hopeless = 0;
        int boards = 2 + dice.below(LAST_BOARDS);
        double noise = dives == 1 ? 0 : 0.5 * dice.unit();
        List<PriceList.Column> banned = new ArrayList<>();
        int inARow = 0;
        while (!meter.isExhausted() && inARow < BANS_IN_A_ROW && banned.size() < MOST_BANS) {
            Draft next = fixed.copy();
            boolean whole = fixWhole(next, programme);
            int chosen = whole ? -1 : choose(programme, banned, noise);
            if (rest(programme) <= boards || (!whole && chosen < 0)) {
                break;
            }
            if (!whole) {
                fix(next, programme.columns().get(chosen));
            }
            boolean same = next.boards.size() == fixed.boards.size();
            RestProgramme after = same ? programme : solved(next, ROUNDS, meter);
            if (whole || (!same && aim.of(next) + after.value() <= aim.room() * (1 + 1e-9))) {
                fixed = next;
                programme = after;
                inARow = 0;
            } else {
                banned.add(programme.columns().get(chosen));
                inARow++;
            }
        }
        return finish(fixed, meter);
    }

    private void choosePatterns() {
        if (pool.size() > MOST_KEPT) {
            pool.subList(0, pool.size() - MOST_KEPT).clear();
        }
        used = new ArrayList<>();
        for (PriceList.Column column : pool) {
            if (dives == 1 || dice.unit() >= LEFT_OUT) {
                used.add(column);
            }
        }
    }

    /** Boards that the programme still uses. */
    private static double rest(RestProgramme programme) {
        double sum = 0;
        for (int c = 0; c < programme.columns().size(); c++) {
            sum += programme.use(c);
        }
        return sum;
    }

    /** Fixes every board that the programme cuts by one pattern alone; false if there is none. */
    private boolean fixWhole(Draft draft, RestProgramme programme) {
        int before = draft.boards.size();
        for (int c = 0; c < programme.columns().size(); c++) {
            if (programme.use(c) >= WHOLE) {
                fix(draft, programme.columns().get(c));
            }
        }
        return draft.boards.size() > before;
    }

    /** The column to fix next, -1 if there is none. */
    private int choose(RestProgramme programme, List<PriceList.Column> banned, double noise) {
        double most = 1e-9;
        int chosen = -1;
        for (int c = 0; c < programme.columns().size(); c++) {
            double rank = programme.use(c) * (1 - noise * dice.unit());
            if (rank > most && !banned.contains(programme.columns().get(c))) {
                most = rank;
                chosen = c;
            }
        }
        return chosen;
    }

    private void fix(Draft draft, PriceList.Column column) {
        if (aim.allowance().allows(draft, column.stock())) {
            Board board = Pruning.within(board(column), RestProgramme.most(draft));
            if (!board.isEmpty()) {
                draft.add(board);
            }
        }
    }

    /** The board of a column, cut first as its pattern is where that is open; empty where the pattern is none of this shop. */
    private Board board(PriceList.Column column) {
        Cell pattern = column.pattern();
        if (pattern == null || !holds(column.stock(), pattern) || !yard.allows(column.stock(), pattern)) {
            return yard.empty(column.stock());
        }
        RootCut first = RootCut.ANY;
        if (yard.choosesFirstCut() && pattern.isSplit()) {
            first = pattern.crosscut ? RootCut.CROSSCUT : RootCut.RIP;
        }
        return new Board(yard, column.stock(), first, pattern);
    }

    private boolean holds(int stock, Cell cell) {
        if (cell.isPiece() && !model.allows(stock, cell.type(), cell.turned)) {
            return false;
        }
        for (Cell part : cell.parts) {
            if (!holds(stock, part)) {
                return false;
            }
        }
        return true;
    }

    /** The programme for what a draft misses, with new patterns while it takes up too much of the room there is. */
    private RestProgramme solved(Draft draft, int rounds, WorkMeter meter) {
        double share = FIRST_SHARE + (LAST_SHARE - FIRST_SHARE) * draft.boards.size() / model.stocks;
        double enough = root + share * (aim.room() - root);
        RestProgramme programme = aim.programme(draft);
        used.forEach(programme::add);
        programme.solve();
        int places = dives == 1 && draft.boards.isEmpty() ? 0 : RackPricing.MOST_PLACES;
        int fruitless = 0;
        boolean going = true;
        for (int n = 0; n < rounds && going && aim.of(draft) + programme.value() > enough; n++) {
            pricing.places(places);
            boolean gained = price(programme, draft, meter);
            double before = programme.value();
            programme.solve();
            boolean slow = programme.value() > before * SLOW;
            fruitless = !slow || places < RackPricing.MOST_PLACES ? 0 : gained ? fruitless + 1 : fruitless + 2;
            places = slow ? Math.min(places + 1, RackPricing.MOST_PLACES) : places;
            going = meter.spend(Weights.of(programme.takeOperations() + yard.takeOperations()))
                    && fruitless < MOST_FRUITLESS;
        }
        return programme;
    }

    /** Adds patterns by which the programme gets cheaper; false if none was found. */
    private boolean price(RestProgramme programme, Draft draft, WorkMeter meter) {
        double[] worths = programme.worths();
        int[] available = aim.allowance().left(draft);
        int[] most = RestProgramme.most(draft);
        pricing.set(worths);
        boolean gained = false;
        for (int s = 0; s < model.stocks && meter.spend(Weights.of(yard.takeOperations())); s++) {
            if (available[s] > 0) {
                gained |= gain(programme, s, most, worths, draft.boards.isEmpty() ? 0 : MOVES);
            }
        }
        return gained;
    }

    private boolean gain(RestProgramme programme, int stock, int[] most, double[] worths, int moves) {
        ExactPricing.Priced priced = pricing.price(stock);
        if (programme.gain(stock, priced.value()) <= LITTLE * aim.of(stock)) {
            return false;
        }
        Board start = board(new PriceList.Column(stock, new double[0], priced.pattern()));
        Board refitted = refit.improved(Pruning.within(start, most), most, worths, moves);
        PriceList.Column column = PriceList.Column.of(refitted);
        boolean gains = programme.gain(column, worths) > LITTLE * aim.of(stock) && programme.add(column);
        if (gains) {
            keep(column);
            used.add(column);
        }
        return gains;
    }

    /** Fills the last boards by search, at last with all boards free. */
    private @Nullable Draft finish(Draft fixed, WorkMeter meter) {
        Draft rest = walk(fixed.rest(), REST_STEPS, meter);
        Draft all = fixed.copy();
        rest.boards.forEach(all::add);
        if (aim.isMissing(all)) {
            all = walk(all, WHOLE_STEPS, meter);
            learn(all);
        }
        return aim.isMissing(all) ? null : all;
    }

    /** The first draft of a walk that misses nothing, else the one at which it ends. */
    private Draft walk(Draft start, long steps, WorkMeter meter) {
        WorkMeter part = meter.part(steps);
        double[] shortfall = aim.shortfall();
        walk.start(start, aim.allowance(), shortfall == null ? missing : shortfall, MEMORY);
        Draft last = walk.current();
        while (aim.isMissing(last) && part.spend(Weights.of(yard.takeOperations()))) {
            last = walk.move();
        }
        meter.absorb(part);
        return aim.isMissing(last) ? walk.current() : last;
    }
}
