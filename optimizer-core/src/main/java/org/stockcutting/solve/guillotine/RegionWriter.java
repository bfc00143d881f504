package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Region;

/** Turns trees into regions with real extents; every cut is a split of its own, so a piece always fills the part it lies in. */
final class RegionWriter {

    private final Model model;

    RegionWriter(Model model) {
        this.model = model;
    }

    /** Equal boards become one use; stocks in their order, within a stock the fuller boards first. */
    List<Answer.PatternUse> uses(Draft draft) {
        List<Board> boards = new ArrayList<>(draft.boards);
        boards.sort((a, b) -> a.stock != b.stock ? Integer.compare(a.stock, b.stock) : Double.compare(b.area, a.area));
        Map<Answer.PatternUse, Integer> copies = new LinkedHashMap<>();
        for (Board board : boards) {
            board.yard.count(300L * board.root.pieces);
            copies.merge(new Answer.PatternUse(board.stock, 1, region(board.root, 0, 0)), 1, Integer::sum);
        }
        List<Answer.PatternUse> uses = new ArrayList<>();
        copies.forEach((use, many) -> uses.add(new Answer.PatternUse(use.stock(), many, use.layout())));
        return uses;
    }

    private Region region(Cell cell, long x, long y) {
        long length = cell.length - model.kerfX;
        long width = cell.width - model.kerfY;
        if (cell.isPiece()) {
            return new Region.Item(cell.type(), cell.turned, x, y, length, width);
        }
        List<Region> parts = new ArrayList<>();
        long at = cell.crosscut ? x : y;
        for (Cell part : cell.parts) {
            if (!part.isRest()) {
                parts.add(region(part, cell.crosscut ? at : x, cell.crosscut ? y : at));
            }
            at += part.along(cell.crosscut);
        }
        return new Region.Split(cell.crosscut, x, y, length, width, parts);
    }
}
