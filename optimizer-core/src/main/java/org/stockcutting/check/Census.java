package org.stockcutting.check;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Layout;

/**
 * Every single copy in the plan: which number and member it is, how wide, and on which physical board.
 *
 * @param copies by part id, then number
 */
record Census(SortedMap<String, SortedMap<Integer, List<Copy>>> copies) {

    /** One rough piece on one physical board, named as in documents. */
    record Copy(int member, long width, String board, String pointer, Rect rect, boolean turned) {}

    static Census of(List<Layout> layouts, Facts facts, Inspection inspection) {
        SortedMap<String, SortedMap<Integer, List<Copy>>> copies = new TreeMap<>();
        SortedMap<String, Integer> boards = new TreeMap<>();
        for (int i = 0; i < layouts.size(); i++) {
            Layout layout = layouts.get(i);
            int first = boards.getOrDefault(layout.stock(), 0);
            for (int p = 0; p < layout.pieces().size(); p++) {
                String at = "/layouts/" + i + "/pieces/" + p;
                Rough rough = facts.roughs().get(layout.pieces().get(p).part());
                if (rough != null) {
                    add(copies, layout, layout.pieces().get(p), rough, first, at, inspection);
                }
            }
            boards.put(layout.stock(), (int) Math.min(Integer.MAX_VALUE, (long) first + Math.max(0, layout.repeat())));
        }
        return new Census(Collections.unmodifiableSortedMap(copies));
    }

    private static void add(
            SortedMap<String, SortedMap<Integer, List<Copy>>> copies,
            Layout layout,
            PlacedPiece piece,
            Rough rough,
            int first,
            String at,
            Inspection inspection) {
        int repeat = layout.repeat();
        if (piece.numbers().size() != repeat) {
            inspection.report(
                    Cause.COUNT,
                    at + "/numbers",
                    "needs one number a board, " + repeat + "; got "
                            + piece.numbers().size());
            return;
        }
        boolean whole = rough.kind() == Rough.Kind.WHOLE;
        if (piece.members().size() != (whole ? 0 : repeat)) {
            inspection.report(
                    Cause.MEMBERS,
                    at,
                    whole
                            ? "is cut whole and has no staves or plies"
                            : "needs one stave or ply a board, " + repeat + "; got "
                                    + piece.members().size());
            return;
        }
        for (int k = 0; k < repeat; k++) {
            inspection.require(
                    Math.floorMod(piece.numbers().get(k) - 1, rough.gang()) == 0,
                    Cause.NUMBER,
                    at + "/numbers",
                    "gangs of " + rough.gang() + " begin with 1, " + (1L + rough.gang()) + " and so on; got "
                            + piece.numbers().get(k));
            for (int g = 0; g < rough.gang(); g++) {
                // Far beyond any demand the number only has to stay too large.
                int number =
                        (int) Math.min(Integer.MAX_VALUE, (long) piece.numbers().get(k) + g);
                copies.computeIfAbsent(piece.part(), id -> new TreeMap<>())
                        .computeIfAbsent(number, n -> new ArrayList<>())
                        .add(new Copy(
                                whole ? 0 : piece.members().get(k),
                                piece.width().nanometres(),
                                layout.stock() + " #" + (first + k + 1),
                                at,
                                Rect.of(piece),
                                piece.turned()));
            }
        }
    }

    SortedMap<Integer, List<Copy>> of(String part) {
        return copies.getOrDefault(part, Collections.emptySortedMap());
    }

    /** Finished pieces placed that count as demand. */
    int placed(Rough rough, int demand) {
        return of(rough.part().id()).headMap(demand + 1).size();
    }
}
