package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.solve.instance.StockType.ZoneRect;

class ZonePricingTest {

    private static final int UNUSABLE = 2;

    /**
     * Plain recursion on padded places, every whole place a cut: a rectangle holds one piece at its origin, or is cut. Two passes may
     * overlap, so a part may be narrower than the kerf.
     */
    private static final class Naive {
        private final Model model;
        private final double[] worth;
        private final Map<String, Double> known = new HashMap<>();

        Naive(Instance instance, double[] worth) {
            this.model = new Model(instance);
            this.worth = worth;
        }

        double best(long x0, long x1, long y0, long y1) {
            String key = x0 + " " + x1 + " " + y0 + " " + y1;
            Double before = known.get(key);
            if (before != null) {
                return before;
            }
            double best = single(x0, x1, y0, y1);
            for (long cut = x0 + 1; cut < x1; cut++) {
                best = Math.max(best, best(x0, cut, y0, y1) + best(cut, x1, y0, y1));
            }
            for (long cut = y0 + 1; cut < y1; cut++) {
                best = Math.max(best, best(x0, x1, y0, cut) + best(x0, x1, cut, y1));
            }
            known.put(key, best);
            return best;
        }

        private double single(long x0, long x1, long y0, long y1) {
            double best = 0;
            for (int t = 0; t < worth.length; t++) {
                for (boolean turned : new boolean[] {false, true}) {
                    long length = model.length(0, t, turned);
                    long width = model.width(0, t, turned);
                    boolean fits = length <= x1 - x0 && width <= y1 - y0;
                    if (model.allows(0, t, turned) && fits && model.isClear(0, t, x0, y0, length, width)) {
                        best = Math.max(best, worth[t]);
                    }
                }
            }
            return best;
        }
    }

    private static Instance instance(
            long length, long width, long kerf, long[][] sizes, boolean turns, List<ZoneRect> zones) {
        List<ItemType> items = new ArrayList<>();
        List<StockType.Placing> places = new ArrayList<>();
        for (long[] size : sizes) {
            items.add(new ItemType(size[0], size[1], 1, 100_000, 100_000));
            places.add(new StockType.Placing(true, turns, 0));
        }
        StockType stock = new StockType(length, width, 0, 0, 1, 1, 0, zones, places);
        return new Instance(items, List.of(stock), kerf, kerf, Instance.Limits.NONE, List.of(), List.of());
    }

    private static double price(Instance instance, double[] worth) {
        Model model = new Model(instance);
        ExactPricing.Priced priced = new ZonePricing(model, 0).price(worth);
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
        return priced.value();
    }

    @Test
    void smallCasesEqualAPlainRecursion() {
        for (long seed = 0; seed < 300; seed++) {
            Random random = new Random(seed);
            long length = 4 + random.nextInt(9);
            long width = 4 + random.nextInt(7);
            long[][] sizes = new long[1 + random.nextInt(4)][];
            double[] worth = new double[sizes.length];
            for (int t = 0; t < sizes.length; t++) {
                sizes[t] = new long[] {1 + random.nextInt(6), 1 + random.nextInt(5)};
                worth[t] = sizes[t][0] * sizes[t][1] * (0.8 + 0.4 * random.nextDouble());
            }
            List<ZoneRect> zones = new ArrayList<>();
            for (int n = random.nextInt(3); n >= 0; n--) {
                long x = random.nextInt((int) length);
                long y = random.nextInt((int) width);
                zones.add(new ZoneRect(
                        x,
                        y,
                        Math.min(length, x + 1 + random.nextInt(3)),
                        Math.min(width, y + 1 + random.nextInt(3)),
                        UNUSABLE,
                        false));
            }
            Instance instance = instance(length, width, random.nextInt(3), sizes, random.nextBoolean(), zones);
            double expected =
                    new Naive(instance, worth).best(0, length + instance.crosscutKerf(), 0, width + instance.ripKerf());
            assertThat(price(instance, worth))
                    .as("seed %d %s %s", seed, Arrays.toString(worth), instance)
                    .isCloseTo(expected, Offset.offset(1e-5 * (1 + expected)));
        }
    }

    /**
     * Sheets of 75 x 75 with up to four defects, worth is area, no turning (Afsharian, Niknejad, Waescher, OR Spectrum 36, 2014): every
     * optimum that was verified, with and without the defects.
     */
    @Test
    void theSheetsOfAfsharianWithDefects() throws IOException {
        Path folder = sets();
        Map<String, long[]> optimum = new HashMap<>();
        for (String line : Files.readAllLines(folder.resolve("best-known/2d_defects_75x75_exact.csv"))) {
            String[] cells = line.split(",");
            if (!cells[0].startsWith("instance")) {
                optimum.put(cells[0], new long[] {Long.parseLong(cells[1]), Long.parseLong(cells[2].trim())});
            }
        }
        ObjectMapper json = new ObjectMapper();
        int read = 0;
        for (String line : Files.readAllLines(folder.resolve("2d_defects/afsharian_public.jsonl"))) {
            JsonNode node = json.readTree(line);
            long[] expected = optimum.get(node.get("name").asText());
            if (expected == null || !node.get("set").asText().equals("75-75")) {
                continue;
            }
            List<ZoneRect> zones = new ArrayList<>();
            for (JsonNode d : node.get("defects_x_y_w_h")) {
                long x = d.get(0).asLong();
                long y = d.get(1).asLong();
                zones.add(new ZoneRect(x, y, x + d.get(2).asLong(), y + d.get(3).asLong(), UNUSABLE, false));
            }
            JsonNode parts = node.get("items_w_h_value");
            long[][] sizes = new long[parts.size()][];
            double[] worth = new double[parts.size()];
            for (int t = 0; t < sizes.length; t++) {
                sizes[t] = new long[] {
                    parts.get(t).get(0).asLong(), parts.get(t).get(1).asLong()
                };
                worth[t] = parts.get(t).get(2).asDouble();
            }
            long length = node.get("W").asLong();
            long width = node.get("H").asLong();
            String name = node.get("name").asText();
            assertThat(Math.round(price(instance(length, width, 0, sizes, false, zones), worth)))
                    .as(name)
                    .isEqualTo(expected[0]);
            assertThat(Math.round(price(instance(length, width, 0, sizes, false, List.of()), worth)))
                    .as(name + " without its defects")
                    .isEqualTo(expected[1]);
            read++;
        }
        assertThat(read).as("instances read").isEqualTo(optimum.size());
    }

    private static Path sets() {
        String named = System.getProperty("stockcutting.instances", "");
        Path folder = named.isEmpty() ? Path.of("..", "..", "shared", "instances") : Path.of(named);
        if ("required".equals(System.getenv("STOCKCUTTING_INSTANCES"))) {
            assertThat(folder).exists();
        }
        Assumptions.assumeTrue(
                Files.exists(folder),
                () -> "skipped: no published instances at "
                        + folder.toAbsolutePath().normalize());
        return folder;
    }
}
