package org.stockcutting.solve.guillotine;

import java.util.List;
import java.util.Objects;
import org.stockcutting.solve.instance.Weights;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * Boards fixed one after the other as the linear programme of what is missing takes them, with new columns at every step, down to the
 * last few boards: what these leave open is for the search. As patterns of exact pricing heed demand only after some trying, the
 * programme may cost a little more than what is aimed at and the dive goes on all the same; a few missing pieces are soon placed.
 *
 * <p>Rounding by sequence in the manner of Belov, Scheithauer, European Journal of Operational Research 171 (2006), here with patterns of
 * two-dimensional pricing (Gilmore, Gomory, Operations Research 13, 1965).
 */
final class Dive {

    private static final double TOLERANCE = 1e-6;
    /** Rounds of pricing before the first board and after each further one, where the programme costs too much. */
    private static final int FIRST_ROUNDS = 20;

    private static final int ROUNDS = 2;
    /** The search is better with the last few boards than rounding. */
    private static final double OPEN_BOARDS = 3;

    private final Yard yard;
    private final Model model;
    private final RestProgramme programme;
    private final ProperPricing pricing;
    private final Dice dice;
    private final double dearest;

    Dive(Yard yard, long seed) {
        this.yard = yard;
        this.model = yard.model;
        this.programme = new RestProgramme(model);
        this.pricing = new ProperPricing(yard);
        this.dice = new Dice(seed);
        long most = 0;
        for (int s = 0; s < model.stocks; s++) {
            most = Math.max(most, model.stock(s).cost());
        }
        this.dearest = most;
    }

    /** True if patterns of exact pricing can be sawn, and nothing but cost and demand says what goes together. */
    static boolean suits(Yard yard) {
        Model model = yard.model;
        boolean suits = model.instance.groups().isEmpty() && !model.paysOffcuts;
        for (int s = 0; s < model.stocks; s++) {
            suits &= yard.isFree(s) && !model.hasZones(s);
        }
        for (int t = 0; t < model.types; t++) {
            suits &= model.item(t).perBoard() >= model.item(t).demand();
        }
        return suits && new PriceList(model).isExact();
    }

    /** Takes over columns of the bound. */
    void learn(List<PriceList.Column> columns) {
        columns.forEach(programme::add);
    }

    /** Takes a draft's boards as columns. */
    void learn(Draft draft) {
        for (Board board : draft.boards) {
            programme.add(PriceList.Column.of(board));
        }
    }

    /** Boards that are good together; with what is still missing they could come within the cap or near it. */
    Draft run(WorkMeter meter, long cap) {
        Draft draft = new Draft(yard);
        double value = solve(draft, cap, FIRST_ROUNDS, meter);
        while (value > OPEN_BOARDS * dearest && !meter.isExhausted()) {
            int next = largest(draft);
            if (next < 0) {
                break;
            }
            draft.add(board(programme.column(next)));
            value = solve(draft, cap, ROUNDS, meter);
        }
        meter.spend(Weights.of(yard.takeOperations()));
        return draft;
    }

    private Board board(PriceList.Column column) {
        return new Board(yard, column.stock(), Objects.requireNonNull(column.pattern()));
    }

    /** Solves the programme of what is missing, with new columns: one round of them, more where it costs too much. */
    private double solve(Draft draft, long cap, int rounds, WorkMeter meter) {
        double value = programme.solve(draft);
        boolean added = true;
        for (int n = 0; added && (n == 0 || (n < rounds && draft.cost() + value > cap)); n++) {
            added = false;
            double[] worth = programme.worths();
            for (PriceList.Column column : pricing.price(worth, draft, meter)) {
                double gain = PriceList.worth(column, worth) - programme.charge(column.stock());
                added |= gain > TOLERANCE * dearest && programme.add(column);
            }
            if (added) {
                value = programme.solve(draft);
            }
            if (!meter.spend(Weights.of(programme.takeOperations()))) {
                break;
            }
        }
        return value;
    }

    /** The column that the programme takes most often, with some chance; -1 if there is none. */
    private int largest(Draft draft) {
        int best = -1;
        double most = 0;
        for (int c = 0; c < programme.size(); c++) {
            double value = programme.value(c);
            PriceList.Column column = programme.column(c);
            if (value > TOLERANCE
                    && RestProgramme.isWithin(column, draft.left)
                    && draft.available(column.stock()) > 0) {
                double drawn = Math.min(1, value) * (0.7 + 0.3 * dice.unit());
                if (drawn > most) {
                    most = drawn;
                    best = c;
                }
            }
        }
        return best;
    }
}
