package org.stockcutting.wood;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.Optimizer;
import org.stockcutting.blank.BlankPlanner;
import org.stockcutting.io.JobReader;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.stock.StockItem;

/** The quick way to cut boards of random size against the planner: what was bought by it is enough, and not far too much. */
class RandomPurchaseTest {

    private static Job job(long seed, String more) {
        String text = """
                {"material": "oak", "shop": {"boardTrim": {"start": "1", "end": "1", "edge": "1/4"}},
                 "parts": [
                  {"id": "leg", "quantity": 12, "length": 28, "width": 3, "thickness": 1},
                  {"id": "rail", "quantity": 10, "length": 19, "width": "2-1/4", "thickness": 1, "class": "tight-knot"},
                  {"id": "shelf", "quantity": 4, "length": 33, "width": "7-1/2", "thickness": 1}%s],
                 "stock": [{"id": "rough", "form": "random", "nominal": "4/4", "leastLength": 60, "length": 120, "leastWidth": 4,
                            "width": 10, "grade": "1-common", "price": {"amount": "5", "per": "board-foot"}}],
                 "effort": {"work": 1500000, "seed": %d}}
                """.formatted(more, seed);
        return new JobReader().read(text.getBytes(StandardCharsets.UTF_8)).job();
    }

    private static List<RandomPurchase.Wanted> wanted(Job job) {
        return BlankPlanner.plan(job).stream()
                .map(piece -> new RandomPurchase.Wanted(piece, piece.part().quantity()))
                .toList();
    }

    /** The planner places every part on the boards that a trial bought; the last board it was bought for shows that fewer are short. */
    @Test
    void whatATrialBuysIsEnough() {
        int complete = 0;
        int spared = 0;
        for (int trial = 0; trial < 6; trial++) {
            Job job = job(7, "");
            RandomPurchase.Bought bought = new RandomPurchase(job, job.random().get(0), 0).purchase(wanted(job), trial);
            List<StockItem.OnHand> boards = new ArrayList<>();
            for (StockItem.OnHand board : bought.boards()) {
                boards.add(board.pieces("board " + boards.size(), 1, board.zones()));
            }
            Job measured = new Job(
                    job.name(),
                    job.writing(),
                    1,
                    job.shop(),
                    job.allowances(),
                    job.parts(),
                    List.of(),
                    boards,
                    Goal.WASTE,
                    job.effort());
            CuttingPlan plan = new Optimizer().plan(measured);
            complete += plan.unplaced().isEmpty() ? 1 : 0;
            spared += boards.size()
                    - (int) plan.layouts().stream()
                            .map(l -> l.stock())
                            .distinct()
                            .count();
        }
        assertThat(complete).as("of 6 purchases, seed 7").isEqualTo(6);
        assertThat(spared).as("boards to spare in 6 purchases of 8 or so").isLessThan(18);
    }

    /**
     * By hand: staves of 3 to 6 in for a panel of 16 in. Boards of 8 in without a knot, 82 in between the trims: each section of 42 in gives
     * one stave of 6 in or two that are narrower, 1/8 in for jointing each. Two of 7-3/4 less a kerf between give 7-3/8 in; so a panel takes
     * three sections, and two panels of 32 in together five: 5 * 7-3/8 in is enough, 4 are not. A board gives one section: five boards.
     */
    @Test
    void stavesTakeWhatWidthThereIs() {
        String top = """
                , {"id": "top", "quantity": 2, "length": 40, "width": 15, "thickness": "3/4",
                   "make": {"as": "glue-up", "staves": {"min": 3, "max": 6}}}""";
        Job knotty = job(7, top);
        Job job = new JobReader()
                .read(org.stockcutting.io.JobWriter.write(knotty)
                        .replace("\"leastLength\": \"60\"", "\"leastLength\": \"84\"")
                        .replace("\"length\": \"120\"", "\"length\": \"84\"")
                        .replace("\"leastWidth\": \"4\"", "\"leastWidth\": \"8\"")
                        .replace("\"width\": \"10\"", "\"width\": \"8\"")
                        .replace(
                                "\"goal\"",
                                "\"wood\": {\"models\": [{\"material\": \"oak\", \"clearRun\": 9999, \"zone\": 0,"
                                        + " \"endCheck\": 0, \"unusableBoards\": \"0\"}]}, \"goal\""))
                .job();
        List<RandomPurchase.Wanted> staves = wanted(job).stream()
                .filter(line -> line.piece().part().id().equals("top"))
                .toList();
        RandomPurchase.Bought bought = new RandomPurchase(job, job.random().get(0), 0).purchase(staves, 0);
        assertThat(bought.boards()).hasSize(5);
    }
}
