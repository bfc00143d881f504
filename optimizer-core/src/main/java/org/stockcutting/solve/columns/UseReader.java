package org.stockcutting.solve.columns;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Region;

/** Reads layouts back into patterns; what is no plain row of pieces, or lies around bad zones, is kept as it is. */
final class UseReader {

    private final LineModel model;
    private final List<Cut> cuts = new ArrayList<>();
    private final List<Answer.PatternUse> fixed = new ArrayList<>();

    UseReader(LineModel model, List<Answer.PatternUse> uses) {
        this.model = model;
        for (Answer.PatternUse use : uses) {
            Pattern pattern = pattern(use);
            if (pattern == null) {
                fixed.add(use);
            } else {
                cuts.add(new Cut(pattern, use.copies()));
            }
        }
    }

    List<Cut> cuts() {
        return cuts;
    }

    List<Answer.PatternUse> fixed() {
        return fixed;
    }

    private @Nullable Pattern pattern(Answer.PatternUse use) {
        Line line = model.lines.get(use.stock());
        int[] pieces = new int[model.instance.items().size()];
        if (line.hasZones || !count(use.layout(), pieces)) {
            return null;
        }
        TreeMap<Integer, Integer> counts = counts(model, pieces);
        for (int piece : pieces) {
            if (piece != 0) {
                return null;
            }
        }
        long size = 0;
        for (var entry : counts.entrySet()) {
            size += entry.getValue() * model.units.get(entry.getKey()).size();
            if (!model.takes[line.index][entry.getKey()]) {
                return null;
            }
        }
        boolean sound = !counts.isEmpty() && size <= line.capacity && line.isSafe(size, model.longestPiece(counts));
        return sound ? model.follow(line, counts) : null;
    }

    /** Whole units made of pieces by item, which are taken away. */
    static TreeMap<Integer, Integer> counts(LineModel model, int[] pieces) {
        TreeMap<Integer, Integer> counts = new TreeMap<>();
        for (int u = 0; u < model.units.size(); u++) {
            int copies = copies(model.units.get(u), pieces);
            if (copies > 0) {
                counts.put(u, copies);
            }
        }
        return counts;
    }

    /** How many whole units the pieces make, which are taken away. */
    private static int copies(Unit unit, int[] pieces) {
        int copies = 0;
        while (true) {
            for (int i = 0; i < unit.items().length; i++) {
                if (pieces[unit.items()[i]]-- <= 0) {
                    for (int k = 0; k <= i; k++) {
                        pieces[unit.items()[k]]++;
                    }
                    return copies;
                }
            }
            copies++;
        }
    }

    /** Counts the items; false if they are not one row. */
    private static boolean count(Region region, int[] pieces) {
        if (region instanceof Region.Item item) {
            pieces[item.item()]++;
            return !item.turned();
        }
        Region.Split split = (Region.Split) region;
        if (!split.crosscut() && split.parts().size() > 1) {
            return false;
        }
        return split.parts().stream().allMatch(part -> count(part, pieces));
    }
}
