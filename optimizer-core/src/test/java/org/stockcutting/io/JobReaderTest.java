package org.stockcutting.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.groups.Tuple.tuple;

import java.math.BigDecimal;
import java.util.Currency;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stockcutting.job.AllowanceProfile;
import org.stockcutting.job.Delivery;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Fault;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.KeepRule;
import org.stockcutting.job.Kerf;
import org.stockcutting.job.OwnWood;
import org.stockcutting.job.SawLimits;
import org.stockcutting.job.Seasons;
import org.stockcutting.job.TradeTerms;
import org.stockcutting.job.Writing;
import org.stockcutting.job.YardCuts;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.material.Density;
import org.stockcutting.material.Grain;
import org.stockcutting.material.NominalCatalog;
import org.stockcutting.material.Weight;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.Binding;
import org.stockcutting.part.CutFrom;
import org.stockcutting.part.Edging;
import org.stockcutting.part.Ends;
import org.stockcutting.part.Making;
import org.stockcutting.part.Mark;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.part.Selection;
import org.stockcutting.part.Shaping;
import org.stockcutting.part.ShowFaces;
import org.stockcutting.part.Taper;
import org.stockcutting.stock.Condition;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Money;
import org.stockcutting.stock.Offer;
import org.stockcutting.stock.Price;
import org.stockcutting.stock.PriceUnit;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Tally;
import org.stockcutting.stock.Trim;
import org.stockcutting.stock.Zone;

class JobReaderTest {

    private static final String PART = "{\"length\": 20, \"width\": 3, \"thickness\": 0.75}";
    private static final String STOCK =
            "{\"length\": \"8'\", \"width\": 6, \"thickness\": 0.75, \"price\": {\"amount\": \"5\"}}";

    private static JobReading read(String json) {
        return new JobReader().read(json);
    }

    private static JobReading readWith(String fields) {
        return read("{" + fields + (fields.isEmpty() ? "" : ", ") + "\"parts\": [" + PART + "], \"stock\": [" + STOCK
                + "]}");
    }

    private static Length in(String decimal) {
        return Length.inches(decimal);
    }

    @Test
    void everyFieldLandsInItsPlace() {
        Job job = read(Documents.text("every-field.json")).orThrow();
        NominalCatalog catalog = NominalCatalog.standard();
        Currency cad = Currency.getInstance("CAD");
        assertThat(job.name()).isEqualTo("Bench for the hall");
        assertThat(job.writing()).isEqualTo(new Writing(LengthUnit.INCH, '.', in("0.03125"), cad));
        assertThat(job.sets()).isEqualTo(1);
        assertThat(job.shop().kerf()).isEqualTo(new Kerf(in("0.09375"), in("0.0625")));
        assertThat(job.shop().boardTrim()).isEqualTo(new Trim(in("0.75"), in("0.625"), in("0.125"), in("0.0625")));
        assertThat(job.shop().sheetTrim()).isEqualTo(new Trim(in("0.25"), in("0.1875"), in("0.3125"), in("0.4375")));
        assertThat(job.shop().limits())
                .isEqualTo(new SawLimits(in("24"), in("110"), in("49.5"), 3, SawLimits.FirstCut.RIP, in("9")));
        assertThat(job.shop().keepOffcuts()).containsExactly(new KeepRule(Form.SHEET, in("14"), in("7")));
        assertThat(job.shop().thicknessTolerance()).isEqualTo(in("0.03125"));
        assertThat(job.shop().maxPlaning()).isEqualTo(in("0.375"));
        assertThat(job.shop().carLength()).isEqualTo(in("100"));
        assertThat(job.shop().zoneMargin()).isEqualTo(in("0.5"));
        assertThat(job.allowances())
                .containsEntry(
                        "rough",
                        new AllowanceProfile(
                                in("1.25"), in("0.1875"), in("0.25"), in("0.03125"), in("0.046875"), in("0.078125")))
                .containsAllEntriesOf(Job.builtInAllowances());
        assertThat(job.parts())
                .containsExactly(
                        new Part(
                                        "leg",
                                        4,
                                        in("17.25"),
                                        new Section.Measured(in("2"), in("1.25")),
                                        "oak",
                                        Grain.WIDTH,
                                        WoodClass.TIGHT_KNOT,
                                        1,
                                        new Making.Milled("rough"),
                                        "legs",
                                        "four feet")
                                .withShaping(new Shaping(
                                        new Taper(in("6"), in("1.125"), Taper.Faces.ONE),
                                        List.of(new Mark("rail", in("3"), in("0.75"), in("0.375"), in("1"))),
                                        Shaping.Fit.TO_SIZE,
                                        Shaping.Hand.NONE))
                                .withSelection(
                                        new Selection(Binding.PAIRS, ShowFaces.ONE, null, List.of("cabin", "no1"))),
                        new Part(
                                        "seat",
                                        1,
                                        in("44"),
                                        new Section.Measured(in("13"), in("1")),
                                        "ash",
                                        null,
                                        WoodClass.CLEAR,
                                        0,
                                        new Making.GlueUp(in("2.5"), in("4.75"), 4, Making.StaveSource.ONE_BOARD),
                                        null,
                                        null)
                                .withShaping(
                                        new Shaping(null, List.of(), Shaping.Fit.AFTER_ASSEMBLY, Shaping.Hand.LEFT)),
                        new Part(
                                        "bow",
                                        1,
                                        in("40"),
                                        new Section.Measured(in("2"), in("1")),
                                        "ash",
                                        null,
                                        WoodClass.CLEAR,
                                        0,
                                        new Making.Lamination(5),
                                        null,
                                        null)
                                .withEdging(
                                        new Edging(in("0.125"), in("0.09375"), in("0.0625"), Length.ZERO, in("1.5")))
                                .withShaping(Shaping.NONE.withTolerance(in("0.0625"))),
                        new Part(
                                "peg",
                                6,
                                in("5"),
                                new Section.Measured(in("1"), in("0.75")),
                                "ash",
                                null,
                                WoodClass.CLEAR,
                                0,
                                new Making.Milled("rough", 3),
                                null,
                                null),
                        new Part(
                                        "stile",
                                        2,
                                        in("30"),
                                        new Section.Measured(in("3"), in("0.75")),
                                        "ash",
                                        null,
                                        WoodClass.CLEAR,
                                        0,
                                        new Making.AsCut(),
                                        null,
                                        null)
                                .withShaping(new Shaping(
                                        new Taper(null, in("2"), Taper.Faces.ONE, true),
                                        List.of(),
                                        Shaping.Fit.TO_SIZE,
                                        Shaping.Hand.NONE)),
                        new Part(
                                        "frame",
                                        4,
                                        in("20"),
                                        new Section.Measured(in("1.5"), in("0.75")),
                                        "ash",
                                        null,
                                        WoodClass.CLEAR,
                                        0,
                                        new Making.AsCut(),
                                        null,
                                        null)
                                .withShaping(Shaping.NONE.withEnds(new Ends(Ends.Angle.FOUR_SIDES, 2, true))),
                        new Part(
                                        "cleat",
                                        1,
                                        in("12"),
                                        new Section.Nominal("1x2"),
                                        "ash",
                                        null,
                                        WoodClass.CLEAR,
                                        0,
                                        new Making.AsCut(),
                                        null,
                                        null)
                                .withSelection(
                                        Selection.NONE.withCutFrom(new CutFrom("rack-9", in("2.25"), Length.ZERO))));
        assertThat(job.forSale())
                .containsExactly(new StockItem.ForSale(
                                "oak-8",
                                Form.BOARD,
                                catalog.find("2x6").orElseThrow(),
                                in("96"),
                                in("5.375"),
                                in("1.4375"),
                                "oak",
                                Grain.LENGTH,
                                new Trim(in("1"), in("2"), in("0.25"), in("0.375")),
                                9,
                                new Price(new BigDecimal("7.35"), cad, PriceUnit.BOARD_FOOT))
                        .withGrade("cabin")
                        .withOffer(new Offer(
                                3,
                                List.of(new Offer.Break(6, new BigDecimal("7.1"))),
                                List.of(new Offer.Premium(in("5"), new BigDecimal("7.5"))),
                                Tally.NEXT_INCH)));
        assertThat(job.onHand())
                .hasSize(2)
                .contains(new StockItem.OnHand(
                        "rack-3",
                        Form.BOARD,
                        catalog.find("1x8").orElseThrow(),
                        in("61"),
                        in("7.125"),
                        in("0.6875"),
                        "ash",
                        Grain.ANY,
                        new Trim(Length.ZERO, in("0.5"), in("0.0625"), in("0.09375")),
                        2,
                        List.of(new Zone(
                                in("20"), in("22.5"), in("1"), in("3"), Zone.Severity.BLEMISH, Zone.Face.UP, true)),
                        new Condition(in("0.1875"), in("0.125"), in("6.875"), true),
                        "select"));
        assertThat(job.terms())
                .isEqualTo(new TradeTerms(
                        Weight.pounds(new BigDecimal("400")),
                        new TreeMap<>(Map.of(
                                "ash",
                                new OwnWood(
                                        "ash, black",
                                        Density.poundsPerCubicFoot(new BigDecimal("40")),
                                        new BigDecimal("0.0026")))),
                        new Seasons(new BigDecimal("7"), new BigDecimal("10.5")),
                        new BigDecimal("8.25"),
                        new Delivery(Money.ofMinor(4_500, cad), Money.ofMinor(30_000, cad)),
                        new YardCuts(Form.SHEET, Money.ofMinor(150, cad), 2)));
        assertThat(job.goal()).isEqualTo(Goal.COST);
        assertThat(job.shop().setUpPrice()).isEqualTo(Money.ofMinor(150, cad));
        assertThat(job.effort()).isEqualTo(new Effort(500_000L, 15, 42, 2));
    }

    @Test
    void anOrdinaryJobIsReadWithNullsAndDefaults() {
        JobReading reading = read(Documents.text("garden-job.json"));
        Job job = reading.orThrow();
        assertThat(job.shop().limits().longestRip()).isNull();
        assertThat(job.effort()).isEqualTo(new Effort(null, 10, 3, 1));
        assertThat(job.shop().sheetTrim()).isEqualTo(new Trim(in("0.375"), in("0.375"), in("0.375"), in("0.375")));
        assertThat(job.shop().boardTrim()).isEqualTo(new Trim(in("0.375"), in("0.125"), null, null));
        // A dry 2x6 is 1-1/2 by 5-1/2 in: voluntary product standard PS 20, table of dressed dimension lumber.
        assertThat(job.forSale().get(1).width()).isEqualTo(in("5.5"));
        assertThat(job.forSale().get(1).thickness()).isEqualTo(in("1.5"));
        assertThat(reading.defaults())
                .containsEntry("/stock/2x6-8/width", "5-1/2")
                .containsEntry("/stock/2x6-8/material", "cedar")
                .containsEntry("/onHand/shed-2/grain", "length")
                .containsEntry("/parts/stile/class", "clear")
                .doesNotContainKey("/allowances/milled/length");
    }

    @Test
    void tenMistakesInOneJobAreAllReported() {
        String json = """
                {"unit": "in", "currency": "USD", "kerff": "1/8", "goal": "cost",
                 "shop": {"kerf": {"crosscut": "an eighth"}, "boardTrim": {"start": "60", "end": "40"}},
                 "parts": [
                   {"id": "rail", "quantity": 2.5, "length": "30", "width": "3", "thickness": "3/4"},
                   {"id": "post", "quantity": 0, "length": "1/3", "width": "3", "thickness": "3/4"},
                   {"id": "rail", "length": "20", "nominal": "2x99"},
                   {"id": "top", "length": "20", "width": "20", "thickness": "3/4", "ends": {"angle": "45", "angles": [45, 30]},
                    "make": {"as": "glue-up", "staves": {"min": "2", "max": "4", "count": 3}}}
                 ],
                 "stock": [{"id": "s", "length": "8'", "width": "6", "thickness": "3/4"}],
                 "onHand": [{"id": "s", "length": "200", "width": "6", "thickness": "3/4",
                             "zones": [{"from": "198", "to": "201"}]}]}
                """;
        assertThat(read(json).faults())
                .extracting(Fault::pointer, Fault::code)
                .containsExactlyInAnyOrder(
                        tuple("/kerff", "unknown-field"),
                        tuple("/shop/kerf/crosscut", "not-a-length"),
                        tuple("/parts/0/quantity", "wrong-type"),
                        tuple("/parts/1/quantity", "not-positive"),
                        tuple("/parts/1/length", "not-exact"),
                        tuple("/parts/2/id", "duplicate-id"),
                        tuple("/parts/2/nominal", "unknown-nominal"),
                        tuple("/parts/3/ends/angles", "not-yet-supported"),
                        tuple("/parts/3/make/staves/count", "impossible-glue-up"),
                        tuple("/stock/0/length", "nothing-left"),
                        tuple("/stock/0/price", "missing-price"),
                        tuple("/onHand/0/id", "duplicate-id"),
                        tuple("/onHand/0/zones/0/to", "zone-outside"));
    }

    @Test
    void aSlipOfThePenIsAnsweredWithTheNearestField() {
        assertThat(readWith("\"kerff\": 1, \"unit\": \"inn\"").faults())
                .extracting(Fault::text)
                .anyMatch(text -> text.contains("unit") && text.contains("in, ft, mm, cm, m"));
        Fault fault = readWith("\"currancy\": \"USD\"").faults().get(0);
        assertThat(fault.text()).contains("\"currency\"");
        assertThat(fault.expected()).contains("currency").contains("parts");
    }

    @Test
    void aFaultyValueHidesWhatOnlyFollowsFromIt() {
        String json = """
                {"parts": [{"length": "20", "width": "wide", "thickness": "1",
                            "make": {"as": "glue-up", "staves": {"min": "2", "max": "4", "count": 1}}}],
                 "stock": [{"length": "long", "width": "6", "thickness": "1", "trim": {"start": "50"}}]}
                """;
        assertThat(read(json).faults()).extracting(Fault::pointer).containsExactly("/parts/0/width", "/stock/0/length");
    }

    @Test
    void namesSaidTwiceAreAllReportedAndReadingGoesOn() {
        String json = "{\"unit\": \"in\", \"unit\": \"mm\", \"parts\": [{\"length\": 20, \"length\": 21, \"width\": 3,"
                + " \"thickness\": \"x\"}], \"stock\": [" + STOCK + "]}";
        assertThat(read(json).faults())
                .extracting(Fault::pointer, Fault::code)
                .containsExactly(
                        tuple("/unit", "duplicate-field"),
                        tuple("/parts/0/length", "duplicate-field"),
                        tuple("/parts/0/thickness", "not-a-length"));
    }

    @Test
    void nullIsAbsentOnlyWhereAbsentMeansNone() {
        assertThat(readWith("\"precision\": null, \"shop\": null, \"allowances\": null, \"goal\": null")
                        .isValid())
                .isTrue();
        assertThat(readWith("\"sets\": null").faults())
                .extracting(Fault::pointer, Fault::code)
                .containsExactly(tuple("/sets", "wrong-type"));
        assertThat(read("{\"parts\": null, \"stock\": [" + STOCK + "]}").faults())
                .extracting(Fault::pointer, Fault::code)
                .containsExactly(tuple("/parts", "missing"));
    }

    @Test
    void idsAreMadeUpAndStayUnique() {
        String parts = ("," + PART).repeat(30).substring(1);
        JobReading reading = read("{\"parts\": [{\"id\": \"B\", \"length\": 1, \"nominal\": \"2x4\"}," + parts
                + "], \"stock\": [{\"nominal\": \"2x4\", \"length\": \"8'\"}, {\"nominal\": \"2x4\", \"length\": 96},"
                + " {\"nominal\": \"2x4\", \"length\": \"92-5/8\"}, {\"length\": 96, \"width\": \"5-1/2\", \"thickness\":"
                + " \"3/4\"}], \"onHand\": [{\"nominal\": \"2x4\", \"length\": \"8'\"}]}");
        Job job = reading.orThrow();
        assertThat(job.parts().subList(0, 5)).extracting(Part::id).containsExactly("B", "A", "C", "D", "E");
        assertThat(job.parts().get(30).id()).isEqualTo("AE");
        assertThat(job.forSale())
                .extracting(StockItem.ForSale::id)
                .containsExactly("2x4-8", "2x4-8-2", "2x4-92-5/8", "3/4x5-1/2-96");
        assertThat(job.onHand().get(0).id()).isEqualTo("2x4-8-3");
        assertThat(reading.defaults()).containsEntry("/parts/A/id", "A").containsEntry("/onHand/2x4-8-3/id", "2x4-8-3");
        Set<String> ids = new HashSet<>();
        job.parts().forEach(p -> assertThat(ids.add(p.id())).isTrue());
    }

    @Test
    void everythingThatWasNotSaidIsEchoed() {
        JobReading reading =
                read("{\"parts\": [{\"length\": 20, \"width\": 3, \"thickness\": 1, \"allowance\": \"milled\"}],"
                        + " \"stock\": [{\"nominal\": \"2x6\", \"length\": \"8'\", \"price\": {\"amount\": 5}}]}");
        assertThat(reading.defaults())
                .containsEntry("/unit", "in")
                .containsEntry("/currency", "USD")
                .containsEntry("/goal", "cost")
                .containsEntry("/shop/kerf/crosscut", "1/8")
                .containsEntry("/shop/thicknessTolerance", "1/16")
                .containsEntry("/shop/maxPlaning", "1/2")
                .containsEntry("/shop/limits/firstCut", "any")
                .containsEntry("/allowances/milled/thickness", "3/16")
                .containsEntry("/parts/A/id", "A")
                .containsEntry("/parts/A/quantity", "1")
                .containsEntry("/parts/A/class", "clear")
                .containsEntry("/stock/2x6-8/id", "2x6-8")
                .containsEntry("/stock/2x6-8/width", "5-1/2")
                .containsEntry("/stock/2x6-8/price/per", "piece")
                .containsEntry("/stock/2x6-8/price/currency", "USD")
                .containsEntry("/effort/seconds", "20")
                .containsEntry("/effort/seed", "1");
    }

    @Test
    void aMetricJobWithADecimalComma() {
        JobReading reading =
                read("{\"unit\": \"mm\", \"decimal\": \",\", \"parts\": [{\"length\": \"40,6 cm\", \"width\":"
                        + " 90.5, \"thickness\": \"18\"}], \"stock\": [{\"form\": \"sheet\", \"length\": \"2,5 m\", \"width\":"
                        + " \"1250\", \"thickness\": \"18\", \"price\": {\"amount\": \"96,50\"}}]}");
        Job job = reading.orThrow();
        assertThat(job.parts().get(0).length()).isEqualTo(Length.millimetres("406"));
        assertThat(job.parts().get(0).section())
                .isEqualTo(new Section.Measured(Length.millimetres("90.5"), Length.millimetres("18")));
        assertThat(job.forSale().get(0).price())
                .isEqualTo(new Price(new BigDecimal("96.5"), Currency.getInstance("EUR"), PriceUnit.PIECE));
        assertThat(job.shop().kerf().rip()).isEqualTo(Length.millimetres("3.175"));
        assertThat(reading.defaults()).containsEntry("/shop/kerf/rip", "3,175");
        assertThat(job.forSale().get(0).id()).isEqualTo("18x1250-2500");
        assertThat(job.forSale().get(0).grain()).isEqualTo(Grain.ANY);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"\"1,250\"|.", "\"1.250\"|,", "\"$5\"|.", "\"5.\"|.", "\"\"|.", "true|.", "1e40|.", "\"1 000\"|."})
    void amountsThatCanBeMisreadAreRefused(String amount, String decimal) {
        String json = "{\"decimal\": \"" + decimal + "\", \"parts\": [" + PART
                + "], \"stock\": [{\"length\": 96, \"width\": 6, \"thickness\": 1, \"price\": {\"amount\": " + amount
                + "}}]}";
        assertThat(read(json).faults()).extracting(Fault::pointer).containsExactly("/stock/0/price/amount");
    }

    @Test
    void trimsOfSheetsMayBeOneValueThoseOfBoardsMayNot() {
        assertThat(readWith("\"shop\": {\"boardTrim\": \"1/4\"}").faults())
                .extracting(Fault::pointer, Fault::code)
                .containsExactly(tuple("/shop/boardTrim", "wrong-type"));
        assertThat(readWith("\"shop\": {\"sheetTrim\": 0.25}")
                        .orThrow()
                        .shop()
                        .sheetTrim()
                        .farEdge())
                .isEqualTo(in("0.25"));
    }

    @Test
    void secondsWithoutWorkMeanTheClockAlone() {
        assertThat(readWith("\"effort\": {\"seconds\": 5}").orThrow().effort()).isEqualTo(new Effort(null, 5, 1, 1));
        assertThat(readWith("\"effort\": {\"seconds\": 5}").defaults()).doesNotContainKey("/effort/work");
        assertThat(readWith("").defaults()).containsEntry("/effort/work", Long.toString(Effort.DEFAULT_WORK));
    }

    @Test
    void atMostAHundredFaultsAreListed() {
        String parts = ", {\"length\": \"x\"}".repeat(400).substring(2);
        String document = "{\"parts\": [" + parts + "], \"stock\": [" + STOCK + "]}";
        assertThat(read(document).faults()).hasSize(100);
    }

    @Test
    void aLaterFormatIsRefused() {
        assertThat(readWith("\"format\": 2").faults())
                .extracting(Fault::pointer, Fault::code)
                .containsExactly(tuple("/format", "unsupported-format"));
    }

    /** A number stands for itself, a percentage is told how to be written. */
    @ParameterizedTest
    @CsvSource({"0.95, true", "'\"0.95\"', true", "95, false", "'\"95 %\"', false", "9.5e-1, true"})
    void sharesAreNumbersOrTexts(String written, boolean good) {
        JobReading reading = new JobReader()
                .read(
                        "{\"parts\": [{\"length\": 30, \"nominal\": \"2x4\"}], \"stock\": [{\"length\": 96, \"nominal\": \"2x4\"}],"
                                + " \"wood\": {\"confidence\": " + written + "}}");
        if (good) {
            assertThat(reading.faults()).isEmpty();
            assertThat(reading.orThrow().wood().confidence()).isEqualByComparingTo("0.95");
        } else {
            assertThat(reading.faults()).extracting(Fault::pointer).containsExactly("/wood/confidence");
            assertThat(reading.faults().get(0).text()).contains("such as 0.9 for 90 %");
        }
    }
}
