package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.stockcutting.solve.instance.Weights;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * Patterns of great worth that hold no more of any type than is missing. The exact table knows no caps, so an over-used type is made
 * worth a little less for every copy too many and the table filled again; each pattern on the way is cut down to the caps and what fits
 * is put in its rests, and the one of most worth counts.
 */
final class ProperPricing {

    private static final double LESS = 0.98;
    private static final int TRIES = 6;

    private final Yard yard;
    private final Model model;
    private final Filling filling;
    private final PriceList prices;

    ProperPricing(Yard yard) {
        this.yard = yard;
        this.model = yard.model;
        this.filling = new Filling(yard);
        this.prices = new PriceList(model);
    }

    /** The best column found for each stock that is priced exactly and of which there is some left. */
    List<PriceList.Column> price(double[] worth, Draft rest, WorkMeter meter) {
        PriceList.Column[] best = new PriceList.Column[model.stocks];
        double[] most = new double[model.stocks];
        double[] tried = worth.clone();
        for (int t = 0; t < tried.length; t++) {
            tried[t] = rest.left[t] == 0 ? 0 : tried[t];
        }
        boolean proper = false;
        for (int n = 0; n < TRIES && !proper && !meter.isExhausted(); n++) {
            double[] less = tried.clone();
            proper = true;
            for (PriceList.Column column : prices.price(tried, meter).columns()) {
                int s = column.stock();
                if (column.pattern() == null || rest.available(s) == 0) {
                    continue;
                }
                proper &= RestProgramme.isWithin(column, rest.left);
                PriceList.Column cut = cut(s, column.pattern(), worth, rest);
                if (PriceList.worth(cut, worth) > most[s]) {
                    most[s] = PriceList.worth(cut, worth);
                    best[s] = cut;
                }
                lower(less, tried, column, rest);
            }
            tried = less;
            meter.spend(Weights.of(yard.takeOperations()));
        }
        List<PriceList.Column> found = new ArrayList<>();
        for (PriceList.Column column : best) {
            if (column != null) {
                found.add(column);
            }
        }
        return found;
    }

    /** Every copy too many makes its type worth a little less next time. */
    private static void lower(double[] less, double[] tried, PriceList.Column column, Draft rest) {
        for (int t = 0; t < less.length; t++) {
            double over = column.counts()[t] - rest.left[t];
            less[t] = over > 0 ? Math.min(less[t], tried[t] * Math.pow(LESS, over)) : less[t];
        }
    }

    private PriceList.Column cut(int stock, Cell pattern, double[] worth, Draft rest) {
        Board board = Pruning.within(new Board(yard, stock, pattern), rest.left);
        Draft content = new Draft(yard);
        for (int t = 0; t < model.types; t++) {
            content.left[t] = rest.left[t] - board.counts[t];
        }
        List<Model.Unit> units = new ArrayList<>(model.units);
        units.sort(Comparator.comparingDouble(unit -> -worth[unit.types()[0]]));
        return PriceList.Column.of(filling.filled(board, content, units));
    }
}
