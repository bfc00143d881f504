package org.stockcutting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Fault;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.job.JobReview;
import org.stockcutting.job.ShopRules;
import org.stockcutting.length.Length;
import org.stockcutting.material.Grain;
import org.stockcutting.part.Making;
import org.stockcutting.part.Section;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.plan.Violation;
import org.stockcutting.stock.Condition;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Trim;
import org.stockcutting.stock.Zone;

/** Boards with bow, crook and taper. The share (l / L) squared of the hollow is common practice, no source. */
class OutOfTrueTest {

    private static final Length ZERO = Length.ZERO;

    private static Length in(String inches) {
        return Length.inches(inches);
    }

    private static StockItem.OnHand board(String length, String width, String thickness, Condition condition) {
        return new StockItem.OnHand(
                "measured",
                Form.BOARD,
                null,
                in(length),
                in(width),
                in(thickness),
                "oak",
                Grain.LENGTH,
                new Trim(ZERO, ZERO, ZERO, ZERO),
                1,
                List.of(),
                condition,
                null);
    }

    private static Condition crook(String inches) {
        return new Condition(ZERO, in(inches), null, null);
    }

    private static Condition taper(String widthEnd) {
        return new Condition(ZERO, ZERO, in(widthEnd), null);
    }

    private static JobBuilder job() {
        return JobBuilder.inches("measured").material("oak").goal(Goal.WASTE).effort(new Effort(200_000L, null, 1, 1));
    }

    private static CuttingPlan plan(Job job) {
        CuttingPlan plan = new Optimizer().plan(job);
        assertThat(PlanChecker.check(job, plan)).isEmpty();
        return plan;
    }

    @Test
    void crookOverEightFeetCostsAFiveFootPieceAQuarterInch() {
        Length lost = crook("0.625").crookOf(in("60"), in("96"));
        // 5/8 x 25/64 in = 6,201,171.875 nm, to the next whole nanometre, and to the next 1/16 in a quarter
        assertThat(lost.nanometres()).isEqualTo(6_201_172L);
        assertThat(Math.round(16 * lost.nanometres() / 25_400_000.0)).isEqualTo(4);
    }

    @Test
    void sharesAreRoundedUp() {
        assertThat(crook("0.625").crookOf(in("60"), in("97")).nanometres())
                .isEqualTo(Math.round(Math.ceil(15_875_000.0 * 3600 / 9409)));
    }

    @Test
    void crookLeavesRoomForTheWidestPieceAndNoWider() {
        StockItem.OnHand board = board("96", "5", "1", crook("0.625"));
        Job fits = job().part("rail", 1, "60", "4-3/4", "1").stock(board).build();
        assertThat(plan(fits).unplaced()).isEmpty();
        Job tooWide = job().part("rail", 1, "60", "4-13/16", "1").stock(board).build();
        assertThat(plan(tooWide).unplaced())
                .extracting(Unplaced::reason)
                .containsExactly(Unplaced.Reason.WIDER_THAN_ANY_STOCK);
    }

    @Test
    void bowCostsOnlyWhatIsPlaned() {
        Condition bowed = new Condition(in("0.5"), ZERO, null, null);
        StockItem.OnHand board = board("96", "5", "1", bowed);
        Section section = new Section.Measured(in("4"), in("0.75"));
        Making milled = new Making.Milled("milled");
        Job longPart = job().part("long", 1, "47", section, milled).stock(board).build();
        assertThat(plan(longPart).unplaced())
                .extracting(Unplaced::reason)
                .containsExactly(Unplaced.Reason.NO_STOCK_OF_THICKNESS);
        Job shortPart =
                job().part("short", 2, "23", section, milled).stock(board).build();
        assertThat(plan(shortPart).unplaced()).isEmpty();
        Job bent = job().part("bent", 1, "90", "4", "1").stock(board).build();
        assertThat(plan(bent).unplaced()).isEmpty();
    }

    @Test
    void widePiecesOfATaperedBoardComeFromItsWideEnd() {
        StockItem.OnHand board = board("96", "8", "1", taper("4"));
        Job job = job().part("wide", 1, "24", "7", "1")
                .part("narrow", 1, "60", "4-1/4", "1")
                .stock(board)
                .build();
        CuttingPlan plan = plan(job);
        assertThat(plan.unplaced()).isEmpty();
        Job one = job().part("wide", 1, "24-1/64", "7", "1").stock(board).build();
        assertThat(plan(one).unplaced()).extracting(Unplaced::reason).containsExactly(Unplaced.Reason.NO_CLEAR_ZONE);
    }

    @Test
    void checkerRefusesPlansOfATrueBoardOnAnUntrueOne() {
        Job flat = job().part("rail", 2, "40", "4-3/4", "1")
                .stock(board("96", "5", "1", Condition.TRUE))
                .build();
        CuttingPlan plan = plan(flat);
        for (Condition untrue : List.of(crook("2"), taper("4.5"))) {
            Job other = flat.withLists(flat.parts(), flat.forSale(), List.of(board("96", "5", "1", untrue)));
            assertThat(PlanChecker.check(other, plan))
                    .extracting(Violation::cause)
                    .contains("out-of-true");
        }
    }

    @Test
    void aGoodEdgeNeedsNoTrim() {
        JobBuilder builder = job().part("rail", 1, "40", "5", "1");
        Job trimmed = new JobWithEdge(builder, null).job();
        assertThat(plan(trimmed).unplaced())
                .extracting(Unplaced::reason)
                .containsExactly(Unplaced.Reason.WIDER_THAN_ANY_STOCK);
        assertThat(plan(new JobWithEdge(builder, true).job()).unplaced()).isEmpty();
        CuttingPlan rough = plan(new JobWithEdge(job().part("rail", 1, "40", "5", "1"), false, ZERO).job());
        assertThat(rough.derived().warnings()).extracting(w -> w.code()).contains("no-straight-edge");
    }

    @Test
    void offcutsOfATaperedBoardSlantOn() {
        StockItem.OnHand board = board("96", "8", "1", taper("4"));
        Job job = job().keep(Form.BOARD, "18", "3")
                .part("wide", 1, "24", "7", "1")
                .stock(board)
                .build();
        assertThat(plan(job).derived().offcuts())
                .filteredOn(offcut -> offcut.length().isMoreThan(in("60")))
                .singleElement()
                .satisfies(offcut -> {
                    assertThat(offcut.width()).isLessThan(in("7"));
                    assertThat(offcut.condition().widthEnd()).isEqualTo(in("4"));
                });
        Job picky = job().keep(Form.BOARD, "18", "5")
                .part("wide", 1, "24", "7", "1")
                .stock(board)
                .build();
        assertThat(plan(picky).derived().offcuts()).isEmpty();
    }

    @Test
    void faultsSayWhatToMeasure() {
        Job wrong = job().part("rail", 1, "60", "4", "1")
                .stock(board("96", "5", "1", new Condition(in("-1"), in("5"), in("6"), null)))
                .build();
        assertThat(JobReview.review(wrong))
                .extracting(Fault::pointer)
                .containsExactlyInAnyOrder("/onHand/0/bow", "/onHand/0/crook", "/onHand/0/widthEnd");
    }

    private record JobWithEdge(JobBuilder builder, Boolean straight, Length edge) {

        JobWithEdge(JobBuilder builder, Boolean straight) {
            this(builder, straight, in("0.25"));
        }

        Job job() {
            StockItem.OnHand like = board("96", "5", "1", new Condition(ZERO, ZERO, null, straight));
            StockItem.OnHand own = new StockItem.OnHand(
                    like.id(),
                    like.form(),
                    null,
                    like.length(),
                    like.width(),
                    like.thickness(),
                    "oak",
                    Grain.LENGTH,
                    null,
                    1,
                    List.of(),
                    like.condition(),
                    null);
            Job built = builder.build();
            Job plain = built.withLists(built.parts(), built.forSale(), List.of(own));
            ShopRules shop = plain.shop();
            return plain.withShop(new ShopRules(
                    shop.kerf(),
                    new Trim(in("0.5"), in("0.5"), edge, null),
                    shop.sheetTrim(),
                    shop.limits(),
                    shop.keepOffcuts(),
                    shop.thicknessTolerance(),
                    shop.maxPlaning(),
                    shop.carLength()));
        }
    }

    /** Every plan passes the checker, and a tapered board serves at least as well as the rectangle inside it. */
    @Test
    void randomUntrueBoardsGiveSoundPlans() {
        for (long seed = 1; seed <= 60; seed++) {
            Random random = new Random(seed);
            JobBuilder builder = job().keep(Form.BOARD, "6", "2");
            int parts = 1 + random.nextInt(4);
            for (int p = 0; p < parts; p++) {
                builder.part(
                        "p" + p,
                        1 + random.nextInt(4),
                        String.valueOf(8 + random.nextInt(60)),
                        String.valueOf(1 + random.nextInt(7)),
                        "1");
            }
            Job parts0 = builder.stock(board("96", "8", "1", Condition.TRUE)).build();
            Length end = random.nextBoolean() ? null : in(String.valueOf(3 + random.nextInt(6)));
            Length crook = random.nextInt(3) == 0 ? ZERO : in(String.valueOf(random.nextInt(8) / 8.0));
            StockItem.OnHand untrue = board("96", "8", "1", new Condition(in("0.25"), crook, end, null));
            List<Zone> zones = random.nextInt(3) > 0
                    ? List.of()
                    : List.of(new Zone(
                            in("30"), in("33"), in("2"), in("4"), Zone.Severity.UNUSABLE, Zone.Face.BOTH, false));
            Job job = parts0.withLists(parts0.parts(), List.of(), List.of(untrue.pieces("measured", 1, zones)));
            CuttingPlan plan = new Optimizer().plan(job);
            assertThat(PlanChecker.check(job, plan)).as("seed %d", seed).isEmpty();
        }
    }
}
