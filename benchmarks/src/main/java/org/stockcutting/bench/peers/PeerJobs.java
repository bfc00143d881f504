package org.stockcutting.bench.peers;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.job.Kerf;
import org.stockcutting.job.ShopRules;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthUnit;
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

/**
 * The built-in jobs: 40 of 6 kinds, by rules of our own except {@link Kind#UNIFORM} (Falkenauer, Journal of Heuristics 2, 1996: sizes
 * uniform from 20 to 100, capacity 150, 120 items). Same seed, same jobs.
 */
final class PeerJobs {

    private static final String CURRENCY = "USD";
    private static final Length WIDTH = Length.inches("3.5");
    private static final Length THICKNESS = Length.inches("1.5");

    /** A kind of job and how many of it are in the set. */
    enum Kind {
        FEW_SIZES("few sizes", 7),
        MANY_SIZES("many sizes", 7),
        ODD_PRICES("odd prices", 7),
        UNIFORM("uniform 20-100", 7),
        MEASURED("measured boards", 6),
        SHEETS("sheets", 6);

        private final String word;
        private final int count;

        Kind(String word, int count) {
            this.word = word;
            this.count = count;
        }

        String word() {
            return word;
        }

        int count() {
            return count;
        }
    }

    /** A job and the kind it belongs to. */
    record Named(String name, String kind, Job job) {}

    private final Random random;

    private PeerJobs(long seed) {
        this.random = new Random(seed);
    }

    /** All of them, kind by kind. */
    static List<Named> all(long seed) {
        List<Named> jobs = new ArrayList<>();
        for (Kind kind : Kind.values()) {
            for (int n = 1; n <= kind.count(); n++) {
                String name = kind.word() + " " + n;
                long own = seed * 1_000_003L + kind.ordinal() * 1_009L + n;
                jobs.add(new Named(name, kind.word(), new PeerJobs(own).job(kind, name)));
            }
        }
        return jobs;
    }

    private Job job(Kind kind, String name) {
        return switch (kind) {
            case FEW_SIZES -> fewSizes(name);
            case MANY_SIZES -> manySizes(name);
            case ODD_PRICES -> oddPrices(name);
            case UNIFORM -> uniform(name);
            case MEASURED -> measured(name);
            case SHEETS -> sheets(name);
        };
    }

    /** 4 to 8 sizes, many of each, one length. */
    private Job fewSizes(String name) {
        JobBuilder job = JobBuilder.inches(name).boardTrim("1/2", "1/4");
        int sizes = between(4, 8);
        for (int i = 0; i < sizes; i++) {
            job.part(part(i, between(6, 30), quarters(9, 60)));
        }
        return job.stock(board("b96", "96", "4.00", null)).build();
    }

    /** 40 to 60 sizes, one to three of each, three lengths at prices close to their length. */
    private Job manySizes(String name) {
        JobBuilder job = JobBuilder.inches(name).boardTrim("1/2", "1/4");
        int sizes = between(40, 60);
        for (int i = 0; i < sizes; i++) {
            job.part(part(i, between(1, 3), quarters(8, 70)));
        }
        return job.stock(board("b96", "96", "3.98", null))
                .stock(board("b120", "120", "5.12", null))
                .stock(board("b144", "144", "5.95", null))
                .build();
    }

    /** 20 sizes on five lengths whose prices follow no rule; the better half of them is limited. */
    private Job oddPrices(String name) {
        JobBuilder job = JobBuilder.inches(name).boardTrim("1/2", "1/4");
        for (int i = 0; i < 20; i++) {
            job.part(part(i, between(2, 6), quarters(8, 68)));
        }
        for (int length : new int[] {72, 96, 120, 144, 192}) {
            int cents = length * between(34, 52) / 10 + between(0, 60);
            Integer available = length == 96 || random.nextInt(3) == 0 ? null : between(3, 8);
            job.stock(board(
                    "b" + length,
                    String.valueOf(length),
                    BigDecimal.valueOf(cents, 2).toPlainString(),
                    available));
        }
        return job.build();
    }

    /** Falkenauer's uniform class: as few bins as possible. */
    private Job uniform(String name) {
        ShopRules shop = ShopRules.defaults();
        ShopRules noKerf = new ShopRules(
                new Kerf(Length.ZERO, Length.ZERO),
                shop.boardTrim(),
                shop.sheetTrim(),
                shop.limits(),
                shop.keepOffcuts(),
                shop.thicknessTolerance(),
                shop.maxPlaning(),
                shop.carLength());
        JobBuilder job =
                JobBuilder.millimetres(name).currency(CURRENCY).shop(noKerf).goal(Goal.BOARDS);
        int[] counts = new int[101];
        for (int i = 0; i < 120; i++) {
            counts[between(20, 100)]++;
        }
        for (int size = 20; size <= 100; size++) {
            if (counts[size] > 0) {
                job.part(part(size, counts[size], Length.of(BigDecimal.valueOf(size), LengthUnit.MILLIMETRE)));
            }
        }
        return job.stock(board("bin", Length.millimetres("150"), "1.00", null)).build();
    }

    /** Rough boards with bad zones on hand, not enough of them, and clear boards for sale. */
    private Job measured(String name) {
        JobBuilder job = JobBuilder.inches(name).boardTrim("1", "1");
        int sizes = between(8, 14);
        for (int i = 0; i < sizes; i++) {
            job.part(part(i, between(6, 14), quarters(10, 48)));
        }
        int boards = between(14, 22);
        for (int b = 0; b < boards; b++) {
            job.stock(measuredBoard(b));
        }
        return job.stock(board("s96", "96", "9.60", null))
                .stock(board("s120", "120", "12.60", null))
                .build();
    }

    private StockItem.OnHand measuredBoard(int index) {
        Length length = quarters(60, 130);
        List<Zone> zones = new ArrayList<>();
        long at = 0;
        for (int z = between(1, 3); z > 0; z--) {
            long from = at + quarters(6, 40).nanometres();
            long to = from + quarters(1, 5).nanometres();
            if (to < length.nanometres()) {
                zones.add(new Zone(
                        Length.ofNanometres(from),
                        Length.ofNanometres(to),
                        null,
                        null,
                        Zone.Severity.UNUSABLE,
                        Zone.Face.BOTH,
                        false));
            }
            at = to;
        }
        return new StockItem.OnHand(
                String.format("m%02d", index),
                Form.BOARD,
                null,
                length,
                WIDTH,
                THICKNESS,
                "wood",
                Grain.LENGTH,
                null,
                1,
                zones);
    }

    /** 8 to 15 sizes on two sheets, four in ten of them with the grain. */
    private Job sheets(String name) {
        JobBuilder job = JobBuilder.inches(name);
        int sizes = between(8, 15);
        for (int i = 0; i < sizes; i++) {
            Grain grain = random.nextInt(10) < 4 ? Grain.LENGTH : Grain.ANY;
            Section section = new Section.Measured(quarters(4, 22), Length.inches("0.75"));
            job.part(part(i, between(3, 8), quarters(10, 46), section, grain));
        }
        return job.stock(sheet("s96", "96", "48", "64.00"))
                .stock(sheet("s60", "60", "60", "58.00"))
                .build();
    }

    private Part part(int number, int quantity, Length length) {
        return part(number, quantity, length, new Section.Measured(WIDTH, THICKNESS), null);
    }

    private static Part part(int number, int quantity, Length length, Section section, @Nullable Grain grain) {
        return new Part(
                String.format("p%03d", number),
                quantity,
                length,
                section,
                "wood",
                grain,
                WoodClass.CLEAR,
                0,
                new Making.AsCut(),
                null,
                null);
    }

    private static StockItem.ForSale board(String id, String inches, String price, @Nullable Integer available) {
        return board(id, Length.inches(inches), price, available);
    }

    private static StockItem.ForSale board(String id, Length length, String price, @Nullable Integer available) {
        return sale(id, Form.BOARD, length, WIDTH, THICKNESS, available, price);
    }

    private static StockItem.ForSale sheet(String id, String length, String width, String price) {
        return sale(id, Form.SHEET, Length.inches(length), Length.inches(width), Length.inches("0.75"), null, price);
    }

    private static StockItem.ForSale sale(
            String id,
            Form form,
            Length length,
            Length width,
            Length thickness,
            @Nullable Integer available,
            String price) {
        Price each = new Price(new BigDecimal(price), Currency.getInstance(CURRENCY), PriceUnit.PIECE);
        return new StockItem.ForSale(
                id, form, null, length, width, thickness, "wood", Grain.LENGTH, null, available, each);
    }

    private int between(int least, int most) {
        return least + random.nextInt(most - least + 1);
    }

    /** A multiple of a quarter inch. */
    private Length quarters(int leastInches, int mostInches) {
        return Length.inches("0.25").times(between(4 * leastInches, 4 * mostInches));
    }
}
