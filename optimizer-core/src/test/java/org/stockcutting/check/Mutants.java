package org.stockcutting.check;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.UnaryOperator;
import org.stockcutting.check.RandomPlans.Sample;
import org.stockcutting.job.SawLimits;
import org.stockcutting.length.Length;
import org.stockcutting.length.Volume;
import org.stockcutting.material.Grain;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.Direction;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.BuyingLine;
import org.stockcutting.plan.Certificate;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Derived;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.Objective;
import org.stockcutting.plan.PlanHeader;
import org.stockcutting.plan.Status;
import org.stockcutting.plan.YieldFigures;
import org.stockcutting.stock.Money;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Trim;

/** Ways to break a valid plan, one rule each. A way gives null where the plan offers nothing to break. */
final class Mutants {

    interface Way {
        Sample apply(Sample sample, Random random);
    }

    static final Length NM = Length.ofNanometres(1);

    private Mutants() {}

    static Map<Cause, List<Way>> all() {
        Map<Cause, List<Way>> ways = new LinkedHashMap<>();
        put(ways, Cause.UNKNOWN_STOCK, (s, r) -> layout(s, r, l -> renamed(l, "nowhere")));
        put(ways, Cause.UNKNOWN_PART, (s, r) -> piece(s, r, p -> named(p, "nobody")));
        put(
                ways,
                Cause.STOCK_SIZE,
                (s, r) -> layout(s, r, l -> sized(l, l.length().plus(NM))));
        put(ways, Cause.COUNT, (s, r) -> layout(s, r, l -> repeated(l, l.repeat() + 1)));
        put(ways, Cause.COUNT, (s, r) -> piece(s, r, p -> numbered(p, List.of(), p.members())));
        put(ways, Cause.NUMBER, (s, r) -> piece(s, r, p -> numbered(p, withFirst(p.numbers(), 0), p.members())));
        put(ways, Cause.NUMBER, (s, r) -> piece(s, r, p -> numbered(p, withFirst(p.numbers(), 99_999), p.members())));
        put(ways, Cause.DUPLICATE_NUMBER, Mutants::duplicate);
        put(ways, Cause.MEMBERS, (s, r) -> piece(s, r, p -> numbered(p, p.numbers(), p.numbers())));
        put(
                ways,
                Cause.ROUGH_SIZE,
                (s, r) -> JobMutants.aPart(
                        s, r, p -> JobSketch.resized(p, p.quantity(), p.length().plus(NM))));
        put(
                ways,
                Cause.SECTION,
                (s, r) -> JobMutants.aPart(s, r, p -> JobMutants.section(p, JobSketch.in("1.75"), "oak")));
        put(
                ways,
                Cause.MATERIAL,
                (s, r) -> JobMutants.aPart(s, r, p -> JobMutants.section(p, JobSketch.in("0.75"), "ash")));
        put(
                ways,
                Cause.GRADE,
                (s, r) -> JobMutants.aPart(
                        s, r, p -> p.withSelection(p.selection().withGrades(List.of("clear")))));
        put(ways, Cause.GRAIN, Mutants::acrossGrain);
        put(ways, Cause.OUTSIDE, JobMutants::outside);
        put(ways, Cause.OVERLAP, Mutants::overlap);
        put(ways, Cause.KERF, JobMutants::wideKerf);
        put(ways, Cause.TREE, (s, r) -> layout(s, r, l -> treed(l, swapLeaf(l.cuts()))));
        put(ways, Cause.TREE, (s, r) -> piece(s, r, p -> moved(p, p.x().plus(NM), p.y())));
        put(
                ways,
                Cause.STAGES,
                (s, r) -> JobMutants.both(s)
                        ? JobMutants.limits(s, new SawLimits(null, null, null, 1, any(), null))
                        : null);
        put(
                ways,
                Cause.RIP_CAPACITY,
                (s, r) -> JobMutants.slots(s, Direction.RIP)
                        ? JobMutants.limits(s, new SawLimits(NM, null, null, null, any(), null))
                        : null);
        put(
                ways,
                Cause.LONGEST_RIP,
                (s, r) -> JobMutants.slots(s, Direction.RIP)
                        ? JobMutants.limits(s, new SawLimits(null, NM, null, null, any(), null))
                        : null);
        put(
                ways,
                Cause.CROSSCUT_CAPACITY,
                (s, r) -> JobMutants.slots(s, Direction.CROSSCUT)
                        ? JobMutants.limits(s, new SawLimits(null, null, NM, null, any(), null))
                        : null);
        put(
                ways,
                Cause.MINIMUM_PIECE,
                (s, r) -> JobMutants.limits(s, new SawLimits(null, null, null, null, any(), JobSketch.in("999"))));
        put(ways, Cause.ZONE, (s, r) -> JobMutants.zone(s, false));
        put(ways, Cause.METAL_CUT, (s, r) -> JobMutants.zone(s, true));
        put(ways, Cause.AVAILABILITY, JobMutants::fewer);
        put(
                ways,
                Cause.CAR_LENGTH,
                (s, r) -> JobMutants.job(
                        s, j -> j.carLength = s.plan().layouts().get(0).length().minus(NM)));
        put(ways, Cause.GROUP, JobMutants::grouped);
        put(
                ways,
                Cause.UNPLACED,
                (s, r) -> JobMutants.aPart(s, r, p -> JobSketch.resized(p, p.quantity() + 1, p.length())));
        put(ways, Cause.UNPLACED, JobMutants::falseReason);
        put(ways, Cause.MONEY, (s, r) -> money(s, s.plan().cost().plus(Money.ofMinor(1, JobSketch.USD))));
        put(ways, Cause.VALUE, (s, r) -> objective(s, 1, 0));
        put(ways, Cause.BOUND, (s, r) -> objective(s, 0, 1));
        put(
                ways,
                Cause.STATUS,
                (s, r) -> status(s, s.plan().header().status() == Status.OPTIMAL ? Status.PARTIAL : Status.OPTIMAL));
        put(ways, Cause.STATUS, (s, r) -> status(s, Status.INFEASIBLE));
        put(ways, Cause.BUYING_LIST, Mutants::buying);
        put(ways, Cause.OFFCUT, Mutants::keepFlag);
        put(ways, Cause.OFFCUT, Mutants::rack);
        put(ways, Cause.YIELD, Mutants::yields);
        SequenceMutants.ways().forEach(way -> put(ways, Cause.SEQUENCE, way));
        put(
                ways,
                Cause.SET_UPS,
                (s, r) -> derived(
                        s,
                        d -> new Derived(
                                d.buyingList(),
                                d.offcuts(),
                                d.cutSequence(),
                                d.setUps() + 1,
                                d.yield(),
                                d.warnings())));
        put(ways, Cause.LAYOUTS_NOT_MERGED, Mutants::split);
        put(
                ways,
                Cause.WARNING,
                (s, r) -> s.plan().derived().warnings().isEmpty()
                        ? null
                        : derived(
                                s,
                                d -> new Derived(
                                        d.buyingList(),
                                        d.offcuts(),
                                        d.cutSequence(),
                                        d.setUps(),
                                        d.yield(),
                                        List.of())));
        return ways;
    }

    private static void put(Map<Cause, List<Way>> ways, Cause cause, Way way) {
        ways.computeIfAbsent(cause, c -> new ArrayList<>()).add(way);
    }

    static SawLimits.FirstCut any() {
        return SawLimits.FirstCut.ANY;
    }

    // The plan changed, the job as it is.

    static Sample plan(Sample s, List<Layout> layouts) {
        CuttingPlan p = s.plan();
        return new Sample(
                s.job(),
                new CuttingPlan(
                        p.header(),
                        p.cost(),
                        p.objective(),
                        layouts,
                        p.unplaced(),
                        p.certificate(),
                        p.violations(),
                        p.derived()));
    }

    static Sample certificate(Sample s, Certificate certificate, Objective objective, Status status) {
        CuttingPlan p = s.plan();
        PlanHeader h = p.header();
        PlanHeader header = new PlanHeader(
                h.job(),
                h.jobHash(),
                status,
                h.stopReason(),
                h.reproducible(),
                h.seed(),
                h.work(),
                h.workVersion(),
                h.engine());
        return new Sample(
                s.job(),
                new CuttingPlan(
                        header,
                        p.cost(),
                        objective,
                        p.layouts(),
                        p.unplaced(),
                        certificate,
                        p.violations(),
                        p.derived()));
    }

    static Sample derived(Sample s, UnaryOperator<Derived> change) {
        CuttingPlan p = s.plan();
        return new Sample(
                s.job(),
                new CuttingPlan(
                        p.header(),
                        p.cost(),
                        p.objective(),
                        p.layouts(),
                        p.unplaced(),
                        p.certificate(),
                        p.violations(),
                        change.apply(p.derived())));
    }

    private static Sample money(Sample s, Money cost) {
        CuttingPlan p = s.plan();
        return new Sample(
                s.job(),
                new CuttingPlan(
                        p.header(),
                        cost,
                        p.objective(),
                        p.layouts(),
                        p.unplaced(),
                        p.certificate(),
                        p.violations(),
                        p.derived()));
    }

    private static Sample objective(Sample s, long value, long bound) {
        Objective o = s.plan().objective();
        Objective changed = new Objective(
                o.goal(), o.value().add(BigInteger.valueOf(value)), o.bound().add(BigInteger.valueOf(bound)), null);
        return certificate(s, s.plan().certificate(), changed, Status.FEASIBLE);
    }

    private static Sample status(Sample s, Status status) {
        return certificate(s, s.plan().certificate(), s.plan().objective(), status);
    }

    private static Sample layout(Sample s, Random r, UnaryOperator<Layout> change) {
        List<Layout> layouts = new ArrayList<>(s.plan().layouts());
        int i = r.nextInt(layouts.size());
        Layout changed = change.apply(layouts.get(i));
        if (changed == null) {
            return null;
        }
        layouts.set(i, changed);
        return plan(s, layouts);
    }

    static Layout pieces(Layout l, List<PlacedPiece> pieces) {
        return new Layout(l.stock(), l.repeat(), l.length(), l.width(), l.thickness(), pieces, l.cuts(), l.offcuts());
    }

    private static Layout renamed(Layout l, String stock) {
        return new Layout(stock, l.repeat(), l.length(), l.width(), l.thickness(), l.pieces(), l.cuts(), l.offcuts());
    }

    private static Layout sized(Layout l, Length length) {
        return new Layout(l.stock(), l.repeat(), length, l.width(), l.thickness(), l.pieces(), l.cuts(), l.offcuts());
    }

    static Layout repeated(Layout l, int repeat) {
        return new Layout(l.stock(), repeat, l.length(), l.width(), l.thickness(), l.pieces(), l.cuts(), l.offcuts());
    }

    private static Layout treed(Layout l, CutNode tree) {
        return tree == null
                ? null
                : new Layout(
                        l.stock(), l.repeat(), l.length(), l.width(), l.thickness(), l.pieces(), tree, l.offcuts());
    }

    private static Sample piece(Sample s, Random r, UnaryOperator<PlacedPiece> change) {
        return layout(s, r, l -> {
            List<PlacedPiece> pieces = new ArrayList<>(l.pieces());
            int i = r.nextInt(pieces.size());
            PlacedPiece changed = change.apply(pieces.get(i));
            if (changed == null) {
                return null;
            }
            pieces.set(i, changed);
            return pieces(l, pieces);
        });
    }

    private static PlacedPiece named(PlacedPiece p, String part) {
        return new PlacedPiece(part, p.numbers(), p.members(), p.x(), p.y(), p.length(), p.width(), p.turned());
    }

    static PlacedPiece numbered(PlacedPiece p, List<Integer> numbers, List<Integer> members) {
        return new PlacedPiece(p.part(), numbers, members, p.x(), p.y(), p.length(), p.width(), p.turned());
    }

    private static PlacedPiece moved(PlacedPiece p, Length x, Length y) {
        return new PlacedPiece(p.part(), p.numbers(), p.members(), x, y, p.length(), p.width(), p.turned());
    }

    static List<Integer> withFirst(List<Integer> numbers, int first) {
        List<Integer> changed = new ArrayList<>(numbers);
        changed.set(0, first);
        return changed;
    }

    private static Sample duplicate(Sample s, Random r) {
        return piece(s, r, p -> {
            int other = s.plan().layouts().stream()
                    .flatMap(l -> l.pieces().stream())
                    .filter(q -> q.part().equals(p.part()))
                    .flatMap(q -> q.numbers().stream())
                    .filter(n -> !n.equals(p.numbers().get(0)))
                    .findFirst()
                    .orElse(0);
            return other == 0 ? null : numbered(p, withFirst(p.numbers(), other), p.members());
        });
    }

    private static Sample acrossGrain(Sample s, Random r) {
        return piece(s, r, p -> {
            boolean axis = s.plan().layouts().stream()
                    .filter(l -> l.pieces().contains(p))
                    .allMatch(l -> JobMutants.stock(s.job(), l.stock()).grain() == Grain.LENGTH);
            return axis
                    ? new PlacedPiece(
                            p.part(), p.numbers(), p.members(), p.x(), p.y(), p.width(), p.length(), !p.turned())
                    : null;
        });
    }

    private static Sample overlap(Sample s, Random r) {
        return layout(s, r, l -> {
            if (l.pieces().size() < 2) {
                return null;
            }
            List<PlacedPiece> pieces = new ArrayList<>(l.pieces());
            PlacedPiece first = pieces.get(0);
            PlacedPiece last = pieces.get(pieces.size() - 1);
            pieces.set(pieces.size() - 1, moved(last, first.x(), first.y()));
            return pieces(l, pieces);
        });
    }

    /** Swaps the first part leaf for an offcut. */
    private static CutNode swapLeaf(CutNode node) {
        if (node instanceof CutNode.PartLeaf) {
            return CutNode.RestLeaf.OFFCUT;
        }
        if (node instanceof CutNode.Cuts cuts) {
            for (int i = 0; i < cuts.pieces().size(); i++) {
                CutNode child = swapLeaf(cuts.pieces().get(i));
                if (child != null) {
                    List<CutNode> pieces = new ArrayList<>(cuts.pieces());
                    pieces.set(i, child);
                    return new CutNode.Cuts(cuts.cut(), cuts.slots(), pieces);
                }
            }
        }
        return null;
    }

    private static Sample buying(Sample s, Random r) {
        return derived(s, d -> {
            List<BuyingLine> lines = new ArrayList<>(d.buyingList());
            BuyingLine line = lines.get(0);
            Money more = line.price().plus(Money.ofMinor(1, JobSketch.USD));
            switch (r.nextInt(5)) {
                case 0 -> lines.remove(0);
                case 1 ->
                    lines.set(
                            0,
                            new BuyingLine(
                                    line.stock(), line.quantity() + 1, line.price(), line.total(), line.boardFeet()));
                case 2 ->
                    lines.set(0, new BuyingLine(line.stock(), line.quantity(), more, line.total(), line.boardFeet()));
                case 3 ->
                    lines.set(0, new BuyingLine(line.stock(), line.quantity(), line.price(), null, line.boardFeet()));
                default ->
                    lines.set(
                            0,
                            new BuyingLine(
                                    line.stock(),
                                    line.quantity(),
                                    line.price(),
                                    line.total(),
                                    new BigDecimal("123456.78")));
            }
            return new Derived(lines, d.offcuts(), d.cutSequence(), d.setUps(), d.yield(), d.warnings());
        });
    }

    private static Sample keepFlag(Sample s, Random r) {
        return layout(s, r, l -> {
            if (l.offcuts().isEmpty()) {
                return null;
            }
            List<Layout.LeftOver> offcuts = new ArrayList<>(l.offcuts());
            Layout.LeftOver o = offcuts.remove(0);
            if (r.nextBoolean()) {
                offcuts.add(new Layout.LeftOver(o.x(), o.y(), o.length(), o.width(), !o.keep()));
            }
            return new Layout(
                    l.stock(), l.repeat(), l.length(), l.width(), l.thickness(), l.pieces(), l.cuts(), offcuts);
        });
    }

    private static Sample rack(Sample s, Random r) {
        List<StockItem.OnHand> racked = new ArrayList<>(s.plan().derived().offcuts());
        if (racked.isEmpty()) {
            return null;
        }
        StockItem.OnHand o = racked.remove(r.nextInt(racked.size()));
        int kind = r.nextInt(4);
        if (kind > 0) {
            Trim wrong = new Trim(JobSketch.in("7"), null, null, null);
            racked.add(new StockItem.OnHand(
                    o.id(),
                    o.form(),
                    null,
                    kind == 1 ? o.length().plus(NM) : o.length(),
                    o.width(),
                    o.thickness(),
                    "oak",
                    o.grain(),
                    kind == 2 ? wrong : o.ownTrim(),
                    kind == 3 ? o.quantity() + 1 : o.quantity(),
                    List.of()));
        }
        return derived(
                s, d -> new Derived(d.buyingList(), racked, d.cutSequence(), d.setUps(), d.yield(), d.warnings()));
    }

    private static Sample yields(Sample s, Random r) {
        Volume[] v = new Volume[8];
        YieldFigures y = s.plan().derived().yield();
        Volume[] is = {y.used(), y.parts(), y.allowance(), y.kerf(), y.trim(), y.zones(), y.offcutsKept(), y.waste()};
        int wrong = r.nextInt(9);
        for (int i = 0; i < 8; i++) {
            v[i] = i == wrong ? new Volume(is[i].cubicNanometres().add(BigInteger.ONE)) : is[i];
        }
        BigDecimal ratio = wrong == 8 ? y.ratio().add(new BigDecimal("0.0001")) : y.ratio();
        YieldFigures changed = new YieldFigures(v[0], v[1], v[2], v[3], v[4], v[5], v[6], v[7], ratio);
        return derived(
                s, d -> new Derived(d.buyingList(), d.offcuts(), d.cutSequence(), d.setUps(), changed, d.warnings()));
    }

    private static Sample split(Sample s, Random r) {
        List<Layout> layouts = new ArrayList<>(s.plan().layouts());
        Layout l = layouts.get(r.nextInt(layouts.size()));
        if (l.repeat() < 2) {
            return null;
        }
        layouts.remove(l);
        for (int from = 0; from < 2; from++) {
            int a = from == 0 ? 0 : 1;
            int b = from == 0 ? 1 : l.repeat();
            layouts.add(repeated(
                    pieces(
                            l,
                            l.pieces().stream()
                                    .map(p -> numbered(p, p.numbers().subList(a, b), List.of()))
                                    .toList()),
                    b - a));
        }
        return plan(s, layouts);
    }
}
