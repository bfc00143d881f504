package org.stockcutting.check;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.Direction;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.SequenceStep.SawCut;
import org.stockcutting.plan.SequenceStep.SetUp;
import org.stockcutting.plan.SequenceStep.Wood;
import org.stockcutting.plan.StepKind;

/** One real board while it is sawn: the blocks of wood that it has become. */
final class SawnBoard {

    private final Facts facts;
    private final LayoutCheck.Checked layout;
    private final Map<Rect, PlacedPiece> pieces = new HashMap<>();
    private final Set<Rect> blocks = new LinkedHashSet<>();
    private final Set<Rect> whole = new LinkedHashSet<>();
    private final int copy;
    private final FirstCuts firstCuts;
    private int stubs;

    /**
     * A raw board.
     *
     * @param copy which of the layout's equal boards it is, from 0
     */
    SawnBoard(Facts facts, LayoutCheck.Checked layout, int copy) {
        this.copy = copy;
        this.facts = facts;
        this.layout = layout;
        this.firstCuts = new FirstCuts(facts.job(), layout);
        layout.layout().pieces().forEach(piece -> pieces.put(Rect.of(piece), piece));
        put(layout.board().raw());
    }

    private void put(Rect block) {
        if (pieces.containsKey(block)) {
            whole.add(block);
        } else if (!block.isEmpty()) {
            blocks.add(block);
        }
    }

    /** Pieces that have come whole off the board so far. */
    Set<Rect> whole() {
        return whole;
    }

    @Nullable PlacedPiece piece(@Nullable Rect rect) {
        return rect == null ? null : pieces.get(rect);
    }

    int copy() {
        return copy;
    }

    long thickness() {
        return layout.board().thickness();
    }

    /** True for the cuts that are made with a saw of their own before all others. */
    boolean breaksDown(SawCut cut) {
        return firstCuts.contains(cut);
    }

    /** The two sides of a cut; a side without extent is null. */
    record Sides(@Nullable Rect taken, @Nullable Rect left) {}

    /** Makes a cut; what is wrong goes to the list, and null comes back where the cut cannot be made at all. */
    @Nullable Sides saw(SequenceStep step, SawCut cut, long to, List<String> wrong) {
        Wood wood = cut.on();
        Rect on = Rect.at(wood.x(), wood.y(), wood.length(), wood.width());
        boolean across = cut.direction() == Direction.CROSSCUT;
        long start = across ? on.x0() : on.y0();
        long end = across ? on.x1() : on.y1();
        long from = cut.reading().nanometres();
        if (!blocks.contains(on)) {
            wrong.add("there is no such piece of wood on the bench now: " + on.text());
            return null;
        }
        if (from < start || to < from || to > end || !isKerf(from, to, start, end, across)) {
            wrong.add(
                    "the saw cannot go from " + Inspection.mm(from) + " to " + Inspection.mm(to) + " in " + on.text());
            return null;
        }
        Rect low = TreeWalk.part(on, start, from, across);
        Rect high = TreeWalk.part(on, to, end, across);
        Wood said = cut.left();
        Rect left = said == null ? null : Rect.at(said.x(), said.y(), said.length(), said.width());
        boolean leftIsHigh = left == null ? high.isEmpty() : left.equals(high);
        if (!leftIsHigh && !(left == null ? low.isEmpty() : left.equals(low))) {
            wrong.add("what is left in hand is neither side of the cut");
            return null;
        }
        blocks.remove(on);
        put(low);
        put(high);
        Rect taken = leftIsHigh ? low : high;
        Sides sides = new Sides(taken.isEmpty() ? null : taken, left);
        judge(step, cut, on, sides, wrong);
        return sides;
    }

    private boolean isKerf(long from, long to, long start, long end, boolean across) {
        long kerf = across ? facts.crosscutKerf() : facts.ripKerf();
        long width = to - from;
        return width == kerf || (width < kerf && (from == start || to == end)) || (width > kerf && width < 2 * kerf);
    }

    private void judge(SequenceStep step, SawCut cut, Rect on, Sides sides, List<String> wrong) {
        List<PlacedPiece> taken = within(sides.taken());
        boolean across = cut.direction() == Direction.CROSSCUT;
        Length least = facts.job().shop().limits().minimumPiece();
        if (least != null && on.length() < least.nanometres()) {
            wrong.add("the shop cuts no piece as short as " + Inspection.mm(on.length()));
        }
        switch (step.kind()) {
            case TRIM -> trim(step, sides, taken, wrong);
            case ROUGH_CROSSCUT -> rough(step, cut, taken, wrong);
            case CROSSCUT, RIP -> atStop(step, cut, sides, taken, wrong);
            default -> wrong.add("a " + step.kind().word() + " does not saw boards");
        }
        if (across) {
            order(step, on, sides, taken, wrong);
        }
        slack(cut, sides, across, wrong);
    }

    private void trim(SequenceStep step, Sides sides, List<PlacedPiece> taken, List<String> wrong) {
        Rect off = sides.taken();
        if (step.setUp() != null
                || !taken.isEmpty()
                || (off != null && off.overlaps(layout.board().usable()))) {
            wrong.add("a trim takes off what is not usable, at no stop");
        }
    }

    private void rough(SequenceStep step, SawCut cut, List<PlacedPiece> taken, List<String> wrong) {
        boolean allRough = taken.stream().allMatch(this::isLongerThanFinished);
        if (cut.direction() != Direction.CROSSCUT || step.setUp() != null || taken.isEmpty() || !allRough) {
            wrong.add("a rough crosscut takes off pieces with an allowance, at no stop");
        }
    }

    private boolean isLongerThanFinished(PlacedPiece piece) {
        Rough rough = facts.roughs().get(piece.part());
        return rough != null && Milling.of(rough, facts.job()).hasAllowance(piece.turned());
    }

    private void atStop(SequenceStep step, SawCut cut, Sides sides, List<PlacedPiece> taken, List<String> wrong) {
        boolean across = cut.direction() == Direction.CROSSCUT;
        if (across != (step.kind() == StepKind.CROSSCUT)) {
            wrong.add("a " + step.kind().word() + " does not go that way");
        }
        SetUp setUp = step.setUp();
        if (breaksDown(cut)) {
            if (setUp != null) {
                wrong.add("the first cuts of a sheet are made along a drawn line, and a stop is set");
            }
            return;
        }
        if (setUp == null) {
            Length reach = facts.job().shop().limits().ripCapacity();
            boolean outOfReach = !across
                    && sides.left() == null
                    && reach != null
                    && extent(sides.taken(), false) > reach.nanometres();
            boolean measured = across && isBeyondStop(extent(sides.taken(), true));
            if (!taken.isEmpty() && !outOfReach && !measured) {
                wrong.add("a part is cut off and no stop is set");
            }
            return;
        }
        long stop = setUp.stop().nanometres();
        if (across && isBeyondStop(stop)) {
            wrong.add("the stop does not reach " + Inspection.mm(stop) + "; the piece is to be measured");
        }
        boolean fits = extent(sides.taken(), across) == stop || (!across && extent(sides.left(), across) == stop);
        if (taken.isEmpty() || !setUp.machine().equals(cut.direction().word()) || !fits) {
            wrong.add("the stop does not stand where this cut is made");
        }
    }

    private boolean isBeyondStop(long length) {
        Length reach = facts.job().shop().stopReach();
        return reach != null && length > reach.nanometres();
    }

    /** Long before short, short pieces not off stubs; what departs from the first says why. */
    private void order(SequenceStep step, Rect on, Sides sides, List<PlacedPiece> taken, List<String> wrong) {
        long off = extent(sides.taken(), true);
        boolean longerStays = !taken.isEmpty()
                && within(sides.left()).stream()
                        .anyMatch(piece -> piece.extentX().nanometres() > off);
        if (longerStays && step.reason() == null && step.kind() != StepKind.TRIM) {
            wrong.add("a longer piece stays in the stick, and no reason is given");
        }
        Rect left = sides.left();
        boolean shortTaken = !taken.isEmpty() && off < LeastStubs.SAFE;
        boolean shortLeft = left != null && pieces.containsKey(left) && left.length() < LeastStubs.SAFE;
        if (on.length() < LeastStubs.SAFE && (shortTaken || shortLeft)) {
            stubs++;
        }
    }

    private void slack(SawCut cut, Sides sides, boolean across, List<String> wrong) {
        long room = 0;
        Rect left = sides.left();
        if (left != null) {
            Rect usable = left.intersect(layout.board().usable());
            room = Math.max(0, extent(usable, across));
            long widest = 0;
            for (PlacedPiece piece : within(left)) {
                widest = Math.max(widest, extent(Rect.of(piece), across));
            }
            room -= widest;
        }
        if (cut.slack().isNegative() || cut.slack().nanometres() > room) {
            wrong.add("the slack of " + cut.slack() + " is more than there is room for");
        }
    }

    private static long extent(@Nullable Rect rect, boolean across) {
        return rect == null ? -1 : across ? rect.length() : rect.width();
    }

    private List<PlacedPiece> within(@Nullable Rect rect) {
        List<PlacedPiece> inside = new ArrayList<>();
        if (rect != null) {
            pieces.forEach((place, piece) -> {
                if (rect.contains(place)) {
                    inside.add(piece);
                }
            });
        }
        return inside;
    }

    /** What is still wrong when all steps are done. */
    void finish(List<String> wrong) {
        if (whole.size() < pieces.size()) {
            wrong.add((pieces.size() - whole.size()) + " of its " + pieces.size() + " pieces are never cut free");
        }
        Set<Rect> offcuts = Set.copyOf(layout.sawn().offcuts());
        for (Rect block : blocks) {
            if (!offcuts.contains(block) && block.overlaps(layout.board().usable())) {
                wrong.add("the wood at " + block.text() + " is none of the plan's offcuts");
                return;
            }
        }
        if (!blocks.containsAll(offcuts)) {
            wrong.add("an offcut of the plan does not come off");
        }
        if (stubs
                > LeastStubs.of(
                        layout.layout().cuts(),
                        layout.board().raw(),
                        facts.job().shop().limits().minimumPiece())) {
            wrong.add("short pieces are sawn off stubs more often than they must be");
        }
    }
}
