package org.stockcutting.solve.guillotine;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * Takes whole boards of the strip programme's fractions, one after the other, and solves the programme of the rest again with new
 * patterns. A board after which the rest costs too much is put back and left out: that happens mostly with the last few, so other
 * choices there cost little and lead to a plan far more often than another dive does.
 */
final class StripDive {

    private static final int ROOT_ROUNDS = 1_000;
    /** One part in so many of the work at most is for the first programme. */
    private static final int ROOT_SHARE = 4;

    private static final int ROUNDS = 25;
    /** Boards that are put back from the same place, and in all. */
    private static final int MOST_UNDONE = 3;

    private static final int MOST_BANNED = 10;
    /** Shares of the room between the programme and the goal that a dive may take up before it looks closer, at the start and the end. */
    private static final double FIRST_SHARE = 0.3;

    private static final double LAST_SHARE = 0.7;
    /** Values this near below a whole number count as one. */
    private static final double WHOLE = 1 - 1e-6;

    private final Yard yard;
    private final AreaBound area;
    private final StripMaster master;
    private final Filling filling;
    private final Dice dice;
    private int[] root = new int[0];
    private double value;

    /** A choice: the draft that it was made for, the board that was taken, and how many had been put back before. */
    private record Step(Draft before, Board taken, int undone) {}

    StripDive(Yard yard, AreaBound area, StripMaster master, Dice dice) {
        this.yard = yard;
        this.area = area;
        this.master = master;
        this.filling = new Filling(yard);
        this.dice = dice;
    }

    /** Solves the programme of all pieces, from which every dive starts. */
    void start(Draft known, WorkMeter meter) {
        master.set(new Draft(yard), false);
        known.boards.forEach(master::add);
        WorkMeter part = meter.part(meter.left() / ROOT_SHARE);
        master.generate(part, ROOT_ROUNDS, 0);
        meter.absorb(part);
        root = master.basis();
        value = master.objective();
    }

    /**
     * Adds boards to a draft until nothing is missing or it is seen that it will cost too much; then fills in what goes.
     *
     * @param most what it may cost, {@link Long#MAX_VALUE} for anything
     * @param deviate how often the programme's first choice is left
     */
    Draft run(Draft start, long most, double deviate, WorkMeter meter) {
        Draft draft = start.copy();
        Deque<Step> steps = new ArrayDeque<>();
        Set<Board> banned = new HashSet<>();
        int undone = 0;
        master.restore(root);
        while (!Answers.isAllPlaceable(draft)) {
            master.set(draft, false);
            if (!master.generate(meter, ROUNDS, enough(draft, most))) {
                break;
            }
            if (draft.cost() + master.raised(master.objective(), area.costUnit()) > most) {
                Step step = steps.poll();
                while (step != null && step.undone() >= MOST_UNDONE) {
                    step = steps.poll();
                }
                if (step == null || banned.size() >= MOST_BANNED) {
                    break;
                }
                banned.add(step.taken());
                draft = step.before();
                undone = step.undone() + 1;
                continue;
            }
            if (takeWhole(draft)) {
                continue;
            }
            Board board = choose(draft, banned, deviate);
            if (board == null) {
                break;
            }
            steps.push(new Step(draft.copy(), board, undone));
            draft.add(board);
            undone = 0;
        }
        filling.recreate(draft, Allowance.of(yard.model, most), dice);
        filling.moveToCheaper(draft);
        return draft;
    }

    /** What the programme of the rest may cost without a closer look for patterns: a share of the room there is, at the start less of it. */
    private double enough(Draft draft, long most) {
        long goal = most == Long.MAX_VALUE ? master.raised(value, area.costUnit()) : most;
        if (goal < value) {
            return Double.POSITIVE_INFINITY;
        }
        double share = FIRST_SHARE + (LAST_SHARE - FIRST_SHARE) * draft.cost() / Math.max(1, goal);
        return value + share * (goal - value) - draft.cost();
    }

    private boolean takeWhole(Draft draft) {
        boolean taken = false;
        for (int c = 0; c < master.boards().size(); c++) {
            double use = master.value(c);
            if (use > WHOLE) {
                Board board = master.boards().get(c);
                for (int n = times(draft, board, (int) (use + 1 - WHOLE)); n > 0; n--) {
                    draft.add(board);
                    taken = true;
                }
            }
        }
        return taken;
    }

    private int times(Draft draft, Board board, int most) {
        int times = Math.min(most, draft.available(board.stock));
        for (int t = 0; t < board.counts.length; t++) {
            if (board.counts[t] > 0) {
                // For the bound there are boards with more pieces than one may hold.
                boolean fits = board.counts[t] <= yard.model.item(t).perBoard();
                times = fits ? Math.min(times, draft.left[t] / board.counts[t]) : 0;
            }
        }
        return times;
    }

    private @Nullable Board choose(Draft draft, Set<Board> banned, double deviate) {
        Board chosen = null;
        double most = 0;
        for (int c = 0; c < master.boards().size(); c++) {
            double use = master.value(c);
            Board board = master.boards().get(c);
            if (use > 1e-6 && !banned.contains(board) && times(draft, board, 1) > 0) {
                double score = dice.unit() < deviate ? use * dice.unit() : use;
                if (score > most) {
                    most = score;
                    chosen = board;
                }
            }
        }
        return chosen;
    }
}
