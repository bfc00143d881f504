package org.stockcutting.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.groups.Tuple.tuple;
import static org.stockcutting.report.Bench.cuts;
import static org.stockcutting.report.Bench.in;
import static org.stockcutting.report.Bench.leaf;
import static org.stockcutting.report.Bench.piece;
import static org.stockcutting.report.Bench.rest;
import static org.stockcutting.report.Bench.trim;
import static org.stockcutting.report.Bench.zone;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.part.Making;
import org.stockcutting.pattern.CutNode.RestLeaf;
import org.stockcutting.pattern.Direction;
import org.stockcutting.plan.BuyingLine;
import org.stockcutting.plan.Derived;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.StepKind;
import org.stockcutting.plan.Warning;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Money;
import org.stockcutting.stock.PriceUnit;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Trim;

class DerivationTest {

    private static final Making AS_CUT = new Making.AsCut();

    @Test
    void buyingListCountsWhatIsBoughtById() {
        Bench bench = new Bench()
                .board("b-2x6", "2x6", "120", "0.92", PriceUnit.FOOT)
                .board("a-2x4", "2x4", "96", "3.98", PriceUnit.PIECE)
                .sheet("ply", "96", "48", "23/32", "64.00", null)
                .board("unpriced", "1x4", "96", null, PriceUnit.PIECE)
                .owned("rack", Form.BOARD, "2x4", "96", "3-1/2", "1-1/2", null);
        bench.part("p", "96", "3-1/2", "1-1/2", AS_CUT);
        Derived derived = bench.derive(
                bench.layout("b-2x6", 3, RestLeaf.OFFCUT, List.of()),
                bench.layout("a-2x4", 1, leaf("p"), List.of(piece("p", "0", "0", "96", "3-1/2"))),
                bench.layout("rack", 2, leaf("p"), List.of(piece("p", "0", "0", "96", "3-1/2"))),
                bench.layout("ply", 1, RestLeaf.OFFCUT, List.of()),
                bench.layout("a-2x4", 1, RestLeaf.OFFCUT, List.of()),
                bench.layout("unpriced", 1, RestLeaf.OFFCUT, List.of()));
        assertThat(derived.buyingList())
                .containsExactly(
                        new BuyingLine("a-2x4", 2, usd("3.98"), usd("7.96"), new BigDecimal("10.67")),
                        new BuyingLine("b-2x6", 3, usd("9.20"), usd("27.60"), new BigDecimal("30.00")),
                        new BuyingLine("ply", 1, usd("64.00"), usd("64.00"), null),
                        new BuyingLine("unpriced", 1, null, null, new BigDecimal("2.67")));
    }

    @Test
    void sequenceIsHandedOn() {
        SequenceStep step = new SequenceStep(1, StepKind.REST, null, null, null, null, null, null, null);
        Derived derived = Derivation.derive(new Bench().job(), List.of(), List.of(step), 7);
        assertThat(derived.cutSequence()).containsExactly(step);
        assertThat(derived.setUps()).isEqualTo(7);
    }

    @Test
    void equalOffcutsShareOneEntryAndRawEndsKeepTheirTrim() {
        Bench bench = new Bench().board("2x4-8", "2x4", "96", "3.98", PriceUnit.PIECE);
        bench.owned("2x4-8-b", Form.BOARD, "2x4", "20", "3-1/2", "1-1/2", null);
        bench.boardTrim = trim("1/2", "1/4", null, "0");
        Layout first =
                bench.layout("2x4-8", 2, RestLeaf.OFFCUT, List.of(), rest("60-5/8", "0", "35-3/8", "3-1/2", true));
        Layout second = bench.layout(
                "2x4-8",
                1,
                RestLeaf.OFFCUT,
                List.of(),
                rest("0", "0", "30", "1-1/2", true),
                rest("50", "1-5/8", "30", "1-7/8", true),
                rest("60-5/8", "0", "35-3/8", "3-1/2", true),
                rest("90", "0", "6", "3-1/2", false));
        List<StockItem.OnHand> offcuts = bench.derive(first, second).offcuts();
        assertThat(offcuts).extracting(StockItem.OnHand::id).containsExactly("2x4-8-a", "2x4-8-c", "2x4-8-d");
        StockItem.OnHand ends = offcuts.get(0);
        assertThat(ends.quantity()).isEqualTo(3);
        assertThat(ends.nominal()).isEqualTo(bench.forSale.get(0).nominal());
        assertThat(ends.length()).isEqualTo(in("35-3/8"));
        // The shop's 0 at the far edge takes nothing off, but says nothing about this edge either.
        assertThat(ends.ownTrim()).isEqualTo(trim("0", "1/4", null, null));
        StockItem.OnHand near = offcuts.get(1);
        assertThat(near.nominal()).isNull();
        assertThat(near.width()).isEqualTo(in("1-1/2"));
        assertThat(near.ownTrim()).isEqualTo(trim("1/2", "0", null, "0"));
        assertThat(offcuts.get(2).ownTrim()).isEqualTo(trim("0", "0", "0", null));
    }

    @Test
    void anOffcutsOwnSoundEndsStaySound() {
        Bench bench = new Bench();
        bench.owned("r", Form.BOARD, "2x4", "50", "3-1/2", "1-1/2", trim("0", "1/4", null, null));
        Layout layout = bench.layout("r", 1, RestLeaf.OFFCUT, List.of(), rest("0", "0", "50", "3-1/2", true));
        assertThat(bench.derive(layout).offcuts().get(0).ownTrim()).isEqualTo(trim("0", "1/4", null, null));
    }

    @Test
    void zonesMoveWithTheOffcut() {
        Bench bench = new Bench();
        bench.owned(
                "r",
                Form.BOARD,
                "2x6",
                "60",
                "5-1/2",
                "1-1/2",
                null,
                zone("5", "8", null, null),
                zone("18", "25", null, null),
                zone("30", "31", "0", "3"),
                zone("40", "41", "4", "5"),
                zone("45", "70", "1", "5"));
        Layout layout = bench.layout("r", 1, RestLeaf.OFFCUT, List.of(), rest("20", "2", "30", "2", true));
        assertThat(bench.derive(layout).offcuts().get(0).zones())
                .containsExactly(zone("0", "5", null, null), zone("10", "11", "0", "1"), zone("25", "30", "0", "2"));
    }

    @Test
    void lettersGoOnAfterZ() {
        assertThat(KeptOffcuts.letters(1)).isEqualTo("a");
        assertThat(KeptOffcuts.letters(26)).isEqualTo("z");
        assertThat(KeptOffcuts.letters(27)).isEqualTo("aa");
        assertThat(KeptOffcuts.letters(52)).isEqualTo("az");
        assertThat(KeptOffcuts.letters(53)).isEqualTo("ba");
        assertThat(KeptOffcuts.letters(703)).isEqualTo("aaa");
    }

    @Test
    void warnsOfRawEndsUnlessTheEntrySaysTheyAreSound() {
        assertThat(endWarnings(Trim.NONE, null)).containsExactly("raw-end");
        assertThat(endWarnings(trim("0", "0", "0", "0"), null)).containsExactly("raw-end");
        assertThat(endWarnings(Trim.NONE, trim("0", "0", null, null))).isEmpty();
        assertThat(endWarnings(Trim.NONE, trim("0", null, null, null))).containsExactly("raw-end");
        assertThat(endWarnings(trim("0", "0", null, null), Trim.NONE)).containsExactly("raw-end");
    }

    @Test
    void namesTheRawEnd() {
        Bench bench = new Bench().board("b", "2x4", "96", "3.98", PriceUnit.PIECE);
        bench.part("p", "60", "3-1/2", "1-1/2", AS_CUT);
        bench.boardTrim = trim("1/2", null, null, null);
        Layout inside = bench.layout(
                "b",
                1,
                cuts(Direction.CROSSCUT, "3/8..1/2 60-1/2..60-5/8", RestLeaf.TRIM, leaf("p"), RestLeaf.OFFCUT),
                List.of(piece("p", "1/2", "0", "60", "3-1/2")));
        Layout atTheEnd = bench.layout(
                "b",
                1,
                cuts(Direction.CROSSCUT, "35-7/8..36", RestLeaf.OFFCUT, leaf("p")),
                List.of(piece("p", "36", "0", "60", "3-1/2")));
        List<Warning> warnings = bench.derive(inside, atTheEnd).warnings();
        assertThat(warnings).hasSize(1);
        assertThat(warnings.get(0).code()).isEqualTo("raw-end");
        assertThat(warnings.get(0).pointer()).isEqualTo("/layouts/1");
        assertThat(warnings.get(0).text()).contains("far end").doesNotContain("start");
    }

    @Test
    void warnsOfFactoryEdgesOfSheets() {
        Bench bench = new Bench().sheet("s", "96", "48", "3/4", "60", null);
        bench.part("p", "96", "20", "3/4", AS_CUT);
        bench.sheetTrim = trim("1/4", "1/4", null, null);
        Layout layout = bench.layout(
                "s",
                1,
                cuts(Direction.RIP, "20..20-1/8", leaf("p"), RestLeaf.OFFCUT),
                List.of(piece("p", "1/4", "0", "95-1/2", "20")));
        assertThat(bench.derive(layout).warnings()).extracting(Warning::code).containsExactly("factory-edge");
        assertThat(bench.derive(layout).warnings().get(0).text())
                .contains("near edge")
                .doesNotContain("far edge");
        bench.sheetTrim = trim("1/4", "1/4", "1/4", "1/4");
        Layout trimmed = bench.layout(
                "s",
                1,
                cuts(Direction.RIP, "1/8..1/4 20-1/4..20-3/8", RestLeaf.TRIM, leaf("p"), RestLeaf.OFFCUT),
                List.of(piece("p", "1/4", "1/4", "95-1/2", "20")));
        assertThat(bench.derive(trimmed).warnings()).isEmpty();
    }

    @Test
    void warnsOfStockThinnerThanThePart() {
        Bench bench = new Bench().sheet("s", "96", "48", "23/32", "60", trim("0", "0", "0", "0"));
        bench.part("shelf", "96", "48", "3/4", AS_CUT);
        bench.part("thin", "96", "48", "23/32", AS_CUT);
        Layout thinner = bench.layout("s", 1, leaf("shelf"), List.of(piece("shelf", "0", "0", "96", "48")));
        Layout equal = bench.layout("s", 1, leaf("thin"), List.of(piece("thin", "0", "0", "96", "48")));
        List<Warning> warnings = bench.derive(equal, thinner).warnings();
        assertThat(warnings).extracting(Warning::code).containsExactly("thinner");
        assertThat(warnings.get(0).pointer()).isEqualTo("/layouts/1");
        assertThat(warnings.get(0).text()).contains("23/32 in").contains("shelf asks for 3/4 in");
    }

    /** Under 12 in long or 3 in wide: rule of thumb in workshop teaching (Popular Woodworking, November 2007, page 55). */
    @Test
    void cautionsOnceALayoutForSmallWork() {
        Trim sound = trim("0", "0", "0", "0");
        Bench bench = new Bench().owned("r", Form.BOARD, null, "60", "6", "1", sound);
        bench.part("short", "11-7/8", "6", "1", AS_CUT);
        bench.part("foot", "12", "6", "1", AS_CUT);
        bench.part("strip", "60", "2-7/8", "1", AS_CUT);
        Layout shorts = bench.layout(
                "r",
                1,
                cuts(Direction.CROSSCUT, "11-7/8..12 23-7/8..24", leaf("short"), leaf("short"), RestLeaf.OFFCUT),
                List.of(piece("short", "0", "0", "11-7/8", "6"), piece("short", "12", "0", "11-7/8", "6")));
        Layout foot = bench.layout(
                "r",
                1,
                cuts(Direction.CROSSCUT, "12..12-1/8", leaf("foot"), RestLeaf.OFFCUT),
                List.of(piece("foot", "0", "0", "12", "6")));
        Layout strip = bench.layout(
                "r",
                1,
                cuts(Direction.RIP, "2-7/8..3", leaf("strip"), RestLeaf.OFFCUT),
                List.of(piece("strip", "0", "0", "60", "2-7/8")));
        assertThat(bench.derive(shorts, foot, strip).warnings())
                .extracting(Warning::code, Warning::pointer)
                .containsExactly(tuple("short-cut", "/layouts/0"), tuple("short-cut", "/layouts/2"));
        assertThat(bench.derive(shorts).warnings().get(0).text()).contains("manual");
    }

    @Test
    void narrowStockThatIsOnlyCrosscutIsNoSmallWork() {
        Bench bench = new Bench().owned("r", Form.BOARD, "1x2", "60", "1-1/2", "3/4", trim("0", "0", null, null));
        bench.part("p", "30", "1-1/2", "3/4", AS_CUT);
        Layout layout = bench.layout(
                "r",
                1,
                cuts(Direction.CROSSCUT, "30..30-1/8", leaf("p"), RestLeaf.OFFCUT),
                List.of(piece("p", "0", "0", "30", "1-1/2")));
        assertThat(bench.derive(layout).warnings()).isEmpty();
    }

    private static List<String> endWarnings(Trim shop, Trim own) {
        Bench bench = new Bench().owned("r", Form.BOARD, "2x4", "60", "3-1/2", "1-1/2", own);
        bench.boardTrim = shop;
        bench.part("p", "60", "3-1/2", "1-1/2", AS_CUT);
        Layout whole = bench.layout("r", 1, leaf("p"), List.of(piece("p", "0", "0", "60", "3-1/2")));
        return bench.derive(whole).warnings().stream().map(Warning::code).toList();
    }

    private static Money usd(String amount) {
        return new Money(new BigDecimal(amount), Bench.USD);
    }
}
