package org.stockcutting.check;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.part.Ends;
import org.stockcutting.part.Part;
import org.stockcutting.pattern.Direction;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.SequenceStep.Piece;
import org.stockcutting.plan.SequenceStep.SawCut;
import org.stockcutting.plan.SequenceStep.SetUp;
import org.stockcutting.plan.SequenceStep.Wood;
import org.stockcutting.plan.StepKind;

/** Pieces that have left their boards, and what the steps do to them. */
final class Benchwork {

    private final Facts facts;
    private final Map<Piece, Workpiece> pieces = new LinkedHashMap<>();
    private final Map<String, Milling> millings = new HashMap<>();
    private int rests;

    Benchwork(Facts facts) {
        this.facts = facts;
        facts.roughs().forEach((part, rough) -> millings.put(part, Milling.of(rough, facts.job())));
    }

    void put(Piece piece, PlacedPiece placed, String board, long thickness) {
        Milling milling = millings.get(piece.part());
        if (milling != null) {
            Workpiece work = new Workpiece(
                    milling,
                    board,
                    false,
                    piece.number(),
                    placed.length().nanometres(),
                    placed.width().nanometres(),
                    thickness);
            pieces.put(piece, work);
            if (milling.rough().isPair()) {
                Workpiece other = work.parted(piece.number() + 1, work.length, 1);
                work.joinedBy(other);
                pieces.put(new Piece(piece.part(), piece.number() + 1, null), other);
            } else {
                work.parts = milling.rough().gang();
            }
        }
    }

    /** Makes a step that needs no board; what is wrong with it goes to the list. */
    void make(SequenceStep step, List<String> wrong) {
        Piece piece = step.piece();
        if (step.kind() == StepKind.REST) {
            rests++;
            return;
        }
        if (step.kind() == StepKind.GLUE && piece != null) {
            glue(piece, wrong);
            return;
        }
        Workpiece work = piece == null ? null : pieces.get(piece);
        if (work == null) {
            wrong.add("the piece it works on is not there now");
            return;
        }
        if (step.board() != null ? !step.board().equals(work.board) : work.board != null) {
            wrong.add("the piece comes from " + (work.board == null ? "several boards" : work.board));
        }
        boolean shaped = step.kind() == StepKind.MARK || step.kind() == StepKind.BORE || step.kind() == StepKind.TAPER;
        if (!work.first && work.mate != null && (!shaped || step.kind() == StepKind.TAPER)) {
            wrong.add("lies in one blank with the number before it, and is worked on by itself");
        }
        switch (step.kind()) {
            case JOINT -> joint(work, wrong);
            case PLANE -> plane(work, step.setUp(), wrong);
            case RIP, CROSSCUT, FINAL_TRIM -> {
                if (work.parts > 1 && step.kind() == StepKind.CROSSCUT && piece != null) {
                    cutApart(piece, work, step, wrong);
                } else {
                    saw(work, step, wrong);
                }
            }
            case MITRE -> {
                if (piece != null) {
                    mitre(piece, work, step, wrong);
                }
            }
            case MARK, BORE, TAPER -> shape(work, step, wrong);
            default -> wrong.add("a " + step.kind().word() + " is not done to a piece that is whole");
        }
        if (step.kind() == StepKind.TAPER) {
            work.part();
        } else if (!shaped) {
            work.shareWood();
        }
    }

    private static void shape(Workpiece work, SequenceStep step, List<String> wrong) {
        Due due = work.due.stream().filter(own -> own.is(step)).findFirst().orElse(null);
        if (due == null) {
            wrong.add("no such " + step.kind().word() + " is due on this piece, or it is made already");
            return;
        }
        work.due.remove(due);
        due.judge(work, work.due, wrong);
    }

    private static void joint(Workpiece work, List<String> wrong) {
        if (work.panel || work.planed || work.planedOverAt >= 0) {
            wrong.add("is jointed too late");
        }
        work.jointed = true;
    }

    private void plane(Workpiece work, @Nullable SetUp setUp, List<String> wrong) {
        long to = setUp == null ? -1 : setUp.stop().nanometres();
        long target = work.panel ? work.milling.thickness() : work.milling.pieceThickness();
        if (setUp == null
                || !setUp.machine().equals("planer")
                || work.isFlat()
                || to < target
                || to >= work.thickness) {
            wrong.add("there is nothing to plane to that thickness");
            return;
        }
        if (!work.panel && !work.jointed) {
            wrong.add("is planed before it is jointed");
        }
        if (to > target) {
            work.planedOverAt = rests;
        } else {
            boolean rested = work.planedOverAt >= 0 && work.planedOverAt < rests;
            if (!work.panel && work.milling.rests() && !rested) {
                wrong.add("is planed to its thickness without a rest after the first planing");
            }
            work.planed = true;
        }
        work.thickness = to;
    }

    private void saw(Workpiece work, SequenceStep step, List<String> wrong) {
        SawCut cut = step.cut();
        if (cut == null) {
            wrong.add("does not say where the saw goes");
            return;
        }
        boolean across = cut.direction() == Direction.CROSSCUT;
        StepKind kind = work.panel ? StepKind.FINAL_TRIM : across ? StepKind.CROSSCUT : StepKind.RIP;
        if (step.kind() != kind) {
            wrong.add("this is a " + kind.word() + ", says " + step.kind().word());
        }
        if (!work.isFlat()) {
            wrong.add("is sawn to size before it is planed");
        }
        if (across && Due.isFitted(work.milling.rough().part())) {
            wrong.add("is cut to length, but is to be fitted after assembly");
        }
        if (across && work.milling.isGlued() && !work.panel) {
            wrong.add("is cut to length before it is glued");
        }
        long to = across ? work.milling.length() : work.widthToReach();
        long before = across ? work.length : work.width;
        SetUp setUp = step.setUp();
        boolean atStop = setUp != null
                && setUp.machine().equals(cut.direction().word())
                && setUp.stop().nanometres() == to;
        Length reach = facts.job().shop().stopReach();
        boolean measured = across && reach != null && to > reach.nanometres();
        boolean right = measured ? setUp == null : atStop;
        if (!right || cut.reading().nanometres() != to || to >= before) {
            wrong.add("is to be sawn from " + Inspection.mm(before) + " to " + Inspection.mm(to)
                    + (measured ? ", measured: no stop reaches so far" : ", at a stop"));
        }
        if (!isAt(cut.on(), work)) {
            wrong.add("lies on the saw with another size than it has");
        }
        work.length = across ? to : work.length;
        work.width = across ? work.width : to;
        Wood left = cut.left();
        if (left == null || !isAt(left, work)) {
            wrong.add("has another size then than is said");
        }
        long kerf = across ? facts.crosscutKerf() : facts.ripKerf();
        if (cut.slack().isNegative() || cut.slack().nanometres() > Math.max(0, before - to - kerf)) {
            wrong.add("the slack of " + cut.slack() + " is more than there is room for");
        }
    }

    /** The first part comes off a gang; what stays begins with the next number. */
    private void cutApart(Piece piece, Workpiece work, SequenceStep step, List<String> wrong) {
        SawCut cut = step.cut();
        long to = work.milling.length();
        long kerf = facts.crosscutKerf();
        long left = work.length - to - kerf;
        if (cut == null || cut.direction() != Direction.CROSSCUT || left <= 0) {
            wrong.add("does not cut the gang apart");
            return;
        }
        if (!work.isFlat() || work.width != work.widthToReach()) {
            wrong.add("is cut apart before it is planed and ripped");
        }
        if (cut.reading().nanometres() != to || !isStopAt(step.setUp(), to)) {
            wrong.add("is to be cut apart at " + Inspection.mm(to));
        }
        if (!isAt(cut.on(), work)) {
            wrong.add("lies on the saw with another size than it has");
        }
        Workpiece rest = work.parted(piece.number() + 1, left, work.parts - 1);
        Wood said = cut.left();
        if (said == null || !isAt(said, rest)) {
            wrong.add("leaves another size than is said");
        }
        long needed = (work.parts - 1) * to + (work.parts - 2) * kerf;
        if (cut.slack().isNegative() || cut.slack().nanometres() > Math.max(0, left - needed)) {
            wrong.add("the slack of " + cut.slack() + " is more than there is room for");
        }
        pieces.put(piece, work.parted(piece.number(), to, 1));
        Piece next = new Piece(piece.part(), piece.number() + 1, null);
        if (pieces.containsKey(next)) {
            wrong.add("the next number of the gang is there already");
        }
        pieces.put(next, rest);
    }

    /** Both ends of one part are mitred, at a stop from long point to long point; where it is the first of a stick it comes off. */
    private void mitre(Piece piece, Workpiece work, SequenceStep step, List<String> wrong) {
        Part part = work.milling.rough().part();
        Ends ends = part.shaping().ends();
        SawCut cut = step.cut();
        long to = work.milling.length();
        if (ends == null || work.mitred || cut == null || cut.direction() != Direction.CROSSCUT) {
            wrong.add("there is nothing to mitre");
            return;
        }
        if (!work.isFlat() || work.width != work.widthToReach()) {
            wrong.add("is mitred before it is planed and ripped");
        }
        SetUp setUp = step.setUp();
        boolean atStop = setUp != null
                && setUp.machine().equals("mitre-" + ends.angle().word())
                && setUp.stop().nanometres() == to;
        if (!atStop || cut.reading().nanometres() != to || work.length < to) {
            wrong.add("is to be mitred at " + Inspection.mm(to));
        }
        if (!isAt(cut.on(), work)) {
            wrong.add("lies on the saw with another size than it has");
        }
        Workpiece done = work.parted(piece.number(), to, 1);
        done.mitred = true;
        Workpiece left = done;
        long needed = 0;
        if (work.parts > 1) {
            long pitch = Mitre.pitch(
                    ends,
                    to,
                    work.milling.width(),
                    facts.crosscutKerf(),
                    facts.job().writing().unit().isImperial());
            left = work.parted(piece.number() + 1, work.length - pitch, work.parts - 1);
            needed = to + (work.parts - 2) * pitch;
            if (pieces.put(new Piece(piece.part(), piece.number() + 1, null), left) != null) {
                wrong.add("the next number of the stick is there already");
            }
        }
        pieces.put(piece, done);
        Wood said = cut.left();
        if (said == null || !isAt(said, left)) {
            wrong.add("leaves another size than is said");
        }
        long spare = work.parts > 1 ? left.length - needed : work.length - to - facts.crosscutKerf();
        if (cut.slack().isNegative() || cut.slack().nanometres() > Math.max(0, spare)) {
            wrong.add("the slack of " + cut.slack() + " is more than there is room for");
        }
    }

    /** A stop, or none where it does not reach so far. */
    private boolean isStopAt(@Nullable SetUp setUp, long to) {
        Length reach = facts.job().shop().stopReach();
        if (reach != null && to > reach.nanometres()) {
            return setUp == null;
        }
        return setUp != null
                && setUp.machine().equals(Direction.CROSSCUT.word())
                && setUp.stop().nanometres() == to;
    }

    private static boolean isAt(Wood wood, Workpiece work) {
        return wood.x().isZero()
                && wood.y().isZero()
                && wood.length().nanometres() == work.length
                && wood.width().nanometres() == work.width;
    }

    private void glue(Piece piece, List<String> wrong) {
        Milling milling = millings.get(piece.part());
        if (milling == null || !milling.isGlued() || piece.member() != null || pieces.containsKey(piece)) {
            wrong.add("there is nothing to glue");
            return;
        }
        List<Workpiece> members = new ArrayList<>();
        for (int member = 1; member <= milling.rough().perPart(); member++) {
            Piece one = new Piece(piece.part(), piece.number(), member);
            Workpiece work = pieces.remove(one);
            if (work == null || !work.canBeGlued()) {
                wrong.add("member " + member + " is not ready to be glued");
                return;
            }
            members.add(work);
        }
        boolean side = milling.rough().isStave();
        long width = side ? members.stream().mapToLong(work -> work.width).sum() : members.get(0).width;
        long thickness = side
                ? members.get(0).thickness
                : members.stream().mapToLong(work -> work.thickness).sum();
        pieces.put(piece, new Workpiece(milling, null, true, piece.number(), members.get(0).length, width, thickness));
    }

    /** What is still wrong when all steps are made. */
    void finish(List<String> wrong) {
        pieces.forEach((piece, work) -> {
            if (!work.isDone()) {
                wrong.add(piece.part() + " " + piece.number()
                        + (piece.member() == null ? "" : "." + piece.member()) + " is not finished: "
                        + Inspection.mm(work.length) + " x " + Inspection.mm(work.width) + " x "
                        + Inspection.mm(work.thickness) + (work.isFlat() ? "" : ", not planed to its thickness")
                        + (work.due.isEmpty()
                                ? ""
                                : ", without " + work.due.get(0).text()));
            }
        });
    }
}
