package org.stockcutting.sequence;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.Direction;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.SequenceStep;

/** Reads the cut trees of boards into cuts that wait for each other. */
final class BoardReader {

    private final Cautions cautions;
    private final List<Cut> cuts = new ArrayList<>();
    private final List<Cut> heads = new ArrayList<>();

    private String board = "";
    private int copy;
    private Map<Place, PlacedPiece> pieces = Map.of();

    private record Place(String part, Length x, Length y) {}

    BoardReader(Cautions cautions) {
        this.cautions = cautions;
    }

    /**
     * Reads one board.
     *
     * @param layout how it is cut
     * @param copyOfLayout which of the layout's equal boards it is, from 0
     * @param name {@code {stock} #k}
     */
    void read(Layout layout, int copyOfLayout, String name) {
        board = name;
        copy = copyOfLayout;
        pieces = new HashMap<>();
        for (PlacedPiece piece : layout.pieces()) {
            pieces.put(new Place(piece.part(), piece.x(), piece.y()), piece);
        }
        Block whole = new Block(Length.ZERO, Length.ZERO, layout.length(), layout.width());
        heads.addAll(read(layout.cuts(), whole));
    }

    /** Every cut of the boards read so far, none before one that it waits for. */
    List<Cut> cuts() {
        return cuts;
    }

    /** The cuts that can be made at once. */
    List<Cut> heads() {
        return heads;
    }

    /** The cuts that can be made as soon as a block is free. */
    private List<Cut> read(CutNode node, Block block) {
        if (!(node instanceof CutNode.Cuts divided)) {
            return List.of();
        }
        int slots = divided.slots().size();
        if (slots == 0) {
            return read(divided.pieces().get(0), block);
        }
        List<Cut> row = new ArrayList<>();
        for (int i = 0; i < slots; i++) {
            Cut cut = new Cut(cuts.size(), step(divided, block, i));
            cuts.add(cut);
            row.add(cut);
            if (i > 0) {
                row.get(i - 1).next().add(cut);
            }
            cut.next().addAll(read(divided.pieces().get(i), block.piece(divided, i)));
        }
        row.get(slots - 1).next().addAll(read(divided.pieces().get(slots), block.piece(divided, slots)));
        countRuns(row);
        return List.of(row.get(0));
    }

    /** Cuts to a drawn line do not end a run. */
    private static void countRuns(List<Cut> row) {
        SequenceStep.SetUp behind = null;
        int run = 0;
        for (int i = row.size() - 1; i >= 0; i--) {
            SequenceStep.SetUp own = row.get(i).setUp();
            if (own != null) {
                run = own.equals(behind) ? run + 1 : 1;
                behind = own;
                row.get(i).makeRun(run);
            }
        }
    }

    private SequenceStep step(CutNode.Cuts node, Block block, int i) {
        Direction cut = node.cut();
        Block freed = block.piece(node, i);
        boolean trim = isTrim(node, i);
        boolean atStop = !trim && holdsPart(node.pieces().get(i));
        SequenceStep.SetUp setUp =
                atStop ? new SequenceStep.SetUp(cut.word(), freed.to(cut).minus(freed.from(cut))) : null;
        PlacedPiece piece = freedPart(node, block, i);
        return new SequenceStep(
                0,
                trim ? "trim" : cut.word(),
                setUp,
                board,
                node.slots().get(i).from(),
                piece == null ? null : piece.part(),
                piece == null || copy >= piece.numbers().size()
                        ? null
                        : piece.numbers().get(copy),
                cautions.of(cut, block.underCut(node, i), freed, atStop));
    }

    /** The part that is whole after cut i; where the last cut frees two, the one nearer the origin. */
    private @Nullable PlacedPiece freedPart(CutNode.Cuts node, Block block, int i) {
        PlacedPiece own = partAt(node.pieces().get(i), block.piece(node, i));
        boolean last = i == node.slots().size() - 1;
        return own == null && last ? partAt(node.pieces().get(i + 1), block.piece(node, i + 1)) : own;
    }

    private @Nullable PlacedPiece partAt(CutNode node, Block block) {
        return node instanceof CutNode.PartLeaf leaf
                ? pieces.get(new Place(leaf.part(), block.fromX(), block.fromY()))
                : null;
    }

    /**
     * A first-end trim takes off a trim leaf, or nothing but its own slot. A far-end trim is one only behind a block that is cut further
     * and has nothing else beside it: else the same cut frees a piece at a stop.
     */
    private static boolean isTrim(CutNode.Cuts node, int i) {
        CutNode off = node.pieces().get(i);
        if (off == CutNode.RestLeaf.TRIM || (i == 0 && off == CutNode.RestLeaf.SLIVER)) {
            return true;
        }
        boolean last = i == node.slots().size() - 1;
        return last
                && off instanceof CutNode.Cuts
                && isTrimmedOff(node.pieces().get(i + 1))
                && node.pieces().stream().filter(piece -> !isTrimmedOff(piece)).count() == 1;
    }

    private static boolean isTrimmedOff(CutNode node) {
        return node == CutNode.RestLeaf.TRIM || node == CutNode.RestLeaf.SLIVER;
    }

    private static boolean holdsPart(CutNode node) {
        return node instanceof CutNode.PartLeaf
                || (node instanceof CutNode.Cuts cuts && cuts.pieces().stream().anyMatch(BoardReader::holdsPart));
    }
}
