package org.stockcutting.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.groups.Tuple.tuple;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Collections;
import java.util.Currency;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import org.assertj.core.groups.Tuple;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.material.Grain;
import org.stockcutting.material.NominalCatalog;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Price;
import org.stockcutting.stock.PriceUnit;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Trim;
import org.stockcutting.stock.Zone;

/** Jobs built in code, not read: what the reader would have refused must be found here too. */
class JobReviewTest {

    private static final Currency USD = Currency.getInstance("USD");
    private static final Price FIVE = new Price(new BigDecimal("5"), USD, PriceUnit.PIECE);
    private static final Section PLAIN = new Section.Measured(in("3"), in("1"));

    private static Length in(String inches) {
        return Length.inches(inches);
    }

    private static Part part(String id, String length, Section section, Making making, String group) {
        return part(id, 2, length, section, making, group);
    }

    private static Part part(String id, int quantity, String length, Section section, Making making, String group) {
        return new Part(id, quantity, in(length), section, "oak", null, WoodClass.CLEAR, 0, making, group, null);
    }

    private static Part plain(String id) {
        return part(id, "20", PLAIN, new Making.AsCut(), null);
    }

    private static StockItem.ForSale sale(String id, String length, Trim trim, Price price) {
        return new StockItem.ForSale(
                id, Form.BOARD, null, in(length), in("6"), in("1"), "oak", Grain.LENGTH, trim, null, price);
    }

    private static StockItem.OnHand owned(String id, Zone... zones) {
        return new StockItem.OnHand(
                id, Form.BOARD, null, in("50"), in("6"), in("1"), "oak", Grain.LENGTH, null, 1, List.of(zones));
    }

    private static Zone zone(String from, String to, String fromEdge, String toEdge) {
        return new Zone(
                in(from),
                in(to),
                fromEdge == null ? null : in(fromEdge),
                toEdge == null ? null : in(toEdge),
                Zone.Severity.UNUSABLE,
                Zone.Face.BOTH,
                false);
    }

    private static Job job(List<Part> parts, List<StockItem.ForSale> sold, List<StockItem.OnHand> owned) {
        return job(ShopRules.defaults(), 1, parts, sold, owned);
    }

    private static Job job(
            ShopRules shop, int sets, List<Part> parts, List<StockItem.ForSale> sold, List<StockItem.OnHand> owned) {
        return new Job(
                "job",
                new Writing(LengthUnit.INCH, '.', null, USD),
                sets,
                shop,
                new TreeMap<>(Job.builtInAllowances()),
                parts,
                sold,
                owned,
                Goal.COST,
                Effort.defaults());
    }

    private static Job withPart(Part part) {
        return job(List.of(part), List.of(sale("s", "96", null, FIVE)), List.of());
    }

    private static Job withSale(StockItem.ForSale item) {
        return job(List.of(plain("a")), List.of(item), List.of());
    }

    private static void faults(Job job, Tuple... expected) {
        List<Fault> found = JobReview.review(job);
        assertThat(found).extracting(Fault::pointer, Fault::code).containsExactlyInAnyOrder(expected);
        assertThat(found).allMatch(f -> f.text().endsWith(".") && !f.expected().isBlank());
    }

    @Test
    void aSoundJobHasNoFaults() {
        faults(job(
                List.of(plain("a"), part("b", "20", new Section.Nominal("2x4"), new Making.Milled("milled"), null)),
                List.of(sale("s", "96", null, FIVE)),
                List.of(owned("o", zone("0", "50", "0", "6")))));
    }

    @Test
    void nothingToMakeAndNothingToCut() {
        faults(job(List.of(), List.of(), List.of()), tuple("/parts", "no-parts"), tuple("/stock", "no-stock"));
    }

    @Test
    void idsAreTheirOwn() {
        faults(
                job(
                        List.of(plain("a"), plain("a"), plain("offcut"), plain(" ")),
                        List.of(sale("s", "96", null, FIVE)),
                        List.of(owned("s"))),
                tuple("/parts/1/id", "duplicate-id"),
                tuple("/parts/2/id", "reserved-id"),
                tuple("/parts/3/id", "blank"),
                tuple("/onHand/0/id", "duplicate-id"));
    }

    @ParameterizedTest
    @CsvSource({"0, not-positive", "-1, not-positive", "39371, out-of-range"})
    void lengthsBeyondReason(String inches, String code) {
        faults(withPart(part("a", inches, PLAIN, new Making.AsCut(), null)), tuple("/parts/0/length", code));
    }

    /** 39370 in is just under a kilometre (1 in = 25.4 mm exactly, international yard and pound agreement of 1959). */
    @Test
    void aKilometreIsTheLimit() {
        faults(withPart(part("a", "39370", PLAIN, new Making.AsCut(), null)));
    }

    @Test
    void namesThatCannotBePrintedOrAreEndless() {
        faults(withPart(plain("a\u0007")), tuple("/parts/0/id", "bad-character"));
        faults(withPart(plain("\udc00")), tuple("/parts/0/id", "bad-character"));
        faults(withPart(plain("n".repeat(201))), tuple("/parts/0/id", "too-long"));
        faults(withPart(plain("n".repeat(200))));
    }

    @Test
    void piecesAreCountedWithStavesAndSetsWithoutOverflow() {
        Making eightStaves = new Making.GlueUp(in("1"), in("2"), null, Making.StaveSource.ANY);
        Section wide = new Section.Measured(in("15"), in("1"));
        // 15 in + 1 in of the built-in profile are 8 staves of 2 in: 25,000 panels are exactly the limit.
        faults(withPart(part("a", 25_000, "20", wide, eightStaves, null)));
        faults(withPart(part("a", 25_001, "20", wide, eightStaves, null)), tuple("/parts", "too-many"));
        List<Part> many = List.of(part("a", 200_000, "20", PLAIN, new Making.Lamination(1_000), null));
        faults(
                job(ShopRules.defaults(), 200_000, many, List.of(sale("s", "96", null, FIVE)), List.of()),
                tuple("/parts", "too-many"));
        faults(
                withPart(part("a", Integer.MAX_VALUE, "20", PLAIN, new Making.AsCut(), null)),
                tuple("/parts/0/quantity", "out-of-range"),
                tuple("/parts", "too-many"));
    }

    @Test
    void tooManyEntries() {
        List<StockItem.ForSale> sold = new java.util.ArrayList<>();
        for (int i = 0; i <= 200; i++) {
            sold.add(sale("s" + i, "96", null, FIVE));
        }
        faults(job(List.of(plain("a")), sold, List.of()), tuple("/stock", "too-many"));
        assertThat(JobReview.review(job(Collections.nCopies(5_001, plain("a")), sold.subList(0, 1), List.of())))
                .hasSize(100)
                .extracting(Fault::code)
                .contains("too-many");
    }

    @Test
    void whatCannotBeMade() {
        faults(
                withPart(part("a", "20", PLAIN, new Making.Milled("mine"), null)),
                tuple("/parts/0/allowance", "unknown-allowance"));
        faults(
                withPart(part("a", "20", new Section.Nominal("2x99"), new Making.AsCut(), null)),
                tuple("/parts/0/nominal", "unknown-nominal"));
        faults(
                withPart(part("a", "20", new Section.Nominal("2x4"), new Making.Lamination(1), null)),
                tuple("/parts/0/make", "conflict"),
                tuple("/parts/0/make/plies", "out-of-range"));
        faults(
                withPart(part(
                        "a", "20", PLAIN, new Making.GlueUp(in("4"), in("3"), null, Making.StaveSource.ANY), null)),
                tuple("/parts/0/make/staves", "impossible-glue-up"));
    }

    /** A 12 in panel is 13 in before it is trimmed: three staves of 4-1/3 in would do, three of 4 in do not. */
    @ParameterizedTest
    @CsvSource({"3, 4, false", "4, 4, true", "3, 4.34, true", "3, 4.33, false", "13, 1, true", "12, 1, false"})
    void aGivenNumberOfStavesMustReachThePanel(int count, String max, boolean possible) {
        Making making = new Making.GlueUp(in("1"), in(max), count, Making.StaveSource.ANY);
        Job job = withPart(part("a", "20", new Section.Measured(in("12"), in("1")), making, null));
        assertThat(JobReview.review(job).isEmpty()).isEqualTo(possible);
    }

    @Test
    void groupsThatNoBoardCanHold() {
        Part oak = part("a", "20", PLAIN, new Making.AsCut(), "g");
        Part ash = new Part("b", 1, in("20"), PLAIN, "ash", null, WoodClass.CLEAR, 0, new Making.AsCut(), "g", null);
        Part two = part("c", "20", new Section.Nominal("2x4"), new Making.AsCut(), "h");
        Part other = part("d", "20", new Section.Nominal("2x6"), new Making.AsCut(), "h");
        Making apart = new Making.GlueUp(in("1"), in("2"), null, Making.StaveSource.DIFFERENT_BOARDS);
        faults(
                job(
                        List.of(oak, ash, two, other, part("e", "20", PLAIN, apart, "i")),
                        List.of(sale("s", "96", null, FIVE)),
                        List.of()),
                tuple("/parts/1/group", "mixed-group"),
                tuple("/parts/3/group", "mixed-group"),
                tuple("/parts/4/group", "conflict"));
    }

    @Test
    void rulesAreSortedByNameAndPart() {
        Job job = job(
                List.of(
                        part("z", "20", PLAIN, new Making.AsCut(), "b"),
                        part("a", "20", PLAIN, new Making.AsCut(), "b"),
                        part("m", "20", PLAIN, new Making.AsCut(), "a"),
                        plain("alone")),
                List.of(sale("s", "96", null, FIVE)),
                List.of());
        assertThat(Rules.of(job))
                .containsExactly(new Rule.SameBoard("a", List.of("m")), new Rule.SameBoard("b", List.of("a", "z")));
    }

    @Test
    void trimsLeaveSomething() {
        Trim all = new Trim(in("48"), in("48"), null, null);
        Trim nearlyAll = new Trim(in("48"), in("47.5"), null, null);
        faults(withSale(sale("s", "96", all, FIVE)), tuple("/stock/0/length", "nothing-left"));
        faults(withSale(sale("s", "96", nearlyAll, FIVE)));
        faults(
                withSale(sale("s", "96", new Trim(null, null, in("6"), null), FIVE)),
                tuple("/stock/0/width", "nothing-left"));
        faults(
                withSale(sale("s", "96", new Trim(in("-1"), null, null, null), FIVE)),
                tuple("/stock/0/trim/start", "negative"));
    }

    @Test
    void zonesLieOnTheirBoard() {
        faults(
                job(
                        List.of(plain("a")),
                        List.of(),
                        List.of(owned(
                                "o",
                                zone("3", "3", null, null),
                                zone("-1", "3", "2", "1"),
                                zone("49", "50.5", "5", "7")))),
                tuple("/onHand/0/zones/0/to", "empty-zone"),
                tuple("/onHand/0/zones/1/from", "negative"),
                tuple("/onHand/0/zones/1/toEdge", "empty-zone"),
                tuple("/onHand/0/zones/2/to", "zone-outside"),
                tuple("/onHand/0/zones/2/toEdge", "zone-outside"));
    }

    @Test
    void pricesAreThereAndCanBeAdded() {
        faults(withSale(sale("s", "96", null, null)), tuple("/stock/0/price", "missing-price"));
        Price euros = new Price(BigDecimal.ONE, Currency.getInstance("EUR"), PriceUnit.PIECE);
        faults(withSale(sale("s", "96", null, euros)), tuple("/stock/0/price/currency", "mixed-currencies"));
        Price debt = new Price(BigDecimal.ONE.negate(), USD, PriceUnit.PIECE);
        faults(withSale(sale("s", "96", null, debt)), tuple("/stock/0/price/amount", "negative"));
        Price dear = new Price(new BigDecimal("1000000.01"), USD, PriceUnit.PIECE);
        faults(withSale(sale("s", "96", null, dear)), tuple("/stock/0/price/amount", "out-of-range"));
    }

    @Test
    void sheetsHaveNoTradeSizeOfBoards() {
        StockItem.ForSale sheet = new StockItem.ForSale(
                "s",
                Form.SHEET,
                NominalCatalog.standard().find("2x4").orElseThrow(),
                in("96"),
                in("48"),
                in("1"),
                "ply",
                Grain.ANY,
                null,
                null,
                FIVE);
        faults(withSale(sheet), tuple("/stock/0/nominal", "nominal-on-sheet"));
    }

    @Test
    void theCarTakesSomething() {
        ShopRules d = ShopRules.defaults();
        ShopRules small = new ShopRules(
                d.kerf(),
                d.boardTrim(),
                d.sheetTrim(),
                d.limits(),
                d.keepOffcuts(),
                d.thicknessTolerance(),
                d.maxPlaning(),
                in("95"));
        List<StockItem.ForSale> sold = List.of(sale("s", "96", null, FIVE));
        faults(job(small, 1, List.of(plain("a")), sold, List.of()), tuple("/shop/carLength", "no-stock"));
        faults(job(small, 1, List.of(plain("a")), sold, List.of(owned("o"))));
    }

    @Test
    void nothingIsReportedThatRestsOnWhatCouldNotBeRead() {
        Job job = withSale(sale("s", "96", new Trim(in("48"), in("48"), null, null), null));
        assertThat(JobReview.review(job, Set.of("/stock/0/trim/end", "/goal"))).isEmpty();
        assertThat(JobReview.review(job, Set.of("/stock/0"))).isEmpty();
        assertThat(JobReview.review(job, Set.of("/stock/1"))).hasSize(2);
    }

    @Test
    void codesAreWordsOfTheirOwn() {
        assertThat(Arrays.stream(FaultCode.values()).map(FaultCode::word))
                .doesNotHaveDuplicates()
                .allMatch(word -> word.matches("[a-z0-9]+(-[a-z0-9]+)*"));
        assertThat(FaultCode.values()).allMatch(code -> !code.meaning().isBlank());
    }
}
