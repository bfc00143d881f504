package org.stockcutting.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import org.stockcutting.part.Binding;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;

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
        if (!mixed && first == Binding.SEQUENCE) {
            sequence(name, lines);
        }
        if (!mixed && first == Binding.PAIRS) {
            pairs(name, lines);
        }
    }

    private void sequence(String name, List<Integer> lines) {
        Part one = part(lines.get(0));
        for (int line : lines) {
            Part other = part(line);
            boolean apart = other.making() instanceof Making.GlueUp || other.making() instanceof Making.Lamination;
            boolean alike = one.making().equals(other.making())
                    && Objects.equals(one.grain(), other.grain())
                    && (one.coreSection().equals(other.coreSection()) || isStackable(one, other));
            boolean mixed = !lines.stream().allMatch(l -> part(l).coreSection().equals(one.coreSection()))
                    && !lines.stream().allMatch(l -> isStackable(one, part(l)));
            if (apart || !alike || (mixed && line == lines.get(lines.size() - 1))) {
                findings.add(
                        "/parts/" + line + "/group",
                        FaultCode.MIXED_GROUP,
                        other.id(),
                        "the width and thickness, or the length and thickness, of " + one.id(),
                        "The parts of group " + name
                                + " are cut from the wood as neighbours, end to end or edge to edge: "
                                + other.id() + " must be as wide and thick, or as long and thick, as " + one.id()
                                + ", with the same grain and allowance, and not glued up; make it two groups.",
                        "/parts/" + lines.get(0) + "/group");
            }
        }
    }

    private static boolean isStackable(Part one, Part other) {
        return one.coreLength().equals(other.coreLength())
                && one.coreSection() instanceof Section.Measured a
                && other.coreSection() instanceof Section.Measured b
                && a.thickness().equals(b.thickness());
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
