package org.stockcutting.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.stockcutting.job.Job;
import org.stockcutting.job.Kerf;
import org.stockcutting.job.SawLimits;
import org.stockcutting.job.ShopRules;
import org.stockcutting.length.Length;
import org.stockcutting.material.Grain;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.stock.Condition;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/** The table of boards with bad zones against a recursion over every cut at every place; sizes are a few nanometres for that. */
class ZoneTableTest {

    private static final double ANY_WORK = 1e12;

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
                zones.add(new Zone(
                        PlanSketch.nm(from),
                        PlanSketch.nm(from + 1 + random.nextInt(3)),
                        PlanSketch.nm(edge),
                        PlanSketch.nm(edge + 1 + random.nextInt(3)),
                        Zone.Severity.values()[random.nextInt(3)],
                        Zone.Face.BOTH,
                        false));
            }
            StockItem.OnHand item = new StockItem.OnHand(
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
                    widthEnd == null
                            ? Condition.TRUE
                            : new Condition(Length.ZERO, Length.ZERO, PlanSketch.nm(widthEnd), null),
                    null);
            return Board.of(item, shop);
        }

        private Worth worth(int number) {
            WoodClass[] classes = WoodClass.values();
            int length = 2 + random.nextInt(6);
            int width = 2 + random.nextInt(4);
            Part model = JobSketch.part("p", 1, "1", "1", "1");
            Part part = new Part(
                    "p" + number,
                    1,
                    PlanSketch.nm(length),
                    new Section.Measured(PlanSketch.nm(width), JobSketch.in("1")),
                    "oak",
                    Grain.ANY,
                    random.nextBoolean() ? WoodClass.CLEAR : classes[random.nextInt(classes.length)],
                    0,
                    model.making(),
                    null,
                    null);
            Job job = new JobSketch().build();
            Rough rough = Rough.of(part, job);
            return new Worth(rough, 1 + random.nextInt(50), 9, true, random.nextBoolean(), length, width, width);
        }

        GuillotineTable clear() {
            GuillotineTable table = GuillotineTable.of(board, worths, shop.kerf(), SawLimits.NONE);
            assertThat(table).isNotNull();
            return table;
        }

        long found(double work) {
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
            for (double work = 10; work < 1e7; work *= 3) {
                long found = tiny.found(work);
                assertThat(found).as("seed " + seed + " work " + work).isGreaterThanOrEqualTo(real);
                between += found > real && found < clear ? 1 : 0;
            }
        }
        assertThat(between).as("coarse tables that still see the zones").isGreaterThan(300);
    }
}
