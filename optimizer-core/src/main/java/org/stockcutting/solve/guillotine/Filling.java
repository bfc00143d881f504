package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/** Puts what is missing on boards, best fit first: whole drafts from nothing, and the recreate half of the search. */
final class Filling {

    /** Lets the filling choose the stock that places most for its money. */
    static final int BEST_TRIAL = -1;
    /** Where trials on all stocks would cost too much, this many are tried. */
    private static final int MOST_TRIALS = 40;

    private static final double BLINK = 0.02;

    private final Yard yard;
    private final Model model;

    Filling(Yard yard) {
        this.yard = yard;
        this.model = yard.model;
    }

    /** Orders in which starts place units. */
    enum Order {
        AREA,
        LONG_SIDE,
        WIDTH,
        LENGTH,
        WEIGHT_PER_AREA
    }

    /** All units, largest first in the sense of the order. */
    List<Model.Unit> sorted(Order order) {
        return sorted(model.units, unit -> size(unit, order));
    }

    private List<Model.Unit> sorted(List<Model.Unit> units, ToDoubleFunction<Model.Unit> size) {
        double[] keys = new double[units.size()];
        Integer[] index = new Integer[keys.length];
        for (int u = 0; u < keys.length; u++) {
            keys[u] = size.applyAsDouble(units.get(u));
            index[u] = u;
        }
        Arrays.sort(index, Comparator.comparingDouble(u -> -keys[u]));
        List<Model.Unit> sorted = new ArrayList<>(keys.length);
        for (Integer u : index) {
            sorted.add(units.get(u));
        }
        yard.count(30L * keys.length);
        return sorted;
    }

    private double size(Model.Unit unit, Order order) {
        double sum = 0;
        double most = 0;
        double weight = 0;
        for (int i = 0; i < unit.types().length; i++) {
            int t = unit.types()[i];
            double area = model.area(t) * unit.counts()[i];
            double width = model.item(t).width();
            double length = model.item(t).length();
            sum += area;
            weight += (double) model.item(t).weight() * unit.counts()[i];
            switch (order) {
                case LONG_SIDE -> most = Math.max(most, Math.max(length, width));
                case WIDTH -> most = Math.max(most, width);
                case LENGTH -> most = Math.max(most, length);
                default -> most = 0;
            }
        }
        // Area breaks ties, as a share that never outweighs one unit of length.
        double small = sum / (sum + 1e12);
        return switch (order) {
            case AREA -> sum;
            case WEIGHT_PER_AREA -> weight / sum;
            default -> most + small;
        };
    }

    /** A draft on boards that may be cut first either way. */
    Draft build(Order order, int stock) {
        return build(order, stock, RootCut.ANY);
    }

    /**
     * A draft made board by board; a filled board is repeated as long as what is missing allows, so that thousands of equal pieces cost
     * no more than a few.
     *
     * @param stock the stock to take where it helps, or {@link #BEST_TRIAL}
     */
    Draft build(Order order, int stock, RootCut first) {
        List<Model.Unit> units = sorted(order);
        Draft draft = new Draft(yard);
        Board board = nextBoard(draft, units, stock, first);
        while (board != null) {
            addRepeated(draft, board);
            board = nextBoard(draft, units, stock, first);
        }
        return draft;
    }

    private @Nullable Board nextBoard(Draft draft, List<Model.Unit> units, int stock, RootCut first) {
        if (stock != BEST_TRIAL && draft.available(stock) > 0) {
            Board board = filled(yard.empty(stock, first), draft, units);
            if (!board.isEmpty()) {
                return board;
            }
        }
        Board best = null;
        for (int s : candidates(draft)) {
            Board board = filled(yard.empty(s, first), draft, units);
            if (!board.isEmpty() && (best == null || price(board) < price(best))) {
                best = board;
            }
            if (best != null && best.cost <= 0 && !model.paysOffcuts) {
                break;
            }
        }
        return best;
    }

    private static double price(Board board) {
        return board.cost / board.area;
    }

    /** The stocks that may still be taken, cheapest by area first, the most that may be tried. */
    private List<Integer> candidates(Draft draft) {
        List<Integer> stocks = new ArrayList<>();
        for (int s = 0; s < model.stocks; s++) {
            if (draft.available(s) > 0 && holdsSomething(draft, s)) {
                stocks.add(s);
            }
        }
        stocks.sort(Comparator.comparingDouble(s -> model.stock(s).cost() / model.boardArea(s)));
        return stocks.size() > MOST_TRIALS ? stocks.subList(0, MOST_TRIALS) : stocks;
    }

    private boolean holdsSomething(Draft draft, int s) {
        for (int t = 0; t < model.types; t++) {
            if (draft.left[t] > 0 && yard.empty(s).bestMove(t).isPossible()) {
                return true;
            }
        }
        return false;
    }

    /** The board with as many units in this order as fit, at most what the draft misses. */
    Board filled(Board start, Draft draft, List<Model.Unit> units) {
        Board board = start;
        for (Model.Unit unit : units) {
            for (int n = draft.missing(unit); n > 0; n--) {
                Board more = board.with(unit);
                if (more == null) {
                    break;
                }
                board = more;
            }
        }
        return board;
    }

    private void addRepeated(Draft draft, Board board) {
        int times = draft.available(board.stock);
        for (int t = 0; t < model.types; t++) {
            if (board.counts[t] > 0) {
                times = Math.min(times, draft.left[t] / board.counts[t]);
            }
        }
        for (int n = 0; n < Math.max(1, times); n++) {
            draft.add(board);
        }
    }

    /** Moves the content of each board to a cheaper one where it fits in any of the orders. */
    void moveToCheaper(Draft draft) {
        for (int b = 0; b < draft.boards.size(); b++) {
            Board board = draft.boards.get(b);
            for (int s = 0; s < model.stocks; s++) {
                if (model.stock(s).cost() < draft.boards.get(b).cost && draft.available(s) > 0) {
                    Board other = refilled(board, s);
                    if (other != null && other.cost < draft.boards.get(b).cost) {
                        draft.replace(b, other);
                    }
                }
            }
        }
    }

    private @Nullable Board refilled(Board board, int s) {
        if (board.area > model.boardArea(s) && !hasSpanning(board)) {
            return null;
        }
        Draft content = new Draft(yard);
        System.arraycopy(board.counts, 0, content.left, 0, model.types);
        for (Order order : List.of(Order.AREA, Order.LONG_SIDE, Order.WIDTH)) {
            Board other = filled(yard.empty(s), content, sorted(order));
            if (Arrays.equals(other.counts, board.counts)) {
                return other;
            }
        }
        return null;
    }

    private boolean hasSpanning(Board board) {
        for (int t = 0; t < model.types; t++) {
            if (board.counts[t] > 0 && model.item(t).width() == 0) {
                return true;
            }
        }
        return false;
    }

    /** Puts missing units on the draft's boards and on new ones, in a random order, as far as it is allowed. */
    void recreate(Draft draft, Allowance cap, Dice dice) {
        Order order = Order.values()[dice.below(4)];
        double noise = dice.below(3) == 0 ? 1.0 : 0.2;
        List<Model.Unit> missingUnits =
                model.units.stream().filter(u -> draft.missing(u) > 0).toList();
        yard.count(4L * model.units.size());
        List<Model.Unit> units =
                sorted(missingUnits, unit -> size(unit, order) * (1 - noise + 2 * noise * dice.unit()));
        for (Model.Unit unit : units) {
            int missing = draft.missing(unit);
            while (missing > 0 && place(draft, unit, cap, dice)) {
                missing--;
            }
        }
    }

    private boolean place(Draft draft, Model.Unit unit, Allowance cap, Dice dice) {
        if (unit.isSingle() ? placeSingle(draft, unit.types()[0], dice) : placeSet(draft, unit)) {
            return true;
        }
        int stock = choose(draft, unit, cap, dice);
        if (stock < 0) {
            return false;
        }
        Board board = yard.empty(stock, firstCut(draft, dice)).with(unit);
        if (board == null) {
            return false;
        }
        draft.add(board);
        return true;
    }

    /** Where the search chooses, a board is mostly cut first as one of its fellows is, now and then either way. */
    private RootCut firstCut(Draft draft, Dice dice) {
        if (!yard.choosesFirstCut()) {
            return RootCut.ANY;
        }
        boolean likeOthers = dice.below(8) > 0 && !draft.boards.isEmpty();
        RootCut fellow = likeOthers ? draft.boards.get(dice.below(draft.boards.size())).first : RootCut.ANY;
        if (fellow != RootCut.ANY) {
            return fellow;
        }
        return dice.below(2) == 0 ? RootCut.RIP : RootCut.CROSSCUT;
    }

    private boolean placeSingle(Draft draft, int type, Dice dice) {
        // Mostly waiting for memory: each board is somewhere else.
        yard.count(15L * draft.boards.size());
        int at = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int b = 0; b < draft.boards.size(); b++) {
            Board.Move move = draft.boards.get(b).bestMove(type);
            if (move.loss() < least && dice.unit() >= BLINK) {
                least = move.loss();
                at = b;
            }
        }
        if (at < 0) {
            return false;
        }
        Board board = draft.boards.get(at);
        draft.replace(at, board.with(board.bestMove(type)));
        return true;
    }

    private static boolean placeSet(Draft draft, Model.Unit unit) {
        for (int b = 0; b < draft.boards.size(); b++) {
            Board board = draft.boards.get(b).with(unit);
            if (board != null) {
                draft.replace(b, board);
                return true;
            }
        }
        return false;
    }

    /** A stock for a new board: mostly the cheapest for the area that is still missing, sometimes any; -1 if none may be taken. */
    private int choose(Draft draft, Model.Unit unit, Allowance cap, Dice dice) {
        double missing = 0;
        for (int t = 0; t < model.types; t++) {
            missing += draft.left[t] * model.area(t);
        }
        boolean any = dice.below(4) == 0;
        int chosen = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int s = 0; s < model.stocks; s++) {
            if (cap.allows(draft, s) && canHold(s, unit)) {
                double price = any ? dice.unit() : model.stock(s).cost() / Math.min(missing, model.boardArea(s));
                if (price < least) {
                    least = price;
                    chosen = s;
                }
            }
        }
        yard.count(10L * model.stocks);
        return chosen;
    }

    private boolean canHold(int s, Model.Unit unit) {
        if (unit.isSingle()) {
            return yard.empty(s).bestMove(unit.types()[0]).isPossible();
        }
        return yard.empty(s).with(unit) != null;
    }
}
