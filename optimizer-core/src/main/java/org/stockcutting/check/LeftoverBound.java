package org.stockcutting.check;

import java.math.BigInteger;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.commons.math3.fraction.BigFraction;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.plan.Certificate;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.LongestOffcut;

/**
 * How long the longest leftover of a bought board can be at a given value, from the duals of the certificate. A plan that contains a
 * pattern costs at least the bound and the reduced cost of this pattern. So the pieces beside the leftover must be worth what the board
 * costs, less what the plan may cost beyond the bound; the shortest row of pieces worth so much leaves the longest leftover. Boards are
 * meant that are only crosscut, and leftovers behind the last piece.
 *
 * <p>Stateless and safe to use from any thread.
 */
public final class LeftoverBound {

    private final Facts facts;
    private final Certificate certificate;
    private final Map<String, Integer> placed;
    private final BigInteger value;

    private LeftoverBound(Facts facts, Certificate certificate, Map<String, Integer> placed, BigInteger value) {
        this.facts = facts;
        this.certificate = certificate;
        this.placed = placed;
        this.value = value;
    }

    /**
     * The longest leftover of a plan; null where no bought board is only crosscut, and under the goal waste, where leftovers count
     * themselves.
     *
     * @param layouts layouts of a valid plan
     * @param certificate its certificate
     * @param placedByPart finished pieces placed, spares not counted
     * @param value the plan's value
     */
    public static @Nullable LongestOffcut of(
            Job job,
            List<Layout> layouts,
            Certificate certificate,
            Map<String, Integer> placedByPart,
            BigInteger value) {
        return of(Facts.of(job), layouts, certificate, placedByPart, value);
    }

    static @Nullable LongestOffcut of(
            Facts facts, List<Layout> layouts, Certificate certificate, Map<String, Integer> placed, BigInteger value) {
        return new LeftoverBound(facts, certificate, placed, value).of(layouts);
    }

    private @Nullable LongestOffcut of(List<Layout> layouts) {
        if (new Goals(facts).isWaste()) {
            return null;
        }
        Map<String, Board> lanes = new HashMap<>();
        BigInteger bounds = BigInteger.ZERO;
        Map<List<String>, Certificate.Component> stated = new HashMap<>();
        for (Certificate.Component said : certificate.components()) {
            stated.put(said.stock(), said);
            bounds = bounds.add(said.bound());
        }
        long most = 0;
        for (Component component : Component.of(facts)) {
            Certificate.Component said = stated.get(component.ids());
            BigInteger others = said == null ? bounds : bounds.subtract(said.bound());
            for (Board board : component.boards()) {
                if (isLane(board, component)) {
                    lanes.put(board.id(), board);
                    most = Math.max(most, most(board, component, said, value.subtract(others)));
                }
            }
        }
        long found = -1;
        for (Layout layout : layouts) {
            Board board = lanes.get(layout.stock());
            found = Math.max(found, board == null ? -1 : longest(layout));
        }
        if (found < 0) {
            return null;
        }
        // What a plan leaves can be left, whatever was proved: a wrong certificate is reported elsewhere.
        long atMost = Math.max(most, found);
        return new LongestOffcut(Length.ofNanometres(found), Length.ofNanometres(atMost), found == atMost);
    }

    private static long longest(Layout layout) {
        return layout.offcuts().stream()
                .filter(left -> left.x().plus(left.length()).equals(layout.length())
                        && left.width().equals(layout.width()))
                .mapToLong(left -> left.length().nanometres())
                .max()
                .orElse(0);
    }

    /** For sale, and no two pieces that may come from it fit side by side, nor does one lie across. */
    private boolean isLane(Board board, Component component) {
        if (!board.forSale() || board.barred()) {
            return false;
        }
        long least = Long.MAX_VALUE / 4;
        for (Rough rough : component.roughs()) {
            if (isWanted(rough, board)) {
                if (Fit.turned(rough, board)) {
                    return false;
                }
                least = Math.min(least, rough.leastWidthOn(board));
            }
        }
        return least < Long.MAX_VALUE / 4
                && 2 * least + facts.ripKerf() > board.usable().width();
    }

    private boolean isWanted(Rough rough, Board board) {
        return placed.getOrDefault(rough.part().id(), 0) > 0
                && Fit.anyhow(rough, board, facts.job().shop());
    }

    /**
     * @param limit the most that this component may cost
     */
    private long most(Board board, Component component, Certificate.@Nullable Component said, BigInteger limit) {
        SortedMap<String, BigFraction> values = new TreeMap<>();
        if (said != null) {
            said.duals().forEach(dual -> values.put(dual.part(), dual.value()));
        }
        Duals duals = new Duals(values, placed);
        Goals goals = new Goals(facts);
        StockGain gains = new StockGain(facts, goals, component);
        BigFraction wanted = duals.total(component).add(goals.cost(board)).subtract(limit);
        for (Board other : component.boards()) {
            if (other.copies().isPresent()) {
                BigFraction gain = gains.gain(other, duals, false);
                int copies = other.copies().getAsInt() - (other == board ? 1 : 0);
                if (gain.compareTo(BigFraction.ZERO) > 0) {
                    wanted = wanted.subtract(gain.multiply(copies));
                }
            }
        }
        long row = gains.shortest(board, duals, wanted);
        if (row < 0) {
            return 0;
        }
        long smallest = component.roughs().stream()
                .filter(rough -> isWanted(rough, board))
                .mapToLong(rough -> rough.length() + facts.crosscutKerf())
                .min()
                .orElse(0);
        return board.raw().x1() - board.usable().x0() - Math.max(row, smallest);
    }
}
