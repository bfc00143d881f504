package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.stockcutting.solve.instance.Weights;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * One dive on a rack: the programme over known patterns, with new ones while it takes up too much of the room there is, and board after
 * board fixed as it cuts them. The last boards are left to ruin and recreate.
 */
final class RackDive {

    /** Slow rounds in a row, with other places to cut at each time, after which the programme is solved; those without any gain count twice. */
    private static final int MOST_FRUITLESS = 4;
    /** The same while steps are set aside for patterns. */
    private static final int PATIENT = 60;
    /** A round that leaves more than this of the programme's cost is slow, and the next one looks at more places to cut. */
    private static final double SLOW = 0.998;
    /** Moves by which a pattern is refitted once boards are fixed and pieces get few. */
    private static final int MOVES = 4;

    private static final double WARMTH = 0.03;
    /** Shares of the room between programme and cost that may be taken up without a further round, at the start and the end. */
    private static final double FIRST_SHARE = 0.1;

    private static final double LAST_SHARE = 0.3;
    private static final double LITTLE = 1e-7;
    private static final double WHOLE = 1 - 1e-6;
    /** Patterns that may be put back in a dive, in all and one after the other. */
    private static final int MOST_BANS = 12;

    private static final int BANS_IN_A_ROW = 4;
    private static final int MEMORY = 100;

    /**
     * What all dives on a rack share.
     *
     * @param missing what a missing piece of each type counts
     * @param found hears of every new pattern
     */
    record Kit(
            Yard yard,
            double[] missing,
            Dice dice,
            RackPricing pricing,
            Refit refit,
            Walk walk,
            Consumer<PriceList.Column> found) {

        Kit(Yard yard, double[] missing, Dice dice, Consumer<PriceList.Column> found) {
            this(
                    yard,
                    missing,
                    dice,
                    new RackPricing(yard, dice),
                    new Refit(yard.model, dice, WARMTH),
                    new Walk(yard, dice),
                    found);
        }
    }

    private final Kit kit;
    private final Yard yard;
    private final Model model;
    private final RackAim aim;
    private final List<PriceList.Column> used;
    private final boolean early;
    private double root;

    /**
     * @param patterns those it may use
     * @param early true if hardly any are known yet, so that quick ones are worth having first
     * @param root what the programme of the dive before came to, 0 if there is none like it
     */
    RackDive(Kit kit, RackAim aim, List<PriceList.Column> patterns, boolean early, double root) {
        this.kit = kit;
        this.yard = kit.yard;
        this.model = kit.yard.model;
        this.aim = aim;
        this.used = new ArrayList<>(patterns);
        this.early = early;
        this.root = root;
    }

    /**
     * The programme of the whole rack.
     *
     * @param rounds most rounds that look for patterns once there is enough room
     * @param more steps for patterns in any case, as long as some are found
     */
    RestProgramme first(int rounds, long more, WorkMeter meter) {
        RestProgramme programme = solved(new Draft(yard), rounds, more, meter);
        root = programme.value();
        return programme;
    }

    /** What the programme of the whole rack came to. */
    double root() {
        return root;
    }

    /** The patterns it began with and those it found. */
    List<PriceList.Column> patterns() {
        return used;
    }

    /**
     * Fixes board after board as the programme cuts them.
     *
     * @param start boards that are fixed already
     * @param solved the programme for what they miss
     * @param boards so many of the last boards stay open
     * @param noise share by which chance may change which board is next
     * @param rounds most rounds after each fixed pattern
     */
    Draft fixed(Draft start, RestProgramme solved, int boards, double noise, int rounds, WorkMeter meter) {
        Draft fixed = start;
        RestProgramme programme = solved;
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
            RestProgramme after = same ? programme : solved(next, rounds, meter);
            if (whole || (!same && aim.of(next) + after.value() <= aim.room() * (1 + 1e-9))) {
                fixed = next;
                programme = after;
                inARow = 0;
            } else {
                banned.add(programme.columns().get(chosen));
                inARow++;
            }
        }
        return fixed;
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
            double rank = programme.use(c) * (1 - noise * kit.dice.unit());
            if (rank > most && !banned.contains(programme.columns().get(c))) {
                most = rank;
                chosen = c;
            }
        }
        return chosen;
    }

    void fix(Draft draft, PriceList.Column column) {
        if (aim.allowance().allows(draft, column.stock())) {
            Board board = Pruning.within(board(column), RestProgramme.most(draft));
            if (!board.isEmpty()) {
                draft.add(board);
            }
        }
    }

    /** The board of a column, cut first as its pattern is where that is open; empty where the pattern is none of this shop. */
    Board board(PriceList.Column column) {
        Cell pattern = column.pattern();
        if (pattern == null || !holds(column.stock(), pattern) || !yard.allows(column.stock(), pattern)) {
            return yard.empty(column.stock());
        }
        return new Board(yard, column.stock(), yard.firstOf(pattern), pattern);
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
    RestProgramme solved(Draft draft, int rounds, WorkMeter meter) {
        return solved(draft, rounds, 0, meter);
    }

    private RestProgramme solved(Draft draft, int rounds, long more, WorkMeter meter) {
        long thorough = meter.used() + more;
        double share = FIRST_SHARE + (LAST_SHARE - FIRST_SHARE) * draft.boards.size() / model.stocks;
        double enough = root + share * (aim.room() - root);
        RestProgramme programme = aim.programme(draft);
        used.forEach(programme::add);
        programme.solve();
        boolean going = meter.spend(Weights.of(programme.takeOperations()));
        int places = early && draft.boards.isEmpty() ? 0 : RackPricing.MOST_PLACES;
        int fruitless = 0;
        for (int n = 0;
                going && (meter.used() < thorough || (n < rounds && aim.of(draft) + programme.value() > enough));
                n++) {
            kit.pricing.places(places);
            boolean gained = price(programme, draft, meter);
            double before = programme.value();
            programme.solve();
            boolean slow = programme.value() > before * SLOW;
            fruitless = !slow || places < RackPricing.MOST_PLACES ? 0 : gained ? fruitless + 1 : fruitless + 2;
            places = slow ? Math.min(places + 1, RackPricing.MOST_PLACES) : places;
            going = meter.spend(Weights.of(programme.takeOperations() + yard.takeOperations()))
                    && fruitless < (meter.used() < thorough ? PATIENT : MOST_FRUITLESS);
        }
        return programme;
    }

    /** Adds patterns by which the programme gets cheaper; false if none was found. */
    private boolean price(RestProgramme programme, Draft draft, WorkMeter meter) {
        double[] worths = programme.worths();
        int[] available = aim.allowance().left(draft);
        int[] most = RestProgramme.most(draft);
        kit.pricing.set(worths);
        boolean gained = false;
        for (int s = 0; s < model.stocks && meter.spend(Weights.of(yard.takeOperations())); s++) {
            if (available[s] > 0) {
                gained |= gain(programme, s, most, worths, draft.boards.isEmpty() ? 0 : MOVES);
            }
        }
        return gained;
    }

    private boolean gain(RestProgramme programme, int stock, int[] most, double[] worths, int moves) {
        ExactPricing.Priced priced = kit.pricing.price(stock);
        if (programme.gain(stock, priced.value()) <= LITTLE * aim.of(stock)) {
            return false;
        }
        Board start = board(new PriceList.Column(stock, new double[0], priced.pattern()));
        Board refitted = kit.refit.improved(Pruning.within(start, most), most, worths, moves);
        PriceList.Column column = PriceList.Column.of(refitted);
        boolean gains = programme.gain(column, worths) > LITTLE * aim.of(stock) && programme.add(column);
        if (gains) {
            kit.found.accept(column);
            used.add(column);
        }
        return gains;
    }

    /** Fills what is open by search for so many steps at most. */
    Draft filled(Draft fixed, long steps, WorkMeter meter) {
        Draft rest = walk(fixed.rest(), steps, meter);
        Draft all = fixed.copy();
        rest.boards.forEach(all::add);
        return all;
    }

    /** The first draft of a walk that misses nothing, else the one at which it ends. */
    private Draft walk(Draft start, long steps, WorkMeter meter) {
        WorkMeter part = meter.part(steps);
        double[] shortfall = aim.shortfall();
        kit.walk.start(start, aim.allowance(), shortfall == null ? kit.missing : shortfall, MEMORY);
        Draft last = kit.walk.current();
        while (aim.isMissing(last) && part.spend(Weights.of(yard.takeOperations()))) {
            last = kit.walk.move();
        }
        meter.absorb(part);
        return aim.isMissing(last) ? kit.walk.current() : last;
    }
}
