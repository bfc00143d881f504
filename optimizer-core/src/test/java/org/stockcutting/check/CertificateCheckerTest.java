package org.stockcutting.check;

import static org.assertj.core.api.Assertions.assertThat;

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
import org.stockcutting.job.KeepRule;
import org.stockcutting.material.Grain;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.plan.Certificate;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Zone;

class CertificateCheckerTest {

    private static BigInteger prove(Job job, Map<String, BigFraction> duals) {
        Map<String, Integer> placed = new TreeMap<>();
        job.parts().forEach(p -> placed.put(p.id(), p.quantity()));
        Certificate certificate = CertificateChecker.certify(job, duals, placed);
        BigInteger stated = certificate.components().stream()
                .map(Certificate.Component::bound)
                .reduce(BigInteger.ZERO, BigInteger::add);
        BigInteger strict = CertificateChecker.bound(job, certificate, placed);
        assertThat(strict).as("strict against stated").isGreaterThanOrEqualTo(stated);
        return strict;
    }

    /** Chvatal, Linear Programming (1983), chapter 13: raws of 100 in, 453 of them; figures from memory. */
    @Test
    void provesChvatalsExample() {
        JobSketch sketch = new JobSketch();
        sketch.goal = Goal.BOARDS;
        sketch.crosscutKerf = JobSketch.in("0");
        sketch.forSale.add(JobSketch.sale("raw", Form.BOARD, "100", "4", "1", Grain.LENGTH, "1.00"));
        sketch.parts.add(JobSketch.part("45", 97, "45", "4", "1"));
        sketch.parts.add(JobSketch.part("36", 610, "36", "4", "1"));
        sketch.parts.add(JobSketch.part("31", 395, "31", "4", "1"));
        sketch.parts.add(JobSketch.part("14", 211, "14", "4", "1"));
        Map<String, BigFraction> duals = Map.of(
                "45", new BigFraction(1, 2),
                "36", new BigFraction(1, 2),
                "31", new BigFraction(1, 4));
        assertThat(prove(sketch.build(), duals)).isEqualTo(BigInteger.valueOf(453));
        sketch.goal = Goal.COST;
        assertThat(prove(sketch.build(), duals)).as("in cents at $1.00").isEqualTo(BigInteger.valueOf(45_300));
    }

    /** By hand: boards of 10 in at $3 and $5 for 17 in, four pieces of 8 in, no kerf: two of the long ones. */
    @Test
    void roundsUpToWhatPricesCanForm() {
        assertThat(LeastAmount.of(BigInteger.valueOf(452), List.of(BigInteger.valueOf(100)))
                        .intValue())
                .isEqualTo(500);
        List<BigInteger> prices = List.of(BigInteger.valueOf(300), BigInteger.valueOf(500));
        assertThat(LeastAmount.of(BigInteger.valueOf(301), prices).intValue()).isEqualTo(500);
        assertThat(LeastAmount.of(BigInteger.valueOf(601), prices).intValue()).isEqualTo(800);
        assertThat(LeastAmount.of(BigInteger.valueOf(700), prices).intValue()).isEqualTo(800);
        assertThat(LeastAmount.of(BigInteger.valueOf(801), prices).intValue()).isEqualTo(900);
        JobSketch sketch = new JobSketch();
        sketch.crosscutKerf = JobSketch.in("0");
        sketch.forSale.add(JobSketch.sale("ten", Form.BOARD, "10", "4", "1", Grain.LENGTH, "3.00"));
        sketch.forSale.add(JobSketch.sale("seventeen", Form.BOARD, "17", "4", "1", Grain.LENGTH, "5.00"));
        sketch.parts.add(JobSketch.part("p", 4, "8", "4", "1"));
        assertThat(prove(sketch.build(), Map.of()).intValue()).isEqualTo(1000);
    }

    @Test
    void neverExceedsTheOptimumOfTinyCrosscutJobs() {
        int proved = 0;
        int tight = 0;
        for (long seed = 0; proved < 300; seed++) {
            Random random = new Random(seed);
            JobSketch sketch = crosscuts(random);
            Job job = sketch.build();
            BigInteger least = new TinyOracle(job).least();
            if (least == null) {
                continue;
            }
            BigInteger best = BigInteger.TEN.pow(40).negate();
            for (int trial = 0; trial < 3; trial++) {
                best = best.max(prove(job, trial == 0 ? Map.of() : randomDuals(job, random)));
            }
            assertThat(best).as("seed " + seed + ", " + job.goal()).isLessThanOrEqualTo(least);
            proved++;
            tight += best.equals(least) ? 1 : 0;
        }
        // A bound that is never reached would prove nothing either.
        assertThat(tight).isGreaterThan(60);
    }

    private static JobSketch crosscuts(Random random) {
        JobSketch sketch = new JobSketch();
        sketch.goal = Goal.values()[random.nextInt(3)];
        sketch.crosscutKerf = PlanSketch.nm(random.nextInt(3) * 3_175_000L);
        if (random.nextBoolean()) {
            sketch.keep.add(
                    new KeepRule(Form.BOARD, JobSketch.in(String.valueOf(4 + random.nextInt(10))), JobSketch.in("1")));
        }
        int lengths = 1 + random.nextInt(3);
        for (int i = 0; i < lengths; i++) {
            String price = (3 + random.nextInt(9)) + "." + random.nextInt(10) + "0";
            var sale =
                    JobSketch.sale("s" + i, Form.BOARD, "" + (20 + random.nextInt(30)), "4", "1", Grain.LENGTH, price);
            sketch.forSale.add(random.nextInt(3) == 0 ? JobSketch.available(sale, 1 + random.nextInt(2)) : sale);
        }
        if (random.nextBoolean()) {
            int from = random.nextInt(20);
            Zone zone = new Zone(
                    JobSketch.in("" + from),
                    JobSketch.in((from + random.nextInt(5)) + ".5"),
                    null,
                    null,
                    Zone.Severity.UNUSABLE,
                    Zone.Face.BOTH,
                    false);
            Zone[] zones = random.nextBoolean() ? new Zone[] {zone} : new Zone[0];
            sketch.onHand.add(JobSketch.owned("rack", "" + (18 + random.nextInt(20)), "4", "1", null, zones));
        }
        int types = 1 + random.nextInt(3);
        for (int i = 0; i < types; i++) {
            String length = (4 + random.nextInt(20)) + (random.nextBoolean() ? ".125" : "");
            sketch.parts.add(JobSketch.part("p" + i, 1 + random.nextInt(2), length, "4", "1"));
        }
        return sketch;
    }

    private static Map<String, BigFraction> randomDuals(Job job, Random random) {
        Map<String, BigFraction> duals = new TreeMap<>();
        for (Part part : job.parts()) {
            duals.put(part.id(), new BigFraction(random.nextInt(1000), 1 + random.nextInt(7)));
        }
        if (job.goal() == Goal.WASTE) {
            duals.replaceAll((id, value) -> value.multiply(BigInteger.TEN.pow(22)));
        }
        return duals;
    }

    @Test
    void neverExceedsTheOptimumOfTinySheetJobs() {
        int proved = 0;
        int tight = 0;
        for (long seed = 0; proved < 100; seed++) {
            Random random = new Random(seed);
            JobSketch sketch = new JobSketch();
            sketch.goal = Goal.values()[random.nextInt(3)];
            sketch.crosscutKerf = PlanSketch.nm(random.nextInt(3) * 3_175_000L);
            sketch.ripKerf = sketch.crosscutKerf;
            for (int i = 0; i < 1 + random.nextInt(2); i++) {
                Grain grain = random.nextBoolean() ? Grain.LENGTH : Grain.ANY;
                String price = (3 + random.nextInt(9)) + ".00";
                var sale = JobSketch.sale(
                        "s" + i,
                        Form.SHEET,
                        "" + (20 + random.nextInt(20)),
                        "" + (10 + random.nextInt(12)),
                        "1",
                        grain,
                        price);
                sketch.forSale.add(random.nextInt(4) == 0 ? JobSketch.available(sale, 1) : sale);
            }
            for (int i = 0; i < 2 + random.nextInt(2); i++) {
                sketch.parts.add(JobSketch.part(
                        "p" + i,
                        1 + random.nextInt(2),
                        "" + (6 + random.nextInt(14)),
                        (3 + random.nextInt(9)) + ".25",
                        "1"));
            }
            Job job = sketch.build();
            BigInteger least = new TinyOracle(job).least();
            if (least == null) {
                continue;
            }
            BigInteger best = prove(job, Map.of()).max(prove(job, randomDuals(job, random)));
            assertThat(best).as("seed " + seed).isLessThanOrEqualTo(least);
            proved++;
            tight += best.equals(least) ? 1 : 0;
        }
        assertThat(tight).isGreaterThan(20);
    }

    /** Further duals rule out purchases: sheets of two sizes, some of them limited, on saws that reach everything. */
    @Test
    void rowsNeverProveMoreThanTheOptimumAndFalseOnesAreRefused() {
        int jobs = 0;
        int withRows = 0;
        int tight = 0;
        for (long seed = 0; jobs < 150; seed++) {
            Random random = new Random(seed);
            JobSketch sketch = new JobSketch();
            sketch.goal = random.nextBoolean() ? Goal.COST : Goal.BOARDS;
            for (int i = 0; i < 2; i++) {
                String price = (3 + random.nextInt(9)) + "." + random.nextInt(10) + "7";
                String length = "" + (20 + random.nextInt(20));
                String width = "" + (10 + random.nextInt(12));
                var sale = JobSketch.sale("s" + i, Form.SHEET, length, width, "1", Grain.LENGTH, price);
                sketch.forSale.add(random.nextBoolean() ? JobSketch.available(sale, 1 + random.nextInt(2)) : sale);
            }
            for (int i = 0; i < 2 + random.nextInt(2); i++) {
                String length = "" + (6 + random.nextInt(14));
                sketch.parts.add(
                        JobSketch.part("p" + i, 1 + random.nextInt(2), length, (3 + random.nextInt(9)) + ".25", "1"));
            }
            Job job = sketch.build();
            BigInteger least = new TinyOracle(job).least();
            if (least == null) {
                continue;
            }
            jobs++;
            Map<String, Integer> placed = new TreeMap<>();
            job.parts().forEach(p -> placed.put(p.id(), p.quantity()));
            List<Map<String, BigFraction>> proposals = new ArrayList<>();
            for (int n = 0; n < 5; n++) {
                proposals.add(randomDuals(job, random));
            }
            Certificate certificate = CertificateChecker.certify(job, proposals, placed, Map.of());
            BigInteger bound = CertificateChecker.bound(job, certificate, placed);
            assertThat(bound).as("seed " + seed).isLessThanOrEqualTo(least);
            assertThat(bound).as("seed " + seed).isEqualTo(CertificateChecker.claimed(job, certificate, placed));
            tight += bound.equals(least) ? 1 : 0;
            if (certificate.components().size() != 1) {
                continue;
            }
            Certificate.Component first = certificate.components().get(0);
            if (!first.rows().isEmpty()) {
                withRows++;
                refuses(job, placed, new Certificate.Component(first.stock(), first.duals(), first.bound()));
                BigInteger more = first.bound().add(BigInteger.ONE);
                refuses(job, placed, new Certificate.Component(first.stock(), first.duals(), first.rows(), more));
                List<Certificate.Dual> negative = List.of(new Certificate.Dual("p0", new BigFraction(-1)));
                refuses(
                        job,
                        placed,
                        new Certificate.Component(first.stock(), first.duals(), List.of(negative), first.bound()));
            }
        }
        assertThat(withRows).isGreaterThan(5);
        assertThat(tight).isGreaterThan(50);
    }

    private static void refuses(Job job, Map<String, Integer> placed, Certificate.Component said) {
        assertThat(CertificateChecker.bound(job, new Certificate(List.of(said)), placed))
                .isEqualTo(BigInteger.ZERO);
    }

    /** By hand: 5 of 6 x 6 in, one on a sheet of 10 x 10 at $1, four on the only one of 13 x 13 at $3: $4, whatever fractions say. */
    @Test
    void wholeSheetsOfWhichOneIsLeft() {
        JobSketch sketch = new JobSketch();
        sketch.forSale.add(JobSketch.sale("small", Form.SHEET, "10", "10", "1", Grain.ANY, "1.00"));
        sketch.forSale.add(
                JobSketch.available(JobSketch.sale("large", Form.SHEET, "13", "13", "1", Grain.ANY, "3.00"), 1));
        sketch.parts.add(JobSketch.part("p", 5, "6", "6", "1"));
        Certificate certificate = CertificateChecker.certify(
                sketch.build(), List.of(Map.of("p", new BigFraction(100))), Map.of("p", 5), Map.of());
        assertThat(CertificateChecker.bound(sketch.build(), certificate, Map.of("p", 5)))
                .isEqualTo(BigInteger.valueOf(400));
    }

    /** Staves may be of any width in their range: every choice of boards is tried, each stave as wide as its board allows. */
    @Test
    void neverExceedsTheOptimumOfTinyPanels() {
        for (long seed = 0; seed < 100; seed++) {
            Random random = new Random(seed);
            JobSketch sketch = new JobSketch();
            int staves = 1 + random.nextInt(4);
            int width = 4 * staves + random.nextInt(staves + 1);
            Part panel = JobSketch.part("top", 1, "18", width + "", "1");
            Making making = new Making.GlueUp(JobSketch.in("3"), JobSketch.in("5.5"), staves, Making.StaveSource.ANY);
            sketch.parts.add(JobSketch.with(panel, null, making, null, panel.woodClass(), 0));
            double[] jointed = new double[2];
            int[] prices = new int[2];
            int[] rooms = new int[2];
            for (int i = 0; i < 2; i++) {
                int length = 20 + random.nextInt(42);
                int across = 5 + random.nextInt(2);
                prices[i] = 100 * (2 + random.nextInt(8));
                sketch.forSale.add(JobSketch.sale(
                        "s" + i, Form.BOARD, "" + length, across + "", "1.25", Grain.LENGTH, prices[i] / 100 + ".00"));
                jointed[i] = Math.min(5.5, across - 0.125);
                rooms[i] = (int) ((length + 0.125) / 20.125);
            }
            long least = Long.MAX_VALUE;
            for (int first = 0; first <= staves; first++) {
                boolean wide = first * jointed[0] + (staves - first) * jointed[1] >= width + 1;
                long cost = (first + rooms[0] - 1) / rooms[0] * prices[0]
                        + (staves - first + rooms[1] - 1) / rooms[1] * (long) prices[1];
                least = wide ? Math.min(least, cost) : least;
            }
            BigInteger bound = prove(sketch.build(), Map.of());
            if (least < Long.MAX_VALUE) {
                assertThat(bound).as("seed " + seed).isLessThanOrEqualTo(BigInteger.valueOf(least));
            }
            assertThat(bound).as("seed " + seed).isPositive();
        }
    }
}
