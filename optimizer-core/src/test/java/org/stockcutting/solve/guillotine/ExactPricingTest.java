package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;

class ExactPricingTest {

    /** Plain recursion in real coordinates: a rectangle holds one piece, or is cut at any whole place. */
    private static final class Naive {
        private final Instance instance;
        private final double[] worth;
        private final Map<Long, Double> known = new HashMap<>();

        Naive(Instance instance, double[] worth) {
            this.instance = instance;
            this.worth = worth;
        }

        double best(long length, long width) {
            if (length <= 0 || width <= 0) {
                return 0;
            }
            long key = length * 10_000 + width;
            Double before = known.get(key);
            if (before != null) {
                return before;
            }
            double best = single(length, width);
            for (long cut = 1; cut < length && width <= instance.limits().crosscutCapacity(); cut++) {
                best = Math.max(best, best(cut, width) + best(length - cut - instance.crosscutKerf(), width));
            }
            for (long cut = 1; cut < width && length <= instance.limits().longestRip(); cut++) {
                long behind = width - cut - instance.ripKerf();
                if (Math.min(cut, behind) <= instance.limits().ripCapacity()) {
                    best = Math.max(best, best(length, cut) + best(length, behind));
                }
            }
            known.put(key, best);
            return best;
        }

        private double single(long length, long width) {
            StockType stock = instance.stocks().get(0);
            double best = 0;
            for (int t = 0; t < worth.length; t++) {
                ItemType item = instance.items().get(t);
                long own = item.width() == 0 ? stock.width() : item.width();
                boolean straight = stock.places().get(t).straight() && holds(length, width, item.length(), own);
                boolean turned =
                        item.width() > 0 && stock.places().get(t).turned() && holds(length, width, own, item.length());
                best = straight || turned ? Math.max(best, worth[t]) : best;
            }
            return best;
        }

        /** With limits a piece must be cut free to its own extents. */
        private boolean holds(long length, long width, long pieceLength, long pieceWidth) {
            return instance.limits().equals(Instance.Limits.NONE)
                    ? pieceLength <= length && pieceWidth <= width
                    : pieceLength == length && pieceWidth == width;
        }
    }

    private static Instance limited(Instance instance, Random random) {
        long length = instance.stocks().get(0).length();
        long width = instance.stocks().get(0).width();
        Instance.Limits limits = new Instance.Limits(
                1 + random.nextInt((int) width / 2),
                random.nextBoolean() ? Long.MAX_VALUE : length - random.nextInt(4),
                random.nextBoolean() ? Long.MAX_VALUE : 1 + random.nextInt((int) width),
                Integer.MAX_VALUE,
                null,
                0);
        return new Instance(
                instance.items(),
                instance.stocks(),
                instance.crosscutKerf(),
                instance.ripKerf(),
                limits,
                List.of(),
                List.of());
    }

    /** What saws reach is kept: never below real cuts, and equal to them where no rip is too long. */
    @Test
    void withLimitsNeverBelowRealCuts() {
        int jobs = 0;
        int unsawn = 0;
        for (long seed = 0; seed < 1_000; seed++) {
            Random random = new Random(seed);
            int types = 1 + random.nextInt(5);
            long[][] sizes = new long[types][];
            boolean[] turns = new boolean[types];
            double[] worth = new double[types];
            for (int t = 0; t < types; t++) {
                sizes[t] = new long[] {1 + random.nextInt(14), 1 + random.nextInt(10)};
                turns[t] = random.nextBoolean();
                worth[t] = sizes[t][0] * sizes[t][1] * (0.8 + 0.4 * random.nextDouble());
            }
            Instance instance = limited(
                    instance(
                            5 + random.nextInt(26),
                            5 + random.nextInt(20),
                            random.nextInt(3),
                            random.nextInt(3),
                            sizes,
                            turns),
                    random);
            double real = new Naive(instance, worth)
                    .best(
                            instance.stocks().get(0).length(),
                            instance.stocks().get(0).width());
            Model model = new Model(instance);
            ExactPricing.Priced priced = new ExactPricing(model, 0).price(worth);
            assertThat(priced.value()).as("seed %d", seed).isGreaterThanOrEqualTo(real * (1 - 1e-6));
            if (instance.limits().longestRip() == Long.MAX_VALUE) {
                assertThat(priced.value()).as("seed %d", seed).isCloseTo(real, Offset.offset(1e-5 * (1 + real)));
                jobs++;
                unsawn += new Yard(model).allows(0, priced.pattern()) ? 0 : 1;
            }
        }
        assertThat(jobs).isGreaterThan(400);
        assertThat(unsawn)
                .as("patterns as read that cannot be sawn, of %d", jobs)
                .isLessThan(5);
    }

    private static Instance instance(long length, long width, long kerfX, long kerfY, long[][] sizes, boolean[] turns) {
        List<ItemType> items = new ArrayList<>();
        List<StockType.Placing> places = new ArrayList<>();
        for (int t = 0; t < sizes.length; t++) {
            items.add(new ItemType(sizes[t][0], sizes[t][1], 1, 100_000, 100_000));
            places.add(new StockType.Placing(true, turns[t], 0));
        }
        StockType stock = new StockType(length, width, 0, 0, 1, StockType.UNLIMITED, 0, List.of(), places);
        return new Instance(items, List.of(stock), kerfX, kerfY, Instance.Limits.NONE, List.of(), List.of());
    }

    private static double price(Instance instance, double[] worth) {
        Model model = new Model(instance);
        assertThat(ExactPricing.suits(model, 0)).isTrue();
        ExactPricing.Priced priced = new ExactPricing(model, 0).price(worth);
        Draft draft = new Draft(new Yard(model));
        Board board = new Board(draft.yard, 0, priced.pattern());
        draft.add(board);
        Answer answer = new Answer(
                new RegionWriter(model).uses(draft),
                Arrays.stream(draft.left).boxed().toList(),
                List.of(),
                false,
                Answer.NO_BOUND);
        if (!board.isEmpty()) {
            assertThat(LayoutCheck.faults(instance, answer)).isEmpty();
        }
        double sum = 0;
        for (int t = 0; t < worth.length; t++) {
            sum += board.counts[t] * worth[t];
        }
        assertThat(sum).as("worth of the pattern").isCloseTo(priced.value(), Offset.offset(1e-5 * (1 + sum)));
        assertThat(priced.value()).isGreaterThanOrEqualTo(sum * (1 - 1e-12));
        return priced.value();
    }

    @Test
    void smallCasesEqualAPlainRecursion() {
        for (long seed = 0; seed < 2_000; seed++) {
            Random random = new Random(seed);
            long length = 5 + random.nextInt(26);
            long width = 5 + random.nextInt(20);
            int types = 1 + random.nextInt(6);
            long[][] sizes = new long[types][];
            boolean[] turns = new boolean[types];
            double[] worth = new double[types];
            boolean fine = random.nextBoolean();
            for (int t = 0; t < types; t++) {
                long across = random.nextInt(12) == 0 ? 0 : 1 + random.nextInt(fine ? 6 : 18);
                sizes[t] = new long[] {1 + random.nextInt(fine ? 8 : 18), across};
                turns[t] = across > 0 && random.nextBoolean();
                double area = sizes[t][0] * (double) (across == 0 ? width : across);
                worth[t] = random.nextInt(8) == 0 ? 0 : area * (0.8 + 0.4 * random.nextDouble());
            }
            Instance instance = instance(length, width, random.nextInt(4), random.nextInt(4), sizes, turns);
            double expected = new Naive(instance, worth).best(length, width);
            assertThat(price(instance, worth))
                    .as("seed %d %s %s", seed, Arrays.toString(worth), instance)
                    .isCloseTo(expected, Offset.offset(1e-5 * (1 + expected)));
        }
    }

    /**
     * Instance H of Herz (IBM Journal of Research and Development 16, 1972): worth is area, copies not capped. 12348 without turning is
     * the published value (from memory); the others agree with an independent table.
     */
    @Test
    void theInstanceOfHerz() {
        long[][] sizes = {{21, 13}, {36, 17}, {54, 20}, {24, 27}, {18, 65}};
        long[] fixed = {12348, 11301, 10284, 10056, 9345};
        long[] turning = {12387, 11574, 10899, 10332, 9900};
        for (int kerf = 0; kerf < fixed.length; kerf++) {
            assertThat(areaBest(127, 98, kerf, sizes, false)).as("kerf " + kerf).isEqualTo(fixed[kerf]);
            assertThat(areaBest(127, 98, kerf, sizes, true))
                    .as("turning, kerf " + kerf)
                    .isEqualTo(turning[kerf]);
        }
    }

    private static long areaBest(long length, long width, long kerf, long[][] sizes, boolean turns) {
        boolean[] all = new boolean[sizes.length];
        Arrays.fill(all, turns);
        double[] worth = Stream.of(sizes).mapToDouble(s -> s[0] * s[1]).toArray();
        return Math.round(price(instance(length, width, kerf, kerf, sizes, all), worth));
    }

    /**
     * Every optimum of one sheet with unlimited copies that was verified and whose file lies beside the project: Herz 1972, Beasley (Journal
     * of the Operational Research Society 36, 1985), Morabito, Arenales, Arcaro 1992, Fayard, Hifi, Zissimopoulos 1998.
     */
    @Test
    void publishedSheetsWithUnlimitedCopies() throws IOException {
        String named = System.getProperty("stockcutting.instances", "");
        Path folder = named.isEmpty() ? Path.of("..", "..", "shared", "instances") : Path.of(named);
        Path table = folder.resolve("best-known").resolve("2d_unlimited_copies_guillotine_exact.csv");
        if ("required".equals(System.getenv("STOCKCUTTING_INSTANCES"))) {
            assertThat(table).exists();
        }
        Assumptions.assumeTrue(
                Files.exists(table),
                () -> "skipped: no published instances at "
                        + folder.toAbsolutePath().normalize());
        int read = 0;
        for (String line : Files.readAllLines(table)) {
            String[] cells = line.split(",");
            boolean beasley = cells[0].startsWith("beasley1985/");
            Path file = folder.resolve("2d_guillotine_knapsack").resolve(cells[0] + (beasley ? ".txt" : ""));
            if (!Files.exists(file)) {
                continue;
            }
            long[] numbers = Stream.of(Files.readString(file).trim().split("\\s+"))
                    .mapToLong(Long::parseLong)
                    .toArray();
            // Beasley: how many, sheet, then size and worth of each; the others: sheet, how many, then sizes.
            int count = (int) numbers[beasley ? 0 : 2];
            int sheet = beasley ? 1 : 0;
            int step = beasley ? 3 : 2;
            assertThat(numbers).as(cells[0]).hasSize(3 + step * count);
            long[][] sizes = new long[count][];
            for (int t = 0; t < count; t++) {
                sizes[t] = new long[] {numbers[3 + step * t], numbers[4 + step * t]};
            }
            assertThat(areaBest(numbers[sheet], numbers[sheet + 1], 0, sizes, false))
                    .as(cells[0])
                    .isEqualTo(Long.parseLong(cells[1]));
            assertThat(areaBest(numbers[sheet], numbers[sheet + 1], 0, sizes, true))
                    .as(cells[0] + " turning")
                    .isEqualTo(Long.parseLong(cells[2].trim()));
            read++;
        }
        assertThat(read).as("instances read").isGreaterThanOrEqualTo(8);
    }

    @Test
    void aFullSheetInSixteenths() {
        long operations = 0;
        long begin = System.nanoTime();
        int calls = 0;
        for (long seed = 0; seed < 4; seed++) {
            Model model = new Model(SheetJobs.typical(seed, 20, 100));
            ExactPricing pricing = new ExactPricing(model, 0);
            double[] worth = new double[model.types];
            for (int n = 0; n < 5; n++) {
                for (int t = 0; t < worth.length; t++) {
                    worth[t] = model.area(t) * (1 + 0.1 * new Random(seed * 100 + n + t).nextDouble());
                }
                double value = pricing.price(worth).value();
                assertThat(value).isBetween(0.8 * model.boardArea(0), 1.1 * model.boardArea(0));
                calls++;
            }
            operations += pricing.takeOperations();
        }
        double each = (System.nanoTime() - begin) / 1e6 / calls;
        System.out.printf("ExactPricing: %.1f ms, %d operations a call%n", each, operations / calls);
        assertThat(operations / calls)
                .as("operations of one table of 1538 x 770")
                .isLessThan(100_000_000);
    }
}
