package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * Looks for a plan within a cost that the bound does not rule out: boards are fixed one pattern after the other, most used first, and the
 * linear programme is solved again for what is missing, with new patterns. As fixed boards are full ones, all the room to spare gathers
 * in the last few; these are filled by ruin and recreate. A fixed pattern after which the programme costs too much is put back and not
 * fixed again in this dive. Of the few patterns that are used most, the one is fixed after which the programme costs least (strong diving:
 * Sadykov, Vanderbeck, Pessoa, Tahiri, Uchoa, INFORMS Journal on Computing 31, 2019): where hardly more than nothing is to spare, the most
 * used one alone eats that up half way.
 *
 * <p>Where hardly two pieces are alike {@link UnlikeDive} finds more.
 */
final class Dive implements Descent {

    /** Pricing rounds after each fixed pattern; four times as many before the first one. */
    private static final int ROUNDS = 8;
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

    private static final long REST_STEPS = 400_000;
    private static final long WHOLE_STEPS = 300_000;
    /** Where the boards to buy are given: many short dives. */
    private static final long SHORT_STEPS = 100_000;

    private static final int SHORT_ROUNDS = 4;

    private final Yard yard;
    private final ColumnBound bound;
    private final Dice dice;
    private final LastBoards last;
    private final RestPricing pricing;
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
        this.bound = bound;
        this.dice = new Dice(seed);
        this.last = new LastBoards(yard, missing, dice);
        this.pricing = new RestPricing(yard, bound, dice);
        this.allowed = Allowance.of(yard.model, Long.MAX_VALUE);
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
        allowed = most;
        long cost = most.cost();
        pricing.learn();
        root = Math.max(roots.getOrDefault(most, Double.NEGATIVE_INFINITY), bound.value());
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
        return pricing.programme(draft, allowed, enough - draft.cost(), rounds, meter);
    }
}
