package org.stockcutting.check;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.commons.math3.fraction.BigFraction;
import org.jspecify.annotations.Nullable;
import org.stockcutting.plan.Certificate;

/**
 * What a certificate proves, strictly: one fault and it proves no more than no certificate at all.
 *
 * @param bound no plan for the placed quantities can be below this
 * @param faults why the certificate was refused; empty where it holds
 */
record Proof(BigInteger bound, List<String> faults) {

    Proof {
        faults = List.copyOf(faults);
    }

    static Proof of(Facts facts, Certificate certificate, Map<String, Integer> placed) {
        List<String> faults = new ArrayList<>();
        Map<List<String>, Certificate.Component> stated = new HashMap<>();
        for (Certificate.Component component : certificate.components()) {
            if (stated.put(component.stock(), component) != null) {
                faults.add("stock " + component.stock() + " stands twice");
            }
        }
        BigInteger proved = BigInteger.ZERO;
        BigInteger trivial = BigInteger.ZERO;
        for (Component component : Component.of(facts)) {
            ComponentBound bound = new ComponentBound(facts, component);
            BigInteger without = bound.trivial(new Duals(new TreeMap<>(), placed));
            Certificate.Component said = stated.remove(component.ids());
            BigInteger with = said == null ? without : check(bound, said, placed, faults);
            proved = proved.add(with == null ? without : with.max(without));
            trivial = trivial.add(without);
        }
        stated.keySet().forEach(ids -> faults.add("stock " + ids + " is no component of this job"));
        return new Proof(faults.isEmpty() ? proved : trivial, faults);
    }

    private static @Nullable BigInteger check(
            ComponentBound bound, Certificate.Component said, Map<String, Integer> placed, List<String> faults) {
        int before = faults.size();
        List<Duals> duals = new ArrayList<>();
        duals.add(duals(bound, said, said.duals(), placed, faults));
        said.rows().forEach(row -> duals.add(duals(bound, said, row, placed, faults)));
        if (faults.size() > before) {
            return null;
        }
        BigInteger quick = bound.prove(duals.get(0), false);
        if (quick != null && quick.compareTo(said.bound()) >= 0) {
            return quick;
        }
        boolean table = duals.stream().anyMatch(bound::usesTable);
        BigInteger proved = table || duals.size() > 1 ? bound.prove(duals, table) : quick;
        if (proved == null) {
            faults.add("some stock of " + said.stock() + " is worth more than it costs");
        } else if (said.bound().compareTo(proved.max(bound.trivial(duals.get(0)))) > 0) {
            faults.add("stock " + said.stock() + ": says " + said.bound() + ", its duals prove " + proved);
        }
        return proved;
    }

    private static Duals duals(
            ComponentBound bound,
            Certificate.Component said,
            List<Certificate.Dual> row,
            Map<String, Integer> placed,
            List<String> faults) {
        SortedMap<String, BigFraction> values = new TreeMap<>();
        Set<String> parts = bound.component().parts();
        for (Certificate.Dual dual : row) {
            if (!parts.contains(dual.part())) {
                faults.add("part " + dual.part() + " cannot come from stock " + said.stock());
            } else if (values.put(dual.part(), dual.value()) != null) {
                faults.add("part " + dual.part() + " has two duals");
            }
            if (dual.value().compareTo(BigFraction.ZERO) < 0) {
                faults.add("part " + dual.part() + " has a negative dual");
            }
        }
        return new Duals(values, placed);
    }
}
