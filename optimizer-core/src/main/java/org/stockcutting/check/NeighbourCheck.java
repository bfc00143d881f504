package org.stockcutting.check;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.part.Binding;

/** The pieces of a sequence follow each other on the wood, set by set, in the order of ids and numbers, one saw cut apart. */
final class NeighbourCheck {

    private final Facts facts;
    private final Census census;
    private final Inspection inspection;

    NeighbourCheck(Facts facts, Census census, Inspection inspection) {
        this.facts = facts;
        this.census = census;
        this.inspection = inspection;
    }

    /** A piece that ought to be there, and where it is, if it is. */
    private record Member(String name, Census.@Nullable Copy copy) {}

    void check() {
        SortedMap<String, List<Rough>> groups = new TreeMap<>();
        for (Rough rough : facts.roughs().values()) {
            String group = rough.part().group();
            if (group != null && rough.part().selection().binding() == Binding.SEQUENCE) {
                groups.computeIfAbsent(group, name -> new ArrayList<>()).add(rough);
            }
        }
        groups.forEach((name, parts) -> {
            for (int set = 1; set <= facts.job().sets(); set++) {
                line(name, members(parts, set));
            }
        });
    }

    private List<Member> members(List<Rough> parts, int set) {
        List<Member> members = new ArrayList<>();
        for (Rough rough : parts) {
            int quantity = rough.part().quantity();
            for (int n = (set - 1) * quantity + 1; n <= set * quantity; n++) {
                List<Census.Copy> copies = census.of(rough.part().id()).getOrDefault(n, List.of());
                members.add(new Member(rough.part().id() + " " + n, copies.isEmpty() ? null : copies.get(0)));
            }
        }
        return members;
    }

    private void line(String group, List<Member> members) {
        Boolean along = null;
        for (int i = 1; i < members.size(); i++) {
            Census.Copy one = members.get(i - 1).copy();
            Census.Copy other = members.get(i).copy();
            if (one == null || other == null) {
                continue;
            }
            boolean row = follows(one, other, true);
            boolean column = follows(one, other, false);
            boolean bent = along != null && (along ? !row : !column);
            inspection.require(
                    (row || column) && !bent,
                    Cause.GROUP,
                    other.pointer(),
                    "group " + group + ": " + members.get(i).name() + " does not follow "
                            + members.get(i - 1).name() + " on the same board, in one line and one saw cut apart");
            along = row;
        }
    }

    private boolean follows(Census.Copy one, Census.Copy other, boolean along) {
        Rect a = one.rect();
        Rect b = other.rect();
        boolean beside = along
                ? b.x0() - a.x1() == facts.crosscutKerf() && a.y0() == b.y0() && a.y1() == b.y1()
                : b.y0() - a.y1() == facts.ripKerf() && a.x0() == b.x0() && a.x1() == b.x1();
        return beside && one.board().equals(other.board()) && one.turned() == other.turned();
    }
}
