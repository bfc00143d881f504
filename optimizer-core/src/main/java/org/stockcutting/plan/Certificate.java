package org.stockcutting.plan;

import java.math.BigInteger;
import java.util.List;
import org.apache.commons.math3.fraction.BigFraction;

/**
 * Dual values that prove the bound, one block for each independent component; the checker finds the rest itself.
 *
 * @param components by their first stock id
 */
public record Certificate(List<Component> components) {

    public static final Certificate EMPTY = new Certificate(List.of());

    public Certificate {
        components = List.copyOf(components);
    }

    /**
     * Weak duality for one component: for u at least 0 with no pattern of unlimited stock worth more than it costs, the sum of u times
     * demand, less what limited stock could gain, is a bound. So is, for any u at least 0, the least that whole boards come to whose best
     * patterns are together worth the sum of u times demand; the greater of the two counts.
     *
     * @param stock ids of the component's stock, sorted
     * @param duals one value a part (for a glued-up panel: a value per nanometre of width), sorted by part; zeros left out
     * @param rows further lists of duals: each rules out purchases, as so many boards of each stock hold at most so much of its worth and
     *     all that is placed is worth more; empty where they are not needed
     * @param bound the bound all these prove, in atomic units, rounded up to the least amount that prices can form
     */
    public record Component(List<String> stock, List<Dual> duals, List<List<Dual>> rows, BigInteger bound) {
        public Component {
            stock = List.copyOf(stock);
            duals = List.copyOf(duals);
            rows = rows.stream().map(List::copyOf).toList();
        }

        /** One list of duals. */
        public Component(List<String> stock, List<Dual> duals, BigInteger bound) {
            this(stock, duals, List.of(), bound);
        }
    }

    /**
     * Dual value of one part.
     *
     * @param part id of the part
     * @param value worth of one piece (of one nanometre of panel width) in atomic units of the goal
     */
    public record Dual(String part, BigFraction value) {}
}
