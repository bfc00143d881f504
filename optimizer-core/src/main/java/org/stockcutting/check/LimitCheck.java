package org.stockcutting.check;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.SawLimits;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.CutNode.Cuts;
import org.stockcutting.pattern.CutNode.RestLeaf;
import org.stockcutting.pattern.CutNode.Slot;
import org.stockcutting.pattern.Direction;

/** What the shop's saws can do, cut by cut. Called only on trees that {@link TreeWalk} has found whole. */
final class LimitCheck {

    private final SawLimits limits;
    private final Board board;
    private final Inspection inspection;
    private final String pointer;
    private int mostStages;

    private LimitCheck(SawLimits limits, Board board, Inspection inspection, String pointer) {
        this.limits = limits;
        this.board = board;
        this.inspection = inspection;
        this.pointer = pointer;
    }

    static void check(Facts facts, Board board, CutNode root, Inspection inspection, String pointer) {
        LimitCheck check = new LimitCheck(facts.job().shop().limits(), board, inspection, pointer);
        check.first(root);
        check.visit(root, board.raw(), 0, null);
        Integer stages = check.limits.stages();
        if (stages != null && check.mostStages > stages) {
            inspection.report(Cause.STAGES, pointer, check.mostStages + " stages; the shop cuts in at most " + stages);
        }
    }

    /** Follows the board past cuts that only trim to the first that does more. */
    private void first(CutNode root) {
        if (limits.firstCut() == SawLimits.FirstCut.ANY) {
            return;
        }
        CutNode node = root;
        while (node instanceof Cuts cuts && onlyTrims(cuts)) {
            node = cuts.pieces().stream().filter(p -> !isTrim(p)).findFirst().orElse(RestLeaf.SLIVER);
        }
        Direction wanted = limits.firstCut() == SawLimits.FirstCut.RIP ? Direction.RIP : Direction.CROSSCUT;
        if (node instanceof Cuts cuts && cuts.cut() != wanted) {
            inspection.report(
                    Cause.FIRST_CUT,
                    pointer,
                    "the first cut is a " + cuts.cut().word() + "; the shop starts with a " + wanted.word());
        }
    }

    private static boolean isTrim(CutNode node) {
        return node == RestLeaf.TRIM || node == RestLeaf.SLIVER;
    }

    private boolean onlyTrims(Cuts cuts) {
        boolean across = cuts.cut() == Direction.CROSSCUT;
        long others = cuts.pieces().stream().filter(p -> !isTrim(p)).count();
        return others == 1
                && cuts.slots().stream()
                        .allMatch(s -> TreeWalk.isTrimSlot(board, s.from().nanometres(), s.to().nanometres(), across));
    }

    private void visit(CutNode node, Rect rect, int stages, @Nullable Direction before) {
        mostStages = Math.max(mostStages, stages);
        if (!(node instanceof Cuts cuts)) {
            return;
        }
        boolean trims = onlyTrims(cuts);
        boolean more = !trims && cuts.cut() != before;
        int reached = more ? stages + 1 : stages;
        Direction last = trims ? before : cuts.cut();
        boolean across = cuts.cut() == Direction.CROSSCUT;
        long at = across ? rect.x0() : rect.y0();
        long end = across ? rect.x1() : rect.y1();
        List<Slot> slots = cuts.slots();
        for (int i = 0; i <= slots.size(); i++) {
            long from = i < slots.size() ? slots.get(i).from().nanometres() : end;
            visit(cuts.pieces().get(i), TreeWalk.part(rect, at, from, across), reached, last);
            if (i < slots.size()) {
                long to = slots.get(i).to().nanometres();
                cut(TreeWalk.part(rect, at, end, across), from, to, across);
                at = to;
            }
        }
    }

    /** One cut made on what is left of the rectangle when it is its turn. */
    private void cut(Rect rest, long from, long to, boolean across) {
        if (over(limits.minimumPiece(), rest.length()) < 0) {
            report(Cause.MINIMUM_PIECE, "a cut on a piece of " + Inspection.mm(rest.length()), limits.minimumPiece());
        }
        if (across) {
            if (over(limits.crosscutCapacity(), rest.width()) > 0) {
                report(
                        Cause.CROSSCUT_CAPACITY,
                        "a crosscut " + Inspection.mm(rest.width()) + " wide",
                        limits.crosscutCapacity());
            }
            return;
        }
        if (over(limits.longestRip(), rest.length()) > 0) {
            report(Cause.LONGEST_RIP, "a rip " + Inspection.mm(rest.length()) + " long", limits.longestRip());
        }
        long fence = Math.min(from - rest.y0(), rest.y1() - to);
        if (!TreeWalk.isTrimSlot(board, from, to, false) && over(limits.ripCapacity(), fence) > 0) {
            report(Cause.RIP_CAPACITY, "a rip " + Inspection.mm(fence) + " from the fence", limits.ripCapacity());
        }
    }

    /** Positive where the value is over the limit, negative where it is under, 0 where it meets it or there is none. */
    private static int over(@Nullable Length limit, long value) {
        return limit == null ? 0 : Long.compare(value, limit.nanometres());
    }

    private void report(Cause cause, String found, @Nullable Length limit) {
        inspection.report(cause, pointer, found + "; the shop's limit is " + limit);
    }
}
