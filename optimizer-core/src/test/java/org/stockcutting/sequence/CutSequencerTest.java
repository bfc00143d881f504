package org.stockcutting.sequence;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Currency;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.Machines;
import org.stockcutting.job.ShopRules;
import org.stockcutting.job.Writing;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.material.Grain;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.Direction;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;

class CutSequencerTest {

    @Test
    void equalLengthsOfAllBoardsAreCutAtOneStop() {
        Layout studs = board(
                "stud",
                2,
                96,
                row("3/8 60.5 80.625", CutNode.RestLeaf.TRIM, part("post"), part("rail"), CutNode.RestLeaf.OFFCUT),
                piece("post", "0.5", 60, 1, 2),
                piece("rail", "60.625", 20, 1, 2));
        Layout plank = board(
                "plank",
                1,
                48,
                row("3/8 20.5", CutNode.RestLeaf.TRIM, part("rail"), CutNode.RestLeaf.OFFCUT),
                piece("rail", "0.5", 20, 3));
        CutSequencer.Sequence sequence = CutSequencer.sequence(job(LengthUnit.INCH), List.of(studs, plank));
        assertThat(lines(sequence))
                .containsExactly(
                        "1 trim stud #1 at 0.375",
                        "2 trim stud #2 at 0.375",
                        "3 trim plank #1 at 0.375",
                        "4 crosscut stop 60 stud #1 at 60.5 post 1",
                        "5 crosscut stop 60 stud #2 at 60.5 post 2",
                        "6 crosscut stop 20 stud #1 at 80.625 rail 1",
                        "7 crosscut stop 20 stud #2 at 80.625 rail 2",
                        "8 crosscut stop 20 plank #1 at 20.5 rail 3");
        assertThat(sequence.setUps()).isEqualTo(2);
    }

    /** The tree asks for 30, 40, 30 from the end: the stop comes back to 30, and that counts. */
    @Test
    void comingBackToAStopCountsAgain() {
        Layout layout = board(
                "stud",
                1,
                120,
                row("30 70.125 100.25", part("a"), part("b"), part("c"), CutNode.RestLeaf.OFFCUT),
                piece("a", "0", 30, 1),
                piece("b", "30.125", 40, 1),
                piece("c", "70.25", 30, 1));
        assertThat(CutSequencer.sequence(job(LengthUnit.INCH), List.of(layout)).setUps())
                .isEqualTo(3);
    }

    /** One board is 40 then 30, two are 30: setting 30 first for its three cuts would mean coming back. */
    @Test
    void aStopWaitsUntilItCanDoAllItsCuts() {
        Layout first = board(
                "stud",
                1,
                96,
                row("40 70.125", part("b"), part("a"), CutNode.RestLeaf.OFFCUT),
                piece("b", "0", 40, 1),
                piece("a", "40.125", 30, 1));
        Layout others = board("stud", 2, 96, row("30", part("a"), CutNode.RestLeaf.OFFCUT), piece("a", "0", 30, 2, 3));
        CutSequencer.Sequence sequence = CutSequencer.sequence(job(LengthUnit.INCH), List.of(first, others));
        assertThat(sequence.setUps()).isEqualTo(2);
        assertThat(sequence.steps().get(0).board()).isEqualTo("stud #1");
        assertThat(sequence.steps().stream().map(step -> step.piece().number())).containsExactly(1, 1, 2, 3);
    }

    @Test
    void sheetsComeFirstAndStripsAreRippedBeforeTheyAreCrosscut() {
        Layout stud = board("stud", 1, 96, row("30", part("a"), CutNode.RestLeaf.OFFCUT), piece("a", "0", 30, 1));
        CutNode strip = row("30", part("shelf"), CutNode.RestLeaf.OFFCUT);
        CutNode rips = new CutNode.Cuts(Direction.RIP, List.of(slot("10")), List.of(strip, CutNode.RestLeaf.OFFCUT));
        Layout ply = new Layout(
                "ply",
                1,
                in("96"),
                in("48"),
                in("0.75"),
                List.of(new PlacedPiece("shelf", List.of(1), List.of(), in("0"), in("0"), in("30"), in("10"), false)),
                rips,
                List.of());
        CutSequencer.Sequence sequence = CutSequencer.sequence(job(LengthUnit.INCH), List.of(stud, ply));
        assertThat(lines(sequence))
                .containsExactly(
                        "1 rip stop 10 ply #1 at 10",
                        "2 crosscut stop 30 ply #1 at 30 shelf 1",
                        "3 crosscut stop 30 stud #1 at 30 a 1");
        assertThat(sequence.setUps()).as("the stop stands at 30 already").isEqualTo(2);
    }

    /** Waste between two parts, cut around a bad spot, is marked and cut: no stop is set for it. */
    @Test
    void wasteIsCutToADrawnLine() {
        Layout layout = board(
                "stud",
                1,
                96,
                row("30 40 70.125", part("a"), CutNode.RestLeaf.OFFCUT, part("b"), CutNode.RestLeaf.OFFCUT),
                piece("a", "0", 30, 1),
                piece("b", "40.125", 30, 1));
        CutSequencer.Sequence sequence = CutSequencer.sequence(job(LengthUnit.INCH), List.of(layout));
        assertThat(lines(sequence))
                .containsExactly(
                        "1 crosscut stop 30 stud #1 at 30 a 1",
                        "2 crosscut stud #1 at 40",
                        "3 crosscut stop 30 stud #1 at 70.125 b 1");
        assertThat(sequence.setUps()).isEqualTo(1);
    }

    private static Cautions cautions(LengthUnit unit) {
        return new Cautions(new Writing(unit, '.', null, Currency.getInstance("USD")), Machines.UNKNOWN);
    }

    /**
     * Limits as saw manuals print them: push sticks for strips and short work, no crosscutting against the fence, a stop that frees short
     * parts. Common practice, no source.
     */
    @Test
    void cautionsStandWhereTheyAreDue() {
        Cautions cautions = cautions(LengthUnit.INCH);
        assertThat(ofCut(cautions, Direction.CROSSCUT, block("40", "4"), block("20", "4"), true))
                .isNull();
        assertThat(ofCut(cautions, Direction.CROSSCUT, block("11", "4"), block("8", "4"), true))
                .contains("under 12 in")
                .endsWith("Follow the machine's manual.");
        assertThat(ofCut(cautions, Direction.CROSSCUT, block("40", "4"), block("2.5", "4"), true))
                .contains("3 in");
        assertThat(ofCut(cautions, Direction.CROSSCUT, block("40", "4"), block("2.5", "4"), false))
                .isNull();
        assertThat(ofCut(cautions, Direction.RIP, block("40", "4"), block("40", "1.25"), true))
                .contains("1-1/2 in");
        assertThat(ofCut(cautions, Direction.RIP, block("40", "4"), block("40", "1.5"), true))
                .contains("6 in");
        assertThat(ofCut(cautions, Direction.RIP, block("40", "8"), block("40", "6"), true))
                .isNull();
        assertThat(cautions.ofCut(Direction.RIP, block("96", "48"), block("96", "24"), in("0.75"), true, false, true))
                .contains("Heavy sheet");
        assertThat(cautions.ofCut(Direction.RIP, block("40", "8"), block("40", "7"), in("0.125"), true, true, false))
                .contains("straight edge")
                .contains("auxiliary fence");
        assertThat(cautions.ofJoint(in("11"), in("2"), in("0.25")))
                .contains("jointer")
                .contains("Thin")
                .contains("push blocks");
        assertThat(cautions.ofPlane(in("11"), in("4"))).contains("planer");
        assertThat(cautions.ofPlane(in("12"), in("4"))).isNull();
        assertThat(ofCut(cautions, Direction.RIP, block("20", "24"), block("20", "12"), true))
                .contains("than wide");
        assertThat(ofCut(cautions(LengthUnit.MILLIMETRE), Direction.RIP, block("40", "4"), block("40", "1.25"), true))
                .contains("38 mm");
    }

    @Test
    void everyCutOfRandomTreesIsMadeOnceAndInTime() {
        for (long seed = 1; seed <= 300; seed++) {
            List<Layout> layouts = random(seed);
            Job job = job(LengthUnit.MILLIMETRE);
            CutSequencer.Sequence sequence = CutSequencer.sequence(job, layouts);
            Follower follower = new Follower();
            Map<String, Integer> boards = new HashMap<>();
            Map<String, Layout> byBoard = new TreeMap<>();
            int slots = 0;
            for (Layout layout : layouts) {
                for (int copy = 0; copy < layout.repeat(); copy++) {
                    String board = layout.stock() + " #" + boards.merge(layout.stock(), 1, Integer::sum);
                    follower.lay(layout, board);
                    byBoard.put(board, layout);
                    slots += slots(layout.cuts());
                }
            }
            for (SequenceStep step : sequence.steps()) {
                assertThat(follower.follow(step)).as("seed %d", seed).isEmpty();
            }
            for (Map.Entry<String, Layout> board : byBoard.entrySet()) {
                for (PlacedPiece piece : board.getValue().pieces()) {
                    assertThat(follower.holds(board.getKey(), piece.x(), piece.y(), piece.length(), piece.width()))
                            .as("%s on %s, seed %d", piece, board.getKey(), seed)
                            .isTrue();
                }
            }
            assertThat(sequence.steps()).as("seed %d", seed).hasSize(slots);
            assertThat(sequence.setUps()).as("set-ups, seed %d", seed).isEqualTo(recount(sequence.steps()));
            assertThat(CutSequencer.sequence(job, layouts))
                    .as("again, seed %d", seed)
                    .isEqualTo(sequence);
        }
    }

    /** The follower itself: a cut on a strip that is not free yet is refused. */
    @Test
    void aCutBeforeItsRectangleExistsIsRefused() {
        int refused = 0;
        for (long seed = 1; seed <= 100; seed++) {
            List<Layout> layouts = random(seed).subList(0, 1);
            List<SequenceStep> backwards = new ArrayList<>(
                    CutSequencer.sequence(job(LengthUnit.MILLIMETRE), layouts).steps());
            Collections.reverse(backwards);
            Follower follower = new Follower();
            for (int copy = 0; copy < layouts.get(0).repeat(); copy++) {
                follower.lay(layouts.get(0), layouts.get(0).stock() + " #" + (copy + 1));
            }
            refused +=
                    backwards.stream().anyMatch(step -> !follower.follow(step).isEmpty()) ? 1 : 0;
        }
        assertThat(refused).as("of 100, some of which have one cut only").isGreaterThan(80);
    }

    /** Grouping pays: in board order, as if each board were finished before the next, far more set-ups are due. */
    @Test
    void groupingSavesSetUpsAgainstBoardByBoard() {
        int grouped = 0;
        int boardByBoard = 0;
        for (long seed = 1; seed <= 100; seed++) {
            CutSequencer.Sequence sequence = CutSequencer.sequence(job(LengthUnit.MILLIMETRE), random(seed));
            grouped += sequence.setUps();
            TreeMap<String, List<SequenceStep>> byBoard = new TreeMap<>();
            sequence.steps()
                    .forEach(step -> byBoard.computeIfAbsent(step.board(), b -> new ArrayList<>())
                            .add(step));
            List<SequenceStep> steps = new ArrayList<>();
            byBoard.values().forEach(steps::addAll);
            boardByBoard += recount(steps);
        }
        assertThat(grouped).isLessThan(boardByBoard / 2);
    }

    private static List<Layout> random(long seed) {
        Random random = new Random(seed);
        RandomTrees trees = new RandomTrees(random);
        List<Layout> layouts = new ArrayList<>();
        for (int i = 0; i < 1 + random.nextInt(5); i++) {
            layouts.add(random.nextBoolean() ? trees.layout("stud", 1_500, 140) : trees.layout("ply", 1_220, 800));
        }
        return layouts;
    }

    private static int slots(CutNode node) {
        return node instanceof CutNode.Cuts cuts
                ? cuts.slots().size()
                        + cuts.pieces().stream()
                                .mapToInt(CutSequencerTest::slots)
                                .sum()
                : 0;
    }

    private static int recount(List<SequenceStep> steps) {
        Length stop = null;
        Length fence = null;
        int changes = 0;
        for (SequenceStep step : steps) {
            if (step.setUp() != null && step.setUp().machine().equals("rip")) {
                changes += step.setUp().stop().equals(fence) ? 0 : 1;
                fence = step.setUp().stop();
            } else if (step.setUp() != null) {
                changes += step.setUp().stop().equals(stop) ? 0 : 1;
                stop = step.setUp().stop();
            }
        }
        return changes;
    }

    private static List<String> lines(CutSequencer.Sequence sequence) {
        return sequence.steps().stream()
                .map(step -> step.step() + " " + step.kind().word()
                        + (step.setUp() == null
                                ? ""
                                : " stop " + inches(step.setUp().stop()))
                        + " " + step.board() + " at " + inches(step.cut().reading())
                        + name(step.piece()) + name(step.behind()))
                .toList();
    }

    private static String name(SequenceStep.Piece piece) {
        return piece == null ? "" : " " + piece.part() + " " + piece.number();
    }

    private static String inches(Length length) {
        return BigDecimal.valueOf(length.nanometres())
                .divide(BigDecimal.valueOf(25_400_000))
                .stripTrailingZeros()
                .toPlainString();
    }

    private static Length in(String inches) {
        return Length.inches(inches.equals("3/8") ? "0.375" : inches);
    }

    private static String ofCut(Cautions cautions, Direction cut, Block onSaw, Block freed, boolean atStop) {
        return cautions.ofCut(cut, onSaw, freed, in("0.75"), atStop, false, false);
    }

    private static Block block(String length, String width) {
        return new Block(Length.ZERO, Length.ZERO, in(length), in(width));
    }

    private static CutNode.Slot slot(String from) {
        return new CutNode.Slot(in(from), in(from).plus(in("0.125")));
    }

    private static CutNode part(String id) {
        return new CutNode.PartLeaf(id);
    }

    private static CutNode row(String slots, CutNode... pieces) {
        List<CutNode.Slot> cuts = new ArrayList<>();
        for (String from : slots.split(" ")) {
            cuts.add(slot(from));
        }
        return new CutNode.Cuts(Direction.CROSSCUT, cuts, List.of(pieces));
    }

    private static PlacedPiece piece(String part, String x, int length, Integer... numbers) {
        return new PlacedPiece(
                part, List.of(numbers), List.of(), in(x), Length.ZERO, in("" + length), in("3.5"), false);
    }

    private static Layout board(String stock, int repeat, int length, CutNode cuts, PlacedPiece... pieces) {
        return new Layout(stock, repeat, in("" + length), in("3.5"), in("1.5"), List.of(pieces), cuts, List.of());
    }

    private static Job job(LengthUnit unit) {
        return new Job(
                "test",
                new Writing(unit, '.', null, Currency.getInstance("USD")),
                1,
                ShopRules.defaults(),
                new TreeMap<>(),
                List.of(),
                List.of(stock("stud", Form.BOARD), stock("plank", Form.BOARD), stock("ply", Form.SHEET)),
                List.of(),
                Goal.COST,
                Effort.defaults());
    }

    private static StockItem.ForSale stock(String id, Form form) {
        return new StockItem.ForSale(
                id, form, null, in("96"), in("3.5"), in("1.5"), "spruce", Grain.LENGTH, null, null, null);
    }
}
