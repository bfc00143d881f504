package org.stockcutting.io;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import org.stockcutting.generate.RandomShapings;
import org.stockcutting.job.AllowanceProfile;
import org.stockcutting.job.Delivery;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.KeepRule;
import org.stockcutting.job.Kerf;
import org.stockcutting.job.Machines;
import org.stockcutting.job.OwnWood;
import org.stockcutting.job.SawLimits;
import org.stockcutting.job.Seasons;
import org.stockcutting.job.ShopRules;
import org.stockcutting.job.TradeTerms;
import org.stockcutting.job.WoodRules;
import org.stockcutting.job.Writing;
import org.stockcutting.job.YardCuts;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.material.Density;
import org.stockcutting.material.Grain;
import org.stockcutting.material.NominalCatalog;
import org.stockcutting.material.NominalSize;
import org.stockcutting.material.Weight;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.Edging;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.part.Selection;
import org.stockcutting.part.Shaping;
import org.stockcutting.part.ShowFaces;
import org.stockcutting.stock.Condition;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Money;
import org.stockcutting.stock.Offer;
import org.stockcutting.stock.Price;
import org.stockcutting.stock.PriceUnit;
import org.stockcutting.stock.RandomBoards;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Tally;
import org.stockcutting.stock.Trim;
import org.stockcutting.stock.Zone;

/** Valid jobs of every kind, from a seed. */
final class RandomJobs {

    private static final String[] NAMES = {
        "rail", "=1+1", "+5", "@home", "-x", "a,b", "say \"so\"", "T\u00fcr", "3/4 ply; thin", "'quoted", "~a/b"
    };

    private final Random random;

    RandomJobs(long seed) {
        this.random = new Random(seed);
    }

    Job next() {
        Currency currency = Currency.getInstance(random.nextBoolean() ? "USD" : "JPY");
        LengthUnit unit = LengthUnit.values()[random.nextInt(5)];
        List<Part> parts = new ArrayList<>();
        for (int i = 0, n = 1 + random.nextInt(6); i < n; i++) {
            parts.add(part(i));
        }
        List<StockItem.ForSale> forSale = new ArrayList<>();
        for (int i = 0, n = 1 + random.nextInt(4); i < n; i++) {
            forSale.add(forSale(i, currency));
        }
        List<StockItem.OnHand> onHand = new ArrayList<>();
        for (int i = 0, n = random.nextInt(4); i < n; i++) {
            onHand.add(onHand(i));
        }
        TreeMap<String, AllowanceProfile> allowances = new TreeMap<>(Job.builtInAllowances());
        allowances.put("my own", new AllowanceProfile(size(2), size(1), size(1), size(1), size(1), size(1)));
        Job job = new Job(
                name(0),
                new Writing(unit, random.nextBoolean() ? '.' : ',', random.nextBoolean() ? null : size(1), currency),
                1 + random.nextInt(3),
                shop(),
                allowances,
                parts,
                forSale,
                onHand,
                Goal.values()[random.nextInt(3)],
                new Effort(
                        random.nextBoolean() ? null : 1 + (long) random.nextInt(1_000_000),
                        random.nextBoolean() ? null : 1 + random.nextInt(60),
                        random.nextLong(),
                        1 + random.nextInt(4)),
                terms(currency),
                List.of(),
                WoodRules.defaults(),
                random.nextInt(3) > 0 ? List.of() : List.of(rough(0, currency), rough(1, currency)));
        Length least = job.shop().kerf().crosscut().min(job.shop().kerf().rip());
        boolean apart = least.isPositive() && random.nextBoolean();
        Machines machines = new Machines(
                new Machines.Machine(mayBe(12), null),
                new Machines.Machine(mayBe(20), mayBe(12)),
                apart ? new Machines.Breakdown(least, Length.ZERO) : null);
        job = random.nextBoolean() ? job : job.withShop(job.shop().withMachines(machines));
        Money setUpPrice =
                job.goal() == Goal.COST && random.nextBoolean() ? Money.ofMinor(random.nextInt(500), currency) : null;
        job = job.withShop(job.shop().withSetUpPrice(setUpPrice));
        return random.nextBoolean() ? job : new RandomShapings(random.nextLong()).shaped(job);
    }

    private TradeTerms terms(Currency currency) {
        TreeMap<String, OwnWood> woods = new TreeMap<>();
        if (random.nextBoolean()) {
            BigDecimal number = BigDecimal.valueOf(1 + random.nextInt(1_000), random.nextInt(3))
                    .stripTrailingZeros();
            Density density = new Density(number.setScale(Math.max(0, number.scale())));
            woods.put(
                    name(1),
                    new OwnWood(
                            random.nextBoolean() ? null : "Douglas fir",
                            random.nextBoolean() ? null : density,
                            random.nextBoolean() ? null : new BigDecimal("0.00281")));
        }
        Weight load = random.nextBoolean()
                ? null
                : Weight.pounds(BigDecimal.valueOf(1 + random.nextInt(1_000), random.nextInt(3)));
        Seasons seasons =
                random.nextBoolean() ? Seasons.HEATED_ROOM : new Seasons(new BigDecimal("8.5"), new BigDecimal("12"));
        return new TradeTerms(
                load,
                woods,
                seasons,
                random.nextBoolean() ? null : new BigDecimal("7.125"),
                random.nextBoolean()
                        ? null
                        : new Delivery(money(currency), random.nextBoolean() ? null : money(currency)),
                random.nextBoolean() ? null : new YardCuts(Form.BOARD, money(currency), random.nextInt(3)));
    }

    private Money money(Currency currency) {
        return Money.ofMinor(random.nextInt(10_000), currency);
    }

    /** Up to so many inches, in sixty-fourths, hundredths of a millimetre or nanometres. */
    Length size(int inches) {
        return switch (random.nextInt(3)) {
            case 0 -> Length.ofNanometres(396_875L * (1 + random.nextInt(64 * inches)));
            case 1 -> Length.ofNanometres(10_000L * (1 + random.nextInt(2_540 * inches)));
            default -> Length.ofNanometres(1 + (long) (random.nextDouble() * 25_400_000L * inches));
        };
    }

    private Length mayBe(int inches) {
        return random.nextBoolean() ? null : size(inches);
    }

    private String name(int index) {
        return NAMES[random.nextInt(NAMES.length)] + (index == 0 ? "" : index);
    }

    private ShopRules shop() {
        return new ShopRules(
                new Kerf(size(1), size(1)),
                trim(),
                trim(),
                new SawLimits(
                        mayBe(40),
                        mayBe(200),
                        mayBe(60),
                        random.nextBoolean() ? null : 1 + random.nextInt(5),
                        SawLimits.FirstCut.values()[random.nextInt(3)],
                        mayBe(12)),
                random.nextBoolean() ? List.of() : List.of(new KeepRule(Form.BOARD, size(20), size(3))),
                size(1),
                size(1),
                random.nextBoolean() ? null : Length.inches("5000"),
                random.nextBoolean() ? Length.ZERO : size(1),
                mayBe(90),
                Machines.UNKNOWN,
                null);
    }

    private Trim trim() {
        return new Trim(mayBe(1), mayBe(1), mayBe(1), mayBe(1));
    }

    private Part part(int i) {
        boolean nominal = random.nextInt(4) == 0;
        Section section = nominal ? new Section.Nominal("2x6") : new Section.Measured(size(20), size(2));
        Making making = switch (random.nextInt(nominal ? 2 : 4)) {
            case 0 -> new Making.AsCut();
            case 1 -> new Making.Milled("my own");
            case 2 ->
                new Making.GlueUp(
                        Length.inches("2"),
                        Length.inches("2").plus(size(3)),
                        random.nextBoolean() ? null : 60,
                        Making.StaveSource.values()[random.nextInt(2)]);
            default -> new Making.Lamination(2 + random.nextInt(6));
        };
        Length length = size(80);
        return new Part(
                        name(0) + " " + i,
                        1 + random.nextInt(9),
                        length,
                        section,
                        "oak",
                        random.nextBoolean() ? null : Grain.values()[random.nextInt(3)],
                        WoodClass.values()[random.nextInt(3)],
                        random.nextInt(3),
                        making,
                        random.nextBoolean() ? null : "group " + random.nextInt(2),
                        random.nextBoolean() ? null : name(0))
                .withEdging(edging(section))
                .withSelection(Selection.NONE
                        .withShowFaces(ShowFaces.values()[random.nextInt(2)])
                        .withGrades(random.nextBoolean() ? List.of() : List.of("select", "fas")))
                .withShaping(Shaping.NONE.withTolerance(
                        random.nextBoolean() ? Length.ZERO : Length.ofNanometres(length.nanometres() / 4)));
    }

    private Edging edging(Section section) {
        if (!(section instanceof Section.Measured measured) || random.nextBoolean()) {
            return Edging.NONE;
        }
        Length band = Length.ofNanometres(measured.width().nanometres() / 3);
        return new Edging(null, random.nextBoolean() ? null : Length.ZERO, band, band, size(2));
    }

    private StockItem.ForSale forSale(int i, Currency currency) {
        boolean sheet = random.nextInt(3) == 0;
        NominalSize nominal = sheet || random.nextBoolean()
                ? null
                : NominalCatalog.standard().find("2x6").orElseThrow();
        Offer offer = offer();
        Price price = new Price(amount(), currency, PriceUnit.values()[random.nextInt(offer.pack() > 1 ? 9 : 8)]);
        return new StockItem.ForSale(
                name(0) + " s" + i,
                sheet ? Form.SHEET : Form.BOARD,
                nominal,
                Length.inches("4").plus(size(150)),
                Length.inches("4").plus(size(40)),
                size(3),
                name(0),
                Grain.values()[random.nextInt(3)],
                random.nextBoolean() ? null : trim(),
                random.nextBoolean() ? null : random.nextInt(40),
                price,
                random.nextBoolean() ? null : name(0),
                offer);
    }

    /** Breaks are all at next to nothing, so that none is above the price before it. */
    private Offer offer() {
        List<Offer.Break> breaks = new ArrayList<>();
        for (int n = random.nextInt(3), from = 2; n > 0; n--, from += 1 + random.nextInt(9)) {
            breaks.add(new Offer.Break(from, new BigDecimal("0.5")));
        }
        List<Offer.Premium> premiums = new ArrayList<>();
        if (random.nextInt(3) == 0) {
            Length over = Length.inches("1").plus(size(9));
            premiums.add(new Offer.Premium(over, new BigDecimal("12.5")));
            premiums.add(new Offer.Premium(over.plus(Length.inches("2")), new BigDecimal("20")));
        }
        int pack = random.nextBoolean() ? 1 : 1 + random.nextInt(8);
        return new Offer(pack, breaks, premiums, random.nextInt(4) == 0 ? Tally.HALF_INCH : Tally.EXACT);
    }

    private RandomBoards rough(int i, Currency currency) {
        StockItem.ForSale like = forSale(i, currency);
        return new RandomBoards(
                name(0) + " rough" + i,
                random.nextBoolean()
                        ? null
                        : NominalCatalog.standard().find("8/4").orElseThrow(),
                Length.inches("3"),
                like.length(),
                Length.inches("2"),
                like.width(),
                like.thickness(),
                like.material(),
                like.ownTrim(),
                random.nextBoolean() ? null : new Price(amount(), currency, PriceUnit.BOARD_FOOT),
                like.grade());
    }

    private BigDecimal amount() {
        BigDecimal amount = new BigDecimal(random.nextInt(100_000))
                .movePointLeft(2)
                .stripTrailingZeros()
                .max(BigDecimal.ONE);
        return amount.setScale(Math.max(0, amount.scale()));
    }

    private StockItem.OnHand onHand(int i) {
        StockItem.ForSale like = forSale(i, Currency.getInstance("USD"));
        List<Zone> zones = new ArrayList<>();
        for (int z = 0, n = random.nextInt(3); z < n; z++) {
            boolean across = random.nextBoolean();
            Length from = size(2);
            zones.add(new Zone(
                    from,
                    from.plus(size(1)),
                    across ? Length.ZERO : null,
                    across ? size(3) : null,
                    Zone.Severity.values()[random.nextInt(3)],
                    Zone.Face.values()[random.nextInt(3)],
                    random.nextBoolean()));
        }
        return new StockItem.OnHand(
                like.id() + " owned",
                like.form(),
                like.nominal(),
                like.length(),
                like.width(),
                like.thickness(),
                like.material(),
                like.grain(),
                like.ownTrim(),
                1 + random.nextInt(3),
                zones,
                condition(),
                like.grade());
    }

    private Condition condition() {
        return new Condition(
                random.nextBoolean() ? Length.ZERO : size(1),
                random.nextBoolean() ? Length.ZERO : size(1),
                random.nextBoolean() ? null : size(2),
                random.nextInt(3) == 0 ? null : Boolean.valueOf(random.nextBoolean()));
    }
}
