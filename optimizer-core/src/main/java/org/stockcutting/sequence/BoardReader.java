package org.stockcutting.sequence;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Machines;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.Direction;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.SequenceStep.Piece;
import org.stockcutting.plan.SequenceStep.SawCut;
import org.stockcutting.plan.SequenceStep.SetUp;
import org.stockcutting.plan.StepKind;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;

/** Reads the cut tree of one board into steps that wait for each other, and hands on the pieces that come off it. */
final class BoardReader {

    private final Workshop workshop;
    private final PieceWork pieceWork;
    private final Layout layout;
    private final int copy;
    private final String board;
    private final boolean sheet;
    private final Machines.@Nullable Breakdown breakdown;
    private final Slack slack;
    private final Reasons reasons;
    private final Map<Place, PlacedPiece> pieces = new HashMap<>();

    private record Place(String part, Length x, Length y) {}

    /** A stick on the saw: pieces first to last of a node, of which one is taken off. */
    private record Stick(CutNode.Cuts node, Block block, int first, int last, boolean far) {
        int taken() {
            return far ? last : first;
        }

        /** The slot that takes it off. */
        CutNode.Slot slot() {
            return node.slots().get(far ? last - 1 : first);
        }

        int leftFirst() {
            return far ? first : first + 1;
        }

        int leftLast() {
            return far ? last - 1 : last;
        }

        Block onSaw() {
            return block.pieces(node, first, last);
        }

        Block freed() {
            return block.piece(node, taken());
        }

        Block left() {
            return block.pieces(node, leftFirst(), leftLast());
        }

        boolean isLastCut() {
            return last == first + 1;
        }

        CutNode takenNode() {
            return node.pieces().get(taken());
        }
    }

    /**
     * A reader.
     *
     * @param workshop where the steps go
     * @param pieceWork where the pieces go
     * @param layout how the board is cut
     * @param copy which of the layout's equal boards it is, from 0
     * @param board {@code {stock} #k}
     */
    BoardReader(Workshop workshop, PieceWork pieceWork, Layout layout, int copy, String board) {
        this.workshop = workshop;
        this.pieceWork = pieceWork;
        this.layout = layout;
        this.copy = copy;
        this.board = board;
        StockItem stock = workshop.stock(layout.stock());
        this.sheet = stock != null && stock.form() == Form.SHEET;
        this.breakdown = workshop.job().shop().machines().breakdown();
        this.slack = new Slack(workshop.job(), stock, layout);
        this.reasons = new Reasons(workshop.job().writing().unit().isImperial());
        for (PlacedPiece piece : layout.pieces()) {
            pieces.put(new Place(piece.part(), piece.x(), piece.y()), piece);
        }
    }

    void read() {
        Block raw = new Block(Length.ZERO, Length.ZERO, layout.length(), layout.width());
        read(layout.cuts(), raw, null, sheet && breakdown != null);
    }

    private void read(CutNode node, Block block, @Nullable Task freedBy, boolean breaksDown) {
        if (node instanceof CutNode.PartLeaf) {
            Piece piece = partAt(node, block);
            PlacedPiece placed = placedAt(node, block);
            if (piece != null && placed != null) {
                pieceWork.freed(placed, piece, board, layout.thickness(), freedBy);
            }
        } else if (node instanceof CutNode.Cuts cuts) {
            row(cuts, block, freedBy, breaksDown);
        }
    }

    private void row(CutNode.Cuts node, Block block, @Nullable Task freedBy, boolean breaksDown) {
        Task.Phase phase = breaksDown ? Task.Phase.BREAKDOWN : sheet ? Task.Phase.SHEETS : Task.Phase.SIZES;
        // Squaring alone does not break a sheet down: the first cuts are those behind it.
        boolean on = breaksDown && onlyTrims(node);
        boolean[] order =
                RowOrder.of(node, block, workshop.job().shop().limits().minimumPiece());
        List<Task> row = new ArrayList<>();
        Task before = freedBy;
        int first = 0;
        int last = node.slots().size();
        for (boolean far : order) {
            Stick stick = new Stick(node, block, first, last, far);
            before = workshop.add(draft(stick, breaksDown), phase, before);
            row.add(before);
            read(stick.takenNode(), stick.freed(), before, on);
            first = stick.leftFirst();
            last = stick.leftLast();
        }
        read(node.pieces().get(first), block.piece(node, first), before, on);
        countRuns(row);
    }

    /** Cuts to a drawn line do not end a run. */
    private static void countRuns(List<Task> row) {
        SetUp behind = null;
        int run = 0;
        for (int i = row.size() - 1; i >= 0; i--) {
            SetUp own = row.get(i).setUp();
            if (own != null) {
                run = own.equals(behind) ? run + 1 : 1;
                behind = own;
                row.get(i).makeRun(run);
            }
        }
    }

    private static boolean onlyTrims(CutNode.Cuts node) {
        return node.pieces().stream()
                        .filter(piece -> piece != CutNode.RestLeaf.TRIM && piece != CutNode.RestLeaf.SLIVER)
                        .count()
                == 1;
    }

    private Workshop.Draft draft(Stick stick, boolean breaksDown) {
        Direction cut = stick.node().cut();
        StepKind kind = kind(stick);
        boolean atStop = !breaksDown
                && (kind == StepKind.RIP || kind == StepKind.CROSSCUT)
                && RowOrder.holdsPart(stick.takenNode())
                && stop(stick).isPositive()
                && !(kind == StepKind.CROSSCUT && workshop.isBeyondStop(stop(stick)));
        Piece own = partAt(stick.takenNode(), stick.freed());
        Piece other = stick.isLastCut() ? partAt(stick.node().pieces().get(stick.leftFirst()), stick.left()) : null;
        boolean rawEdge = !sheet
                && (isRaw(stick.onSaw().fromY(), layout.width())
                        || isRaw(stick.onSaw().toY(), layout.width()));
        return new Workshop.Draft(
                kind,
                atStop ? new SetUp(cut.word(), stop(stick)) : null,
                board,
                new SawCut(
                        cut,
                        stick.onSaw().wood(),
                        stick.slot().from(),
                        stick.slot().to(),
                        stick.left().isEmpty() ? null : stick.left().wood(),
                        slack.of(stick.node(), stick.block(), stick.leftFirst(), stick.leftLast(), stick.far())),
                own == null ? other : own,
                own == null ? null : other,
                breaksDown && breakdown != null
                        ? workshop.cautions().ofBreakdown(breakdown, kind == StepKind.TRIM)
                        : workshop.cautions()
                                .ofCut(cut, stick.onSaw(), stick.freed(), layout.thickness(), atStop, rawEdge, sheet),
                reason(stick, kind),
                null);
    }

    private static boolean isRaw(Length edge, Length width) {
        return edge.isZero() || edge.equals(width);
    }

    private StepKind kind(Stick stick) {
        CutNode taken = stick.takenNode();
        boolean trims = taken == CutNode.RestLeaf.TRIM
                || (taken == CutNode.RestLeaf.SLIVER && (stick.far() || stick.taken() == 0));
        if (trims) {
            return StepKind.TRIM;
        }
        if (stick.node().cut() == Direction.RIP) {
            return StepKind.RIP;
        }
        boolean rough = RowOrder.holdsPart(taken)
                && isRough(taken, stick.freed())
                && (!stick.isLastCut() || isRough(stick.node().pieces().get(stick.leftFirst()), stick.left()));
        return rough ? StepKind.ROUGH_CROSSCUT : StepKind.CROSSCUT;
    }

    /** True if every part in a block is longer along the board than it will be in the end. */
    private boolean isRough(CutNode node, Block block) {
        if (node instanceof CutNode.Cuts cuts) {
            for (int i = 0; i < cuts.pieces().size(); i++) {
                if (!isRough(cuts.pieces().get(i), block.piece(cuts, i))) {
                    return false;
                }
            }
            return true;
        }
        PlacedPiece piece = placedAt(node, block);
        Route route = piece == null ? null : workshop.route(piece.part());
        if (piece == null || route == null) {
            return !(node instanceof CutNode.PartLeaf);
        }
        return piece.turned() ? route.hasWidthAllowance() : route.hasLengthAllowance();
    }

    /**
     * Between fence and blade lies the piece; what is behind it where the piece is wider than the saw reaches. Nothing may be behind it:
     * then the edge is taken off along a drawn line.
     */
    private Length stop(Stick stick) {
        Length piece = stick.freed().extent(stick.node().cut());
        Length reach = workshop.job().shop().limits().ripCapacity();
        boolean other = stick.node().cut() == Direction.RIP && reach != null && piece.isMoreThan(reach);
        return other ? stick.left().extent(Direction.RIP) : piece;
    }

    private @Nullable String reason(Stick stick, StepKind kind) {
        if (kind != StepKind.CROSSCUT && kind != StepKind.ROUGH_CROSSCUT) {
            return null;
        }
        Length freed = stick.freed().length();
        boolean longerStays = RowOrder.holdsPart(stick.takenNode())
                && longestPart(stick.node(), stick.block(), stick.leftFirst(), stick.leftLast())
                        .isMoreThan(freed);
        boolean final_ = kind == StepKind.CROSSCUT && isPlanedLater(stick.takenNode());
        boolean measured =
                kind == StepKind.CROSSCUT && RowOrder.holdsPart(stick.takenNode()) && workshop.isBeyondStop(freed);
        return reasons.of(freed, longerStays, stick.far(), final_, measured);
    }

    private boolean isPlanedLater(CutNode node) {
        if (node instanceof CutNode.Cuts cuts) {
            return cuts.pieces().stream().anyMatch(this::isPlanedLater);
        }
        Route route = node instanceof CutNode.PartLeaf leaf ? workshop.route(leaf.part()) : null;
        return route != null && route.planeTo() != null;
    }

    private static Length longestPart(CutNode.Cuts node, Block block, int first, int last) {
        Length longest = Length.ZERO;
        for (int i = first; i <= last; i++) {
            CutNode piece = node.pieces().get(i);
            Block place = block.piece(node, i);
            if (piece instanceof CutNode.PartLeaf) {
                longest = longest.max(place.length());
            } else if (piece instanceof CutNode.Cuts cuts) {
                longest = longest.max(longestPart(cuts, place, 0, cuts.pieces().size() - 1));
            }
        }
        return longest;
    }

    private @Nullable PlacedPiece placedAt(CutNode node, Block block) {
        return node instanceof CutNode.PartLeaf leaf
                ? pieces.get(new Place(leaf.part(), block.fromX(), block.fromY()))
                : null;
    }

    private @Nullable Piece partAt(CutNode node, Block block) {
        PlacedPiece piece = placedAt(node, block);
        if (piece == null || copy >= piece.numbers().size()) {
            return null;
        }
        Integer member = copy < piece.members().size() ? piece.members().get(copy) : null;
        return new Piece(piece.part(), piece.numbers().get(copy), member);
    }
}
