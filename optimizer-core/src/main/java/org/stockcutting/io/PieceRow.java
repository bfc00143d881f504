package org.stockcutting.io;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;

/**
 * One rough piece on one board.
 *
 * @param part id of the part
 * @param number which copy of the part
 * @param member which stave or ply of it, or 0
 * @param gang how many parts it becomes, numbered on from this one
 * @param board {@code {stock} #k}
 * @param piece where it lies
 * @param thickness raw thickness of the board
 */
record PieceRow(String part, int number, int member, int gang, String board, PlacedPiece piece, Length thickness) {

    /** All pieces of a plan, by part, number and member. */
    static List<PieceRow> of(Job job, CuttingPlan plan) {
        Map<String, Integer> gangs = new HashMap<>();
        job.parts().forEach(part -> gangs.put(part.id(), part.gang()));
        Map<String, Integer> boards = new HashMap<>();
        List<PieceRow> rows = new ArrayList<>();
        for (Layout layout : plan.layouts()) {
            for (int copy = 0; copy < layout.repeat(); copy++) {
                String board = layout.stock() + " #" + boards.merge(layout.stock(), 1, Integer::sum);
                for (PlacedPiece piece : layout.pieces()) {
                    int member = piece.members().isEmpty() ? 0 : piece.members().get(copy);
                    rows.add(new PieceRow(
                            piece.part(),
                            piece.numbers().get(copy),
                            member,
                            gangs.getOrDefault(piece.part(), 1),
                            board,
                            piece,
                            layout.thickness()));
                }
            }
        }
        rows.sort(Comparator.comparing(PieceRow::part)
                .thenComparingInt(PieceRow::number)
                .thenComparingInt(PieceRow::member));
        return rows;
    }
}
