package org.stockcutting.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.commons.math3.fraction.BigFraction;
import org.junit.jupiter.api.Test;
import org.stockcutting.check.RandomPlans.Sample;
import org.stockcutting.job.SawLimits;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Certificate;
import org.stockcutting.plan.Derived;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.Objective;
import org.stockcutting.plan.Status;
import org.stockcutting.plan.Violation;
import org.stockcutting.sequence.CutSequencer;

class PlanCheckerTest {

    private static final List<Sample> SAMPLES = samples();

    private static List<Sample> samples() {
        List<Sample> samples = new ArrayList<>();
        for (long seed = 1001; seed <= 1040; seed++) {
            samples.add(RandomPlans.make(seed));
        }
        return samples;
    }

    private static Set<String> causes(Sample sample) {
        return PlanChecker.check(sample.job(), sample.plan()).stream()
                .map(Violation::cause)
                .collect(Collectors.toSet());
    }

    @Test
    void refusesMutantsForTheRuleTheyBreak() {
        Map<Cause, List<Mutants.Way>> ways = Mutants.all();
        Set<Cause> seen = EnumSet.noneOf(Cause.class);
        int refused = 0;
        for (int round = 0; round < 9; round++) {
            for (Map.Entry<Cause, List<Mutants.Way>> entry : ways.entrySet()) {
                for (int w = 0; w < entry.getValue().size(); w++) {
                    long seed = 10_000L * round + 100L * entry.getKey().ordinal() + w;
                    Random random = new Random(seed);
                    Sample mutant = null;
                    for (int attempt = 0; attempt < 60 && mutant == null; attempt++) {
                        Sample sample = SAMPLES.get(random.nextInt(SAMPLES.size()));
                        mutant = entry.getValue().get(w).apply(sample, random);
                    }
                    assertThat(mutant)
                            .as("no mutant for " + entry.getKey() + ", seed " + seed)
                            .isNotNull();
                    assertThat(causes(mutant))
                            .as(entry.getKey() + " way " + w + ", seed " + seed)
                            .contains(entry.getKey().word());
                    seen.add(entry.getKey());
                    refused++;
                }
            }
        }
        assertThat(refused).isGreaterThanOrEqualTo(300);
        // Staves need glue-ups, first cuts a look at the tree, certificates a proof; crooked boards, chosen places,
        // near misses and set-ups with a price need jobs that say so: tested below and in their own classes.
        assertThat(EnumSet.complementOf(EnumSet.copyOf(seen)))
                .containsExactlyInAnyOrder(
                        Cause.STAVE_SUM,
                        Cause.STAVE_WIDTH,
                        Cause.STAVE_SOURCE,
                        Cause.FIRST_CUT,
                        Cause.OUT_OF_TRUE,
                        Cause.CUT_FROM,
                        Cause.NEAR_MISS,
                        Cause.TRADE_OFF,
                        Cause.ESTIMATE,
                        Cause.CERTIFICATE);
    }

    @Test
    void refusesOneOfBothFirstCuts() {
        for (Sample sample : SAMPLES) {
            boolean rip = causes(first(sample, SawLimits.FirstCut.RIP)).contains("first-cut");
            boolean crosscut =
                    causes(first(sample, SawLimits.FirstCut.CROSSCUT)).contains("first-cut");
            assertThat(rip || crosscut).isTrue();
        }
    }

    private static Sample first(Sample sample, SawLimits.FirstCut first) {
        return JobMutants.job(sample, j -> j.limits = new SawLimits(null, null, null, null, first, null));
    }

    @Test
    void acceptsChangesThatBreakNothing() {
        int accepted = 0;
        for (int i = 0; accepted < 100; i++) {
            Random random = new Random(i);
            Sample sample = SAMPLES.get(i % SAMPLES.size());
            Sample same = harmless(sample, random, i % 8);
            if (same != null) {
                assertThat(PlanChecker.check(same.job(), same.plan()))
                        .as("change " + i % 8 + ", seed " + i)
                        .isEmpty();
                accepted++;
            }
        }
    }

    private static Sample harmless(Sample s, Random random, int kind) {
        Objective o = s.plan().objective();
        return switch (kind) {
            case 0 -> relabelled(s);
            case 1 ->
                Mutants.certificate(
                        s,
                        s.plan().certificate(),
                        new Objective(o.goal(), o.value(), o.bound().subtract(BigInteger.ONE), null),
                        Status.FEASIBLE);
            case 2 ->
                Mutants.certificate(
                        s,
                        Certificate.EMPTY,
                        new Objective(
                                o.goal(), o.value(), BigInteger.TEN.pow(40).negate(), null),
                        Status.FEASIBLE);
            case 3 ->
                Mutants.plan(
                        s,
                        s.plan().layouts().stream()
                                .map(l -> shuffled(l, random))
                                .toList());
            case 4 ->
                Mutants.derived(s, d -> {
                    var buying = new ArrayList<>(d.buyingList());
                    var offcuts = new ArrayList<>(d.offcuts());
                    Collections.shuffle(buying, random);
                    Collections.shuffle(offcuts, random);
                    return new Derived(buying, offcuts, d.cutSequence(), d.setUps(), d.yield(), d.warnings());
                });
            case 5 -> SequenceMutants.otherBoardsFirst(s);
            case 6 ->
                JobMutants.job(
                        s,
                        j -> j.limits = new SawLimits(
                                JobSketch.in("900"),
                                JobSketch.in("900"),
                                JobSketch.in("900"),
                                99,
                                SawLimits.FirstCut.ANY,
                                null));
            default ->
                Mutants.certificate(
                        s,
                        new Certificate(s.plan().certificate().components().stream()
                                .map(c -> new Certificate.Component(
                                        c.stock(),
                                        halved(c.duals()),
                                        BigInteger.TEN.pow(40).negate()))
                                .toList()),
                        new Objective(
                                o.goal(), o.value(), BigInteger.TEN.pow(40).negate(), null),
                        Status.FEASIBLE);
        };
    }

    private static List<Certificate.Dual> halved(List<Certificate.Dual> duals) {
        return duals.stream()
                .map(d -> new Certificate.Dual(d.part(), d.value().divide(2)))
                .toList();
    }

    private static Layout shuffled(Layout l, Random random) {
        List<PlacedPiece> pieces = new ArrayList<>(l.pieces());
        List<Layout.LeftOver> offcuts = new ArrayList<>(l.offcuts());
        Collections.shuffle(pieces, random);
        Collections.shuffle(offcuts, random);
        return new Layout(l.stock(), l.repeat(), l.length(), l.width(), l.thickness(), pieces, l.cuts(), offcuts);
    }

    /** Copies of a part on equal boards change their numbers; the sequence is made again, as it names them. */
    private static Sample relabelled(Sample s) {
        List<Layout> layouts = s.plan().layouts().stream()
                .map(l -> Mutants.pieces(
                        l,
                        l.pieces().stream()
                                .map(p -> {
                                    List<Integer> numbers = new ArrayList<>(p.numbers());
                                    Collections.reverse(numbers);
                                    return Mutants.numbered(p, numbers, p.members());
                                })
                                .toList()))
                .toList();
        CutSequencer.Sequence sequence = CutSequencer.sequence(s.job(), layouts);
        return Mutants.derived(
                Mutants.plan(s, layouts),
                d -> new Derived(
                        d.buyingList(), d.offcuts(), sequence.steps(), sequence.setUps(), d.yield(), d.warnings()));
    }

    @Test
    void refusesCorruptedCertificates() {
        int refused = 0;
        for (int i = 0; refused < 100; i++) {
            Sample s = SAMPLES.get(i % SAMPLES.size());
            List<Certificate.Component> components =
                    new ArrayList<>(s.plan().certificate().components());
            if (components.isEmpty()) {
                continue;
            }
            Random random = new Random(i);
            Certificate.Component c = components.remove(random.nextInt(components.size()));
            components.add(corrupted(c, i % 6));
            if (i % 6 == 5) {
                components.add(c);
            }
            Sample mutant = Mutants.certificate(
                    s,
                    new Certificate(components),
                    s.plan().objective(),
                    s.plan().header().status());
            assertThat(causes(mutant)).as("corruption " + i % 6 + ", seed " + i).contains("certificate");
            Objective low = new Objective(
                    s.job().goal(),
                    s.plan().objective().value(),
                    BigInteger.TEN.pow(40).negate(),
                    null);
            Sample honest = Mutants.certificate(s, new Certificate(components), low, Status.FEASIBLE);
            assertThat(causes(honest)).as("corruption " + i % 6 + ", seed " + i).containsExactly("certificate");
            refused++;
        }
    }

    private static Certificate.Component corrupted(Certificate.Component c, int kind) {
        List<Certificate.Dual> duals = new ArrayList<>(c.duals());
        Certificate.Dual first = duals.get(0);
        switch (kind) {
            case 0 ->
                duals.set(0, new Certificate.Dual(first.part(), first.value().negate()));
            case 1 -> duals.set(0, new Certificate.Dual("nobody", first.value()));
            case 2 -> duals.add(first);
            case 3 ->
                duals.replaceAll(d -> new Certificate.Dual(d.part(), d.value().multiply(new BigFraction(1000))));
            default -> {}
        }
        // Worths that are a thousand times too high would prove a bound that is.
        BigInteger bound = switch (kind) {
            case 3 -> c.bound().abs().add(BigInteger.ONE).multiply(BigInteger.valueOf(1000));
            case 4 -> c.bound().add(BigInteger.ONE);
            default -> c.bound();
        };
        List<String> stock = kind == 5 ? List.of("nowhere") : c.stock();
        return new Certificate.Component(stock, duals, bound);
    }

    @Test
    void checksTenThousandPiecesOnOneBoardQuickly() {
        JobSketch sketch = new JobSketch();
        List<Rect> rects = new ArrayList<>();
        long kerf = sketch.crosscutKerf.nanometres();
        for (int x = 0; x < 100; x++) {
            for (int y = 0; y < 100; y++) {
                long x0 = x * (1_000_000 + kerf);
                long y0 = y * (1_000_000 + kerf);
                rects.add(new Rect(x0, y0, x0 + 1_000_000, y0 + 1_000_000));
            }
        }
        Facts facts = Facts.of(sketch.build());
        long start = System.nanoTime();
        Inspection clean = new Inspection();
        Spacing.check(facts, rects, clean, "/pieces");
        rects.add(new Rect(50_000_000, 50_000_000, 50_000_001, 50_000_001));
        Inspection spoiled = new Inspection();
        Spacing.check(facts, rects, spoiled, "/pieces");
        assertThat(clean.violations()).isEmpty();
        assertThat(spoiled.violations()).isNotEmpty();
        assertThat((System.nanoTime() - start) / 1_000_000).isLessThan(1_000);
    }

    @Test
    void findsTheSameConflictsAsAllPairs() {
        for (long seed = 0; seed < 300; seed++) {
            Random random = new Random(seed);
            JobSketch sketch = new JobSketch();
            sketch.crosscutKerf = PlanSketch.nm(random.nextInt(3));
            sketch.ripKerf = PlanSketch.nm(random.nextInt(3));
            List<Rect> rects = new ArrayList<>();
            for (int i = 0; i < 6; i++) {
                int x = random.nextInt(40);
                int y = random.nextInt(40);
                rects.add(new Rect(x, y, x + 1 + random.nextInt(10), y + 1 + random.nextInt(10)));
            }
            boolean right = true;
            for (int a = 0; a < rects.size(); a++) {
                for (int b = 0; b < a; b++) {
                    long gapX = Math.max(
                            rects.get(a).x0() - rects.get(b).x1(),
                            rects.get(b).x0() - rects.get(a).x1());
                    long gapY = Math.max(
                            rects.get(a).y0() - rects.get(b).y1(),
                            rects.get(b).y0() - rects.get(a).y1());
                    right &= gapX >= sketch.crosscutKerf.nanometres() || gapY >= sketch.ripKerf.nanometres();
                }
            }
            Inspection inspection = new Inspection();
            Spacing.check(Facts.of(sketch.build()), rects, inspection, "/pieces");
            assertThat(inspection.violations().isEmpty()).as("seed " + seed).isEqualTo(right);
        }
    }
}
