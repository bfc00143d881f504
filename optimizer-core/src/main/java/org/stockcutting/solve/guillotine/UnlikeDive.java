package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * Looks for a plan within a cost where hardly two pieces are alike: boards are fixed one after the other, most used first, and the
 * programme over patterns that respect what is missing is solved again with new patterns ({@link UnlikeColumns}). A board after which it
 * costs too much is not tried again; after a few such boards the one fixed before them is put back too, a few times in a dive. The last
 * board is left to search, or all that are left where the dive gets no further.
 */
final class UnlikeDive implements Descent {

    /** Boards that fail before the one fixed before them is put back, and how often that is done in a dive. */
    private static final int MOST_FAILURES = 2;

    private static final int MOST_RETURNS = 5;
    /** Pieces of average size that fill the largest board. */
    private static final double MOST_PER_BOARD = 12;
    /** Most by which chance may lower the use of a pattern where one is chosen; not in the first dive. */
    private static final double NOISE = 0.5;

    private static final long REST_STEPS = 60_000;
    private static final long WHOLE_STEPS = 60_000;
    private static final double TOLERANCE = 1e-6;

    private final Yard yard;
    private final BoardPool boards;
    private final Dice dice;
    private final UnlikeColumns columns;
    private final LastBoards last;
    private final Set<Allowance> hopeless = new HashSet<>();
    private int dives;

    /** A state of a dive: what is fixed, the programme for the rest, and how many boards have failed here. */
    private static final class Node {

        final @Nullable Node before;
        final Draft fixed;
        final RestProgramme programme;
        /** Patterns that were not to be tried when this was made. */
        final int banned;

        int failures;

        Node(@Nullable Node before, Draft fixed, RestProgramme programme, int banned) {
            this.before = before;
            this.fixed = fixed;
            this.programme = programme;
            this.banned = banned;
        }

        boolean isWithin(Allowance allowed) {
            return fixed.cost() + programme.value() <= allowed.cost() + TOLERANCE;
        }
    }

    /**
     * Begins with no patterns.
     *
     * @param boards those of good drafts of the search
     * @param missing what a missing piece of each type counts
     */
    UnlikeDive(Yard yard, BoardPool boards, double[] missing, long seed) {
        this.yard = yard;
        this.boards = boards;
        this.dice = new Dice(seed);
        this.columns = new UnlikeColumns(yard);
        this.last = new LastBoards(yard, missing, dice);
    }

    /** True if there are few enough pieces, in all and on a board: of many small ones search finds better boards than pricing does. */
    static boolean suits(Yard yard) {
        Model model = yard.model;
        double pieces = 0;
        double area = 0;
        double largest = 0;
        for (int t = 0; t < model.types; t++) {
            pieces += model.item(t).demand();
            area += model.area(t) * model.item(t).demand();
        }
        for (int s = 0; s < model.stocks; s++) {
            largest = Math.max(largest, model.boardArea(s));
        }
        return LabelPricing.suits(yard) && pieces * largest <= MOST_PER_BOARD * area;
    }

    @Override
    public int dives() {
        return dives;
    }

    @Override
    public boolean isHopeless(Allowance allowed) {
        return hopeless.contains(allowed);
    }

    @Override
    public @Nullable Draft run(WorkMeter meter, Allowance allowed) {
        double noise = dives == 0 ? 0 : NOISE * dice.unit();
        dives++;
        if (isHopeless(allowed)) {
            return null;
        }
        columns.learn(boards.take(), allowed, meter);
        Draft none = new Draft(yard);
        Node root = new Node(null, none, columns.solvedWell(none, allowed, meter), 0);
        if (!root.isWithin(allowed)) {
            if (!meter.isExhausted()) {
                hopeless.add(allowed);
            }
            return null;
        }
        columns.forget(root.programme, allowed);
        return last.fill(deepest(root, allowed, noise, meter).fixed, allowed, REST_STEPS, WHOLE_STEPS, meter);
    }

    /** The node with most boards fixed that the dive comes to. */
    private Node deepest(Node root, Allowance allowed, double noise, WorkMeter meter) {
        Node node = root;
        Node deepest = root;
        List<PriceList.Column> banned = new ArrayList<>();
        int returns = 0;
        while (!meter.isExhausted() && !isNearlyDone(node.programme)) {
            PriceList.Column chosen = node.failures == MOST_FAILURES ? null : choose(node.programme, banned, noise);
            if (chosen != null) {
                banned.add(chosen);
                Node next = with(node, chosen, allowed, banned.size(), meter);
                if (next == null) {
                    node.failures++;
                } else {
                    node = next;
                    deepest = next.fixed.boards.size() > deepest.fixed.boards.size() ? next : deepest;
                }
            } else if (node.before == null || returns == MOST_RETURNS) {
                return deepest;
            } else {
                banned.subList(node.banned, banned.size()).clear();
                node = node.before;
                node.failures++;
                returns++;
            }
        }
        return deepest;
    }

    private static boolean isNearlyDone(RestProgramme programme) {
        double sum = 0;
        for (int c = 0; c < programme.columns().size(); c++) {
            sum += programme.use(c);
        }
        return sum <= 1 + TOLERANCE;
    }

    /** The pattern to fix next: one that is used much; null if all that are used are banned. */
    private PriceList.@Nullable Column choose(RestProgramme programme, List<PriceList.Column> banned, double noise) {
        double most = TOLERANCE;
        PriceList.Column chosen = null;
        for (int c = 0; c < programme.columns().size(); c++) {
            double rank = programme.use(c) * (1 - noise * dice.unit());
            if (rank > most && !banned.contains(programme.columns().get(c))) {
                most = rank;
                chosen = programme.columns().get(c);
            }
        }
        return chosen;
    }

    /** The node with a board of this pattern, without what is not missing; null if it can't be had or the rest costs too much then. */
    private @Nullable Node with(Node node, PriceList.Column column, Allowance allowed, int banned, WorkMeter meter) {
        Cell pattern = column.pattern();
        Draft fixed = node.fixed.copy();
        if (pattern == null || !allowed.allows(fixed, column.stock())) {
            return null;
        }
        Board board = Pruning.within(new Board(yard, column.stock(), pattern), RestProgramme.most(fixed));
        if (board.isEmpty()) {
            return null;
        }
        fixed.add(board);
        Node next = new Node(node, fixed, columns.solved(fixed, allowed, meter), banned);
        return next.isWithin(allowed) ? next : null;
    }
}
