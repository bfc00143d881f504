package org.stockcutting.check;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.commons.math3.fraction.BigFraction;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.plan.Certificate;

/**
 * Proves bounds in exact arithmetic. For worths u of the parts (a glued-up panel's per nanometre of width), let R_s be the most that a
 * pattern of stock s is worth beyond its cost. If no stock without limit has R_s above 0, the sum of u times what was placed, less n_s
 * times R_s over the limited stock that gains, is at most the value of every plan (weak duality of the Gilmore and Gomory model, 1961).
 * For any u at all, the boards of a plan are together worth what it makes, each at most its best pattern; so no plan comes to less than the
 * cheapest whole boards that are worth so much ({@link LeastPurchase}), packs and price breaks as they are, and with several u than those
 * that are worth enough for each ({@link WholeBoards}).
 * R_s is found here on a relaxation: groups, stages, stave sources and most saw limits are dropped. Bad zones and tapers count as far as
 * the work allows that is spent on one board ({@link ZoneTable}).
 *
 * <p>Stateless and safe to use from any thread.
 */
public final class CertificateChecker {

    private CertificateChecker() {}

    /** As {@link #certify(Job, List, Map, Map)}, for a plan whose boards are not known: every effort is made. */
    public static Certificate certify(
            Job job, Map<String, BigFraction> dualsByPart, Map<String, Integer> placedByPart) {
        return certify(job, List.of(dualsByPart), placedByPart, Map.of());
    }

    /**
     * The best certificate that follows from proposed duals: scaled down or up until they hold and compared with plain duals by area and
     * length. Components for which nothing is proved are left out. Where a quick proof meets what the plan's boards of a component cost,
     * no better one is sought.
     *
     * @param proposals proposed worths in atomic units of the goal, of one rough piece or of one nanometre of panel width; negative
     *     ones count as 0, missing ones too; the first is for the sum, each further one may rule out purchases
     * @param placedByPart finished pieces placed, spares not counted
     * @param boardsByStock how many boards of each stock the plan cuts; empty if not known
     */
    public static Certificate certify(
            Job job,
            List<? extends Map<String, BigFraction>> proposals,
            Map<String, Integer> placedByPart,
            Map<String, Integer> boardsByStock) {
        Facts facts = Facts.of(job);
        List<Certificate.Component> components = new ArrayList<>();
        for (Component component : Component.of(facts)) {
            ComponentBound bound = new ComponentBound(facts, component);
            List<Duals> proposed = new ArrayList<>();
            proposals.forEach(proposal -> proposed.add(proposed(component, proposal, placedByPart)));
            BigInteger reached = bound.reached(boardsByStock);
            DualScaling.Proved best = best(bound, proposed.get(0), placedByPart, reached);
            if (best != null) {
                boolean open = !meets(best, reached) && proposed.size() > 1;
                components.add(
                        open ? withRows(bound, best, proposed.subList(1, proposed.size())) : stated(component, best));
            }
        }
        return new Certificate(components);
    }

    /** What a certificate of {@link #certify} claims for the whole job; {@link #bound} proves it. */
    public static BigInteger claimed(Job job, Certificate certificate, Map<String, Integer> placedByPart) {
        Map<List<String>, BigInteger> stated = new HashMap<>();
        certificate.components().forEach(component -> stated.put(component.stock(), component.bound()));
        Facts facts = Facts.of(job);
        BigInteger sum = BigInteger.ZERO;
        for (Component component : Component.of(facts)) {
            BigInteger trivial = new ComponentBound(facts, component).trivial(new Duals(new TreeMap<>(), placedByPart));
            BigInteger said = stated.get(component.ids());
            sum = sum.add(said == null ? trivial : said.max(trivial));
        }
        return sum;
    }

    private static Certificate.Component stated(Component component, DualScaling.Proved proved) {
        return new Certificate.Component(component.ids(), list(proved.duals()), proved.bound());
    }

    private static List<Certificate.Dual> list(Duals duals) {
        List<Certificate.Dual> list = new ArrayList<>();
        duals.values().forEach((part, value) -> list.add(new Certificate.Dual(part, value)));
        return list;
    }

    /** The rows proposed, where they prove more. */
    private static Certificate.Component withRows(
            ComponentBound bound, DualScaling.Proved proved, List<Duals> proposed) {
        DualScaling scaling = new DualScaling(bound);
        List<Duals> all = new ArrayList<>(List.of(proved.duals()));
        proposed.stream()
                .filter(row -> !row.values().isEmpty())
                .map(scaling::shorten)
                .forEach(all::add);
        BigInteger more = bound.prove(all, all.stream().anyMatch(bound::usesTable));
        if (more == null || more.compareTo(proved.bound()) <= 0) {
            return stated(bound.component(), proved);
        }
        List<List<Certificate.Dual>> rows = all.subList(1, all.size()).stream()
                .map(CertificateChecker::list)
                .toList();
        return new Certificate.Component(bound.component().ids(), list(proved.duals()), rows, more);
    }

    private static Duals proposed(
            Component component, Map<String, BigFraction> dualsByPart, Map<String, Integer> placedByPart) {
        SortedMap<String, BigFraction> values = new TreeMap<>();
        for (String part : component.parts()) {
            BigFraction value = dualsByPart.getOrDefault(part, BigFraction.ZERO);
            if (value.compareTo(BigFraction.ZERO) > 0) {
                values.put(part, value);
            }
        }
        return new Duals(values, placedByPart);
    }

    private static DualScaling.@Nullable Proved best(
            ComponentBound bound, Duals proposed, Map<String, Integer> placed, @Nullable BigInteger reached) {
        DualScaling scaling = new DualScaling(bound);
        DualScaling.Proved quick = scaling.best(proposed, false);
        Duals quickest = proposed;
        for (Duals plain : PlainDuals.of(bound.facts(), bound.component(), placed)) {
            if (meets(quick, reached)) {
                return quick;
            }
            DualScaling.Proved proved = scaling.best(plain, false);
            if (proved != null && (quick == null || proved.bound().compareTo(quick.bound()) > 0)) {
                quick = proved;
                quickest = plain;
            }
        }
        if (meets(quick, reached) || !bound.usesTable(proposed)) {
            return quick;
        }
        DualScaling.Proved best = DualScaling.better(quick, scaling.best(proposed, true));
        // The table takes time: it is filled for plain duals only where they are the better ones already.
        return quickest == proposed ? best : DualScaling.better(best, scaling.best(quickest, true));
    }

    private static boolean meets(DualScaling.@Nullable Proved proved, @Nullable BigInteger reached) {
        return proved != null && reached != null && proved.bound().compareTo(reached) >= 0;
    }

    /**
     * What a certificate proves for the placed quantities, found again from its duals alone: the sum over the job's components. A
     * certificate with a negative dual, with stock worth more than it costs, or that states more than its duals prove, proves nothing.
     */
    public static BigInteger bound(Job job, Certificate certificate, Map<String, Integer> placedByPart) {
        return Proof.of(Facts.of(job), certificate, placedByPart).bound();
    }
}
