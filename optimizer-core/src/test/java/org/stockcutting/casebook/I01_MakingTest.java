package org.stockcutting.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stockcutting.length.Length;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;

/** I: spares, sets, groups, glue-ups, laminations. All answers by hand; kerf 1/8 in unless said. */
class I01_MakingTest {

    private static Set<Integer> numbers(CuttingPlan plan, String part) {
        return Door.pieces(plan, part).stream().map(Door.Placed::number).collect(Collectors.toCollection(TreeSet::new));
    }

    /** Boards of each copy of a part. */
    private static TreeMap<Integer, Set<Integer>> boardsByNumber(CuttingPlan plan, String part) {
        TreeMap<Integer, Set<Integer>> boards = new TreeMap<>();
        Door.pieces(plan, part)
                .forEach(p ->
                        boards.computeIfAbsent(p.number(), n -> new TreeSet<>()).add(p.board()));
        return boards;
    }

    /** One board of 96 holds 40 + 1/8 + 40 + 1/8 and 15-3/4: one spare of 15, never a second board for the other. */
    @ParameterizedTest
    @CsvSource({"15, 1", "15-3/4, 1", "15-7/8, 0", "7, 2", "7-3/4, 2", "7-7/8, 1"})
    void sparesComeFromWasteOnly(String length, int spares) {
        CuttingPlan plan =
                Door.plan("parts: [{id: a, quantity: 2, length: 40, nominal: '2x4'}, {id: s, quantity: 1, spares: 2,"
                        + " length: '" + length
                        + "', nominal: '2x4'}], stock: [{id: b, nominal: '2x4', length: 96, price: {amount: '4'}}],"
                        + " onHand: [{id: r, nominal: '2x4', length: '" + length + "'}]");
        assertThat(Door.boards(plan)).isEqualTo("b x1, r x1");
        assertThat(plan.cost().minorUnits()).isEqualTo(400);
        assertThat(numbers(plan, "s")).isEqualTo(upTo(1 + spares));
        assertThat(plan.unplaced()).isEmpty();
    }

    private static Set<Integer> upTo(int last) {
        return IntStream.rangeClosed(1, last).boxed().collect(Collectors.toCollection(TreeSet::new));
    }

    /** Two legs a set and three sets are six of 30 in; a board of 96 holds three. */
    @Test
    void setsMultiplyTheParts() {
        CuttingPlan plan = Door.plan("sets: 3, parts: [{id: leg, quantity: 2, length: 30, nominal: '2x2'}],"
                + " stock: [{id: b, nominal: '2x2', length: 96, price: {amount: '2'}}]");
        assertThat(Door.boards(plan)).isEqualTo("b x2");
        assertThat(numbers(plan, "leg")).isEqualTo(upTo(6));
    }

    /**
     * Doors and drawer fronts of one set match where they come from one board. Two sets of 50 + 40 in: without the group the boards of
     * 96 and 104 would hold 50 + 40 each as well, so the group costs nothing; with parts of 50, 50, 40 a set the board of 104 cannot hold
     * a set and the one of 144 must be bought.
     */
    @Test
    void aGroupLiesOnOneBoard() {
        String parts = "sets: 2, parts: [{id: door, quantity: 2, length: 50, nominal: '1x6'%s}, {id: front, length: 40,"
                + " nominal: '1x6'%s}], stock: [{id: '8', nominal: '1x6', length: 96, price: {amount: '8'}}, {id: '9', nominal: '1x6',"
                + " length: 104, price: {amount: '9'}}, {id: '12', nominal: '1x6', length: 144, price: {amount: '16'}}]";
        String group = ", group: {name: g}";
        CuttingPlan grouped = Door.plan(String.format(parts, group, group));
        assertThat(Door.boards(grouped)).isEqualTo("12 x2");
        for (Layout layout : grouped.layouts()) {
            assertThat(layout.pieces()).hasSize(3);
        }
        TreeMap<Integer, Set<Integer>> doors = boardsByNumber(grouped, "door");
        TreeMap<Integer, Set<Integer>> fronts = boardsByNumber(grouped, "front");
        assertThat(doors.get(1)).isEqualTo(doors.get(2)).isEqualTo(fronts.get(1));
        assertThat(doors.get(3)).isEqualTo(doors.get(4)).isEqualTo(fronts.get(2));
        // Free: 50 + 50 on a 9 twice and 40 + 40 on an 8 cost 26; so does nothing less: 280-5/8 in of wood cost 8.6
        // cents an inch.
        CuttingPlan free = Door.plan(String.format(parts, "", ""));
        assertThat(free.cost().minorUnits())
                .isLessThanOrEqualTo(2600)
                .isLessThan(grouped.cost().minorUnits());
    }

    /**
     * A top of 30 x 14-1/2 x 3/4 with the profile below: blank 32 x 15-1/2, staves up to 5-1/4: three of 15-1/2 / 3 = 5.1666.., rounded up
     * to 1/64: 5-11/64, plus 1/8 = 5-19/64; 32 in long; 3/4 + 1/16 + 3/16 = 1 in thick.
     */
    private static final String TOP =
            "allowances: {glue-up: {length: 2, width: 1, thickness: '1/16', perStave: '1/8', staveThickness:"
                    + " '3/16'}}, parts: [{id: top, quantity: %d, length: 30, width: '14-1/2', thickness: '3/4', make: {as: glue-up, staves:"
                    + " {min: 3, max: '5-1/4', from: %s}}}], stock: [{id: b, length: %s, width: '5-1/2', thickness: 1, price: {amount: '10'}}]";

    @ParameterizedTest
    @CsvSource({
        // 96-1/4 in hold three staves of 32 with two kerfs: one board a panel.
        "1, any, 97, b x1, 1",
        "1, one-board, 97, b x1, 1",
        "1, different-boards, 97, b x3, 3",
        "2, any, 97, b x2, 2",
        "2, one-board, 97, b x2, 1",
        "2, different-boards, 97, b x3, 3",
        // 65 in hold two: two panels from three boards, but never one panel from one.
        "2, any, 65, b x3, 0",
        "2, different-boards, 65, b x3, 3",
    })
    void stavesOfAPanel(int panels, String from, String length, String boards, int boardsPerPanel) {
        CuttingPlan plan = Door.plan(String.format(TOP, panels, from, length));
        assertThat(plan.unplaced()).isEmpty();
        assertThat(Door.boards(plan)).isEqualTo(boards);
        List<Door.Placed> staves = Door.pieces(plan, "top");
        assertThat(staves).hasSize(3 * panels).allSatisfy(stave -> {
            assertThat(stave.piece().length()).isEqualTo(Door.length("32"));
            assertThat(stave.piece().width()).isEqualTo(Door.length("5-19/64"));
        });
        assertThat(staves.stream()
                        .map(s -> s.number() + "." + s.member())
                        .sorted()
                        .toList())
                .isEqualTo(IntStream.range(0, 3 * panels)
                        .mapToObj(i -> (i / 3 + 1) + "." + (i % 3 + 1))
                        .toList());
        if (!from.equals("any")) {
            boardsByNumber(plan, "top").values().forEach(on -> assertThat(on).hasSize(boardsPerPanel));
        }
    }

    @Test
    void aPanelThatNoOneBoardHoldsIsNotPlacedInPieces() {
        CuttingPlan plan = Door.plan(String.format(TOP, 1, "one-board", "65"));
        assertThat(plan.layouts()).isEmpty();
        assertThat(Door.missing(plan)).startsWith("1 top: excluded-by-rule");
    }

    /** Legs of 2-1/4 square from three plies of 3/4: rough plies 1 in longer, 1/4 wider, 1/16 thicker by the profile. */
    @Test
    void pliesOfALamination() {
        CuttingPlan plan = Door.plan(
                "allowances: {lamination: {length: 1, width: '1/4', perPly: '1/16'}}, parts: [{id: leg, quantity:"
                        + " 4, length: 28, width: '2-1/4', thickness: '2-1/4', make: {as: lamination, plies: 3}}], stock: [{id: b, length: 88,"
                        + " width: 3, thickness: '13/16', price: {amount: '6'}}]");
        List<Door.Placed> plies = Door.pieces(plan, "leg");
        assertThat(plies).hasSize(12).allSatisfy(ply -> {
            assertThat(ply.piece().length()).isEqualTo(Length.inches("29"));
            assertThat(ply.piece().width()).isEqualTo(Length.inches("2.5"));
        });
        // 3 x 29 + 2 x 1/8 = 87-1/4: three plies a board, four boards.
        assertThat(Door.boards(plan)).isEqualTo("b x4");
        assertThat(plies.stream().map(s -> s.number() + "." + s.member()).distinct())
                .hasSize(12);
    }

    /** Thirteen sixteenths are needed, thicker stock is planed down by at most maxPlaning (1/2 in), thinner is no stock at all. */
    @ParameterizedTest
    @CsvSource({"13/16, 1", "1-5/16, 1", "1-3/8, 0", "3/4, 0"})
    void milledPartsTakeStockThatCanBePlaned(String thickness, int boards) {
        CuttingPlan plan = Door.plan(
                "allowances: {milled: {length: 1, width: '1/8', thickness: '1/16'}}, parts: [{length: 20, width: 3,"
                        + " thickness: '3/4', allowance: milled}], stock: [{length: 60, width: 5, thickness: '"
                        + thickness
                        + "', price: {amount: '6'}}]");
        assertThat(plan.layouts()).hasSize(boards);
        assertThat(plan.layouts().isEmpty()
                        || plan.layouts().get(0).pieces().get(0).length().equals(Length.inches("21")))
                .isTrue();
    }
}
