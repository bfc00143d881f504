package org.stockcutting;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.io.PlanReader;
import org.stockcutting.io.PlanWriter;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.job.Kerf;
import org.stockcutting.job.SawLimits;
import org.stockcutting.job.ShopRules;
import org.stockcutting.length.Length;
import org.stockcutting.material.Grain;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.LongestOffcut;
import org.stockcutting.plan.Violation;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Price;
import org.stockcutting.stock.PriceUnit;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Trim;

/** The longest leftover of tiny jobs against every way of sharing the pieces among boards. */
class LongestOffcutTest {

    private static final Currency EURO = Currency.getInstance("EUR");
    private static final Length ACROSS = Length.millimetres("40");
    private static final int KERF = 3;
    private static final int START = 5;
    private static final Length SAW = Length.millimetres(String.valueOf(KERF));

    /** A job of few pieces, and the same as bare numbers. */
    private record Tiny(Job job, List<Integer> pieces, int[] boards, int[] cents) {
        static Tiny of(long seed) {
            Random random = new Random(seed);
            JobBuilder job = JobBuilder.millimetres("tiny " + seed)
                    .shop(new ShopRules(
                            new Kerf(SAW, SAW),
                            Trim.NONE,
                            Trim.NONE,
                            SawLimits.NONE,
                            List.of(),
                            Length.ZERO,
                            Length.ZERO,
                            null))
                    .boardTrim(String.valueOf(START), "2");
            List<Integer> pieces = new ArrayList<>();
            int lines = 1 + random.nextInt(3);
            for (int i = 0; i < lines; i++) {
                int length = 100 + random.nextInt(700);
                int quantity = 1 + random.nextInt(2);
                for (int q = 0; q < quantity; q++) {
                    pieces.add(length);
                }
                job.part(new Part(
                        "p" + i,
                        quantity,
                        Length.millimetres(String.valueOf(length)),
                        new Section.Measured(ACROSS, ACROSS),
                        "pine",
                        Grain.LENGTH,
                        WoodClass.CLEAR,
                        0,
                        new Making.AsCut(),
                        null,
                        null));
            }
            int[] boards = {1000, 1300 + 100 * random.nextInt(5)};
            int[] cents = {300 + random.nextInt(100), 400 + random.nextInt(200)};
            for (int b = 0; b < 2; b++) {
                Price price = new Price(BigDecimal.valueOf(cents[b], 2), EURO, PriceUnit.PIECE);
                job.stock(new StockItem.ForSale(
                        "b" + b,
                        Form.BOARD,
                        null,
                        Length.millimetres(String.valueOf(boards[b])),
                        ACROSS,
                        ACROSS,
                        "pine",
                        Grain.LENGTH,
                        null,
                        null,
                        price));
            }
            return new Tiny(job.currency("EUR").build(), pieces, boards, cents);
        }

        /** The longest leftover of all ways that cost no more. */
        int longest(int value) {
            return share(0, new ArrayList<>(), value);
        }

        private int share(int piece, List<List<Integer>> rows, int value) {
            if (piece == pieces.size()) {
                return onBoards(rows, 0, value, 0);
            }
            int best = -1;
            for (int r = 0; r < rows.size(); r++) {
                rows.get(r).add(pieces.get(piece));
                best = Math.max(best, share(piece + 1, rows, value));
                rows.get(r).remove(rows.get(r).size() - 1);
            }
            rows.add(new ArrayList<>(List.of(pieces.get(piece))));
            best = Math.max(best, share(piece + 1, rows, value));
            rows.remove(rows.size() - 1);
            return best;
        }

        private int onBoards(List<List<Integer>> rows, int row, int value, int longest) {
            if (value < 0) {
                return -1;
            }
            if (row == rows.size()) {
                return longest;
            }
            int best = -1;
            int size = rows.get(row).stream().mapToInt(p -> p + KERF).sum();
            for (int b = 0; b < boards.length; b++) {
                int usable = boards[b] - START - 2;
                if (size <= usable + KERF) {
                    int left = size == usable + KERF ? 0 : Math.max(0, boards[b] - START - size);
                    best = Math.max(best, onBoards(rows, row + 1, value - cents[b], Math.max(longest, left)));
                }
            }
            return best;
        }
    }

    private static List<String> causes(Job job, CuttingPlan plan, LongestOffcut said) {
        CuttingPlan changed = new CuttingPlan(
                plan.header(),
                plan.cost(),
                plan.objective(),
                plan.layouts(),
                plan.unplaced(),
                plan.certificate(),
                plan.violations(),
                plan.derived().withLongestOffcut(said));
        return PlanChecker.check(job, changed).stream().map(Violation::cause).toList();
    }

    @Test
    void isNeverShorterThanItCouldBeWhereItIsCertified() {
        int certified = 0;
        int asked = 0;
        for (long seed = 1; seed <= 100; seed++) {
            Tiny tiny = Tiny.of(seed);
            CuttingPlan plan = new Optimizer().plan(tiny.job().withEffort(new Effort(200_000L, 60, 1, 1)));
            LongestOffcut said = plan.derived().longestOffcut();
            assertThat(said).as("seed %d", seed).isNotNull();
            int most = tiny.longest(plan.objective().value().intValueExact());
            long length = said.length().nanometres() / 1_000_000;
            assertThat(length).as("seed %d", seed).isLessThanOrEqualTo(most);
            assertThat(said.atMost().nanometres())
                    .as("seed %d: at most", seed)
                    .isGreaterThanOrEqualTo(most * 1_000_000L);
            if (said.certified()) {
                assertThat(length).as("seed %d: certified", seed).isEqualTo(most);
                certified++;
            }
            asked++;
        }
        assertThat(certified).as("certified of %d", asked).isGreaterThan(asked / 4);
    }

    @Test
    void theCheckerRefusesClaimsThatAreTooGood() {
        Length little = Length.ofNanometres(1);
        for (long seed = 1; seed <= 20; seed++) {
            Tiny tiny = Tiny.of(seed);
            CuttingPlan plan = new Optimizer().plan(tiny.job().withEffort(new Effort(100_000L, 60, 1, 1)));
            LongestOffcut said = plan.derived().longestOffcut();
            assertThat(said).isNotNull();
            Length length = said.length();
            Length atMost = said.atMost();
            assertThat(causes(tiny.job(), plan, said)).isEmpty();
            assertThat(causes(tiny.job(), plan, null)).isEmpty();
            assertThat(causes(tiny.job(), plan, new LongestOffcut(length, atMost.plus(little), false)))
                    .isEmpty();
            assertThat(causes(tiny.job(), plan, new LongestOffcut(length.plus(little), atMost, false)))
                    .contains("offcut");
            assertThat(causes(tiny.job(), plan, new LongestOffcut(length, atMost, !said.certified())))
                    .containsExactly("bound");
            if (!said.certified()) {
                assertThat(causes(tiny.job(), plan, new LongestOffcut(length, length, true)))
                        .containsExactly("bound");
                assertThat(causes(tiny.job(), plan, new LongestOffcut(length, atMost.minus(little), false)))
                        .containsExactly("bound");
            }
        }
    }

    @Test
    void standsInTheDocument() {
        Tiny tiny = Tiny.of(3);
        CuttingPlan plan = new Optimizer().plan(tiny.job().withEffort(new Effort(100_000L, 60, 1, 1)));
        String json = new PlanWriter(tiny.job()).write(plan, new TreeMap<>());
        assertThat(json).contains("\"longestOffcut\"", "\"atMost\"", "\"certified\"");
        assertThat(new PlanReader(tiny.job()).read(json).orThrow().derived().longestOffcut())
                .isEqualTo(plan.derived().longestOffcut());
    }
}
