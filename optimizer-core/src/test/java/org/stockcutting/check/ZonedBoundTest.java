package org.stockcutting.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.apache.commons.math3.fraction.BigFraction;
import org.junit.jupiter.api.Test;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.material.Grain;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.plan.Certificate;
import org.stockcutting.stock.Condition;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Price;
import org.stockcutting.stock.PriceUnit;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Trim;
import org.stockcutting.stock.Zone;

/** Certificates of jobs with measured boards: bad zones and tapers count. */
class ZonedBoundTest {

    private static Zone zone(String from, String to, String edge, String toEdge) {
        return new Zone(
                JobSketch.in(from),
                JobSketch.in(to),
                JobSketch.in(edge),
                JobSketch.in(toEdge),
                Zone.Severity.UNUSABLE,
                Zone.Face.BOTH,
                false);
    }

    private static BigInteger certified(Job job, Map<String, BigFraction> duals) {
        Certificate certificate = CertificateChecker.certify(job, duals, placed(job));
        return CertificateChecker.bound(job, certificate, placed(job));
    }

    private static Map<String, Integer> placed(Job job) {
        Map<String, Integer> placed = new TreeMap<>();
        job.parts().forEach(p -> placed.put(p.id(), p.quantity()));
        return placed;
    }

    private static JobSketch knot() {
        JobSketch sketch = new JobSketch();
        sketch.crosscutKerf = JobSketch.in("0");
        sketch.ripKerf = JobSketch.in("0");
        sketch.forSale.add(JobSketch.sale("new", Form.BOARD, "20", "4", "1", Grain.LENGTH, "2.00"));
        sketch.parts.add(JobSketch.part("p", 2, "10", "4", "1"));
        return sketch;
    }

    /**
     * By hand: a board of 20 x 6 in with a knot from 9 to 11 along and 2 to 4 across. A piece of 10 x 4 would have to begin at 11 along, or
     * end at 9, or begin at 4 across, or end at 2: it fits nowhere. So both are bought: one new board, $2. Clear, it would give two.
     */
    @Test
    void aKnotInTheMiddleLeavesNoPlaceAtAll() {
        JobSketch sketch = knot();
        sketch.onHand.add(JobSketch.owned("rack", "20", "6", "1", null));
        Map<String, BigFraction> duals = Map.of("p", new BigFraction(100));
        assertThat(certified(sketch.build(), duals)).isZero();
        sketch.onHand.set(0, JobSketch.owned("rack", "20", "6", "1", null, zone("9", "11", "2", "4")));
        assertThat(certified(sketch.build(), duals)).isEqualTo(BigInteger.valueOf(200));
    }

    /** By hand: the knot from 8 to 10 leaves 10 to 20 in for one piece worth $1; so 2 x $1 - 1 x $1 = $1, rounded up to a board: $2. */
    @Test
    void oneOfTwoPiecesFitsBesideTheKnot() {
        JobSketch sketch = knot();
        sketch.onHand.add(JobSketch.owned("rack", "20", "6", "1", null, zone("8", "10", "2", "4")));
        Job job = sketch.build();
        Certificate certificate = CertificateChecker.certify(job, Map.of("p", new BigFraction(100)), placed(job));
        assertThat(CertificateChecker.bound(job, certificate, placed(job))).isEqualTo(BigInteger.valueOf(200));
        sketch.parts.set(0, JobSketch.part("p", 1, "10", "4", "1"));
        assertThat(certified(sketch.build(), Map.of("p", new BigFraction(100)))).isZero();
    }

    /** By hand: 6 in wide at one end, 3 at the other, so 4 in wide up to two thirds of 30 in: one piece of 15 x 4 fits, not two. */
    @Test
    void aTaperLeavesOneOfTwo() {
        JobSketch sketch = new JobSketch();
        sketch.crosscutKerf = JobSketch.in("0");
        sketch.ripKerf = JobSketch.in("0");
        sketch.forSale.add(JobSketch.sale("new", Form.BOARD, "30", "4", "1", Grain.LENGTH, "2.00"));
        sketch.parts.add(JobSketch.part("p", 2, "15", "4", "1"));
        StockItem.OnHand straight = JobSketch.owned("rack", "30", "6", "1", null);
        sketch.onHand.add(straight);
        Map<String, BigFraction> duals = Map.of("p", new BigFraction(100));
        assertThat(certified(sketch.build(), duals)).isZero();
        sketch.onHand.set(0, tapered(straight, "3"));
        assertThat(certified(sketch.build(), duals)).isEqualTo(BigInteger.valueOf(200));
    }

    private static StockItem.OnHand tapered(StockItem.OnHand o, String end) {
        return new StockItem.OnHand(
                o.id(),
                o.form(),
                null,
                o.length(),
                o.width(),
                o.thickness(),
                o.material(),
                o.grain(),
                o.ownTrim(),
                1,
                o.zones(),
                new Condition(JobSketch.in("0"), JobSketch.in("0"), JobSketch.in(end), null),
                null);
    }

    @Test
    void forgedCertificatesAreRefused() {
        JobSketch sketch = knot();
        sketch.onHand.add(JobSketch.owned("rack", "20", "6", "1", null, zone("9", "11", "2", "4")));
        Job job = sketch.build();
        List<String> stock = List.of("new", "rack");
        refuses(job, new Certificate.Component(stock, worth(100), BigInteger.valueOf(201)));
        refuses(job, new Certificate.Component(stock, worth(101), BigInteger.valueOf(200)));
        refuses(job, new Certificate.Component(stock, worth(-1), BigInteger.ZERO));
        // The same duals on a board whose knot is one inch nearer to the end, where a piece fits.
        sketch.onHand.set(0, JobSketch.owned("rack", "20", "6", "1", null, zone("8", "10", "2", "4")));
        sketch.parts.set(0, JobSketch.part("p", 1, "10", "4", "1"));
        refuses(sketch.build(), new Certificate.Component(stock, worth(100), BigInteger.valueOf(100)));
    }

    private static List<Certificate.Dual> worth(int cents) {
        return List.of(new Certificate.Dual("p", new BigFraction(cents)));
    }

    private static void refuses(Job job, Certificate.Component said) {
        assertThat(CertificateChecker.bound(job, new Certificate(List.of(said)), placed(job)))
                .isZero();
    }

    /** Everything tried: which pieces come from which board, every cut of it at every place. */
    private static final class Everything {
        final Job job;
        final List<Rough> pieces = new ArrayList<>();
        final Facts facts;

        Everything(Job job) {
            this.job = job;
            this.facts = Facts.of(job);
            for (Rough rough : facts.roughs().values()) {
                for (int i = 0; i < rough.part().quantity(); i++) {
                    pieces.add(rough);
                }
            }
        }

        /** Which sets of pieces a board can give: bit m stands for the set whose members are the bits of m. */
        private long sets(Board board) {
            Rect usable = board.usable();
            int nx = (int) board.raw().x1() + 1;
            int ny = (int) board.raw().y1() + 1;
            long[][][][] memo = new long[nx][nx][ny][ny];
            return sets(board, (int) usable.x0(), (int) usable.x1(), (int) usable.y0(), (int) usable.y1(), memo);
        }

        private long sets(Board board, int x0, int x1, int y0, int y1, long[][][][] memo) {
            if (x0 >= x1 || y0 >= y1) {
                return 1;
            }
            if (memo[x0][x1][y0][y1] != 0) {
                return memo[x0][x1][y0][y1];
            }
            long sets = 1;
            for (int i = 0; i < pieces.size(); i++) {
                Rough rough = pieces.get(i);
                Rect rect = new Rect(x0, y0, x1, y1);
                boolean sized = (rough.length() == x1 - x0
                                && rough.leastWidth() == y1 - y0
                                && Fit.lie(rough, board, false))
                        || (rough.length() == y1 - y0 && rough.leastWidth() == x1 - x0 && Fit.lie(rough, board, true));
                boolean good = sized
                        && PieceCheck.isOnWood(rough, rect, board)
                        && board.zones().stream()
                                .noneMatch(bad -> PieceCheck.avoided(rough, bad, board, job.shop())
                                        .overlaps(rect));
                sets |= good ? 1L << (1 << i) : 0;
            }
            int kerf = (int) facts.crosscutKerf();
            for (int x = x0 + (kerf == 0 ? 1 : 0); x < x1; x++) {
                sets |= both(sets(board, x0, x, y0, y1, memo), sets(board, x + kerf, x1, y0, y1, memo));
            }
            for (int y = y0 + (kerf == 0 ? 1 : 0); y < y1; y++) {
                sets |= both(sets(board, x0, x1, y0, y, memo), sets(board, x0, x1, y + kerf, y1, memo));
            }
            memo[x0][x1][y0][y1] = sets;
            return sets;
        }

        private static long both(long left, long right) {
            long sets = left | right;
            if (left == 1 || right == 1) {
                return sets;
            }
            for (int a = 1; a < Long.SIZE; a++) {
                for (int b = 1; b < Long.SIZE && (left >> a & 1) == 1; b++) {
                    sets |= (right >> b & 1) == 1 && (a & b) == 0 ? 1L << (a | b) : 0;
                }
            }
            return sets;
        }

        /** The least value, -1 where not everything can be placed. */
        long least() {
            int all = (1 << pieces.size()) - 1;
            long[] least = new long[all + 1];
            java.util.Arrays.fill(least, -1);
            least[0] = 0;
            for (Board board : facts.boards().values()) {
                long sets = sets(board);
                long cost = !board.forSale()
                        ? 0
                        : job.goal() == Goal.BOARDS
                                ? 1
                                : ((StockItem.ForSale) board.item())
                                        .price()
                                        .amount()
                                        .movePointRight(2)
                                        .longValueExact();
                long[] before = board.copies().isPresent() ? least.clone() : least;
                for (int from = 0; from <= all; from++) {
                    for (int m = 1; m <= all && before[from] >= 0; m++) {
                        boolean fits = (from & m) == 0 && (sets >> m & 1) == 1;
                        if (fits && (least[from | m] < 0 || least[from | m] > before[from] + cost)) {
                            least[from | m] = before[from] + cost;
                        }
                    }
                }
            }
            return least[all];
        }
    }

    private static Job tiny(Random random) {
        JobSketch sketch = new JobSketch();
        sketch.goal = random.nextBoolean() ? Goal.COST : Goal.BOARDS;
        sketch.crosscutKerf = PlanSketch.nm(random.nextInt(3));
        sketch.ripKerf = sketch.crosscutKerf;
        for (int i = 0; i < 1 + random.nextInt(3); i++) {
            sketch.onHand.add(measured("rack" + i, random));
        }
        Price price = new Price(new BigDecimal(1 + random.nextInt(5)), JobSketch.USD, PriceUnit.PIECE);
        sketch.forSale.add(new StockItem.ForSale(
                "new",
                Form.BOARD,
                null,
                PlanSketch.nm(8 + random.nextInt(3)),
                PlanSketch.nm(5 + random.nextInt(2)),
                JobSketch.in("1"),
                "oak",
                Grain.LENGTH,
                null,
                null,
                price));
        int types = 1 + random.nextInt(3);
        for (int i = 0; i < types; i++) {
            sketch.parts.add(new Part(
                    "p" + i,
                    1 + random.nextInt(types == 1 ? 5 : 2),
                    PlanSketch.nm(2 + random.nextInt(6)),
                    new Section.Measured(PlanSketch.nm(2 + random.nextInt(3)), JobSketch.in("1")),
                    "oak",
                    random.nextBoolean() ? Grain.LENGTH : Grain.ANY,
                    WoodClass.values()[Math.max(0, random.nextInt(5) - 2)],
                    0,
                    new Making.AsCut(),
                    null,
                    null));
        }
        return sketch.build();
    }

    private static StockItem.OnHand measured(String id, Random random) {
        int length = 7 + random.nextInt(6);
        int width = 5 + random.nextInt(3);
        List<Zone> zones = new ArrayList<>();
        for (int i = 0; i < 1 + random.nextInt(3); i++) {
            int from = random.nextInt(length);
            int edge = random.nextInt(width);
            zones.add(new Zone(
                    PlanSketch.nm(from),
                    PlanSketch.nm(from + 1 + random.nextInt(2)),
                    PlanSketch.nm(edge),
                    PlanSketch.nm(edge + 1 + random.nextInt(2)),
                    Zone.Severity.values()[random.nextInt(3)],
                    Zone.Face.BOTH,
                    false));
        }
        boolean tapers = random.nextInt(3) == 0;
        Condition condition = tapers
                ? new Condition(PlanSketch.nm(0), PlanSketch.nm(0), PlanSketch.nm(2 + random.nextInt(width - 2)), null)
                : Condition.TRUE;
        return new StockItem.OnHand(
                id,
                Form.BOARD,
                null,
                PlanSketch.nm(length),
                PlanSketch.nm(width),
                JobSketch.in("1"),
                "oak",
                Grain.LENGTH,
                random.nextBoolean() ? null : trim(random),
                1,
                zones,
                condition,
                null);
    }

    private static Trim trim(Random random) {
        return new Trim(
                PlanSketch.nm(random.nextInt(2)),
                PlanSketch.nm(random.nextInt(2)),
                PlanSketch.nm(random.nextInt(2)),
                PlanSketch.nm(random.nextInt(2)));
    }

    @Test
    void neverExceedsTheOptimumOfTinyRacks() {
        int jobs = 0;
        int tight = 0;
        for (long seed = 0; jobs < 1_000; seed++) {
            Random random = new Random(seed);
            Job job = tiny(random);
            long least = new Everything(job).least();
            if (least < 0) {
                continue;
            }
            jobs++;
            BigInteger best = certified(job, Map.of());
            for (int trial = 0; trial < 3; trial++) {
                Map<String, BigFraction> duals = new TreeMap<>();
                job.parts()
                        .forEach(p -> duals.put(p.id(), new BigFraction(random.nextInt(1_000), 1 + random.nextInt(7))));
                best = best.max(certified(job, duals));
            }
            assertThat(best).as("seed " + seed).isLessThanOrEqualTo(BigInteger.valueOf(least));
            tight += least > 0 && best.equals(BigInteger.valueOf(least)) ? 1 : 0;
        }
        // A bound that is never reached would prove nothing either.
        assertThat(tight).isGreaterThan(100);
    }
}
