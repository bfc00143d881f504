package org.stockcutting.job;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.part.Binding;
import org.stockcutting.part.Part;

/** The shop rules that the groups of a parts list stand for. */
public final class Rules {

    private Rules() {}

    /** The job's rules, sorted by name, each with its parts sorted by id. */
    public static List<Rule> of(Job job) {
        SortedMap<String, List<String>> groups = new TreeMap<>();
        SortedMap<String, Binding> bindings = new TreeMap<>();
        for (Part part : job.parts()) {
            if (part.group() != null) {
                groups.computeIfAbsent(part.group(), name -> new ArrayList<>()).add(part.id());
                bindings.putIfAbsent(part.group(), part.selection().binding());
            }
        }
        List<Rule> rules = new ArrayList<>();
        groups.forEach((name, parts) ->
                rules.add(rule(name, bindings.get(name), parts.stream().sorted().toList())));
        return List.copyOf(rules);
    }

    private static Rule rule(String name, @Nullable Binding binding, List<String> parts) {
        if (binding == null) {
            throw new IllegalStateException("group " + name + " without a rule");
        }
        return switch (binding) {
            case SAME_BOARD -> new Rule.SameBoard(name, parts);
            case PAIRS -> new Rule.Pairs(name, parts);
            case SEQUENCE -> new Rule.Sequence(name, parts);
        };
    }
}
