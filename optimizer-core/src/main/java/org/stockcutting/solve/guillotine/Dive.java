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
 * in the last few; these are filled by ruin and recreate, and what is still missing then is mended. A fixed pattern after which the programme costs too much is put back and not
 * fixed again in this dive. What the programme of all pieces costs less than the plan may is all that a dive can lose, so two fifths of the
 * work of failing dives go to patterns that make it cheaper. Of the few patterns that are used most, the one is fixed after which the programme costs least (strong diving:
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
    /** A dive that leaves so many boards more is given up, since another one does more than a search for all of them. */
    private static final int SPARE = 1;
    /** Share of a board that may be missing where mending is tried. */
    private static final double NEAR = 0.1;

    /** Fewer stages are left to {@link StripSearch}. */
    private static final int LEAST_STAGES = 4;

    private static final long REST_STEPS = 400_000;
    private static final long WHOLE_STEPS = 100_000;
    private static final long MENDING_STEPS = 400_000;
    /** Where the boards to buy are given: many short dives. */
    private static final long SHORT_STEPS = 100_000;

    private static final int SHORT_ROUNDS = 4;
    /** Share of the work that goes to patterns of all pieces, even where there seems to be room enough. */
    private static final double PRICING = 0.4;
    /** What a dive takes for these where there is no room yet. */
    private static final long NO_ROOM_STEPS = 1_000_000;

    private final Yard yard;
    private final ColumnBound bound;
    private final Dice dice;
    private final LastBoards last;
    private final Mending mending;
    private final double[] missing;
    private final RestPricing pricing;
    /** What the programme of all pieces came to, by what may be bought. */
    private final Map<Allowance, Double> roots = new HashMap<>();

    private double root;
    private Allowance allowed;
    private int dives;
    /** Steps of all dives so far, and those for patterns of all pieces. */
    private long spent;

    private long priced;

    /**
     * @param bound where patterns come from; it may go on between dives
     * @param missing what a missing piece of each type counts
     */
    Dive(Yard yard, ColumnBound bound, double[] missing, long seed) {
        this.yard = yard;
        this.bound = bound;
        this.missing = missing.clone();
        this.dice = new Dice(seed);
        this.last = new LastBoards(yard, missing, dice);
        this.mending = new Mending(yard, missing, dice);
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

    /** What all pieces cost in fractions of boards, by the patterns of the last dive. */
    double root() {
        return root;
    }

    @Override
    public @Nullable Draft run(WorkMeter meter, Allowance most) {
        dives++;
        allowed = most;
        long before = meter.used();
        Draft found = dive(meter);
        spent += meter.used() - before;
        return found;
    }

    private @Nullable Draft dive(WorkMeter meter) {
        long cost = allowed.cost();
        int rounds = allowed.isPurchase() ? SHORT_ROUNDS : ROUNDS;
        int left = 1 + dice.below(lastBoards());
        double noise = dives == 1 ? 0 : 0.5 * dice.unit();
        List<PriceList.Column> banned = new ArrayList<>();
        Step now = whole(4 * rounds, meter);
        int inARow = 0;
        while (!meter.isExhausted() && inARow < BANS_IN_A_ROW && banned.size() < MOST_BANS) {
            List<PriceList.Column> candidates = candidates(now.rest(), banned, noise, left);
            if (candidates.isEmpty()) {
                break;
            }
            Step next = best(candidates, now, meter);
            if (next.boards() > now.boards()) {
                refine(next, rounds, meter);
            }
            if (next.boards() == now.boards() || next.cost() > cost + 1e-6) {
                banned.add(next.column());
                inARow++;
            } else {
                now = next;
                inARow = 0;
            }
        }
        return finished(now, meter);
    }

    private int lastBoards() {
        return allowed.isPurchase() ? LAST_FEW_BOARDS : LAST_BOARDS;
    }

    /** The programme of all pieces. Where dives go for anything within a cost, a share of their work makes it cheaper: that is their room. */
    private Step whole(int rounds, WorkMeter meter) {
        long before = meter.used();
        pricing.learn();
        root = Math.max(roots.getOrDefault(allowed, Double.NEGATIVE_INFINITY), bound.value());
        Step step = step(null, new Draft(yard), meter);
        refine(step, rounds, meter);
        if (allowed.isPurchase()) {
            root = Math.max(root, step.cost());
        } else {
            long share = Math.max((long) (PRICING * spent) - priced, step.cost() > allowed.cost() ? NO_ROOM_STEPS : 0);
            WorkMeter part = meter.part(share);
            pricing.exhaust(step.rest(), step.fixed(), part);
            meter.absorb(part);
            priced += meter.used() - before;
            root = Math.max(bound.value(), step.cost());
        }
        roots.put(allowed, root);
        return step;
    }

    /** A draft with what is fixed that misses nothing, or null. */
    private @Nullable Draft finished(Step step, WorkMeter meter) {
        if (boards(step.rest()) > lastBoards() + SPARE) {
            return null;
        }
        if (allowed.isPurchase()) {
            return last.fill(step.fixed(), allowed, SHORT_STEPS, SHORT_STEPS, meter);
        }
        Draft all = last.filled(step.fixed(), allowed, REST_STEPS, WHOLE_STEPS, meter);
        if (missing(all) <= NEAR * yard.model.boardArea(0)) {
            all = mending.mended(all, allowed.cost(), pricing.patterns(), MENDING_STEPS, meter);
        }
        return LastBoards.isMissing(all) ? null : all;
    }

    private double missing(Draft draft) {
        double sum = 0;
        for (int t = 0; t < missing.length; t++) {
            sum += draft.left[t] * missing[t];
        }
        return sum;
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

    /**
     * What is fixed, and the programme for the rest.
     *
     * @param column fixed last, null at the start
     */
    private record Step(PriceList.@Nullable Column column, Draft fixed, RestProgramme rest) {
        double cost() {
            return fixed.cost() + rest.value();
        }

        int boards() {
            return fixed.boards.size();
        }
    }

    private Step step(PriceList.@Nullable Column column, Draft fixed, WorkMeter meter) {
        return new Step(column, fixed, pricing.programme(fixed, allowed, meter));
    }

    /** Adds patterns while what is missing takes up too much of the room there is. */
    private void refine(Step step, int rounds, WorkMeter meter) {
        long cost = allowed.cost();
        double share = FIRST_SHARE + (LAST_SHARE - FIRST_SHARE) * step.fixed().cost() / Math.max(1, cost);
        double enough = root + share * (cost - root);
        RestPricing.Manner manner = allowed.isPurchase()
                ? RestPricing.Manner.SHORT
                : dives % 2 == 0 ? RestPricing.Manner.BRISK : RestPricing.Manner.THOROUGH;
        pricing.refine(step.rest(), step.fixed(), enough - step.fixed().cost(), manner, rounds, meter);
    }

    /** The step after which what is missing costs least, without new patterns. */
    private Step best(List<PriceList.Column> candidates, Step now, WorkMeter meter) {
        Step best = new Step(candidates.get(0), now.fixed(), now.rest());
        for (PriceList.Column candidate : candidates) {
            Draft more = with(now, candidate);
            if (more.boards.size() > now.boards()) {
                Step step = step(candidate, more, meter);
                best = best.boards() == now.boards() || step.cost() < best.cost() - 1e-7 ? step : best;
            }
        }
        return best;
    }

    /** As many boards more as the programme cuts by this column, at least one where it may be. */
    private Draft with(Step now, PriceList.Column column) {
        Draft draft = now.fixed().copy();
        Cell pattern = column.pattern();
        int copies = Math.max(1, (int) (now.rest().use(now.rest().columns().indexOf(column)) + 1e-6));
        for (int n = 0; n < copies && pattern != null && allowed.allows(draft, column.stock()); n++) {
            Board board = Pruning.within(new Board(yard, column.stock(), pattern), RestProgramme.most(draft));
            if (board.isEmpty()) {
                return draft;
            }
            draft.add(board);
        }
        return draft;
    }
}
