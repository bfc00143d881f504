package org.stockcutting.solve.columns;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.Region;

/** Turns a packing into the answer's layouts. */
final class LayoutWriter {

    private final LineModel model;

    LayoutWriter(LineModel model) {
        this.model = model;
    }

    /** Uses in order of stock, equal layouts joined. */
    List<Answer.PatternUse> uses(Packing packing) {
        Map<Region, Integer> layouts = new LinkedHashMap<>();
        List<List<Answer.PatternUse>> byStock = new ArrayList<>();
        for (Line line : model.lines) {
            layouts.clear();
            for (int i = 0; i < packing.patterns.size(); i++) {
                Pattern pattern = packing.patterns.get(i);
                if (pattern.line() == line.index && pattern.units().length > 0) {
                    layouts.merge(layout(line, pattern), packing.copies.get(i), Integer::sum);
                }
            }
            List<Answer.PatternUse> uses = new ArrayList<>();
            layouts.forEach((layout, copies) -> uses.add(new Answer.PatternUse(line.index, copies, layout)));
            byStock.add(uses);
        }
        return byStock.stream().flatMap(List::stream).toList();
    }

    private Region layout(Line line, Pattern pattern) {
        List<Region> parts = pattern.spots() == null ? row(line, pattern) : placed(line, pattern.spots());
        return new Region.Split(true, 0, 0, line.stock.length(), line.stock.width(), parts);
    }

    /** Longest first; where the saw needs a minimum length the longest comes last, so that the shorter ones are cut from it. */
    private List<Region> row(Line line, Pattern pattern) {
        List<Integer> pieces = new ArrayList<>();
        for (int i = 0; i < pattern.units().length; i++) {
            for (int item : model.units.get(pattern.units()[i]).items()) {
                pieces.addAll(Collections.nCopies(pattern.counts()[i], item));
            }
        }
        pieces.sort(Comparator.<Integer>comparingLong(
                        i -> -model.instance.items().get(i).length())
                .thenComparingInt(i -> i));
        if (model.instance.limits().minimumPiece() > 0) {
            pieces.add(pieces.remove(0));
        }
        List<Region> parts = new ArrayList<>();
        long x = 0;
        for (int item : pieces) {
            Region part = piece(line, item, x);
            parts.add(part);
            x += part.length() + model.kerf;
        }
        return parts;
    }

    private List<Region> placed(Line line, Pattern.Spots spots) {
        List<Region> parts = new ArrayList<>();
        for (int p = 0; p < spots.items().length; p++) {
            parts.add(piece(line, spots.items()[p], spots.starts()[p]));
        }
        return parts;
    }

    private Region piece(Line line, int item, long x) {
        ItemType type = model.instance.items().get(item);
        long width = type.width() == 0 ? line.stock.width() : type.width();
        return new Region.Item(item, false, x, 0, type.length(), width);
    }
}
