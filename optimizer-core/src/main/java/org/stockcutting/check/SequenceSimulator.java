package org.stockcutting.check;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.SequenceStep.Piece;
import org.stockcutting.plan.SequenceStep.SetUp;

/**
 * Makes the steps of a cut sequence one after the other, starting from raw boards, with nothing but what the steps say. In the end there
 * must lie exactly the plan's parts, each at its finished size, and the plan's offcuts. On the way no step may ask for wood that is not
 * there, no piece may get its size before it is planed, and short pieces are sawn off stubs no more often than they must be.
 */
final class SequenceSimulator {

    private final Facts facts;
    private final Inspection inspection;
    private final SortedMap<String, List<Batch>> batches = new TreeMap<>();
    private final Benchwork bench;
    private boolean brokenDown;

    /** Equal boards: number {@code first} to {@code first + repeat - 1} of their stock. */
    private record Batch(LayoutCheck.Checked layout, int first, SortedMap<Integer, SawnBoard> begun) {
        boolean contains(int number) {
            return number >= first && number - first < layout.layout().repeat();
        }
    }

    private SequenceSimulator(Facts facts, List<LayoutCheck.Checked> layouts, Inspection inspection) {
        this.facts = facts;
        this.inspection = inspection;
        this.bench = new Benchwork(facts);
        Map<String, Integer> next = new HashMap<>();
        for (LayoutCheck.Checked layout : layouts) {
            String stock = layout.layout().stock();
            int first = next.getOrDefault(stock, 1);
            // Far beyond any count of boards the sum only has to stay large.
            long behind = (long) first + Math.max(0, layout.layout().repeat());
            next.put(stock, (int) Math.min(Integer.MAX_VALUE, behind));
            batches.computeIfAbsent(stock, id -> new ArrayList<>()).add(new Batch(layout, first, new TreeMap<>()));
        }
    }

    /**
     * Makes all steps.
     *
     * @param layouts what was found on the plan's layouts; boards of one that is not whole are let be
     */
    static void run(
            Facts facts,
            List<LayoutCheck.Checked> layouts,
            List<SequenceStep> steps,
            int setUps,
            Inspection inspection) {
        SequenceSimulator simulator = new SequenceSimulator(facts, layouts, inspection);
        simulator.uncutBoards();
        for (int i = 0; i < steps.size(); i++) {
            simulator.make(steps.get(i), i);
        }
        simulator.finish();
        int moves = moves(steps);
        inspection.require(moves == setUps, Cause.SET_UPS, "/setUps", "says " + setUps + ", the sequence has " + moves);
    }

    /** How often something is set to another position than it stands at. */
    private static int moves(List<SequenceStep> steps) {
        Map<String, Length> standing = new HashMap<>();
        int moves = 0;
        for (SequenceStep step : steps) {
            SetUp setUp = step.setUp();
            if (setUp != null && !setUp.stop().equals(standing.put(setUp.machine(), setUp.stop()))) {
                moves++;
            }
        }
        return moves;
    }

    /** Boards that are one piece as they come. */
    private void uncutBoards() {
        batches.forEach((stock, own) -> own.forEach(batch -> {
            List<PlacedPiece> pieces = batch.layout().layout().pieces();
            Rect raw = batch.layout().board().raw();
            if (batch.layout().whole()
                    && pieces.size() == 1
                    && Rect.of(pieces.get(0)).equals(raw)) {
                int boards = Math.min(
                        pieces.get(0).numbers().size(), batch.layout().layout().repeat());
                for (int k = 0; k < boards; k++) {
                    board(stock + " #" + (batch.first() + k));
                }
            }
        }));
    }

    private void make(SequenceStep step, int index) {
        List<String> wrong = new ArrayList<>();
        if (step.step() != index + 1) {
            wrong.add("is step " + (index + 1) + ", says " + step.step());
        }
        SequenceStep.SawCut cut = step.cut();
        Length to = cut == null ? null : cut.to();
        String board = step.board();
        if (board != null && batch(board) == null) {
            wrong.add("the plan has no board " + board);
        } else if (step.shape() != null && cut != null) {
            wrong.add("a step that saws something marks nothing");
        } else if (cut == null || to == null) {
            brokenDown = true;
            bench.make(step, wrong);
        } else if (board == null) {
            wrong.add("does not say which board is sawn");
        } else {
            saw(step, cut, to, board, wrong);
        }
        for (String text : wrong) {
            inspection.report(Cause.SEQUENCE, "/cutSequence/" + index, text);
        }
    }

    private void saw(SequenceStep step, SequenceStep.SawCut cut, Length to, String name, List<String> wrong) {
        SawnBoard board = board(name);
        if (board == null) {
            return;
        }
        if (!board.breaksDown(cut)) {
            brokenDown = true;
        } else if (brokenDown) {
            wrong.add("is a first cut of a sheet, but comes after other work");
        }
        SawnBoard.Sides sides = board.saw(step, cut, to.nanometres(), wrong);
        if (sides == null) {
            return;
        }
        Piece taken = free(board, sides.taken(), name);
        Piece left = free(board, sides.left(), name);
        Piece first = taken == null ? left : taken;
        if (!Objects.equals(step.piece(), first)) {
            wrong.add("makes " + text(first) + " whole, says " + text(step.piece()));
        }
        Piece second = taken == null ? null : left;
        if (!Objects.equals(step.behind(), second)) {
            wrong.add("leaves " + text(second) + " whole, says " + text(step.behind()));
        }
    }

    private static String text(@Nullable Piece piece) {
        if (piece == null) {
            return "no piece";
        }
        return piece.part() + " " + piece.number() + (piece.member() == null ? "" : "." + piece.member());
    }

    /** Null for a board that the plan does not have, or whose layout is wrong anyway. */
    private @Nullable SawnBoard board(String name) {
        Batch batch = batch(name);
        if (batch == null || !batch.layout().whole()) {
            return null;
        }
        int number = number(name);
        SawnBoard begun = batch.begun().get(number);
        if (begun != null) {
            return begun;
        }
        SawnBoard board = new SawnBoard(facts, batch.layout(), number - batch.first());
        batch.begun().put(number, board);
        List.copyOf(board.whole()).forEach(rect -> free(board, rect, name));
        return board;
    }

    /** Puts a piece that is whole now on the bench. */
    private @Nullable Piece free(SawnBoard board, @Nullable Rect rect, String name) {
        PlacedPiece placed = board.piece(rect);
        int copy = board.copy();
        if (placed == null || copy >= placed.numbers().size()) {
            return null;
        }
        Integer member = copy < placed.members().size() ? placed.members().get(copy) : null;
        Piece piece = new Piece(placed.part(), placed.numbers().get(copy), member);
        bench.put(piece, placed, name, board.thickness());
        return piece;
    }

    private @Nullable Batch batch(String name) {
        int mark = name.lastIndexOf(" #");
        int number = mark < 0 ? 0 : number(name);
        if (number < 1) {
            return null;
        }
        for (Batch batch : batches.getOrDefault(name.substring(0, mark), List.of())) {
            if (batch.contains(number)) {
                return batch;
            }
        }
        return null;
    }

    private static int number(String name) {
        String count = name.substring(name.lastIndexOf(" #") + 2);
        return count.matches("[1-9][0-9]{0,8}") ? Integer.parseInt(count) : 0;
    }

    private void finish() {
        batches.forEach((stock, own) -> own.forEach(batch -> finish(stock, batch)));
        List<String> wrong = new ArrayList<>();
        bench.finish(wrong);
        wrong.forEach(text -> inspection.report(Cause.SEQUENCE, "/cutSequence", text));
    }

    private void finish(String stock, Batch batch) {
        if (!batch.layout().whole()) {
            return;
        }
        batch.begun().forEach((number, board) -> {
            List<String> wrong = new ArrayList<>();
            board.finish(wrong);
            wrong.forEach(
                    text -> inspection.report(Cause.SEQUENCE, "/cutSequence", stock + " #" + number + ": " + text));
        });
        int repeat = Math.max(0, batch.layout().layout().repeat());
        int touched = batch.begun().size();
        inspection.require(
                touched == repeat || batch.layout().layout().pieces().isEmpty(),
                Cause.SEQUENCE,
                "/cutSequence",
                (repeat - touched) + " boards of " + stock + " are never cut");
    }
}
