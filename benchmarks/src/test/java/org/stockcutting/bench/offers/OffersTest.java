package org.stockcutting.bench.offers;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import com.google.ortools.Loader;
import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Currency;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.stockcutting.Optimizer;
import org.stockcutting.job.Delivery;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.job.JobReview;
import org.stockcutting.job.Kerf;
import org.stockcutting.job.SawLimits;
import org.stockcutting.job.Seasons;
import org.stockcutting.job.ShopRules;
import org.stockcutting.job.TradeTerms;
import org.stockcutting.length.Length;
import org.stockcutting.material.Grain;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.report.Reckoning;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Money;
import org.stockcutting.stock.Offer;
import org.stockcutting.stock.Price;
import org.stockcutting.stock.PriceUnit;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Trim;

/**
 * Packs, price breaks, width premiums, delivery and tax on 200 small jobs of crosscut boards beside OR-Tools CP-SAT on every pattern
 * there is: the same money for material and the same sum to pay. Prices are worked out here once more, from the definitions of their
 * units (a board foot is 144 cubic inches, wood under an inch counts as an inch).
 */
class OffersTest {

    private static final int JOBS = 200;
    private static final Currency EUR = Currency.getInstance("EUR");
    private static final int KERF = 3;
    private static final int PART_WIDTH = 100;
    private static final int THICKNESS = 25;

    private static final boolean NATIVE = load();

    private static boolean load() {
        try {
            Loader.loadNativeLibraries();
            return true;
        } catch (UnsatisfiedLinkError | RuntimeException e) {
            return false;
        }
    }

    /** A job twice: as the library reads it and as the model does; lengths in millimetres, money in cents. */
    private record Small(
            Job job, int[] lengths, int[] demand, List<Line> lines, int taxHundredths, int delivery, int freeFrom) {}

    /** Boards of one kind: {@code lots[j]} is what j packs cost. */
    private record Line(int length, int pack, long[] lots) {}

    @Test
    void equalCostOnEveryJob() {
        assumeThat(NATIVE).as("the native part of OR-Tools for this machine").isTrue();
        Optimizer optimizer = new Optimizer();
        List<String> different = new ArrayList<>();
        int dearerAtOnePrice = 0;
        int certified = 0;
        int proved = 0;
        BigDecimal gap = BigDecimal.ZERO;
        for (long seed = 1; seed <= JOBS; seed++) {
            Small small = small(seed);
            assertThat(JobReview.review(small.job())).as("job %d", seed).isEmpty();
            CuttingPlan plan = optimizer.plan(small.job());
            long[] right = model(small);
            Reckoning bill = Reckoning.of(small.job(), plan);
            assertThat(bill).isNotNull();
            assertThat(plan.unplaced()).as("job %d", seed).isEmpty();
            assertThat(plan.objective().bound().longValueExact())
                    .as("bound of job %d", seed)
                    .isLessThanOrEqualTo(right[0]);
            if (plan.objective().searchedBound() != null) {
                assertThat(plan.objective().searchedBound().longValueExact())
                        .as("searched bound of job %d", seed)
                        .isLessThanOrEqualTo(right[0]);
            }
            if (bill.material().minorUnits() != right[0] || bill.total().minorUnits() != right[1]) {
                different.add("job " + seed + ": " + bill.material() + ", to pay " + bill.total() + ", right are "
                        + Arrays.toString(right));
            }
            certified += plan.objective().bound().longValueExact() == right[0] ? 1 : 0;
            boolean searched = plan.objective().searchedBound() != null
                    && plan.objective().searchedBound().longValueExact() == right[0];
            proved += searched || plan.objective().bound().longValueExact() == right[0] ? 1 : 0;
            gap = gap.add(gap(plan.objective().bound().longValueExact(), right[0]));
            dearerAtOnePrice += plan.derived().buyingList().stream()
                            .anyMatch(line -> line.lot().used() < line.quantity())
                    ? 1
                    : 0;
        }
        assertThat(different).isEmpty();
        System.out.println("OffersTest: of " + JOBS + " jobs " + certified + " certified, " + proved
                + " certified or proved; mean certified gap "
                + gap.divide(BigDecimal.valueOf(JOBS), 3, RoundingMode.HALF_UP)
                + " %");
        // Otherwise nothing would tell a staircase from a plain price.
        assertThat(dearerAtOnePrice).isGreaterThan(JOBS / 5);
        // 199 on 2026-11-29; before quantities were counted whole it was 80. Search proves the others.
        assertThat(certified).isGreaterThanOrEqualTo(195);
    }

    /** Per cent of what is right. */
    private static BigDecimal gap(long bound, long right) {
        return right == 0
                ? BigDecimal.ZERO
                : BigDecimal.valueOf(100 * (right - bound)).divide(BigDecimal.valueOf(right), 6, RoundingMode.HALF_UP);
    }

    private static Small small(long seed) {
        Random random = new Random(seed * 7919);
        int types = 1 + random.nextInt(4);
        int[] lengths = new int[types];
        int[] demand = new int[types];
        JobBuilder builder = JobBuilder.millimetres("small " + seed).shop(shop());
        for (int t = 0; t < types; t++) {
            lengths[t] = 380 + random.nextInt(1200);
            demand[t] = 1 + random.nextInt(9);
            builder.part("p" + t, demand[t], lengths[t] + "", PART_WIDTH + "", THICKNESS + "");
        }
        List<Line> lines = new ArrayList<>();
        int stocks = 1 + random.nextInt(3);
        for (int s = 0; s < stocks; s++) {
            builder.stock(stock(s, random, Arrays.stream(demand).sum(), lines));
        }
        if (random.nextInt(4) == 0) {
            int length = 500 + random.nextInt(1500);
            int owned = 1 + random.nextInt(2);
            builder.stock(new StockItem.OnHand(
                    "rack",
                    Form.BOARD,
                    null,
                    mm(length),
                    mm(PART_WIDTH),
                    mm(THICKNESS),
                    "wood",
                    Grain.LENGTH,
                    null,
                    owned,
                    List.of()));
            lines.add(new Line(length, 1, new long[owned + 1]));
        }
        int tax = random.nextInt(3) == 0 ? 0 : 1 + random.nextInt(2500);
        int delivery = random.nextInt(3) == 0 ? 0 : random.nextInt(6000);
        int freeFrom = random.nextBoolean() ? Integer.MAX_VALUE : 3000 + random.nextInt(20_000);
        TradeTerms terms = new TradeTerms(
                null,
                new TreeMap<>(),
                Seasons.HEATED_ROOM,
                new BigDecimal(BigInteger.valueOf(tax), 2),
                new Delivery(
                        Money.ofMinor(delivery, EUR),
                        freeFrom == Integer.MAX_VALUE ? null : Money.ofMinor(freeFrom, EUR)),
                null);
        Job job = builder.effort(new Effort(3_000_000L, 120, 1, 1)).build().withTerms(terms);
        return new Small(job, lengths, demand, lines, tax, delivery, freeFrom);
    }

    private static StockItem.ForSale stock(int s, Random random, int pieces, List<Line> lines) {
        int length = 1_600 + random.nextInt(2_700);
        int width = PART_WIDTH + random.nextInt(80);
        PriceUnit[] units = {PriceUnit.PIECE, PriceUnit.FOOT, PriceUnit.BOARD_FOOT, PriceUnit.PACK};
        int pack = random.nextInt(5) < 2 ? 1 : 2 + random.nextInt(5);
        PriceUnit unit = units[random.nextInt(pack == 1 ? 3 : 4)];
        BigInteger[] billed = billed(unit, length, width, pack);
        // About four euros a metre, in tenths of a cent, as asked for one unit.
        long piece = (long) (length * (0.8 + 0.4 * random.nextDouble()) * 4);
        long asked =
                BigInteger.valueOf(piece).multiply(billed[1]).divide(billed[0]).longValueExact();
        List<Offer.Break> breaks = new ArrayList<>();
        List<long[]> tiers = new ArrayList<>();
        tiers.add(new long[] {0, asked});
        int from = 1;
        long amount = asked;
        for (int b = random.nextInt(3); b > 0; b--) {
            from += 1 + random.nextInt(7);
            amount = amount * (80 + random.nextInt(19)) / 100;
            breaks.add(new Offer.Break(from, new BigDecimal(BigInteger.valueOf(amount), 3)));
            tiers.add(new long[] {from, amount});
        }
        List<Offer.Premium> premiums = new ArrayList<>();
        int percent = 0;
        if (random.nextInt(3) == 0) {
            int over = PART_WIDTH - 20 + random.nextInt(60);
            premiums.add(new Offer.Premium(mm(over), BigDecimal.valueOf(12)));
            premiums.add(new Offer.Premium(mm(over + 30), BigDecimal.valueOf(25)));
            percent = width > over + 30 ? 25 : width > over ? 12 : 0;
        }
        boolean limited = s > 0 && random.nextInt(3) == 0;
        Integer available = limited ? Integer.valueOf(1 + random.nextInt(8)) : null;
        int most = available == null ? 3 * (pieces + pack + from) : available;
        long[] lots = new long[most / pack + 1];
        for (int j = 0; j < lots.length; j++) {
            long each = asked;
            for (long[] tier : tiers) {
                each = tier[0] <= (long) j * pack ? tier[1] : each;
            }
            BigInteger top = BigInteger.valueOf(each)
                    .multiply(billed[0])
                    .multiply(BigInteger.valueOf(pack))
                    .multiply(BigInteger.valueOf(100 + percent));
            // Tenths of a cent, per cent, and half up.
            BigInteger bottom = billed[1].multiply(BigInteger.valueOf(1_000));
            BigInteger cents = top.multiply(BigInteger.TWO).add(bottom).divide(bottom.multiply(BigInteger.TWO));
            lots[j] = j * cents.longValueExact();
        }
        lines.add(new Line(length, pack, lots));
        return new StockItem.ForSale(
                        "s" + s,
                        Form.BOARD,
                        null,
                        mm(length),
                        mm(width),
                        mm(THICKNESS),
                        "wood",
                        Grain.LENGTH,
                        null,
                        available,
                        new Price(new BigDecimal(BigInteger.valueOf(asked), 3), EUR, unit))
                .withOffer(new Offer(pack, breaks, premiums));
    }

    /** How many units one piece is, as a quotient of tenths of millimetres. */
    private static BigInteger[] billed(PriceUnit unit, int length, int width, int pack) {
        BigInteger foot = BigInteger.valueOf(3_048);
        BigInteger inch = BigInteger.valueOf(254);
        BigInteger along = BigInteger.valueOf(10L * length);
        return switch (unit) {
            case FOOT -> new BigInteger[] {along, foot};
            case BOARD_FOOT ->
                new BigInteger[] {
                    along.multiply(BigInteger.valueOf(10L * width)).multiply(inch),
                    inch.pow(3).multiply(BigInteger.valueOf(144))
                };
            case PACK -> new BigInteger[] {BigInteger.ONE, BigInteger.valueOf(pack)};
            default -> new BigInteger[] {BigInteger.ONE, BigInteger.ONE};
        };
    }

    private static ShopRules shop() {
        return new ShopRules(
                new Kerf(mm(KERF), mm(KERF)), Trim.NONE, Trim.NONE, SawLimits.NONE, List.of(), mm(1), mm(10), null);
    }

    private static Length mm(int millimetres) {
        return Length.ofNanometres(millimetres * 1_000_000L);
    }

    /** Least cents for material, and what is to pay then. */
    private static long[] model(Small small) {
        CpModel model = new CpModel();
        int types = small.lengths().length;
        LinearExprBuilder[] made = new LinearExprBuilder[types];
        Arrays.setAll(made, t -> LinearExpr.newBuilder());
        LinearExprBuilder material = LinearExpr.newBuilder();
        int pieces = Arrays.stream(small.demand()).sum();
        for (Line line : small.lines()) {
            LinearExprBuilder cut = LinearExpr.newBuilder();
            List<int[]> patterns = new ArrayList<>();
            patterns(small, line.length() + KERF, 0, new int[types], patterns);
            for (int[] pattern : patterns) {
                IntVar times = model.newIntVar(0, pieces, "");
                cut.add(times);
                for (int t = 0; t < types; t++) {
                    made[t].addTerm(times, pattern[t]);
                }
            }
            IntVar packs = model.newIntVar(0, line.lots().length - 1, "");
            model.addLessOrEqual(cut, LinearExpr.term(packs, line.pack()));
            IntVar cost = model.newIntVar(0, Arrays.stream(line.lots()).max().orElse(0), "");
            model.addElement(packs, line.lots(), cost);
            material.add(cost);
        }
        for (int t = 0; t < types; t++) {
            model.addGreaterOrEqual(made[t], small.demand()[t]);
        }
        long most = 100_000_000L;
        IntVar sum = model.newIntVar(0, most, "");
        model.addEquality(sum, material);
        IntVar toPay = model.newIntVar(0, 10 * most, "");
        till(model, small, sum, toPay);
        model.minimize(sum);
        CpSolver solver = new CpSolver();
        solver.getParameters().setNumWorkers(1).setRandomSeed(1).setMaxTimeInSeconds(120);
        assertThat(solver.solve(model)).isEqualTo(CpSolverStatus.OPTIMAL);
        return new long[] {solver.value(sum), solver.value(toPay)};
    }

    /** Delivery on top, free from a sum on and where nothing is bought; then tax on both, half up. */
    private static void till(CpModel model, Small small, IntVar sum, IntVar toPay) {
        BoolVar brought = model.newBoolVar("");
        BoolVar none = model.newBoolVar("");
        BoolVar free = model.newBoolVar("");
        model.addLessOrEqual(sum, 0).onlyEnforceIf(none);
        model.addGreaterOrEqual(sum, 1).onlyEnforceIf(none.not());
        model.addGreaterOrEqual(sum, small.freeFrom()).onlyEnforceIf(free);
        model.addLessOrEqual(sum, small.freeFrom() - 1L).onlyEnforceIf(free.not());
        model.addBoolOr(new com.google.ortools.sat.Literal[] {none, free, brought});
        model.addImplication(none, brought.not());
        model.addImplication(free, brought.not());
        IntVar before = model.newIntVar(0, 200_000_000L, "");
        model.addEquality(before, LinearExpr.newBuilder().add(sum).addTerm(brought, small.delivery()));
        IntVar scaled = model.newIntVar(0, Long.MAX_VALUE / 1024, "");
        model.addEquality(
                scaled,
                LinearExpr.newBuilder().addTerm(before, small.taxHundredths()).add(5_000));
        IntVar tax = model.newIntVar(0, 200_000_000L, "");
        model.addDivisionEquality(tax, scaled, LinearExpr.constant(10_000));
        model.addEquality(toPay, LinearExpr.newBuilder().add(before).add(tax));
    }

    /** Patterns into which nothing more fits. */
    private static void patterns(Small small, int room, int type, int[] counts, List<int[]> patterns) {
        if (type == counts.length) {
            boolean full = true;
            for (int t = 0; t < counts.length; t++) {
                full &= small.lengths()[t] + KERF > room || counts[t] == small.demand()[t];
            }
            if (full && Arrays.stream(counts).sum() > 0) {
                patterns.add(counts.clone());
            }
            return;
        }
        int piece = small.lengths()[type] + KERF;
        for (int n = 0; n * piece <= room && n <= small.demand()[type]; n++) {
            counts[type] = n;
            patterns(small, room - n * piece, type + 1, counts, patterns);
        }
        counts[type] = 0;
    }
}
