package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.stockcutting.solve.instance.StockType.ZoneRect;

/** Ways to cut a board that two prices made good, under each of them. */
class KnownCutsTest {

    private static final CutTree CROSSCUT = CutTree.of(true, 20, CutTree.NO_CUT, CutTree.NO_CUT);
    private static final CutTree RIP = CutTree.of(false, 3, CutTree.NO_CUT, CROSSCUT);

    private static ClearRests rests(Model model, int board, double[] worths) {
        int width = (int) model.boardWidth(board);
        int length = (int) model.boardLength(board);
        List<ExactPricing.Lying> lyings = new ArrayList<>();
        for (int t = 0; t < model.types; t++) {
            int along = (int) model.length(board, t, false);
            int across = (int) model.width(board, t, false);
            if (along <= length && across <= width) {
                lyings.add(new ExactPricing.Lying(t, false, across, along, (int) (1000 * worths[t])));
            }
        }
        Points across = new Points(
                width, lyings.stream().mapToInt(ExactPricing.Lying::across).toArray());
        Points along = new Points(
                length, lyings.stream().mapToInt(ExactPricing.Lying::along).toArray());
        PricingTable table = new PricingTable(across, along, lyings, Reach.FREE);
        table.fill();
        List<ZoneRect> zones = model.stock(board).zones();
        return new ClearRests(model, table, zones);
    }

    /** What a tree is said to be worth is what the pattern that is read from it gives, whatever cuts lie outside of the board. */
    @Test
    void thePatternOfATreeGivesItsWorth() {
        Random random = new Random(4);
        for (long seed = 0; seed < 12; seed++) {
            Model model = new Model(Racks.enough(seed, 3, 6));
            double[] worths = new double[model.types];
            Arrays.setAll(worths, t -> model.area(t) * (0.7 + 0.6 * random.nextDouble()));
            int length = (int) model.boardLength(0);
            int width = (int) model.boardWidth(0);
            ClearRests rests = rests(model, 0, worths);
            CutTree tree = CutTree.of(
                    true,
                    random.nextInt(length),
                    CutTree.of(false, random.nextInt(2 * width), CutTree.NO_CUT, CROSSCUT),
                    CutTree.of(true, random.nextInt(length), RIP, CutTree.NO_CUT));
            Cell pattern = rests.read(tree, 0, length, 0, width);
            assertThat(worth(pattern, worths)).isEqualTo(rests.value(tree, 0, length, 0, width));
            assertThat(pattern.length).isEqualTo(length);
            assertThat(pattern.width).isEqualTo(width);
        }
    }

    private static int worth(Cell cell, double[] worths) {
        int sum = cell.isPiece() ? (int) (1000 * worths[cell.type()]) : 0;
        for (Cell part : cell.parts) {
            sum += worth(part, worths);
        }
        return sum;
    }

    @Test
    void theBestUnderTheseWorthsIsFoundAndTheOldestForgotten() {
        Model model = new Model(Racks.enough(1, 3, 6));
        double[] worths = new double[model.types];
        Arrays.setAll(worths, model::area);
        ClearRests rests = rests(model, 0, worths);
        KnownCuts known = new KnownCuts(model.boardLength(0), model.boardWidth(0));
        assertThat(known.best(rests)).isNull();
        for (int at = 1; at <= 60; at++) {
            known.add(CutTree.of(true, at, CutTree.NO_CUT, CutTree.NO_CUT));
        }
        int most = 0;
        for (int at = 37; at <= 60; at++) {
            most = Math.max(most, known.value(CutTree.of(true, at, CutTree.NO_CUT, CutTree.NO_CUT), rests));
        }
        CutTree best = known.best(rests);
        assertThat(best).isNotNull();
        if (best != null) {
            assertThat(known.value(best, rests)).isEqualTo(most);
        }
    }
}
