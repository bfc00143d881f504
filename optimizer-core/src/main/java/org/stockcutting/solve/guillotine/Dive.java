package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.Weights;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * Looks for a plan within a cost that the bound does not rule out: boards are fixed one pattern after the other, most used first, and the
 * linear programme is solved again for what is missing, with new patterns. As fixed boards are full ones, all the room to spare gathers
 * in the last few; these are filled by ruin and recreate. A fixed pattern after which the programme costs too much is put back and not
 * fixed again in this dive. Of the few patterns that are used most, the one is fixed after which the programme costs least (strong diving:
 * Sadykov, Vanderbeck, Pessoa, Tahiri, Uchoa, INFORMS Journal on Computing 31, 2019): where hardly more than nothing is to spare, the most
 * used one alone eats that up half way.
 *
 * <p>The bound's patterns may hold more pieces of a type than are wanted, and then say little about plans. So patterns are made here
 * that respect what is missing: patterns in use are refitted under the duals; where that gives nothing, exact pricing does, its
 * pattern cut down to what is missing and refitted, and again with every piece too many taking two in a hundred off the type's worth.
 * Patterns stay in the pool, so the next dive starts from a better programme. Where hardly two pieces are alike {@link UnlikeDive} finds
 * more.
 */
final class Dive implements Descent {

    /** Pricing rounds after each fixed pattern; four times as many before the first one. */
    private static final int ROUNDS = 8;
    /** Exact pricings in a round, with less and less worth for types of which there are too many. */
    private static final int TRIES = 8;

    private static final double LESS = 0.02;
    /** Moves that refit a pattern in use, and one of exact pricing. */
    private static final int FEW_MOVES = 50;

    private static final int MOVES = 500;
    /** Shares of the room between bound and cost that the programme may take up without a further round, at the start and the end. */
    private static final double FIRST_SHARE = 0.3;

    private static final double LAST_SHARE = 0.7;
    /** Patterns that may be put back in a dive, in all and one after the other. */
    private static final int MOST_BANS = 10;

    private static final int BANS_IN_A_ROW = 3;
    /** Patterns of which the best is fixed; where the boards to buy are given, many different short dives do more. */
    private static final int CANDIDATES = 4;
    /** The last boards, left to search, at most; where the boards to buy are few and given, one or two. */
    private static final int LAST_BOARDS = 4;

    private static final int LAST_FEW_BOARDS = 2;
    /** There a dive that leaves more is given up, since another one does more than a short search for so many. */
    private static final int MOST_FEW_LEFT = 3;

    /** Fewer stages are left to {@link StripSearch}. */
    private static final int LEAST_STAGES = 4;

    /** Operations that one pattern of the pool takes to become a column. */
    private static final long POOLED = 100;

    private static final long REST_STEPS = 400_000;
    private static final long WHOLE_STEPS = 300_000;
    /** Where the boards to buy are given: many short dives. */
    private static final long SHORT_STEPS = 100_000;

    private static final int SHORT_ROUNDS = 4;

    private final Yard yard;
    private final Model model;
    private final ColumnBound bound;
    private final Dice dice;
    private final LastBoards last;
    private final Refit refit;
    private final List<PriceList.Column> pool = new ArrayList<>();
    private int learnt;
    /** What the programme of all pieces came to, by what may be bought. */
    private final Map<Allowance, Double> roots = new HashMap<>();

    private double root;
    private Allowance allowed;
    private int dives;

    /**
     * @param bound where patterns come from; it may go on between dives
     * @param missing what a missing piece of each type counts
     */
    Dive(Yard yard, ColumnBound bound, double[] missing, long seed) {
        this.yard = yard;
        this.model = yard.model;
        this.bound = bound;
        this.dice = new Dice(seed);
        this.last = new LastBoards(yard, missing, dice);
        this.refit = new Refit(model, dice);
        this.allowed = Allowance.of(model, Long.MAX_VALUE);
    }

    /** True if most patterns of exact pricing are patterns of this shop. */
    static boolean suits(Model model) {
        for (int s = 0; s < model.stocks; s++) {
            if (model.hasZones(s)) {
                return false;
            }
        }
        return model.instance.limits().stages() >= LEAST_STAGES
                && !model.paysOffcuts
                && model.instance.groups().isEmpty();
    }

    @Override
    public int dives() {
        return dives;
    }

    @Override
    public @Nullable Draft run(WorkMeter meter, Allowance most) {
        dives++;
        root = roots.getOrDefault(most, Double.NEGATIVE_INFINITY);
        allowed = most;
        long cost = most.cost();
        learn();
        Draft fixed = new Draft(yard);
        int rounds = most.isPurchase() ? SHORT_ROUNDS : ROUNDS;
        int left = 1 + dice.below(most.isPurchase() ? LAST_FEW_BOARDS : LAST_BOARDS);
        double noise = dives == 1 ? 0 : 0.5 * dice.unit();
        List<PriceList.Column> banned = new ArrayList<>();
        RestProgramme programme = solved(fixed, 4 * rounds, meter);
        root = Math.max(root, programme.value());
        roots.put(most, root);
        int inARow = 0;
        while (!meter.isExhausted() && inARow < BANS_IN_A_ROW && banned.size() < MOST_BANS) {
            List<PriceList.Column> candidates = candidates(programme, banned, noise, left);
            if (candidates.isEmpty()) {
                break;
            }
            PriceList.Column chosen =
                    candidates.size() == 1 ? candidates.get(0) : least(candidates, fixed, programme, meter);
            Draft next = with(fixed, chosen, programme);
            boolean isMore = next.boards.size() > fixed.boards.size();
            RestProgramme after = isMore ? solved(next, rounds, meter) : programme;
            if (!isMore || next.cost() + after.value() > cost + 1e-6) {
                banned.add(chosen);
                inARow++;
            } else {
                fixed = next;
                programme = after;
                inARow = 0;
            }
        }
        boolean isShort = most.isPurchase();
        if (isShort && boards(programme) > MOST_FEW_LEFT) {
            return null;
        }
        return last.fill(
                fixed, allowed, isShort ? SHORT_STEPS : REST_STEPS, isShort ? SHORT_STEPS : WHOLE_STEPS, meter);
    }

    /** How many boards a programme takes. */
    private static double boards(RestProgramme programme) {
        double sum = 0;
        for (int c = 0; c < programme.columns().size(); c++) {
            sum += programme.use(c);
        }
        return sum;
    }

    /** Takes the patterns that the bound has found since the last dive. */
    private void learn() {
        List<PriceList.Column> columns = bound.columns();
        for (; learnt < columns.size(); learnt++) {
            PriceList.Column column = columns.get(learnt);
            Cell pattern = column.pattern();
            if (pattern != null && yard.allows(column.stock(), pattern)) {
                pool.add(column);
            }
        }
        root = Math.max(root, bound.value());
    }

    /** The columns that may be fixed next, most used first; none if so few boards are left that search does better. */
    private List<PriceList.Column> candidates(
            RestProgramme programme, List<PriceList.Column> banned, double noise, int left) {
        double[] rank = new double[programme.columns().size()];
        List<Integer> used = new ArrayList<>();
        for (int c = 0; c < rank.length; c++) {
            rank[c] = programme.use(c) * (1 - noise * dice.unit());
            if (rank[c] > 1e-9 && !banned.contains(programme.columns().get(c))) {
                used.add(c);
            }
        }
        if (boards(programme) <= left) {
            return List.of();
        }
        return used.stream()
                .sorted(Comparator.comparingDouble(c -> -rank[c]))
                .limit(allowed.isPurchase() ? 1 : CANDIDATES)
                .map(programme.columns()::get)
                .toList();
    }

    /** The column after which the programme costs least, without new patterns. */
    private PriceList.Column least(
            List<PriceList.Column> candidates, Draft fixed, RestProgramme programme, WorkMeter meter) {
        PriceList.Column best = candidates.get(0);
        double least = Double.POSITIVE_INFINITY;
        for (PriceList.Column candidate : candidates) {
            Draft next = with(fixed, candidate, programme);
            if (next.boards.size() > fixed.boards.size()) {
                double value = next.cost() + solved(next, 0, meter).value();
                if (value < least - 1e-7) {
                    least = value;
                    best = candidate;
                }
            }
        }
        return best;
    }

    /** As many boards more as the programme cuts by this column, at least one where it may be. */
    private Draft with(Draft fixed, PriceList.Column column, RestProgramme programme) {
        Draft next = fixed.copy();
        int copies = (int) (programme.use(programme.columns().indexOf(column)) + 1e-6);
        fix(next, column, Math.max(1, copies));
        return next;
    }

    private void fix(Draft draft, PriceList.Column column, int copies) {
        Cell pattern = column.pattern();
        for (int n = 0; n < copies && pattern != null; n++) {
            if (!allowed.allows(draft, column.stock())) {
                return;
            }
            Board board = Pruning.within(new Board(yard, column.stock(), pattern), RestProgramme.most(draft));
            if (board.isEmpty()) {
                return;
            }
            draft.add(board);
        }
    }

    /** The programme for what a draft misses, with new patterns while it takes up too much of the room there is. */
    private RestProgramme solved(Draft draft, int rounds, WorkMeter meter) {
        long cost = allowed.cost();
        double share = FIRST_SHARE + (LAST_SHARE - FIRST_SHARE) * draft.cost() / Math.max(1, cost);
        double enough = root + share * (cost - root);
        RestProgramme programme = new RestProgramme(model, draft, allowed);
        pool.forEach(programme::add);
        programme.solve();
        meter.spend(Weights.of(programme.takeOperations() + POOLED * pool.size()));
        int[] most = RestProgramme.most(draft);
        boolean going = true;
        for (int n = 0; n < rounds && going && draft.cost() + programme.value() > enough; n++) {
            going = price(programme, most, meter);
            programme.solve();
            going &= meter.spend(Weights.of(programme.takeOperations() + yard.takeOperations()));
        }
        return programme;
    }

    /** Adds patterns by which the programme gets cheaper; false if none was found. */
    private boolean price(RestProgramme programme, int[] most, WorkMeter meter) {
        double[] worths = programme.worths();
        boolean gained = false;
        int known = programme.columns().size();
        for (int c = 0; c < known; c++) {
            if (programme.use(c) > 1e-6) {
                gained |= gain(programme, programme.columns().get(c), most, worths, FEW_MOVES);
            }
        }
        double[] tried = worths.clone();
        boolean over = true;
        for (int n = 0; n < TRIES && over && !gained && meter.spend(Weights.of(yard.takeOperations())); n++) {
            over = false;
            for (PriceList.Column column : bound.prices().price(tried, meter).columns()) {
                gained |= gain(programme, column, most, worths, MOVES);
                over |= lower(tried, column, most);
            }
        }
        return gained;
    }

    /** Refits a pattern under these worths, and adds it if the programme gets cheaper. */
    private boolean gain(RestProgramme programme, PriceList.Column column, int[] most, double[] worths, int moves) {
        Cell pattern = column.pattern();
        Board start = pattern != null && yard.allows(column.stock(), pattern)
                ? Pruning.within(new Board(yard, column.stock(), pattern), most)
                : yard.empty(column.stock());
        PriceList.Column better = PriceList.Column.of(refit.improved(start, most, worths, moves));
        boolean gains = programme.gain(better, worths)
                > 1e-6 * model.stock(column.stock()).cost();
        if (gains && programme.add(better)) {
            pool.add(better);
            return true;
        }
        return false;
    }

    /** Makes types of which the pattern has too many worth less; false if there is none. */
    private static boolean lower(double[] worths, PriceList.Column column, int[] most) {
        boolean lowered = false;
        for (int t = 0; t < most.length; t++) {
            double over = column.counts()[t] - most[t];
            if (over > 0) {
                worths[t] *= Math.max(0.5, 1 - LESS * over);
                lowered = true;
            }
        }
        return lowered;
    }
}
