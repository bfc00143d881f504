package org.stockcutting.wood;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.stockcutting.material.WoodClass;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Layout;

/**
 * Whether the plan's own layouts can be cut from the boards that were drawn: each layout needs a board of its stock without a bad zone
 * where a piece lies. A matching in a bipartite graph, by augmenting paths.
 */
final class AsPlanned {

    private record Cut(int kind, List<PlacedPiece> pieces) {}

    private final List<Cut> cuts = new ArrayList<>();
    private final Map<String, WoodClass> classes = new HashMap<>();

    AsPlanned(Group group) {
        group.pieces()
                .forEach(piece -> classes.put(piece.part().id(), piece.part().woodClass()));
        for (int k = 0; k < group.bought().size(); k++) {
            for (Layout layout : group.layouts()) {
                if (layout.stock().equals(group.bought().get(k).id())) {
                    for (int i = 0; i < layout.repeat(); i++) {
                        cuts.add(new Cut(k, layout.pieces()));
                    }
                }
            }
        }
    }

    /** True if every layout has a board. */
    boolean fits(List<Line> boards) {
        int[] cutOf = new int[boards.size()];
        java.util.Arrays.fill(cutOf, -1);
        for (int c = 0; c < cuts.size(); c++) {
            if (!match(c, boards, cutOf, new boolean[boards.size()])) {
                return false;
            }
        }
        return true;
    }

    private boolean match(int cut, List<Line> boards, int[] cutOf, boolean[] seen) {
        for (int b = 0; b < boards.size(); b++) {
            if (!seen[b] && canCut(cuts.get(cut), boards.get(b))) {
                seen[b] = true;
                if (cutOf[b] < 0 || match(cutOf[b], boards, cutOf, seen)) {
                    cutOf[b] = cut;
                    return true;
                }
            }
        }
        return false;
    }

    private boolean canCut(Cut cut, Line board) {
        if (cut.kind() != board.kind()) {
            return false;
        }
        for (PlacedPiece piece : cut.pieces()) {
            WoodClass woodClass = classes.getOrDefault(piece.part(), WoodClass.CLEAR);
            if (!board.isClear(piece.x(), piece.extentX(), woodClass)) {
                return false;
            }
        }
        return true;
    }
}
