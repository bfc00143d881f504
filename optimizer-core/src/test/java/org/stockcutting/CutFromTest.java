package org.stockcutting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.io.CsvJobReader;
import org.stockcutting.io.CsvTables;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.JobWriter;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.job.JobReview;
import org.stockcutting.job.SawLimits;
import org.stockcutting.length.Length;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.CutFrom;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.part.Selection;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Comparison;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.plan.Violation;

/** Pieces whose place on a board the maker has chosen. */
class CutFromTest {

    private static Length in(String inches) {
        return Length.inches(inches);
    }

    private static Part part(String id, int quantity, String length, String width, @Nullable CutFrom place) {
        return new Part(
                        id,
                        quantity,
                        in(length),
                        new Section.Measured(in(width), in("1")),
                        "oak",
                        null,
                        WoodClass.CLEAR,
                        0,
                        new Making.AsCut(),
                        null,
                        null)
                .withSelection(Selection.NONE.withCutFrom(place));
    }

    private static JobBuilder job() {
        return JobBuilder.inches("chosen").material("oak").effort(new Effort(200_000L, null, 1, 1));
    }

    private static CuttingPlan plan(Job job) {
        CuttingPlan plan = new Optimizer().plan(job);
        assertThat(PlanChecker.check(job, plan)).isEmpty();
        return plan;
    }

    private static PlacedPiece find(CuttingPlan plan, String part) {
        return plan.layouts().stream()
                .flatMap(layout -> layout.pieces().stream())
                .filter(piece -> piece.part().equals(part))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theChosenPlaceIsKeptAndTheRestPlannedAroundIt() {
        Job job = job().goal(Goal.WASTE)
                .part(part("door", 1, "30", "6", new CutFrom("board", in("33"), null)))
                .part(part("rail", 2, "32", "6", null))
                .measured("board", "96", "6", "1")
                .build();
        CuttingPlan plan = plan(job);
        assertThat(plan.unplaced()).isEmpty();
        assertThat(find(plan, "door").x()).isEqualTo(in("33"));
    }

    @Test
    void alone() {
        Job job = job().goal(Goal.WASTE)
                .part(part("door", 1, "30", "4", new CutFrom("board", in("20"), in("1"))))
                .measured("board", "96", "6", "1")
                .build();
        PlacedPiece door = find(plan(job), "door");
        assertThat(door.x()).isEqualTo(in("20"));
        assertThat(door.y()).isEqualTo(in("1"));
    }

    @Test
    void anImpossiblePlaceIsNamed() {
        Part door = part("door", 1, "30", "6", new CutFrom("board", in("10"), null));
        Job knotty = job().goal(Goal.WASTE)
                .part(door)
                .measured("board", "96", "6", "1", job().bad("20", "21"))
                .build();
        CuttingPlan plan = plan(knotty);
        assertThat(plan.unplaced()).extracting(Unplaced::reason).containsExactly(Unplaced.Reason.EXCLUDED_BY_RULE);
        assertThat(plan.unplaced().get(0).needs()).contains("board").contains("10");
    }

    @Test
    void theChoiceHasItsPrice() {
        Job job = job().goal(Goal.COST)
                .part(part("door", 1, "30", "6", new CutFrom("rack", in("33"), null)))
                .part(part("rail", 1, "60", "6", null))
                .measured("rack", "96", "6", "1")
                .stock(new org.stockcutting.stock.StockItem.ForSale(
                        "new",
                        org.stockcutting.stock.Form.BOARD,
                        null,
                        in("96"),
                        in("6"),
                        in("1"),
                        "oak",
                        org.stockcutting.material.Grain.LENGTH,
                        null,
                        null,
                        new org.stockcutting.stock.Price(
                                new java.math.BigDecimal("25"),
                                java.util.Currency.getInstance("USD"),
                                org.stockcutting.stock.PriceUnit.PIECE)))
                .build();
        assertThat(plan(job).cost().toString()).contains("25.00");
        Comparison comparison = new Optimizer().compare(job);
        assertThat(comparison.limits())
                .filteredOn(price -> price.limit() == Comparison.Limit.CUT_FROM)
                .singleElement()
                .satisfies(price -> {
                    assertThat(price.name()).isEqualTo("door");
                    assertThat(price.difference().saves()).isEqualTo(java.math.BigInteger.valueOf(2500));
                });
    }

    @Test
    void checkerKnowsThePlace() {
        Part door = part("door", 1, "30", "6", new CutFrom("board", in("20"), null));
        Job job = job().goal(Goal.WASTE)
                .part(door)
                .measured("board", "96", "6", "1")
                .build();
        Part moved = door.withSelection(Selection.NONE.withCutFrom(new CutFrom("board", in("21"), null)));
        Job other = job.withLists(List.of(moved), job.forSale(), job.onHand());
        assertThat(PlanChecker.check(other, plan(job)))
                .extracting(Violation::cause)
                .contains("cut-from");
    }

    @Test
    void documentsTablesAndFaults() {
        Job job = job().goal(Goal.WASTE)
                .part(part("a", 1, "30", "6", new CutFrom("board", in("20.5"), in("0.25"))))
                .part(part("b", 1, "20", "6", new CutFrom("board", in("60"), null)))
                .measured("board", "96", "7", "1")
                .build();
        assertThat(new JobReader().read(JobWriter.write(job)).orThrow().parts()).isEqualTo(job.parts());
        assertThat(new CsvJobReader()
                        .read(CsvTables.parts(job), CsvTables.stock(job), JobWriter.writeShop(job))
                        .orThrow()
                        .parts())
                .isEqualTo(job.parts());
        Job wrong = job().goal(Goal.WASTE)
                .part(part("a", 2, "30", "6", new CutFrom("rack", in("-1"), null)))
                .measured("board", "96", "7", "1")
                .build();
        assertThat(JobReview.review(wrong))
                .extracting(fault -> fault.pointer())
                .containsExactlyInAnyOrder("/parts/0/cutFrom", "/parts/0/cutFrom/from", "/parts/0/cutFrom/stock");
    }

    private static org.stockcutting.stock.StockItem.ForSale sale(String id, String length, String price, String grade) {
        return new org.stockcutting.stock.StockItem.ForSale(
                id,
                org.stockcutting.stock.Form.BOARD,
                null,
                in(length),
                in("6"),
                in("1"),
                "oak",
                org.stockcutting.material.Grain.LENGTH,
                null,
                null,
                new org.stockcutting.stock.Price(
                        new java.math.BigDecimal(price),
                        java.util.Currency.getInstance("USD"),
                        org.stockcutting.stock.PriceUnit.PIECE),
                grade,
                org.stockcutting.stock.Offer.PLAIN);
    }

    /** Two doors from the dear board, rails from whatever is cheapest: 30 and 12 paid, both certain; without the choice 24. */
    @Test
    void anEntryForSaleIsChosenAndTheChoiceHasItsPrice() {
        Job job = job().goal(Goal.COST)
                .part(part("door", 2, "30", "6", new CutFrom("dear")))
                .part(part("rail", 2, "40", "6", null))
                .stock(sale("dear", "72", "30", null))
                .stock(sale("cheap", "96", "12", null))
                .build();
        assertThat(JobReview.review(job)).isEmpty();
        CuttingPlan plan = plan(job);
        assertThat(plan.header().status()).isEqualTo(org.stockcutting.plan.Status.OPTIMAL);
        assertThat(plan.cost()).hasToString("42.00 USD");
        assertThat(plan.layouts())
                .filteredOn(layout ->
                        layout.pieces().stream().anyMatch(piece -> piece.part().equals("door")))
                .allMatch(layout -> layout.stock().equals("dear"));
        Job free = job.withParts(job.parts().stream()
                .map(part -> part.withSelection(Selection.NONE))
                .toList());
        CuttingPlan broken = plan(free);
        assertThat(broken.cost()).hasToString("24.00 USD");
        assertThat(PlanChecker.check(job, broken)).extracting(Violation::cause).contains("cut-from");
        assertThat(new Optimizer().compare(job).limits())
                .filteredOn(price -> price.limit() == Comparison.Limit.CUT_FROM)
                .singleElement()
                .satisfies(
                        price -> assertThat(price.difference().saves()).isEqualTo(java.math.BigInteger.valueOf(1800)));
    }

    /** An entry that cannot give the part is named, with what the plan comes to without the choice. */
    @Test
    void anEntryWithoutRoomIsNamed() {
        Job job = job().goal(Goal.COST)
                .part(part("door", 1, "80", "6", new CutFrom("dear")))
                .stock(sale("dear", "72", "30", null))
                .stock(sale("cheap", "96", "12", null))
                .build();
        assertThat(plan(job).unplaced()).singleElement().satisfies(line -> {
            assertThat(line.reason()).isEqualTo(Unplaced.Reason.EXCLUDED_BY_RULE);
            assertThat(line.needs()).isEqualTo("cut from dear");
            assertThat(line.remedy()).contains("leave cutFrom out").contains("12.00 USD");
        });
    }

    @Test
    void documentsAndFaultsOfAnEntry() {
        Job job = job().goal(Goal.COST)
                .part(part("a", 3, "30", "6", new CutFrom("dear")))
                .stock(sale("dear", "72", "30", null))
                .build();
        assertThat(new JobReader().read(JobWriter.write(job)).orThrow().parts()).isEqualTo(job.parts());
        assertThat(new CsvJobReader()
                        .read(CsvTables.parts(job), CsvTables.stock(job), JobWriter.writeShop(job))
                        .orThrow()
                        .parts())
                .isEqualTo(job.parts());
        Job wrong = job().goal(Goal.COST)
                .part(part("a", 1, "30", "6", new CutFrom("dare", null, in("1"))))
                .part(part("b", 1, "30", "6", new CutFrom("dear", in("3"), null)))
                .stock(sale("dear", "72", "30", null))
                .build();
        assertThat(JobReview.review(wrong))
                .extracting(fault -> fault.pointer())
                .containsExactlyInAnyOrder("/parts/0/cutFrom/stock", "/parts/0/cutFrom/edge", "/parts/1/cutFrom/stock");
    }

    /**
     * A choice of entry is the same as a grade that only this entry has: plans and certified bounds of both ways to say it are equal, on
     * jobs whose widths are ripped or not, with boards on hand and limited stock.
     */
    @Test
    void choosingAnEntryEqualsAGradeOfItsOwn() {
        int dearer = 0;
        for (long seed = 1; seed <= 60; seed++) {
            Random random = new Random(seed);
            JobBuilder chosen = job().goal(Goal.COST).effort(new Effort(40_000L, null, 1, 1));
            JobBuilder graded = job().goal(Goal.COST).effort(new Effort(40_000L, null, 1, 1));
            JobBuilder free = job().goal(Goal.COST).effort(new Effort(40_000L, null, 1, 1));
            boolean ripped = random.nextBoolean();
            List<String> ids = List.of("one", "two", "three");
            for (int p = 0, n = 2 + random.nextInt(3); p < n; p++) {
                Part part = part(
                        "p" + p,
                        1 + random.nextInt(4),
                        "" + (8 + random.nextInt(38)),
                        ripped ? "" + (2 + random.nextInt(4)) : "6",
                        null);
                String id = random.nextInt(3) == 0 ? null : ids.get(random.nextInt(3));
                chosen.part(part.withSelection(Selection.NONE.withCutFrom(id == null ? null : new CutFrom(id))));
                graded.part(part.withSelection(Selection.NONE.withGrades(id == null ? ids : List.of(id))));
                free.part(part);
            }
            for (String id : ids) {
                org.stockcutting.stock.StockItem.ForSale item =
                        sale(id, "" + (48 + 12 * random.nextInt(5)), "" + (10 + random.nextInt(20)), id);
                chosen.stock(item);
                graded.stock(item);
                free.stock(item);
            }
            CuttingPlan one = plan(chosen.build());
            CuttingPlan other = plan(graded.build());
            assertThat(one.objective()).as("seed %d", seed).isEqualTo(other.objective());
            assertThat(one.unplaced()).as("seed %d", seed).isEmpty();
            CuttingPlan least = plan(free.build());
            assertThat(one.objective().bound())
                    .as("seed %d", seed)
                    .isGreaterThanOrEqualTo(least.objective().bound());
            dearer += one.cost().equals(least.cost()) ? 0 : 1;
        }
        assertThat(dearer).isGreaterThan(20);
    }

    /** Chosen pieces anywhere, with and without saw limits and bad zones: every plan passes the checker, most keep the choice. */
    @Test
    void randomChoicesGiveSoundPlans() {
        int kept = 0;
        int chosen = 0;
        for (long seed = 1; seed <= 60; seed++) {
            Random random = new Random(seed);
            JobBuilder builder = job().goal(random.nextBoolean() ? Goal.WASTE : Goal.BOARDS);
            int pins = 1 + random.nextInt(2);
            for (int p = 0; p < pins; p++) {
                int from = p * 48 + random.nextInt(20);
                CutFrom place = new CutFrom(
                        "board", in(String.valueOf(from)), random.nextBoolean() ? null : in("" + random.nextInt(4)));
                builder.part(part("pin" + p, 1, "" + (8 + random.nextInt(18)), "" + (2 + random.nextInt(6)), place));
            }
            for (int p = 0, n = 1 + random.nextInt(3); p < n; p++) {
                builder.part(part(
                        "free" + p,
                        1 + random.nextInt(3),
                        "" + (6 + random.nextInt(30)),
                        "" + (2 + random.nextInt(6)),
                        null));
            }
            builder.measured(
                    "board",
                    "96",
                    "10",
                    "1",
                    random.nextInt(3) == 0
                            ? new org.stockcutting.stock.Zone[] {job().bad("40", "42")}
                            : new org.stockcutting.stock.Zone[0]);
            builder.measured("other", "60", "8", "1");
            Job job = builder.build();
            if (random.nextInt(3) == 0) {
                job = job.withShop(job.shop()
                        .withLimits(new SawLimits(
                                in("6"), null, null, 3, SawLimits.FirstCut.values()[random.nextInt(3)], null)));
            }
            CuttingPlan plan = new Optimizer().plan(job);
            assertThat(PlanChecker.check(job, plan)).as("seed %d", seed).isEmpty();
            List<String> missing = new ArrayList<>();
            plan.unplaced().forEach(line -> missing.add(line.part()));
            chosen += pins;
            kept += pins
                    - (int) missing.stream().filter(id -> id.startsWith("pin")).count();
        }
        assertThat(kept).as("of %d", chosen).isGreaterThan(chosen * 3 / 4);
    }
}
