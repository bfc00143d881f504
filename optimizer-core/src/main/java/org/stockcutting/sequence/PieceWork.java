package org.stockcutting.sequence;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.blank.BlankPlanner;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.length.Length;
import org.stockcutting.part.Ends;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.pattern.Direction;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.SequenceStep.Piece;
import org.stockcutting.plan.SequenceStep.SawCut;
import org.stockcutting.plan.SequenceStep.SetUp;
import org.stockcutting.plan.SequenceStep.Wood;
import org.stockcutting.plan.StepKind;

/**
 * What happens to pieces once they have left their board: jointed, planed over size, left to rest, planed, ripped and crosscut to size;
 * staves and plies are glued before they get their size. The order is the one that trade articles give for milling by hand and machine.
 */
final class PieceWork {

    private static final String PLANER = "planer";

    private final Workshop workshop;
    private final ShapeWork shapes;
    private final Map<String, Map<Integer, Panel>> panels = new TreeMap<>();
    private @Nullable Task rest;

    /** A glued-up part in the making. */
    private static final class Panel {
        private final Route route;
        private final List<Task> members = new ArrayList<>();
        private Length length = Length.ZERO;
        private Length width = Length.ZERO;

        Panel(Route route) {
            this.route = route;
        }
    }

    PieceWork(Workshop workshop) {
        this.workshop = workshop;
        this.shapes = new ShapeWork(workshop);
    }

    /** Takes on a piece that is whole once a step is made, or at once. */
    void freed(PlacedPiece placed, Piece piece, String board, Length thickness, @Nullable Task freedBy) {
        Route route = workshop.route(piece.part());
        if (route == null) {
            return;
        }
        Task last = freedBy;
        if (route.isJointed()) {
            last = workshop.add(
                    Workshop.Draft.work(
                            StepKind.JOINT,
                            null,
                            board,
                            piece,
                            workshop.cautions().ofJoint(placed.length(), placed.width(), thickness)),
                    Task.Phase.SIZES,
                    last);
        }
        last = planed(route, placed, piece, board, last);
        Length width = placed.width();
        Length off = route.ripOff();
        if (off != null) {
            Length ripped = width.minus(off);
            last = sawn(
                    StepKind.RIP,
                    Direction.RIP,
                    board,
                    piece,
                    new Size(placed.length(), width, measured(route, thickness)),
                    ripped,
                    last);
            width = ripped;
        }
        if (route.isGlued()) {
            collect(route, piece, placed.length(), width, last);
            return;
        }
        if (route.part().shaping().ends() != null) {
            mitred(route, piece, board, new Size(placed.length(), width, measured(route, thickness)), last);
            return;
        }
        if (route.part().gang() > 1 && !route.part().isNested()) {
            cutApart(route, piece, board, new Size(placed.length(), width, measured(route, thickness)), last);
            return;
        }
        if (route.hasFinalCut()) {
            last = sawn(
                    StepKind.CROSSCUT,
                    Direction.CROSSCUT,
                    board,
                    piece,
                    new Size(placed.length(), width, measured(route, thickness)),
                    route.part().coreLength(),
                    last);
        }
        if (route.part().isNested()) {
            shapes.pair(route.part(), piece, board, last);
        } else {
            shapes.shape(route.part(), piece, board, last);
        }
    }

    /** A gang that is planed and ripped is cut into its parts, one after the other; each is marked and shaped for itself. */
    private void cutApart(Route route, Piece first, String board, Size gang, @Nullable Task before) {
        Length each = route.part().coreLength();
        Length step = each.plus(workshop.kerf(Direction.CROSSCUT));
        Size on = gang;
        Task last = before;
        for (int number : route.part().gangFrom(first.number())) {
            Piece piece = new Piece(first.part(), number, null);
            int behind = first.number() + route.part().gang() - 1 - number;
            if (behind == 0 && !on.length().isMoreThan(each)) {
                // Without an allowance the last cut has made two.
                shapes.shape(route.part(), piece, board, last);
                return;
            }
            if (behind == 0) {
                last = sawn(StepKind.CROSSCUT, Direction.CROSSCUT, board, piece, on, each, last);
            } else {
                Size left = new Size(on.length().minus(step), on.width(), on.thickness());
                Length needed = step.times(behind).minus(workshop.kerf(Direction.CROSSCUT));
                last = sawnOff(board, piece, on, left, each, left.length().minus(needed), last);
                on = left;
            }
            shapes.shape(route.part(), piece, board, last);
        }
    }

    /** Mitred parts come off their stick one after the other, each with both its ends; what is over falls behind the last. */
    private void mitred(Route route, Piece first, String board, Size stick, @Nullable Task before) {
        Part part = route.part();
        Ends ends = Objects.requireNonNull(part.shaping().ends());
        Length each = part.coreLength();
        Length kerf = workshop.kerf(Direction.CROSSCUT);
        Length pitch = BlankPlanner.pitch(workshop.job(), part);
        Size on = stick;
        Task last = before;
        for (int number : part.gangFrom(first.number())) {
            int behind = first.number() + part.gang() - 1 - number;
            Length rest = behind == 0 ? each : on.length().minus(pitch);
            Length needed =
                    behind == 0 ? each.plus(kerf) : pitch.times(behind - 1L).plus(each);
            Length slack = (behind == 0 ? on.length() : rest).minus(needed).max(Length.ZERO);
            Size left = new Size(rest, on.width(), on.thickness());
            Piece piece = new Piece(first.part(), number, null);
            last = workshop.add(
                    new Workshop.Draft(
                            StepKind.MITRE,
                            new SetUp("mitre-" + ends.angle().word(), each),
                            board,
                            new SawCut(Direction.CROSSCUT, on.wood(), each, null, left.wood(), slack),
                            piece,
                            null,
                            workshop.cautions().ofMitre(on.length(), ends.flip() && number > first.number()),
                            null,
                            null),
                    Task.Phase.SIZES,
                    last);
            on = left;
            shapes.shape(part, piece, board, last);
        }
    }

    private Task sawnOff(
            String board, Piece piece, Size on, Size left, Length each, Length slack, @Nullable Task before) {
        boolean measured = workshop.isBeyondStop(each);
        Block onSaw = new Block(Length.ZERO, Length.ZERO, on.length(), on.width());
        Block freed = new Block(Length.ZERO, Length.ZERO, each, on.width());
        SawCut saw = new SawCut(Direction.CROSSCUT, on.wood(), each, null, left.wood(), slack);
        return workshop.add(
                new Workshop.Draft(
                        StepKind.CROSSCUT,
                        measured ? null : new SetUp(Direction.CROSSCUT.word(), each),
                        board,
                        saw,
                        piece,
                        null,
                        workshop.cautions()
                                .ofCut(Direction.CROSSCUT, onSaw, freed, on.thickness(), !measured, false, false),
                        measured ? Reasons.MEASURED : null,
                        null),
                Task.Phase.SIZES,
                before);
    }

    /** Finished thickness; that of the board where it is taken as it comes. */
    private static Length measured(Route route, Length thickness) {
        return route.part().coreSection() instanceof Section.Measured finished ? finished.thickness() : thickness;
    }

    private @Nullable Task planed(Route route, PlacedPiece placed, Piece piece, String board, @Nullable Task before) {
        Length over = route.planeOver();
        Length to = route.planeTo();
        if (to == null) {
            return before;
        }
        String caution = workshop.cautions().ofPlane(placed.length(), placed.width());
        Task last = before;
        if (over != null) {
            last = workshop.add(
                    Workshop.Draft.work(StepKind.PLANE, new SetUp(PLANER, over), board, piece, caution),
                    Task.Phase.SIZES,
                    last);
            Task resting = rest();
            last.before(resting);
            last = resting;
        }
        return workshop.add(
                Workshop.Draft.work(StepKind.PLANE, new SetUp(PLANER, to), board, piece, caution),
                Task.Phase.SIZES,
                last);
    }

    private Task rest() {
        Task resting = rest;
        if (resting == null) {
            resting = workshop.add(Workshop.Draft.work(StepKind.REST, null, null, null, null), Task.Phase.SIZES, null);
            rest = resting;
        }
        return resting;
    }

    private void collect(Route route, Piece piece, Length length, Length width, @Nullable Task last) {
        Panel panel = panels.computeIfAbsent(piece.part(), id -> new TreeMap<>())
                .computeIfAbsent(piece.number(), n -> new Panel(route));
        panel.length = length;
        panel.width = route.rough().kind() == RoughPiece.Kind.STAVE ? panel.width.plus(width) : width;
        if (last != null) {
            panel.members.add(last);
        }
    }

    /** Glues what belongs together. Call this when all boards have been read. */
    void glue() {
        panels.forEach((part, copies) -> copies.forEach((number, panel) -> glue(new Piece(part, number, null), panel)));
    }

    private void glue(Piece piece, Panel panel) {
        Task last = workshop.add(Workshop.Draft.work(StepKind.GLUE, null, null, piece, null), Task.Phase.SIZES, null);
        for (Task member : panel.members) {
            member.before(last);
        }
        Route route = panel.route;
        Length thickness = route.panelPlaneTo();
        if (thickness != null) {
            last = workshop.add(
                    Workshop.Draft.work(
                            StepKind.PLANE,
                            new SetUp(PLANER, thickness),
                            null,
                            piece,
                            workshop.cautions().ofPlane(panel.length, panel.width)),
                    Task.Phase.SIZES,
                    last);
        }
        Length width = panel.width;
        if (route.part().coreSection() instanceof Section.Measured finished && width.isMoreThan(finished.width())) {
            Size size = new Size(panel.length, width, measured(route, Length.ZERO));
            last = sawn(StepKind.FINAL_TRIM, Direction.RIP, null, piece, size, finished.width(), last);
            width = finished.width();
        }
        if (route.hasFinalCut()) {
            Size size = new Size(panel.length, width, measured(route, Length.ZERO));
            last = sawn(
                    StepKind.FINAL_TRIM,
                    Direction.CROSSCUT,
                    null,
                    piece,
                    size,
                    route.part().coreLength(),
                    last);
        }
        shapes.shape(route.part(), piece, null, last);
    }

    /** A workpiece as it lies on the saw. */
    private record Size(Length length, Length width, Length thickness) {
        Wood wood() {
            return new Wood(Length.ZERO, Length.ZERO, length, width);
        }
    }

    private Task sawn(
            StepKind kind,
            Direction cut,
            @Nullable String board,
            Piece piece,
            Size on,
            Length to,
            @Nullable Task before) {
        boolean across = cut == Direction.CROSSCUT;
        boolean measured = across && workshop.isBeyondStop(to);
        Size left = across ? new Size(to, on.width(), on.thickness()) : new Size(on.length(), to, on.thickness());
        Length off = (across ? on.length() : on.width()).minus(to);
        Block onSaw = new Block(Length.ZERO, Length.ZERO, on.length(), on.width());
        Block kept = new Block(Length.ZERO, Length.ZERO, left.length(), left.width());
        String caution = workshop.cautions().ofCut(cut, onSaw, kept, on.thickness(), !measured, false, false);
        SawCut saw = new SawCut(
                cut,
                on.wood(),
                to,
                null,
                left.wood(),
                off.minus(workshop.kerf(cut)).max(Length.ZERO));
        return workshop.add(
                new Workshop.Draft(
                        kind,
                        measured ? null : new SetUp(cut.word(), to),
                        board,
                        saw,
                        piece,
                        null,
                        caution,
                        measured ? Reasons.MEASURED : null,
                        null),
                Task.Phase.SIZES,
                before);
    }
}
