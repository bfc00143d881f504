package org.stockcutting.check;

import java.math.BigInteger;
import java.util.List;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Goal;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.LongestOffcut;
import org.stockcutting.plan.Objective;
import org.stockcutting.plan.Status;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.stock.Money;
import org.stockcutting.stock.StockItem;

/** Money, the objective's value, what is proved about it, and what the status claims. */
final class ValueCheck {

    private final Facts facts;
    private final Census census;
    private final WoodTally tally;
    private final SortedMap<String, Integer> used;
    private final Inspection inspection;

    ValueCheck(Facts facts, Census census, WoodTally tally, SortedMap<String, Integer> used, Inspection inspection) {
        this.facts = facts;
        this.census = census;
        this.tally = tally;
        this.used = used;
        this.inspection = inspection;
    }

    void check(CuttingPlan plan) {
        Money cost = cost();
        inspection.require(
                Objects.equals(cost, plan.cost()),
                Cause.MONEY,
                "/cost/amount",
                "says " + plan.cost() + ", the boards bought cost " + cost);
        Objective objective = plan.objective();
        inspection.require(
                objective.goal() == facts.job().goal(),
                Cause.VALUE,
                "/objective/goal",
                "the job's goal is " + facts.job().goal().word() + ", got "
                        + objective.goal().word());
        BigInteger value = value(cost);
        inspection.require(
                value.equals(objective.value()),
                Cause.VALUE,
                "/objective/value",
                "says " + objective.value() + ", the layouts give " + value);
        SortedMap<String, Integer> placed = placed();
        bound(plan, placed);
        longestOffcut(plan, placed);
        status(plan);
    }

    /** Sum over the boards bought; null where one of them has no price. */
    private @Nullable Money cost() {
        Money sum = Money.ofMinor(0, facts.job().writing().currency());
        for (StockItem.ForSale stock : facts.job().forSale()) {
            int boards = used.getOrDefault(stock.id(), 0);
            if (boards > 0) {
                if (stock.price() == null) {
                    return null;
                }
                sum = sum.plus(money(Tariff.sale(stock, boards, facts.job().goal() == Goal.BOARDS)
                        .total()));
            }
        }
        return sum;
    }

    private Money money(BigInteger minor) {
        return Money.ofMinor(minor.longValueExact(), facts.job().writing().currency());
    }

    private BigInteger value(@Nullable Money cost) {
        if (facts.job().goal() == Goal.WASTE) {
            return tally.used().subtract(tally.parts()).add(tally.spares()).subtract(tally.kept());
        }
        if (facts.job().goal() == Goal.COST) {
            return cost == null ? BigInteger.ZERO : BigInteger.valueOf(cost.minorUnits());
        }
        long boards = facts.job().forSale().stream()
                .mapToLong(stock -> Tariff.sale(stock, used.getOrDefault(stock.id(), 0), true)
                        .pieces())
                .sum();
        return BigInteger.valueOf(boards);
    }

    private SortedMap<String, Integer> placed() {
        SortedMap<String, Integer> placed = new TreeMap<>();
        for (Rough rough : facts.roughs().values()) {
            placed.put(rough.part().id(), census.placed(rough, facts.demand(rough.part())));
        }
        return placed;
    }

    private void bound(CuttingPlan plan, SortedMap<String, Integer> placed) {
        Proof proof = Proof.of(facts, plan.certificate(), placed);
        for (String fault : proof.faults()) {
            inspection.report(Cause.CERTIFICATE, "/certificate", fault);
        }
        Objective objective = plan.objective();
        inspection.require(
                objective.bound().compareTo(proof.bound()) <= 0,
                Cause.BOUND,
                "/objective/bound",
                "says " + objective.bound() + ", the certificate proves " + proof.bound());
        inspection.require(
                objective.bound().compareTo(objective.value()) <= 0,
                Cause.BOUND,
                "/objective/bound",
                objective.bound() + " is above the value reached, " + objective.value());
        BigInteger searched = objective.searchedBound();
        if (searched != null) {
            inspection.require(
                    searched.compareTo(objective.bound()) > 0 && searched.compareTo(objective.value()) <= 0,
                    Cause.BOUND,
                    "/objective/searchedBound",
                    searched + " lies outside bound " + objective.bound() + " (excluded) and value "
                            + objective.value());
        }
    }

    /** A plan may say nothing of it, or claim less than is proved; never more. */
    private void longestOffcut(CuttingPlan plan, SortedMap<String, Integer> placed) {
        LongestOffcut said = plan.derived().longestOffcut();
        if (said == null) {
            return;
        }
        LongestOffcut found = LeftoverBound.of(
                facts,
                plan.layouts(),
                plan.certificate(),
                placed,
                plan.objective().value());
        String at = "/longestOffcut";
        if (found == null) {
            inspection.report(Cause.OFFCUT, at, "no bought board of this plan is only crosscut");
            return;
        }
        inspection.require(
                said.length().equals(found.length()),
                Cause.OFFCUT,
                at + "/length",
                "says " + said.length() + ", the layouts leave " + found.length());
        inspection.require(
                !found.atMost().isMoreThan(said.atMost()),
                Cause.BOUND,
                at + "/atMost",
                "says " + said.atMost() + ", the certificate proves " + found.atMost());
        inspection.require(
                said.certified() == said.length().equals(said.atMost()),
                Cause.BOUND,
                at + "/certified",
                "says " + said.certified() + " with length " + said.length() + " and at most " + said.atMost());
    }

    private void status(CuttingPlan plan) {
        Status status = plan.header().status();
        List<Unplaced> unplaced = plan.unplaced();
        boolean all = unplaced.isEmpty();
        boolean none = plan.layouts().isEmpty();
        boolean right = switch (status) {
            // What is estimated is never optimal.
            case OPTIMAL ->
                all
                        && plan.derived().estimates().isEmpty()
                        && plan.objective().value().equals(plan.objective().bound());
            case FEASIBLE -> all;
            case PARTIAL -> !all && !none;
            case INFEASIBLE -> unplaced.stream().anyMatch(u -> u.reason() != Unplaced.Reason.NOT_REACHED_BEFORE_LIMIT);
            case NO_PLAN -> !all && none;
        };
        inspection.require(
                right,
                Cause.STATUS,
                "/status",
                "\"" + status.word() + "\" with value " + plan.objective().value() + ", bound "
                        + plan.objective().bound() + ", " + unplaced.size() + " lines left out and "
                        + plan.layouts().size() + " layouts");
    }
}
