package org.stockcutting.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.stockcutting.check.RandomPlans.Sample;
import org.stockcutting.length.Length;
import org.stockcutting.plan.Derived;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.SequenceStep.Piece;
import org.stockcutting.plan.SequenceStep.SawCut;
import org.stockcutting.plan.SequenceStep.SetUp;

/** Ways to break the cut sequence of a valid plan. Set-ups are counted again, so that the sequence alone is wrong. */
final class SequenceMutants {

    private SequenceMutants() {}

    static List<Mutants.Way> ways() {
        return List.of(
                (s, r) -> dropped(s, r),
                (s, r) -> swapped(s, r),
                (s, r) -> changed(s, r, (t, step) -> at("a #99", step)),
                (s, r) -> changed(s, r, (t, step) -> at(otherBoard(t, step), step)),
                (s, r) -> changed(s, r, (t, step) -> reading(step, Mutants.NM)),
                (s, r) -> changed(s, r, (t, step) -> stop(step)),
                (s, r) -> changed(s, r, (t, step) -> numbered(step)),
                (s, r) -> changed(s, r, (t, step) -> slack(step)),
                SequenceMutants::none);
    }

    private interface Change {
        /** Null where the step has nothing to change. */
        SequenceStep of(List<SequenceStep> all, SequenceStep step);
    }

    private static Sample changed(Sample s, Random r, Change change) {
        List<SequenceStep> steps = new ArrayList<>(s.plan().derived().cutSequence());
        int first = r.nextInt(steps.size());
        for (int i = 0; i < steps.size(); i++) {
            int at = (first + i) % steps.size();
            SequenceStep other = change.of(steps, steps.get(at));
            if (other != null && !other.equals(steps.get(at))) {
                steps.set(at, other);
                return with(s, steps);
            }
        }
        return null;
    }

    private static Sample dropped(Sample s, Random r) {
        List<SequenceStep> steps = new ArrayList<>(s.plan().derived().cutSequence());
        steps.remove(r.nextInt(steps.size()));
        return with(s, steps);
    }

    /** Two steps of one board, of which the second can only be made on what the first leaves. */
    private static Sample swapped(Sample s, Random r) {
        List<SequenceStep> steps = new ArrayList<>(s.plan().derived().cutSequence());
        int first = r.nextInt(steps.size());
        for (int n = 0; n < steps.size(); n++) {
            int i = (first + n) % steps.size();
            for (int j = i + 1; j < steps.size(); j++) {
                if (follows(steps.get(i), steps.get(j))) {
                    SequenceStep earlier = steps.get(i);
                    steps.set(i, steps.get(j));
                    steps.set(j, earlier);
                    return with(s, steps);
                }
            }
        }
        return null;
    }

    private static boolean follows(SequenceStep a, SequenceStep b) {
        return a.board() != null
                && a.board().equals(b.board())
                && a.cut() != null
                && b.cut() != null
                && a.cut().left() != null
                && a.cut().left().equals(b.cut().on())
                && !a.cut().on().equals(b.cut().on());
    }

    private static Sample none(Sample s, Random r) {
        return with(s, List.of());
    }

    /** The same cuts in another order that wood allows: all of one board, then all of the next. Breaks nothing. */
    static Sample otherBoardsFirst(Sample s) {
        List<SequenceStep> steps = new ArrayList<>(s.plan().derived().cutSequence());
        if (steps.stream().anyMatch(step -> step.board() == null)) {
            return null;
        }
        steps.sort(Comparator.comparing(SequenceStep::board).reversed());
        return with(s, steps);
    }

    private static Sample with(Sample s, List<SequenceStep> steps) {
        List<SequenceStep> numbered = new ArrayList<>();
        Map<String, Length> stands = new HashMap<>();
        int moves = 0;
        for (SequenceStep t : steps) {
            numbered.add(t.numbered(numbered.size() + 1));
            if (t.setUp() != null
                    && !t.setUp()
                            .stop()
                            .equals(stands.put(t.setUp().machine(), t.setUp().stop()))) {
                moves++;
            }
        }
        int setUps = moves;
        return Mutants.derived(
                s, d -> new Derived(d.buyingList(), d.offcuts(), numbered, setUps, d.yield(), d.warnings()));
    }

    private static SequenceStep at(String board, SequenceStep t) {
        return board == null || t.board() == null
                ? null
                : new SequenceStep(
                        t.step(), t.kind(), t.setUp(), board, t.cut(), t.piece(), t.behind(), t.caution(), t.reason());
    }

    private static String otherBoard(List<SequenceStep> all, SequenceStep t) {
        return all.stream()
                .map(SequenceStep::board)
                .filter(board -> board != null && !board.equals(t.board()))
                .findFirst()
                .orElse(null);
    }

    private static SequenceStep cut(SequenceStep t, SawCut cut) {
        return new SequenceStep(
                t.step(), t.kind(), t.setUp(), t.board(), cut, t.piece(), t.behind(), t.caution(), t.reason());
    }

    private static SequenceStep reading(SequenceStep t, Length more) {
        SawCut c = t.cut();
        return c == null
                ? null
                : cut(
                        t,
                        new SawCut(
                                c.direction(),
                                c.on(),
                                c.reading().plus(more),
                                c.to() == null ? null : c.to().plus(more),
                                c.left(),
                                c.slack()));
    }

    private static SequenceStep slack(SequenceStep t) {
        SawCut c = t.cut();
        return c == null
                ? null
                : cut(t, new SawCut(c.direction(), c.on(), c.reading(), c.to(), c.left(), JobSketch.in("900")));
    }

    private static SequenceStep stop(SequenceStep t) {
        SetUp up = t.setUp();
        return up == null
                ? null
                : new SequenceStep(
                        t.step(),
                        t.kind(),
                        new SetUp(up.machine(), up.stop().plus(Mutants.NM)),
                        t.board(),
                        t.cut(),
                        t.piece(),
                        t.behind(),
                        t.caution(),
                        t.reason());
    }

    private static SequenceStep numbered(SequenceStep t) {
        Piece p = t.piece();
        return p == null
                ? null
                : new SequenceStep(
                        t.step(),
                        t.kind(),
                        t.setUp(),
                        t.board(),
                        t.cut(),
                        new Piece(p.part(), 99_999, p.member()),
                        t.behind(),
                        t.caution(),
                        t.reason());
    }
}
