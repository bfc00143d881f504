package org.stockcutting.generate;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Currency;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.KeepRule;
import org.stockcutting.job.Kerf;
import org.stockcutting.job.SawLimits;
import org.stockcutting.job.ShopRules;
import org.stockcutting.job.Writing;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.material.Grain;
import org.stockcutting.material.NominalCatalog;
import org.stockcutting.material.NominalSize;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.stock.Condition;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Price;
import org.stockcutting.stock.PriceUnit;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Trim;
import org.stockcutting.stock.Zone;

/** Random jobs of a furniture shop: trade sizes, ripped parts, sheets, glue-ups, laminations, measured boards, groups, spares. */
public final class RandomJobs {

    private static final Currency DOLLAR = Currency.getInstance("USD");

    private final Random random;

    private RandomJobs(long seed) {
        this.random = new Random(seed);
    }

    /** The job of this seed; it passes the review. */
    public static Job job(long seed) {
        return new RandomJobs(seed).build("random " + seed);
    }

    /** The same job with its lists in another order. */
    public static Job shuffled(Job job, long seed) {
        Random order = new Random(seed);
        List<Part> parts = new ArrayList<>(job.parts());
        List<StockItem.ForSale> forSale = new ArrayList<>(job.forSale());
        List<StockItem.OnHand> onHand = new ArrayList<>(job.onHand());
        Collections.shuffle(parts, order);
        Collections.shuffle(forSale, order);
        Collections.shuffle(onHand, order);
        return new Job(
                job.name(),
                job.writing(),
                job.sets(),
                job.shop(),
                job.allowances(),
                parts,
                forSale,
                onHand,
                job.goal(),
                job.effort());
    }

    private Job build(String name) {
        boolean trade = random.nextInt(3) > 0;
        boolean boards = random.nextInt(3) > 0;
        boolean sheets = random.nextInt(3) > 0 || !(trade || boards);
        List<Part> parts = new ArrayList<>();
        List<StockItem.ForSale> forSale = new ArrayList<>();
        List<StockItem.OnHand> onHand = new ArrayList<>();
        if (trade) {
            tradeSizes(parts, forSale, onHand);
        }
        if (boards) {
            measuredBoards(parts, forSale, onHand);
        }
        if (sheets) {
            sheets(parts, forSale, onHand);
        }
        return new Job(
                name,
                new Writing(LengthUnit.INCH, '.', Length.inches("0.0625"), DOLLAR),
                1 + random.nextInt(10) / 8,
                shop(),
                new TreeMap<>(Job.builtInAllowances()),
                parts,
                forSale,
                onHand,
                random.nextInt(5) == 0 ? Goal.WASTE : random.nextInt(5) == 0 ? Goal.BOARDS : Goal.COST,
                new Effort(60_000L, null, 1, 1));
    }

    private ShopRules shop() {
        Length kerf = sixteenths(random.nextInt(3));
        Trim boardTrim =
                random.nextBoolean() ? Trim.NONE : new Trim(sixteenths(8), sixteenths(random.nextInt(5)), null, null);
        Trim sheetTrim = random.nextBoolean()
                ? Trim.NONE
                : new Trim(sixteenths(4), sixteenths(4), sixteenths(4), sixteenths(random.nextInt(5)));
        return new ShopRules(
                new Kerf(kerf, random.nextInt(4) == 0 ? sixteenths(1) : kerf),
                boardTrim,
                sheetTrim,
                limits(),
                List.of(
                        new KeepRule(Form.BOARD, inches(18), inches(1)),
                        new KeepRule(Form.SHEET, inches(12), inches(6))),
                Length.inches("0.0625"),
                Length.inches("0.5"),
                random.nextInt(8) == 0 ? inches(120) : null);
    }

    private SawLimits limits() {
        if (random.nextInt(3) > 0) {
            return SawLimits.NONE;
        }
        return new SawLimits(
                random.nextBoolean() ? inches(24 + random.nextInt(10)) : null,
                random.nextInt(4) == 0 ? inches(96) : null,
                random.nextBoolean() ? inches(49) : null,
                random.nextBoolean() ? Integer.valueOf(2 + random.nextInt(2)) : null,
                SawLimits.FirstCut.values()[random.nextInt(3)],
                random.nextInt(4) == 0 ? inches(4) : null);
    }

    private void tradeSizes(List<Part> parts, List<StockItem.ForSale> forSale, List<StockItem.OnHand> onHand) {
        String name = random.nextBoolean() ? "2x4" : "1x6";
        NominalSize size = NominalCatalog.standard().find(name).orElseThrow();
        int lines = 1 + random.nextInt(6);
        boolean group = random.nextInt(4) == 0;
        for (int i = 0; i < lines; i++) {
            parts.add(new Part(
                    "n" + i,
                    1 + random.nextInt(5),
                    sixteenths(64 + random.nextInt(900)),
                    new Section.Nominal(name),
                    "pine",
                    null,
                    WoodClass.values()[random.nextInt(3)],
                    random.nextInt(5) == 0 ? 2 : 0,
                    random.nextInt(4) == 0 ? new Making.Milled("milled") : new Making.AsCut(),
                    group && i < 2 ? "pair" : null,
                    null));
        }
        for (int feet : new int[] {8, 10, 12}) {
            if (random.nextInt(3) > 0) {
                forSale.add(new StockItem.ForSale(
                        "b" + feet,
                        Form.BOARD,
                        size,
                        inches(12 * feet),
                        required(size.width()),
                        size.thickness(),
                        "pine",
                        Grain.LENGTH,
                        null,
                        random.nextInt(3) == 0 ? Integer.valueOf(1 + random.nextInt(4)) : null,
                        price(feet * 50)));
            }
        }
        int owned = random.nextInt(3);
        for (int i = 0; i < owned || (forSale.isEmpty() && i == 0); i++) {
            onHand.add(new StockItem.OnHand(
                    "rack" + i,
                    Form.BOARD,
                    size,
                    sixteenths(500 + random.nextInt(900)),
                    required(size.width()),
                    size.thickness(),
                    "pine",
                    Grain.LENGTH,
                    random.nextBoolean() ? new Trim(Length.ZERO, sixteenths(4), null, null) : null,
                    1 + random.nextInt(4) / 3,
                    zones(500, 56)));
        }
    }

    private void measuredBoards(List<Part> parts, List<StockItem.ForSale> forSale, List<StockItem.OnHand> onHand) {
        int lines = 1 + random.nextInt(4);
        for (int i = 0; i < lines; i++) {
            parts.add(new Part(
                    "m" + i,
                    1 + random.nextInt(3),
                    sixteenths(160 + random.nextInt(500)),
                    new Section.Measured(sixteenths(20 + random.nextInt(50)), Length.inches("0.75")),
                    "oak",
                    null,
                    WoodClass.values()[random.nextInt(3)],
                    0,
                    new Making.Milled("milled"),
                    null,
                    null));
        }
        if (random.nextBoolean()) {
            parts.add(new Part(
                    "panel",
                    1 + random.nextInt(2),
                    inches(20 + random.nextInt(20)),
                    new Section.Measured(inches(8 + random.nextInt(8)), Length.inches("0.75")),
                    "oak",
                    null,
                    WoodClass.TIGHT_KNOT,
                    0,
                    new Making.GlueUp(inches(2), inches(5), null, Making.StaveSource.values()[random.nextInt(3)]),
                    null,
                    null));
        }
        if (random.nextInt(3) == 0) {
            parts.add(new Part(
                    "leg",
                    2,
                    inches(18),
                    new Section.Measured(Length.inches("1.75"), Length.inches("1.75")),
                    "oak",
                    null,
                    WoodClass.CLEAR,
                    0,
                    new Making.Lamination(2),
                    null,
                    null));
        }
        forSale.add(new StockItem.ForSale(
                "oak8",
                Form.BOARD,
                null,
                inches(96),
                sixteenths(90 + random.nextInt(30)),
                Length.inches("1.0625"),
                "oak",
                Grain.LENGTH,
                null,
                random.nextInt(4) == 0 ? Integer.valueOf(3) : null,
                new Price(new BigDecimal("7.25"), DOLLAR, PriceUnit.BOARD_FOOT)));
        int owned = random.nextInt(4);
        for (int i = 0; i < owned; i++) {
            onHand.add(new StockItem.OnHand(
                    "oak-own" + i,
                    Form.BOARD,
                    null,
                    sixteenths(600 + random.nextInt(900)),
                    sixteenths(60 + random.nextInt(60)),
                    Length.inches("1.0625"),
                    "oak",
                    Grain.LENGTH,
                    null,
                    1,
                    zones(600, 60),
                    condition(),
                    null));
        }
    }

    private Condition condition() {
        if (random.nextInt(3) > 0) {
            return Condition.TRUE;
        }
        return new Condition(
                sixteenths(random.nextInt(8)),
                random.nextBoolean() ? Length.ZERO : sixteenths(random.nextInt(10)),
                random.nextBoolean() ? null : sixteenths(40 + random.nextInt(20)),
                random.nextInt(3) == 0 ? Boolean.valueOf(random.nextBoolean()) : null);
    }

    private void sheets(List<Part> parts, List<StockItem.ForSale> forSale, List<StockItem.OnHand> onHand) {
        int lines = 1 + random.nextInt(6);
        for (int i = 0; i < lines; i++) {
            parts.add(new Part(
                    "p" + i,
                    1 + random.nextInt(4),
                    sixteenths(100 + random.nextInt(500)),
                    new Section.Measured(sixteenths(60 + random.nextInt(300)), Length.inches("0.75")),
                    "plywood",
                    random.nextInt(3) == 0 ? Grain.ANY : random.nextInt(3) == 0 ? Grain.WIDTH : null,
                    WoodClass.CLEAR,
                    random.nextInt(6) == 0 ? 1 : 0,
                    new Making.AsCut(),
                    null,
                    null));
        }
        forSale.add(new StockItem.ForSale(
                "ply",
                Form.SHEET,
                null,
                inches(96),
                inches(48),
                Length.inches("0.71875"),
                "plywood",
                random.nextInt(3) == 0 ? Grain.ANY : Grain.LENGTH,
                null,
                null,
                price(6400)));
        if (random.nextBoolean()) {
            onHand.add(new StockItem.OnHand(
                    "ply-rest",
                    Form.SHEET,
                    null,
                    sixteenths(400 + random.nextInt(300)),
                    sixteenths(200 + random.nextInt(300)),
                    Length.inches("0.71875"),
                    "plywood",
                    Grain.LENGTH,
                    new Trim(Length.ZERO, Length.ZERO, Length.ZERO, sixteenths(4)),
                    1,
                    random.nextBoolean() ? zones(400, 200) : List.of()));
        }
    }

    private List<Zone> zones(int length, int width) {
        List<Zone> zones = new ArrayList<>();
        int count = random.nextInt(3);
        for (int i = 0; i < count; i++) {
            int from = random.nextInt(length - 60);
            boolean across = random.nextBoolean();
            int edge = random.nextInt(width / 2);
            zones.add(new Zone(
                    sixteenths(from),
                    sixteenths(from + 1 + random.nextInt(50)),
                    across ? null : sixteenths(edge),
                    across ? null : sixteenths(edge + 1 + random.nextInt(width / 2 - 1)),
                    Zone.Severity.values()[random.nextInt(3)],
                    Zone.Face.BOTH,
                    random.nextInt(12) == 0));
        }
        return zones;
    }

    private static Price price(int cents) {
        return new Price(BigDecimal.valueOf(cents, 2), DOLLAR, PriceUnit.PIECE);
    }

    private static Length required(@Nullable Length width) {
        if (width == null) {
            throw new IllegalArgumentException("a trade size without width");
        }
        return width;
    }

    private static Length sixteenths(int count) {
        return Length.ofNanometres(1_587_500L * count);
    }

    private static Length inches(int count) {
        return sixteenths(16 * count);
    }
}
