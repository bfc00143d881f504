package org.stockcutting.bench.speed;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Random;
import org.stockcutting.io.JobReader;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.length.Length;
import org.stockcutting.material.Grain;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Price;
import org.stockcutting.stock.PriceUnit;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/** Jobs to measure speed on; same numbers, same job. */
final class SpeedJobs {

    private static final Length WIDTH = Length.inches("3.5");
    private static final Length THICKNESS = Length.inches("1.5");

    private SpeedJobs() {}

    /** The typical job of the samples. */
    static Job typical() {
        try (InputStream in = SpeedJobs.class.getResourceAsStream("typical.json")) {
            if (in == null) {
                throw new IllegalStateException("typical.json is not in this jar");
            }
            return new JobReader().read(in.readAllBytes()).orThrow();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * What a job of lines is made of. One length is for sale, so that most solves end with a proof and not with the clock.
     *
     * @param sizes different lengths
     * @param pieces of all sizes together
     * @param boards measured boards on hand, with one bad zone each
     * @param grid how many steps an inch has: lengths are multiples of 1/grid in, so it sets the capacity in units
     */
    record Shape(int sizes, int pieces, int boards, int grid) {}

    static Job lines(Shape shape, long seed) {
        Random random = new Random(seed);
        JobBuilder job = JobBuilder.inches("growth").boardTrim("1/2", "1/4");
        for (int i = 0; i < shape.sizes(); i++) {
            int quantity = shape.pieces() / shape.sizes() + (i < shape.pieces() % shape.sizes() ? 1 : 0);
            // The first is odd, so that nothing divides all lengths and the grid is what the engine sees.
            Length length = steps(shape.grid(), i == 0 ? 20 * shape.grid() + 1 : between(random, shape.grid(), 8, 60));
            job.part(part("p" + i, quantity, length, new Section.Measured(WIDTH, THICKNESS), Grain.LENGTH));
        }
        for (int b = 0; b < shape.boards(); b++) {
            long from = between(random, 4, 20, 50);
            Zone zone = new Zone(
                    steps(4, from),
                    steps(4, from + between(random, 4, 1, 5)),
                    null,
                    null,
                    Zone.Severity.UNUSABLE,
                    Zone.Face.BOTH,
                    false);
            job.stock(new StockItem.OnHand(
                    String.format("m%03d", b),
                    Form.BOARD,
                    null,
                    steps(4, between(random, 4, 60, 130)),
                    WIDTH,
                    THICKNESS,
                    "wood",
                    Grain.LENGTH,
                    null,
                    1,
                    List.of(zone)));
        }
        return job.stock(sale("b144", Form.BOARD, "144", WIDTH, THICKNESS, "5.95"))
                .build();
    }

    /** Sheet parts of so many sizes, three to eight of each, four in ten with the grain, on a grid of 1/4 in. */
    static Job sheets(int sizes, long seed) {
        Random random = new Random(seed);
        JobBuilder job = JobBuilder.inches("sheets");
        Length thickness = Length.inches("0.75");
        for (int i = 0; i < sizes; i++) {
            Section section = new Section.Measured(steps(4, between(random, 4, 4, 22)), thickness);
            Grain grain = random.nextInt(10) < 4 ? Grain.LENGTH : Grain.ANY;
            job.part(part("p" + i, 3 + random.nextInt(6), steps(4, between(random, 4, 10, 46)), section, grain));
        }
        return job.stock(sale("s96", Form.SHEET, "96", Length.inches("48"), thickness, "64.00"))
                .build();
    }

    /** Parts of a cabinet shop in sixteenths, small and large, whose bound by area the table of a whole sheet improves. */
    static Job fineSheets() {
        Random random = new Random(3);
        JobBuilder job = JobBuilder.inches("fine sheets");
        Length thickness = Length.inches("0.75");
        for (int i = 0; i < 20; i++) {
            long one = 16L * (6 + random.nextInt(43)) + random.nextInt(16);
            long other = 16L * (3 + random.nextInt(22)) + random.nextInt(16);
            int quantity = 1 + random.nextInt(9);
            Grain grain = random.nextInt(10) < 4 ? Grain.LENGTH : Grain.ANY;
            Section section = new Section.Measured(steps(16, Math.min(one, other)), thickness);
            job.part(part("p" + i, quantity, steps(16, Math.max(one, other)), section, grain));
        }
        return job.stock(sale("s96", Form.SHEET, "96", Length.inches("48"), thickness, "64.00"))
                .build();
    }

    /** Patterns of random columns over so many rows: the kind of linear programme that column generation solves. */
    static List<int[]> patterns(int rows, int columns, long seed) {
        Random random = new Random(seed);
        List<int[]> patterns = new ArrayList<>();
        for (int c = 0; c < columns; c++) {
            int[] pattern = new int[rows];
            for (int n = 0; n < 4; n++) {
                pattern[random.nextInt(rows)]++;
            }
            patterns.add(pattern);
        }
        return patterns;
    }

    private static Part part(String id, int quantity, Length length, Section section, Grain grain) {
        return new Part(
                id, quantity, length, section, "wood", grain, WoodClass.CLEAR, 0, new Making.AsCut(), null, null);
    }

    private static StockItem.ForSale sale(
            String id, Form form, String length, Length width, Length thickness, String price) {
        Price each = new Price(new BigDecimal(price), Currency.getInstance("USD"), PriceUnit.PIECE);
        return new StockItem.ForSale(
                id, form, null, Length.inches(length), width, thickness, "wood", Grain.LENGTH, null, null, each);
    }

    private static Length steps(int grid, long count) {
        return Length.ofNanometres(Length.inches("1").nanometres() / grid * count);
    }

    private static long between(Random random, int grid, int leastInches, int mostInches) {
        return grid * (long) leastInches + random.nextInt(grid * (mostInches - leastInches) + 1);
    }
}
