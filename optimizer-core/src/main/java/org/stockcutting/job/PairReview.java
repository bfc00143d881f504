package org.stockcutting.job;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.stockcutting.part.Binding;
import org.stockcutting.part.Part;

/** Reviews what the groups of a parts list ask for: one rule a group, and mates that come out even. */
final class PairReview {

    private final Job job;
    private final Findings findings;

    PairReview(Job job, Findings findings) {
        this.job = job;
        this.findings = findings;
    }

    void review() {
        SortedMap<String, List<Integer>> groups = new TreeMap<>();
        for (int i = 0; i < job.parts().size(); i++) {
            String name = job.parts().get(i).group();
            if (name != null) {
                groups.computeIfAbsent(name, n -> new ArrayList<>()).add(i);
            }
        }
        groups.forEach(this::group);
    }

    private void group(String name, List<Integer> lines) {
        Binding first = binding(lines.get(0));
        boolean mixed = false;
        for (int line : lines) {
            mixed |= binding(line) != first;
            if (binding(line) != first) {
                findings.add(
                        "/parts/" + line + "/group/rule",
                        FaultCode.CONFLICT,
                        binding(line).word(),
                        first.word(),
                        "Group " + name + " has the rule " + first.word() + " with "
                                + part(lines.get(0)).id() + " and "
                                + binding(line).word() + " with "
                                + part(line).id() + "; say the same, or make it two groups.",
                        "/parts/" + lines.get(0) + "/group");
            }
        }
        if (!mixed && first == Binding.PAIRS) {
            pairs(name, lines);
        }
    }

    private void pairs(String name, List<Integer> lines) {
        Part one = part(lines.get(0));
        if (lines.size() == 1 && one.quantity() > 0 && one.quantity() % 2 != 0) {
            uneven(
                    lines.get(0),
                    one.quantity() + " of " + one.id(),
                    "an even quantity",
                    "Group " + name + " pairs the pieces of " + one.id() + ", but " + one.quantity()
                            + " of them leave one without a mate; ask for an even number, or for one more as a spare.");
        }
        if (lines.size() == 2 && one.quantity() != part(lines.get(1)).quantity()) {
            Part other = part(lines.get(1));
            uneven(
                    lines.get(1),
                    other.quantity() + " of " + other.id(),
                    one.quantity() + ", as many as of " + one.id(),
                    "Group " + name + " pairs each " + one.id() + " with one " + other.id() + ", but there are "
                            + one.quantity() + " and " + other.quantity() + "; ask for as many of both.");
        }
        if (lines.size() > 2) {
            uneven(
                    lines.get(2),
                    lines.size() + " parts",
                    "one part or two",
                    "Group " + name + " has " + lines.size()
                            + " parts, but a pair has two pieces; make it several groups.");
        }
    }

    private void uneven(int line, String got, String wanted, String text) {
        findings.add(
                "/parts/" + line + "/group", FaultCode.UNEVEN_PAIRS, got, wanted, text, "/parts/" + line + "/quantity");
    }

    private Part part(int line) {
        return job.parts().get(line);
    }

    private Binding binding(int line) {
        return part(line).selection().binding();
    }
}
