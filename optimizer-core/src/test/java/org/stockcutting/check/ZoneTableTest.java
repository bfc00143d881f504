package org.stockcutting.check;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.stockcutting.job.Job;
import org.stockcutting.job.Kerf;
import org.stockcutting.job.SawLimits;
import org.stockcutting.job.ShopRules;
import org.stockcutting.length.Length;
import org.stockcutting.material.Grain;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.stock.Condition;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/** The table of boards with bad zones against a recursion over every cut at every place; sizes are a few nanometres for that. */
class ZoneTableTest {

    private static final long ANY_WORK = 1_000_000_000_000L;

    /** A tiny board with pieces that have worths, in a shop. */
    private static final class Tiny {
        final Random random;
        final int kerfX;
        final int kerfY;
        final ShopRules shop;
        final Board board;
        final List<Worth> worths = new ArrayList<>();

        Tiny(long seed, boolean tapered) {
            this.random = new Random(seed);
            this.kerfX = random.nextInt(3);
            this.kerfY = random.nextInt(3);
            int length = 8 + random.nextInt(10);
            int width = 5 + random.nextInt(6);
            this.shop = shop(new Kerf(PlanSketch.nm(kerfX), PlanSketch.nm(kerfY)), random.nextInt(4) == 0 ? 1 : 0);
            this.board = board(length, width, tapered ? 1 + random.nextInt(width) : null);
            for (int i = 0; i < 1 + random.nextInt(4); i++) {
                worths.add(worth(i));
            }
        }

        private Board board(int length, int width, @Nullable Integer widthEnd) {
            List<Zone> zones = new ArrayList<>();
            for (int i = 0; i < 1 + random.nextInt(3); i++) {
                int from = random.nextInt(length);
                int edge = random.nextInt(width);
                zones.add(zone(
                        from,
                        from + 1 + random.nextInt(3),
                        edge,
                        edge + 1 + random.nextInt(3),
                        Zone.Severity.values()[random.nextInt(3)]));
            }
            Condition condition = widthEnd == null
                    ? Condition.TRUE
                    : new Condition(Length.ZERO, Length.ZERO, PlanSketch.nm(widthEnd), null);
            return Board.of(measured(length, width, zones, condition), shop);
        }

        private Worth worth(int number) {
            WoodClass[] classes = WoodClass.values();
            int length = 2 + random.nextInt(6);
            int width = 2 + random.nextInt(4);
            WoodClass chosen = random.nextBoolean() ? WoodClass.CLEAR : classes[random.nextInt(classes.length)];
            Rough rough = rough("p" + number, length, width, chosen);
            return new Worth(rough, 1 + random.nextInt(50), 9, true, random.nextBoolean(), length, width, width);
        }

        GuillotineTable clear() {
            GuillotineTable table = GuillotineTable.of(board, worths, shop.kerf(), SawLimits.NONE);
            assertThat(table).isNotNull();
            return table;
        }

        long found(long work) {
            return ZoneTable.best(worths, Ban.of(board, worths, shop), clear(), work);
        }

        /** A rectangle is a piece, waste, or cut at any place; slots at the ends may be narrower than the kerf. */
        long real() {
            Rect all = board.usable();
            int nx = (int) all.length() + 1;
            int ny = (int) all.width() + 1;
            return real(0, (int) all.length(), 0, (int) all.width(), new long[nx][nx][ny][ny]);
        }

        private long real(int x0, int x1, int y0, int y1, long[][][][] memo) {
            if (x0 >= x1 || y0 >= y1) {
                return 0;
            }
            if (memo[x0][x1][y0][y1] > 0) {
                return memo[x0][x1][y0][y1] - 1;
            }
            long best = 0;
            for (Worth worth : worths) {
                boolean lies = worth.length() == x1 - x0 && worth.leastWidth() == y1 - y0;
                boolean stands = worth.turned() && worth.leastWidth() == x1 - x0 && worth.length() == y1 - y0;
                best = (lies || stands) && isGood(worth, new Rect(x0, y0, x1, y1))
                        ? Math.max(best, worth.value())
                        : best;
            }
            for (int x = x0 - kerfX + 1; x < x1; x++) {
                boolean cuts = kerfX > 0 || x > x0;
                best = cuts ? Math.max(best, real(x0, x, y0, y1, memo) + real(x + kerfX, x1, y0, y1, memo)) : best;
            }
            for (int y = y0 - kerfY + 1; y < y1; y++) {
                boolean cuts = kerfY > 0 || y > y0;
                best = cuts ? Math.max(best, real(x0, x1, y0, y, memo) + real(x0, x1, y + kerfY, y1, memo)) : best;
            }
            memo[x0][x1][y0][y1] = best + 1;
            return best;
        }

        private boolean isGood(Worth worth, Rect rect) {
            return PieceCheck.isOnWood(worth.rough(), rect, board)
                    && board.zones().stream()
                            .noneMatch(bad -> PieceCheck.avoided(worth.rough(), bad, board, shop)
                                    .overlaps(rect));
        }
    }

    private static ShopRules shop(Kerf kerf, int margin) {
        ShopRules old = ShopRules.defaults();
        return new ShopRules(
                kerf,
                old.boardTrim(),
                old.sheetTrim(),
                old.limits(),
                old.keepOffcuts(),
                old.thicknessTolerance(),
                old.maxPlaning(),
                null,
                PlanSketch.nm(margin),
                null,
                old.machines(),
                null);
    }

    @Test
    void withEveryPlaceItEqualsPlainRecursion() {
        int lower = 0;
        for (long seed = 0; seed < 1_000; seed++) {
            Tiny tiny = new Tiny(seed, false);
            long found = tiny.found(ANY_WORK);
            long most = Math.min(found, tiny.clear().best());
            assertThat(most).as("seed " + seed).isEqualTo(tiny.real());
            lower += most < tiny.clear().best() ? 1 : 0;
        }
        assertThat(lower).as("boards worth less for their zones").isGreaterThan(500);
    }

    @Test
    void withFewPlacesItIsNeverBelowPlainRecursion() {
        int between = 0;
        for (long seed = 0; seed < 1_000; seed++) {
            Tiny tiny = new Tiny(seed, seed % 2 == 0);
            long real = tiny.real();
            long clear = tiny.clear().best();
            for (long work = 10; work < 10_000_000; work *= 3) {
                long found = tiny.found(work);
                assertThat(found).as("seed " + seed + " work " + work).isGreaterThanOrEqualTo(real);
                between += found > real && found < clear ? 1 : 0;
            }
        }
        assertThat(between).as("coarse tables that still see the zones").isGreaterThan(300);
    }

    /**
     * Sheets of 75 x 75 with up to four defects, worth is area, no turning (Afsharian, Niknejad, Waescher, OR Spectrum 36, 2014): never below
     * an optimum that was verified, equal to it with every place; with as few places as a certificate allows mostly so.
     */
    @Test
    void theSheetsOfAfsharianWithDefects() throws IOException {
        Path folder = sets();
        Map<String, Long> optimum = new HashMap<>();
        for (String line : Files.readAllLines(folder.resolve("best-known/2d_defects_75x75_exact.csv"))) {
            String[] cells = line.split(",");
            if (!cells[0].startsWith("instance")) {
                optimum.put(cells[0], Long.parseLong(cells[1]));
            }
        }
        ObjectMapper json = new ObjectMapper();
        int read = 0;
        int coarseEqual = 0;
        for (String line : Files.readAllLines(folder.resolve("2d_defects/afsharian_public.jsonl"))) {
            JsonNode node = json.readTree(line);
            String name = node.get("name").asText();
            Long expected = optimum.get(name);
            if (expected == null || !node.get("set").asText().equals("75-75")) {
                continue;
            }
            List<Zone> zones = new ArrayList<>();
            for (JsonNode d : node.get("defects_x_y_w_h")) {
                int x = d.get(0).asInt();
                int y = d.get(1).asInt();
                zones.add(zone(x, x + d.get(2).asInt(), y, y + d.get(3).asInt(), Zone.Severity.UNUSABLE));
            }
            List<Worth> worths = new ArrayList<>();
            for (JsonNode item : node.get("items_w_h_value")) {
                Rough rough = rough(
                        "p" + worths.size(), item.get(0).asInt(), item.get(1).asInt(), WoodClass.CLEAR);
                long width = item.get(1).asLong();
                worths.add(new Worth(
                        rough,
                        item.get(2).asLong(),
                        999,
                        true,
                        false,
                        item.get(0).asLong(),
                        width,
                        width));
            }
            ShopRules shop = shop(new Kerf(PlanSketch.nm(0), PlanSketch.nm(0)), 0);
            Board board = Board.of(measured(node.get("W").asInt(), node.get("H").asInt(), zones, Condition.TRUE), shop);
            GuillotineTable clear = GuillotineTable.of(board, worths, shop.kerf(), SawLimits.NONE);
            assertThat(clear).as(name).isNotNull();
            List<Ban> bans = Ban.of(board, worths, shop);
            long every = Math.min(clear.best(), ZoneTable.best(worths, bans, clear, ANY_WORK));
            assertThat(every).as(name).isEqualTo(expected);
            long few = Math.min(clear.best(), ZoneTable.best(worths, bans, clear, 300_000));
            assertThat(few).as(name + " with few places").isGreaterThanOrEqualTo(expected);
            coarseEqual += few == expected ? 1 : 0;
            read++;
        }
        assertThat(read).as("instances read").isEqualTo(optimum.size());
        assertThat(coarseEqual).as("equal with few places").isBetween(read / 10, read - 1);
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

    private static Zone zone(int from, int to, int edge, int toEdge, Zone.Severity severity) {
        return new Zone(
                PlanSketch.nm(from),
                PlanSketch.nm(to),
                PlanSketch.nm(edge),
                PlanSketch.nm(toEdge),
                severity,
                Zone.Face.BOTH,
                false);
    }

    private static StockItem.OnHand measured(int length, int width, List<Zone> zones, Condition condition) {
        return new StockItem.OnHand(
                "b",
                Form.BOARD,
                null,
                PlanSketch.nm(length),
                PlanSketch.nm(width),
                JobSketch.in("1"),
                "oak",
                Grain.ANY,
                null,
                1,
                zones,
                condition,
                null);
    }

    private static Rough rough(String id, int length, int width, WoodClass woodClass) {
        Part part = new Part(
                id,
                1,
                PlanSketch.nm(length),
                new Section.Measured(PlanSketch.nm(width), JobSketch.in("1")),
                "oak",
                Grain.ANY,
                woodClass,
                0,
                new Making.AsCut(),
                null,
                null);
        Job job = new JobSketch().build();
        return Rough.of(part, job);
    }
}
