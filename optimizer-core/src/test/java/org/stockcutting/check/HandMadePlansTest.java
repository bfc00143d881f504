package org.stockcutting.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.job.KeepRule;
import org.stockcutting.length.Length;
import org.stockcutting.material.Grain;
import org.stockcutting.material.NominalSize;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.CutNode.RestLeaf;
import org.stockcutting.pattern.Direction;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Status;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.plan.Violation;
import org.stockcutting.plan.YieldFigures;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Price;
import org.stockcutting.stock.PriceUnit;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/** Plans as a maker would draw them, sums done by hand. Board feet and the 2x4's sizes: American Softwood Lumber Standard PS 20. */
class HandMadePlansTest {

    private static final BigInteger CUBIC_INCH = BigInteger.valueOf(25_400_000L).pow(3);

    private static CutNode crosscut(Object... nodes) {
        return cuts(Direction.CROSSCUT, nodes);
    }

    private static CutNode rip(Object... nodes) {
        return cuts(Direction.RIP, nodes);
    }

    /** Nodes and slots by turns, a slot written as two inches: {@code "60.5 60.625"}; a part as its id, the rest as leaves. */
    private static CutNode cuts(Direction direction, Object... nodes) {
        List<CutNode.Slot> slots = new ArrayList<>();
        List<CutNode> pieces = new ArrayList<>();
        for (int i = 0; i < nodes.length; i++) {
            if (i % 2 == 1) {
                String[] ends = ((String) nodes[i]).split(" ");
                slots.add(new CutNode.Slot(JobSketch.in(ends[0]), JobSketch.in(ends[1])));
            } else {
                pieces.add(nodes[i] instanceof CutNode node ? node : new CutNode.PartLeaf((String) nodes[i]));
            }
        }
        return new CutNode.Cuts(direction, slots, pieces);
    }

    private static void accepted(PlanSketch sketch) {
        assertThat(PlanChecker.check(sketch.job, sketch.plan())).isEmpty();
    }

    private static List<String> causes(JobSketch job, CuttingPlan plan) {
        return PlanChecker.check(job.build(), plan).stream()
                .map(Violation::cause)
                .distinct()
                .toList();
    }

    private static YieldFigures figures(PlanSketch sketch) {
        return sketch.plan().derived().yield();
    }

    private static BigInteger cubicInches(String inches) {
        return new BigDecimal(inches).multiply(new BigDecimal(CUBIC_INCH)).toBigIntegerExact();
    }

    private static JobSketch studs() {
        JobSketch sketch = new JobSketch();
        sketch.boardTrim = JobSketch.trim("0.5", "0.25", null, null);
        sketch.keep.add(new KeepRule(Form.BOARD, JobSketch.in("18"), JobSketch.in("1.5")));
        NominalSize two = new NominalSize(
                "2x4", JobSketch.in("2"), JobSketch.in("4"), JobSketch.in("1.5"), JobSketch.in("3.5"), "PS 20");
        Price price = new Price(new BigDecimal("3.98"), JobSketch.USD, PriceUnit.PIECE);
        sketch.forSale.add(new StockItem.ForSale(
                "2x4-8",
                Form.BOARD,
                two,
                JobSketch.in("96"),
                two.width(),
                two.thickness(),
                "oak",
                Grain.LENGTH,
                null,
                null,
                price));
        sketch.parts.add(JobSketch.part("post", 2, "60", "3.5", "1.5"));
        Part rail = JobSketch.part("rail", 2, "41", "1", "1");
        sketch.parts.add(new Part(
                "rail",
                2,
                rail.length(),
                new Section.Nominal("2x4"),
                "oak",
                null,
                WoodClass.CLEAR,
                0,
                rail.making(),
                "rails",
                null));
        return sketch;
    }

    private static PlanSketch studPlan() {
        return new PlanSketch(studs().build())
                .cut("2x4-8", 2, crosscut(RestLeaf.TRIM, "0.375 0.5", "post", "60.5 60.625", RestLeaf.OFFCUT))
                .cut(
                        "2x4-8",
                        1,
                        crosscut(
                                RestLeaf.TRIM,
                                "0.375 0.5",
                                "rail",
                                "41.5 41.625",
                                "rail",
                                "82.625 82.75",
                                RestLeaf.OFFCUT));
    }

    @Test
    void acceptsCrosscutBoards() {
        accepted(studPlan());
        CuttingPlan plan = studPlan().plan();
        assertThat(plan.cost().amount()).isEqualByComparingTo("11.94");
        assertThat(plan.header().status()).isEqualTo(Status.OPTIMAL);
        // 3 x 2 x 4 in x 8 ft / 12 = 16 board feet.
        assertThat(plan.derived().buyingList().get(0).boardFeet()).isEqualByComparingTo("16.00");
        YieldFigures figures = figures(studPlan());
        assertThat(figures.used().cubicNanometres()).isEqualTo(cubicInches("1512"));
        // (2 x 60 + 2 x 41) x 5.25 square inches
        assertThat(figures.parts().cubicNanometres()).isEqualTo(cubicInches("1060.5"));
        // 3 trims of 1/2 in, 4 cuts of 1/8 in, 2 offcuts of 35-3/8 in kept, one of 13-1/4 in thrown away
        assertThat(figures.trim().cubicNanometres()).isEqualTo(cubicInches("7.875"));
        assertThat(figures.kerf().cubicNanometres()).isEqualTo(cubicInches("2.625"));
        assertThat(figures.offcutsKept().cubicNanometres()).isEqualTo(cubicInches("371.4375"));
        assertThat(figures.waste().cubicNanometres()).isEqualTo(cubicInches("69.5625"));
        assertThat(figures.ratio()).isEqualByComparingTo("0.7013");
    }

    @Test
    void groupedRailsMustShareABoard() {
        PlanSketch apart = new PlanSketch(studs().build())
                .cut("2x4-8", 2, crosscut(RestLeaf.TRIM, "0.375 0.5", "post", "60.5 60.625", RestLeaf.OFFCUT))
                .cut("2x4-8", 2, crosscut(RestLeaf.TRIM, "0.375 0.5", "rail", "41.5 41.625", RestLeaf.OFFCUT));
        assertThat(causes(studs(), apart.plan())).containsExactly("group");
        JobSketch twice = studs();
        twice.sets = 2;
        twice.parts.replaceAll(p -> JobSketch.resized(p, 1, p.length()));
        assertThat(causes(twice, apart.plan())).isEmpty();
    }

    @Test
    void saysWhyAPartIsLeftOut() {
        JobSketch sketch = studs();
        sketch.parts.add(JobSketch.part("beam", 1, "102", "3.5", "1.5"));
        for (Unplaced.Reason reason : Unplaced.Reason.values()) {
            PlanSketch plan = new PlanSketch(sketch.build());
            studPlan().layouts.forEach(l -> plan.cut(l.stock(), l.repeat(), l.cuts()));
            plan.unplaced.add(new Unplaced("beam", 1, reason, "102", "95-1/4", "add a length of 10 ft"));
            boolean lie = List.of(
                            Unplaced.Reason.WIDER_THAN_ANY_STOCK,
                            Unplaced.Reason.NO_STOCK_OF_MATERIAL,
                            Unplaced.Reason.NO_STOCK_OF_THICKNESS,
                            Unplaced.Reason.EXCLUDED_BY_RULE)
                    .contains(reason);
            assertThat(causes(sketch, plan.plan())).as(reason.word()).isEqualTo(lie ? List.of("unplaced") : List.of());
        }
    }

    @Test
    void acceptsRippedBoards() {
        JobSketch sketch = new JobSketch();
        sketch.forSale.add(JobSketch.sale("plank", Form.BOARD, "48", "6", "0.75", Grain.LENGTH, "9.00"));
        sketch.parts.add(JobSketch.part("slat", 2, "47.9375", "2.5", "0.75"));
        sketch.parts.add(JobSketch.part("peg", 3, "12", "0.75", "0.75"));
        CutNode pegs = crosscut("peg", "12 12.125", "peg", "24.125 24.25", "peg", "36.25 36.375", RestLeaf.OFFCUT);
        CutNode slat = crosscut("slat", "47.9375 48", RestLeaf.SLIVER);
        accepted(new PlanSketch(sketch.build()).cut("plank", 1, rip(slat, "2.5 2.625", slat, "5.125 5.25", pegs)));
        CutNode narrow = crosscut("slat", "47.9375 48", RestLeaf.OFFCUT);
        CuttingPlan wrong = new PlanSketch(sketch.build())
                .cut("plank", 1, rip(narrow, "2.5 2.625", slat, "5.125 5.25", pegs))
                .plan();
        assertThat(causes(sketch, wrong)).contains("tree");
    }

    @Test
    void acceptsASheetWithGrain() {
        JobSketch sketch = new JobSketch();
        sketch.sheetTrim = JobSketch.trim("0.25", "0.25", "0.25", "0.25");
        sketch.keep.add(new KeepRule(Form.SHEET, JobSketch.in("12"), JobSketch.in("6")));
        sketch.forSale.add(JobSketch.sale("ply", Form.SHEET, "96", "48", "0.71875", Grain.LENGTH, "64.00"));
        sketch.parts.add(JobSketch.part("side", 1, "47.5", "20", "0.75"));
        Part door = JobSketch.part("door", 1, "47.5", "20", "0.75");
        sketch.parts.add(JobSketch.with(door, Grain.WIDTH, door.making(), null, WoodClass.CLEAR, 0));
        // The side lies along the grain, the door across: its axis is the other one.
        CutNode side = rip("side", "20.25 20.375", RestLeaf.OFFCUT);
        CutNode door1 = rip("door", "47.75 47.875", RestLeaf.TRIM);
        CutNode inner =
                rip(RestLeaf.TRIM, "0.125 0.25", crosscut(side, "47.75 47.875", door1, "67.875 68", RestLeaf.OFFCUT));
        PlanSketch plan = new PlanSketch(sketch.build()).cut("ply", 1, crosscut(RestLeaf.TRIM, "0.125 0.25", inner));
        accepted(plan);
        JobSketch along = JobSketch.of(sketch.build());
        along.parts.replaceAll(p -> JobSketch.with(p, Grain.LENGTH, p.making(), null, p.woodClass(), 0));
        assertThat(causes(along, plan.plan())).contains("grain");
        JobSketch thick = JobSketch.of(sketch.build());
        thick.parts.replaceAll(p -> p.id().equals("side") ? JobSketch.part("side", 1, "47.5", "20", "0.8125") : p);
        assertThat(causes(thick, plan.plan()))
                .as("3/32 in thinner, 1/16 in allowed")
                .contains("section");
    }

    private static JobSketch panel(Making.StaveSource from, Integer count, String least, String width) {
        JobSketch sketch = new JobSketch();
        sketch.boardTrim = JobSketch.trim("0.5", null, null, null);
        sketch.forSale.add(JobSketch.sale("8/4", Form.BOARD, "96", "5.5", "1.5", Grain.LENGTH, "21.00"));
        sketch.forSale.add(JobSketch.sale("long", Form.BOARD, "120", "5.5", "1.5", Grain.LENGTH, "29.00"));
        Part top = JobSketch.part("top", 1, "48", width, "1.25");
        Making making = new Making.GlueUp(JobSketch.in(least), JobSketch.in("5.25"), count, from);
        sketch.parts.add(JobSketch.with(top, null, making, null, WoodClass.CLEAR, 0));
        return sketch;
    }

    /** Panel 50 x 15-1/2 x 1-5/16; three staves of 5-11/64 jointed, 5-19/64 rough, from 1-1/2 in stock. */
    private static CutNode stave() {
        return rip("top", "5.296875 5.421875", RestLeaf.OFFCUT);
    }

    @Test
    void acceptsAPanelOfStavesFromDifferentBoards() {
        JobSketch job = panel(Making.StaveSource.DIFFERENT_BOARDS, 3, "3", "14.5");
        PlanSketch plan = new PlanSketch(job.build())
                .cut("8/4", 3, crosscut(RestLeaf.TRIM, "0.375 0.5", stave(), "50.5 50.625", RestLeaf.OFFCUT));
        accepted(plan);
        CuttingPlan made = plan.plan();
        assertThat(figures(plan).parts().cubicNanometres()).isEqualTo(cubicInches("870"));
        assertThat(causes(panel(Making.StaveSource.ANY, null, "3", "14.5"), made))
                .isEmpty();
        assertThat(causes(panel(Making.StaveSource.ONE_BOARD, 3, "3", "14.5"), made))
                .containsExactly("stave-source");
        assertThat(causes(panel(Making.StaveSource.ANY, 4, "3", "14.5"), made)).contains("members");
        assertThat(causes(panel(Making.StaveSource.ANY, 3, "5.2", "14.5"), made))
                .contains("stave-width");
        assertThat(causes(panel(Making.StaveSource.ANY, 3, "3", "14.75"), made)).contains("stave-sum");
    }

    @Test
    void stavesOfOneBoardAreNotOfDifferentBoards() {
        JobSketch job = panel(Making.StaveSource.ANY, 3, "3", "14.5");
        PlanSketch plan = new PlanSketch(job.build())
                .cut(
                        "long",
                        1,
                        crosscut(
                                RestLeaf.TRIM,
                                "0.375 0.5",
                                stave(),
                                "50.5 50.625",
                                stave(),
                                "100.625 100.75",
                                RestLeaf.OFFCUT))
                .cut("8/4", 1, crosscut(RestLeaf.TRIM, "0.375 0.5", stave(), "50.5 50.625", RestLeaf.OFFCUT));
        accepted(plan);
        assertThat(causes(panel(Making.StaveSource.DIFFERENT_BOARDS, 3, "3", "14.5"), plan.plan()))
                .containsExactly("stave-source");
    }

    @Test
    void acceptsALamination() {
        JobSketch job = new JobSketch();
        job.forSale.add(JobSketch.sale("thin", Form.BOARD, "80", "3.25", "0.5625", Grain.LENGTH, "8.00"));
        Part leg = JobSketch.part("leg", 1, "24", "3", "1.5");
        // Three plies of 1/2 in and 1/16 in for planing, 25 x 3-1/4.
        job.parts.add(JobSketch.with(leg, null, new Making.Lamination(3), null, WoodClass.CLEAR, 0));
        accepted(new PlanSketch(job.build())
                .cut(
                        "thin",
                        1,
                        crosscut("leg", "25 25.125", "leg", "50.125 50.25", "leg", "75.25 75.375", RestLeaf.OFFCUT)));
    }

    private static Zone zone(String from, String to, Zone.Severity severity, boolean metal) {
        return new Zone(JobSketch.in(from), JobSketch.in(to), null, null, severity, Zone.Face.BOTH, metal);
    }

    private static JobSketch measured(Zone... zones) {
        JobSketch job = new JobSketch();
        job.keep.add(new KeepRule(Form.BOARD, JobSketch.in("10"), JobSketch.in("3")));
        job.onHand.add(JobSketch.owned("ash-1", "60", "4", "1", JobSketch.trim("0", "0.25", null, null), zones));
        job.parts.add(JobSketch.part("short", 1, "11", "4", "1"));
        job.parts.add(JobSketch.part("long", 1, "20", "4", "1"));
        return job;
    }

    private static CutNode aroundAKnot() {
        return crosscut("short", "11 11.125", RestLeaf.OFFCUT, "15.875 16", "long", "36 36.125", RestLeaf.OFFCUT);
    }

    @Test
    void acceptsAMeasuredBoardWithZones() {
        Zone knot = zone("12", "15.5", Zone.Severity.UNUSABLE, false);
        Zone small = zone("40", "41", Zone.Severity.TIGHT_KNOT, false);
        PlanSketch plan = new PlanSketch(measured(knot, small).build()).cut("ash-1", 1, aroundAKnot());
        accepted(plan);
        // 3-1/2 in of knot are thrown away; the other goes back to the rack inside the kept offcut, 3-7/8 in from its
        // new end.
        assertThat(figures(plan).zones().cubicNanometres()).isEqualTo(cubicInches("14"));
        StockItem.OnHand racked = plan.plan().derived().offcuts().get(0);
        assertThat(racked.zones().get(0).from()).isEqualTo(JobSketch.in("3.875"));
        assertThat(racked.ownTrim().start()).isEqualTo(Length.ZERO);
        assertThat(racked.ownTrim().end()).isEqualTo(JobSketch.in("0.25"));
        assertThat(plan.warnings).isEmpty();
    }

    @Test
    void zonesInPartsAndMetalUnderTheSawAreRefused() {
        PlanSketch clear = new PlanSketch(measured().build()).cut("ash-1", 1, aroundAKnot());
        CuttingPlan plan = clear.plan();
        JobSketch knotted = measured(zone("20", "21", Zone.Severity.TIGHT_KNOT, false));
        assertThat(causes(knotted, plan)).containsExactly("zone");
        knotted.parts.replaceAll(p -> JobSketch.with(p, null, p.making(), null, WoodClass.TIGHT_KNOT, 0));
        assertThat(causes(knotted, plan)).isEmpty();
        JobSketch blemished = measured(zone("20", "21", Zone.Severity.BLEMISH, false));
        blemished.parts.replaceAll(p -> JobSketch.with(p, null, p.making(), null, WoodClass.TIGHT_KNOT, 0));
        assertThat(causes(blemished, plan)).containsExactly("zone");
        blemished.parts.replaceAll(p -> JobSketch.with(p, null, p.making(), null, WoodClass.ANY, 0));
        assertThat(causes(blemished, plan)).isEmpty();
        assertThat(causes(measured(zone("11", "11.0625", Zone.Severity.TIGHT_KNOT, true)), plan))
                .containsExactly("metal-cut");
    }

    @Test
    void pricesByEveryUnit() {
        StockItem.ForSale board = JobSketch.sale("b", Form.BOARD, "96", "9", "0.75", Grain.LENGTH, "1.00");
        // 3/4 in counts as an inch: 1 x 9 x 96 / 144 = 6 board feet.
        assertThat(Tariff.boardFeet(board, 1)).isEqualByComparingTo("6.00");
        String[] right = {"1.00", "8.00", "2.44", "6.00", "0.01", "6.00", "0.56", "0.01", "1.00"};
        for (PriceUnit unit : PriceUnit.values()) {
            Price price = new Price(BigDecimal.ONE, JobSketch.USD, unit);
            StockItem.ForSale sale = new StockItem.ForSale(
                    "b",
                    Form.BOARD,
                    null,
                    board.length(),
                    board.width(),
                    board.thickness(),
                    "oak",
                    Grain.LENGTH,
                    null,
                    null,
                    price);
            BigDecimal each = new BigDecimal(Tariff.rows(sale).get(0).each(), 2);
            assertThat(each).as(unit.word()).isEqualByComparingTo(right[unit.ordinal()]);
        }
    }
}
