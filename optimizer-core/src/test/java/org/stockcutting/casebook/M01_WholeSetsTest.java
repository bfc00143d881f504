package org.stockcutting.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.stockcutting.Optimizer;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.io.JobReading;
import org.stockcutting.io.PlanReader;
import org.stockcutting.io.PlanWriter;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.job.Kerf;
import org.stockcutting.job.SawLimits;
import org.stockcutting.job.ShopRules;
import org.stockcutting.job.Shortage;
import org.stockcutting.length.Length;
import org.stockcutting.material.Grain;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.WholeSets;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Trim;

/** M: where the wood does not suffice, whole sets come first if the job says so. */
class M01_WholeSetsTest {

    private static final String NO_KERF = "shop: {kerf: {crosscut: 0, rip: 0}}, ";

    private static String owned(String id, int quantity, int length) {
        return "{id: " + id + ", quantity: " + quantity + ", length: " + length + ", width: 2, thickness: 1}";
    }

    private static String part(String id, int quantity, int length) {
        return "{id: " + id + ", quantity: " + quantity + ", length: " + length + ", width: 2, thickness: 1}";
    }

    /**
     * A set is one of 60 in and two of 20 in, and there are three boards of 100 in. Two sets of 100 in fill two boards, and the third
     * gives one more set. Most wood places as much: but where a fourth set is asked for, it may as well be five of 20 in.
     */
    @Test
    void whatFitsExactlyIsWhole() {
        CuttingPlan plan = Door.plan(NO_KERF + "sets: 4, whenShort: whole-sets, parts: [" + part("long", 1, 60) + ", "
                + part("short", 2, 20) + "], onHand: [" + owned("b", 3, 100) + "]");
        WholeSets sets = plan.derived().wholeSets();
        assertThat(sets)
                .isEqualTo(new WholeSets(3, 3, List.of(new WholeSets.Lack("long", 1), new WholeSets.Lack("short", 2))));
    }

    /**
     * Boards of 60, 60 and 40 in; a set is a part of 50 in and one of 10 in. Most wood takes two of 50, two of 10 and four more of 10 on
     * the last board; whole sets are two, and the leftovers give what they can: four of 10 in, so that the third set lacks its long one.
     */
    @Test
    void leftoversGiveWhatTheyCan() {
        CuttingPlan plan = Door.plan(NO_KERF + "sets: 6, whenShort: whole-sets, parts: [" + part("long", 1, 50) + ", "
                + part("short", 1, 10) + "], onHand: [" + owned("b", 2, 60) + ", " + owned("c", 1, 40) + "]");
        assertThat(plan.derived().wholeSets()).isEqualTo(new WholeSets(2, 2, List.of(new WholeSets.Lack("long", 1))));
        assertThat(plan.unplaced())
                .extracting(line -> line.part() + " " + line.quantity())
                .containsExactly("long 4");
    }

    /**
     * Three boards of 70 in, parts of 40 and 30 in, two of the short ones in a set. Most wood is 70 in on each board: three long and
     * three short ones, which is one whole set. Two sets are 2 x 40 and 4 x 30 in: 70, 70 and 60 in.
     */
    @Test
    void lessWoodMayBeMoreSets() {
        String job = NO_KERF + "sets: 3, %s parts: [" + part("long", 1, 40) + ", " + part("short", 2, 30)
                + "], onHand: [" + owned("b", 3, 70) + "]";
        CuttingPlan most = Door.plan(String.format(job, ""));
        assertThat(most.derived().wholeSets()).isNull();
        assertThat(most.unplaced())
                .extracting(line -> line.part() + " " + line.quantity())
                .containsExactly("short 3");
        JobReading reading = Door.read(String.format(job, "whenShort: whole-sets,"));
        Job asked = reading.orThrow();
        CuttingPlan whole = new Optimizer().plan(asked);
        assertThat(whole.derived().wholeSets())
                .isEqualTo(new WholeSets(2, 2, List.of(new WholeSets.Lack("long", 1), new WholeSets.Lack("short", 2))));
        String document = new PlanWriter(asked).write(whole, reading.defaults());
        assertThat(new PlanReader(asked).read(document).orThrow()).isEqualTo(whole);
        for (String lie : List.of("\"complete\": 1", "\"complete\": 3")) {
            CuttingPlan wrong = new PlanReader(asked)
                    .read(document.replace("\"complete\": 2", lie))
                    .orThrow();
            assertThat(PlanChecker.check(asked, wrong))
                    .extracting(v -> v.pointer())
                    .contains("/wholeSets/complete");
        }
    }

    @Test
    void whereAllSetsAreMadeItSaysSo() {
        CuttingPlan plan = Door.plan(NO_KERF + "sets: 2, whenShort: whole-sets, parts: [" + part("a", 1, 40)
                + "], onHand: [" + owned("b", 2, 70) + "]");
        assertThat(plan.derived().wholeSets()).isEqualTo(new WholeSets(2, 2, List.of()));
    }

    /** 120 tiny jobs of owned boards: as many whole sets as an oracle finds that tries every way to fill every board, and proved. */
    @Test
    void asManySetsAsCanBe() {
        Optimizer optimizer = new Optimizer();
        int fewerThanAll = 0;
        int moreThanMostWood = 0;
        for (long seed = 1; seed <= 120; seed++) {
            Random random = new Random(seed);
            int types = 1 + random.nextInt(3);
            int[] lengths = random.ints(types, 4, 14).toArray();
            int[] perSet = random.ints(types, 1, 3).toArray();
            int sets = 2 + random.nextInt(3);
            int[] boards = random.ints(1 + random.nextInt(4), 10, 26).toArray();
            Job job = job(seed, lengths, perSet, sets, boards);
            CuttingPlan plan = optimizer.plan(job.withShortage(Shortage.WHOLE_SETS));
            int right = most(lengths, perSet, sets, boards);
            assertThat(plan.derived().wholeSets().complete())
                    .as("seed %d", seed)
                    .isEqualTo(right);
            assertThat(plan.derived().wholeSets().atMost()).as("seed %d", seed).isEqualTo(right);
            fewerThanAll += right < sets ? 1 : 0;
            CuttingPlan mostWood = optimizer.plan(job);
            moreThanMostWood += complete(job, mostWood) < right ? 1 : 0;
        }
        assertThat(fewerThanAll).isGreaterThan(40);
        assertThat(moreThanMostWood).isGreaterThan(3);
    }

    private static int complete(Job job, CuttingPlan plan) {
        return job.parts().stream()
                .mapToInt(part -> {
                    int missing = plan.unplaced().stream()
                            .filter(line -> line.part().equals(part.id()))
                            .mapToInt(line -> line.quantity())
                            .sum();
                    return (job.demand(part) - missing) / part.quantity();
                })
                .min()
                .orElse(0);
    }

    private static Job job(long seed, int[] lengths, int[] perSet, int sets, int[] boards) {
        ShopRules shop = new ShopRules(
                new Kerf(mm(1), mm(1)), Trim.NONE, Trim.NONE, SawLimits.NONE, List.of(), mm(1), mm(10), null);
        JobBuilder builder =
                JobBuilder.millimetres("sets " + seed).shop(shop).sets(sets).effort(new Effort(200_000L, 60, 1, 1));
        for (int t = 0; t < lengths.length; t++) {
            builder.part("p" + t, perSet[t], lengths[t] + "", "10", "10");
        }
        for (int b = 0; b < boards.length; b++) {
            builder.stock(new StockItem.OnHand(
                    "b" + b,
                    Form.BOARD,
                    null,
                    mm(boards[b]),
                    mm(10),
                    mm(10),
                    "wood",
                    Grain.LENGTH,
                    null,
                    1,
                    List.of()));
        }
        return builder.build();
    }

    private static Length mm(int millimetres) {
        return Length.ofNanometres(millimetres * 1_000_000L);
    }

    /** Every multiset of parts that the boards can give, board by board. */
    private static int most(int[] lengths, int[] perSet, int sets, int[] boards) {
        Set<List<Integer>> reached = new HashSet<>();
        reached.add(new ArrayList<>(java.util.Collections.nCopies(lengths.length, 0)));
        for (int board : boards) {
            Set<List<Integer>> next = new HashSet<>();
            for (List<Integer> counts : reached) {
                add(lengths, perSet, sets, board + 1, 0, counts, next);
            }
            reached = next;
        }
        return reached.stream()
                .mapToInt(counts -> {
                    int complete = sets;
                    for (int t = 0; t < lengths.length; t++) {
                        complete = Math.min(complete, counts.get(t) / perSet[t]);
                    }
                    return complete;
                })
                .max()
                .orElse(0);
    }

    private static void add(
            int[] lengths, int[] perSet, int sets, int room, int type, List<Integer> counts, Set<List<Integer>> next) {
        if (type == lengths.length) {
            next.add(counts);
            return;
        }
        int cap = perSet[type] * sets;
        for (int n = 0; n * (lengths[type] + 1) <= room && counts.get(type) + n <= cap; n++) {
            List<Integer> more = new ArrayList<>(counts);
            more.set(type, counts.get(type) + n);
            add(lengths, perSet, sets, room - n * (lengths[type] + 1), type + 1, more, next);
        }
    }
}
