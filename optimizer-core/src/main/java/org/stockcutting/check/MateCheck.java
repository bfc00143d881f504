package org.stockcutting.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.stockcutting.part.Binding;

/** Mates lie on one board: of one part every odd number with the next, of two parts equal numbers. Spares have no mates. */
final class MateCheck {

    private final Facts facts;
    private final Census census;
    private final Inspection inspection;

    MateCheck(Facts facts, Census census, Inspection inspection) {
        this.facts = facts;
        this.census = census;
        this.inspection = inspection;
    }

    void check() {
        SortedMap<String, List<Rough>> pairs = new TreeMap<>();
        for (Rough rough : facts.roughs().values()) {
            String group = rough.part().group();
            if (group != null && rough.part().selection().binding() == Binding.PAIRS) {
                pairs.computeIfAbsent(group, name -> new ArrayList<>()).add(rough);
            }
        }
        pairs.forEach((name, parts) -> {
            int demand = facts.demand(parts.get(0).part());
            for (int number = 1; number <= demand; number++) {
                if (parts.size() > 1) {
                    mates(name, parts.get(0), number, parts.get(1), number);
                } else if (number % 2 == 0) {
                    mates(name, parts.get(0), number - 1, parts.get(0), number);
                }
            }
        });
    }

    private void mates(String group, Rough one, int number, Rough other, int otherNumber) {
        Set<String> boards = new TreeSet<>(boards(one, number));
        Set<String> others = boards(other, otherNumber);
        if (boards.isEmpty() || others.isEmpty()) {
            return;
        }
        boards.addAll(others);
        inspection.require(
                boards.size() == 1,
                Cause.GROUP,
                "/layouts",
                "group " + group + ": " + one.part().id() + " " + number + " and "
                        + other.part().id() + " " + otherNumber + " are mates and must share one board, lie on "
                        + boards);
    }

    private Set<String> boards(Rough rough, int number) {
        Set<String> boards = new TreeSet<>();
        for (Census.Copy copy : census.of(rough.part().id()).getOrDefault(number, List.of())) {
            boards.add(copy.board());
        }
        return boards;
    }
}
