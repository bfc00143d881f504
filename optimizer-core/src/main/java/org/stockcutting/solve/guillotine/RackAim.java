package org.stockcutting.solve.guillotine;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * What a dive on a rack goes for: which boards it may cut, what each of them counts, and how much they may count together. There are three:
 * a plan within a cost; a plan from certain boards, where money says nothing any more, so that the programme goes for the least wood and
 * knows how much there is to spare; and, from boards on hand that do not give everything, less that is missing.
 */
final class RackAim {

    /** What all the wood counts, as a share of what all pieces count, where pieces are left out. */
    private static final double WOOD = 1e-3;

    /** The same while a draft is mended. */
    private static final double LITTLE_WOOD = 1e-5;

    private static final long NO_LIMIT = Long.MAX_VALUE - 1;

    private final Model model;
    private final Allowance allowance;
    private final double[] counts;
    private final double @Nullable [] shortfall;
    private final double room;
    private final long left;

    private RackAim(
            Model model, Allowance allowance, double[] counts, double @Nullable [] shortfall, double room, long left) {
        this.model = model;
        this.allowance = allowance;
        this.counts = counts;
        this.shortfall = shortfall;
        this.room = room;
        this.left = left;
    }

    /** Everything, within a cost. */
    static RackAim within(Model model, long cost) {
        double[] counts = new double[model.stocks];
        Arrays.setAll(counts, s -> model.stock(s).cost());
        return new RackAim(model, Allowance.of(model, cost), counts, null, cost, 0);
    }

    /**
     * Everything, from certain boards.
     *
     * @param cost what these come to at most
     * @param purchase boards of each stock, {@link Integer#MAX_VALUE} for any number
     */
    static RackAim from(Model model, long cost, int[] purchase) {
        double[] counts = new double[model.stocks];
        double room = 0;
        for (int s = 0; s < counts.length; s++) {
            counts[s] = model.boardArea(s);
            room += purchase[s] * counts[s];
        }
        return new RackAim(model, new Allowance(cost, purchase), counts, null, room, 0);
    }

    /** True if everything is on hand, so that nothing but what is placed matters. */
    static boolean isAllOnHand(Model model) {
        for (int s = 0; s < model.stocks; s++) {
            if (model.stock(s).cost() > 0 || !model.isLimited(s)) {
                return false;
            }
        }
        return true;
    }

    /** Less missing than this weight, from boards on hand; the wood counts a little, so that the programme leaves over what it can. */
    static RackAim lessMissing(Model model, long weight) {
        double area = 0;
        for (int s = 0; s < model.stocks; s++) {
            area += model.boardArea(s) * model.stock(s).copies();
        }
        double all = 0;
        double[] shortfall = new double[model.types];
        for (int t = 0; t < model.types; t++) {
            shortfall[t] = model.hasPlace(t) ? model.item(t).weight() : 0;
            all += shortfall[t] * model.item(t).demand();
        }
        double each = WOOD * all / area;
        double[] counts = new double[model.stocks];
        Arrays.setAll(counts, s -> each * model.boardArea(s));
        return new RackAim(
                model, Allowance.of(model, NO_LIMIT), counts, shortfall, weight - 1 + each * area, weight - 1);
    }

    /** Less missing than in a draft, from the same boards as here; the wood counts next to nothing. */
    RackAim mending(Draft draft) {
        double[] each = new double[model.types];
        Arrays.setAll(each, t -> !model.hasPlace(t) ? 0 : shortfall == null ? model.area(t) : shortfall[t]);
        double all = 0;
        for (int t = 0; t < each.length; t++) {
            all += each[t] * model.item(t).demand();
        }
        double area = 0;
        for (int s = 0; s < model.stocks; s++) {
            area += model.boardArea(s) * (model.isLimited(s) ? model.stock(s).copies() : 1);
        }
        double unit = LITTLE_WOOD * all / area;
        double[] wood = new double[model.stocks];
        Arrays.setAll(wood, s -> unit * model.boardArea(s));
        double now =
                draft.boards.stream().mapToDouble(board -> wood[board.stock]).sum() + missing(draft, each);
        return new RackAim(model, allowance, wood, each, now, left);
    }

    /** What a draft misses, where that counts. */
    double missing(Draft draft) {
        return shortfall == null ? 0 : missing(draft, shortfall);
    }

    private static double missing(Draft draft, double[] each) {
        double sum = 0;
        for (int t = 0; t < each.length; t++) {
            sum += draft.left[t] * each[t];
        }
        return sum;
    }

    /** Which boards it may cut. */
    Allowance allowance() {
        return allowance;
    }

    /** The most that boards, and what is left out, may count. */
    double room() {
        return room;
    }

    /** What a board counts. */
    double of(int stock) {
        return counts[stock];
    }

    /** What the boards of a draft count. */
    double of(Draft draft) {
        return draft.boards.stream().mapToDouble(board -> counts[board.stock]).sum();
    }

    RestProgramme programme(Draft draft) {
        return new RestProgramme(model, draft, allowance, counts, shortfall);
    }

    /** True if too much is missing. */
    boolean isMissing(Draft draft) {
        return shortfall == null ? !Answers.isAllPlaceable(draft) : draft.missingWeight() > left;
    }

    /** What may be missing, where that counts. */
    long tolerated() {
        return left;
    }

    /** What a missing piece counts in a search, where it does not count its area. */
    double @Nullable [] shortfall() {
        return shortfall;
    }
}
