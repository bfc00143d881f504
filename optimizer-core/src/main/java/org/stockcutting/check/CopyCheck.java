package org.stockcutting.check;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.stockcutting.part.Binding;
import org.stockcutting.part.CutFrom;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;

/** Numbers, staves, plies, and the rules on what must share a board. */
final class CopyCheck {

    private final Facts facts;
    private final Census census;
    private final Inspection inspection;

    CopyCheck(Facts facts, Census census, Inspection inspection) {
        this.facts = facts;
        this.census = census;
        this.inspection = inspection;
    }

    void check() {
        for (Rough rough : facts.roughs().values()) {
            numbers(rough);
        }
        groups();
        new MateCheck(facts, census, inspection).check();
        facts.roughs().values().forEach(this::chosen);
        new NeighbourCheck(facts, census, inspection).check();
    }

    private void numbers(Rough rough) {
        SortedMap<Integer, List<Census.Copy>> copies = census.of(rough.part().id());
        int most = Math.addExact(facts.demand(rough.part()), rough.part().spares());
        for (Map.Entry<Integer, List<Census.Copy>> entry : copies.entrySet()) {
            List<Census.Copy> same = entry.getValue();
            String at = same.get(0).pointer();
            String who = rough.part().id() + " " + entry.getKey();
            inspection.require(
                    entry.getKey() >= 1 && entry.getKey() <= most,
                    Cause.NUMBER,
                    at,
                    who + ": numbers run from 1 to " + most);
            if (rough.kind() == Rough.Kind.WHOLE) {
                inspection.require(
                        same.size() == 1, Cause.DUPLICATE_NUMBER, at, who + " is cut " + same.size() + " times");
            } else {
                members(rough, same, who, at);
            }
        }
        inspection.require(
                copies.size() <= most,
                Cause.COUNT,
                "/layouts",
                rough.part().id() + ": " + copies.size() + " placed, " + most + " asked for, spares included");
    }

    private void members(Rough rough, List<Census.Copy> same, String who, String at) {
        Set<Integer> members = new TreeSet<>();
        Set<String> boards = new TreeSet<>();
        long joined = 0;
        for (Census.Copy copy : same) {
            if (!members.add(copy.member())) {
                inspection.report(Cause.DUPLICATE_NUMBER, copy.pointer(), who + "." + copy.member() + " is cut twice");
            }
            boards.add(copy.board());
            joined += copy.width() - rough.perStave();
        }
        boolean complete = members.size() == rough.perPart();
        for (int member : members) {
            complete &= member >= 1 && member <= rough.perPart();
        }
        inspection.require(
                complete, Cause.MEMBERS, at, who + " is made of 1 to " + rough.perPart() + ", the plan has " + members);
        if (rough.isStave()) {
            inspection.require(
                    joined >= rough.panelWidth() || !complete,
                    Cause.STAVE_SUM,
                    at,
                    who + ": the staves make " + Inspection.mm(joined) + ", the panel is "
                            + Inspection.mm(rough.panelWidth()) + " wide");
            source(rough, same, boards, who, at);
        }
    }

    private void source(Rough rough, List<Census.Copy> same, Set<String> boards, String who, String at) {
        if (!(rough.part().making() instanceof Making.GlueUp panel)) {
            return;
        }
        boolean right = switch (panel.from()) {
            case ANY -> true;
            case ONE_BOARD -> boards.size() <= 1;
            case DIFFERENT_BOARDS -> boards.size() == same.size();
        };
        inspection.require(
                right,
                Cause.STAVE_SOURCE,
                at,
                who + " asks for staves from " + panel.from().word() + ", got " + boards);
    }

    /** A piece whose place the maker chose lies there. */
    private void chosen(Rough rough) {
        CutFrom.Place place = rough.part().selection().place();
        if (place == null) {
            return;
        }
        Board board = facts.boards().get(place.stock());
        long near = board == null ? 0 : board.usable().y0();
        long edge = place.edge() == null ? near : place.edge().nanometres();
        for (Census.Copy copy : census.of(rough.part().id()).getOrDefault(1, List.of())) {
            inspection.require(
                    copy.board().equals(place.stock() + " #1")
                            && copy.rect().x0() == place.from().nanometres()
                            && copy.rect().y0() == edge
                            && !copy.turned(),
                    Cause.CUT_FROM,
                    copy.pointer(),
                    rough.part().id() + " is to be cut from " + place.stock() + " at "
                            + Inspection.mm(place.from().nanometres()) + ", lies on " + copy.board() + " at "
                            + copy.rect().text());
        }
    }

    /** Pieces of one set that belong together lie on one board; spares belong to no set. */
    private void groups() {
        SortedMap<String, Set<String>> boards = new TreeMap<>();
        for (Rough rough : facts.roughs().values()) {
            Part part = rough.part();
            String group = part.group();
            if (group == null || part.selection().binding() == Binding.PAIRS) {
                continue;
            }
            for (Map.Entry<Integer, List<Census.Copy>> entry :
                    census.of(part.id()).headMap(facts.demand(part) + 1).entrySet()) {
                int set = Math.floorDiv(entry.getKey() - 1, part.quantity()) + 1;
                for (Census.Copy copy : entry.getValue()) {
                    boards.computeIfAbsent(group + ", set " + set, key -> new TreeSet<>())
                            .add(copy.board());
                }
            }
        }
        boards.forEach((who, where) -> inspection.require(
                where.size() == 1,
                Cause.GROUP,
                "/layouts",
                "group " + who + " must share one board, lies on " + where));
    }
}
