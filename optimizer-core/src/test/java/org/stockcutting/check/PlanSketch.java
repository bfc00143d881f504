package org.stockcutting.check;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.math3.fraction.BigFraction;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.KeepRule;
import org.stockcutting.length.Length;
import org.stockcutting.length.Volume;
import org.stockcutting.material.Grain;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
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
import org.stockcutting.plan.StopReason;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.plan.Warning;
import org.stockcutting.plan.YieldFigures;
import org.stockcutting.sequence.CutSequencer;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Money;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Trim;
import org.stockcutting.stock.Zone;

/** Turns cut trees made in a test into whole plans, by the test's own sums. Only piece prices; zones only in whole-width stretches. */
final class PlanSketch {

    final Job job;
    final List<Layout> layouts = new ArrayList<>();
    final List<Warning> warnings = new ArrayList<>();
    final List<Unplaced> unplaced = new ArrayList<>();
    private final Map<String, Integer> next = new TreeMap<>();
    private BigInteger used = BigInteger.ZERO;
    private BigInteger kerf = BigInteger.ZERO;
    private BigInteger trim = BigInteger.ZERO;

    PlanSketch(Job job) {
        this.job = job;
    }

    StockItem stock(String id) {
        for (StockItem item : job.forSale()) {
            if (item.id().equals(id)) {
                return item;
            }
        }
        return job.onHand().stream().filter(o -> o.id().equals(id)).findFirst().orElseThrow();
    }

    Part part(String id) {
        return job.parts().stream().filter(p -> p.id().equals(id)).findFirst().orElseThrow();
    }

    Trim trimOf(StockItem item) {
        if (item.ownTrim() != null) {
            return item.ownTrim();
        }
        return item.form() == Form.SHEET ? job.shop().sheetTrim() : job.shop().boardTrim();
    }

    /** Adds a board cut this way; numbers are given in order, members in the order of the staves of a panel. */
    PlanSketch cut(String stock, int repeat, CutNode tree) {
        StockItem item = stock(stock);
        List<PlacedPiece> pieces = new ArrayList<>();
        List<Layout.LeftOver> offcuts = new ArrayList<>();
        long l = item.length().nanometres();
        long w = item.width().nanometres();
        BigInteger volume =
                Volume.of(item.length(), item.width(), item.thickness()).cubicNanometres();
        used = used.add(volume.multiply(BigInteger.valueOf(repeat)));
        walk(item, repeat, tree, new long[] {0, 0, l, w}, pieces, offcuts);
        pieces.sort(Comparator.comparing(PlacedPiece::x).thenComparing(PlacedPiece::y));
        boolean raw = pieces.stream().anyMatch(p -> touches(item, p));
        if (raw) {
            String code = item.form() == Form.SHEET ? "factory-edge" : "raw-end";
            warnings.add(new Warning(code, "/layouts/" + layouts.size(), "keeps what the mill left"));
        }
        layouts.add(new Layout(stock, repeat, item.length(), item.width(), item.thickness(), pieces, tree, offcuts));
        return this;
    }

    private static boolean touches(StockItem item, PlacedPiece p) {
        Trim own = item.ownTrim() == null ? Trim.NONE : item.ownTrim();
        boolean ends = (p.x().isZero() && own.start() == null)
                || (p.x().plus(p.extentX()).equals(item.length()) && own.end() == null);
        boolean edges = (p.y().isZero() && own.edge() == null)
                || (p.y().plus(p.extentY()).equals(item.width()) && own.farEdge() == null);
        return ends || (edges && item.form() == Form.SHEET);
    }

    private void walk(
            StockItem item,
            int repeat,
            CutNode node,
            long[] r,
            List<PlacedPiece> pieces,
            List<Layout.LeftOver> offcuts) {
        if (node instanceof CutNode.Cuts cuts) {
            boolean across = cuts.cut() == Direction.CROSSCUT;
            int axis = across ? 0 : 1;
            long at = r[axis];
            for (int i = 0; i < cuts.pieces().size(); i++) {
                boolean last = i == cuts.slots().size();
                long end = last ? r[axis + 2] : cuts.slots().get(i).from().nanometres();
                long[] child = r.clone();
                child[axis] = at;
                child[axis + 2] = end;
                walk(item, repeat, cuts.pieces().get(i), child, pieces, offcuts);
                if (!last) {
                    at = cuts.slots().get(i).to().nanometres();
                    saw(item, repeat, across, end, at, r);
                }
            }
        } else if (node instanceof CutNode.PartLeaf leaf) {
            pieces.add(piece(item, repeat, leaf.part(), r));
        } else if (node == CutNode.RestLeaf.TRIM) {
            trim = trim.add(volume(item, repeat, r));
        } else if (node == CutNode.RestLeaf.OFFCUT) {
            boolean keep = false;
            for (KeepRule rule : job.shop().keepOffcuts()) {
                keep |= rule.keeps(item.form(), nm(r[2] - r[0]), nm(r[3] - r[1]));
            }
            offcuts.add(new Layout.LeftOver(nm(r[0]), nm(r[1]), nm(r[2] - r[0]), nm(r[3] - r[1]), keep));
        }
    }

    private void saw(StockItem item, int repeat, boolean across, long from, long to, long[] r) {
        Trim t = trimOf(item);
        long low = across ? t.startOrZero().nanometres() : t.edgeOrZero().nanometres();
        long far = across ? t.endOrZero().nanometres() : t.farEdgeOrZero().nanometres();
        long size = across ? item.length().nanometres() : item.width().nanometres();
        long[] slot = r.clone();
        slot[across ? 0 : 1] = from;
        slot[across ? 2 : 3] = to;
        BigInteger volume = volume(item, repeat, slot);
        if ((low > 0 && to <= low) || (far > 0 && from >= size - far)) {
            trim = trim.add(volume);
        } else {
            kerf = kerf.add(volume);
        }
    }

    private static BigInteger volume(StockItem item, int repeat, long[] r) {
        return Volume.of(nm(r[2] - r[0]), nm(r[3] - r[1]), item.thickness())
                .cubicNanometres()
                .multiply(BigInteger.valueOf(repeat));
    }

    private PlacedPiece piece(StockItem item, int repeat, String id, long[] r) {
        Part part = part(id);
        int perPart = part.making() instanceof Making.GlueUp g ? g.count() : 1;
        if (part.making() instanceof Making.Lamination lamination) {
            perPart = lamination.plies();
        }
        List<Integer> numbers = new ArrayList<>();
        List<Integer> members = new ArrayList<>();
        for (int k = 0; k < repeat; k++) {
            int count = next.merge(id, 1, Integer::sum) - 1;
            numbers.add(count / perPart + 1);
            if (perPart > 1) {
                members.add(count % perPart + 1);
            }
        }
        boolean turned = turned(item, part, r);
        Length ex = nm(r[2] - r[0]);
        Length ey = nm(r[3] - r[1]);
        return new PlacedPiece(id, numbers, members, nm(r[0]), nm(r[1]), turned ? ey : ex, turned ? ex : ey, turned);
    }

    private static boolean turned(StockItem item, Part part, long[] r) {
        if (part.section() instanceof Section.Nominal || !(part.making() instanceof Making.AsCut)) {
            return false;
        }
        Grain own = part.grain() == null ? item.grain() == Grain.ANY ? Grain.ANY : Grain.LENGTH : part.grain();
        if (own != Grain.ANY && item.grain() != Grain.ANY) {
            return own != item.grain();
        }
        return part.length().nanometres() != r[2] - r[0];
    }

    static Length nm(long nanometres) {
        return Length.ofNanometres(nanometres);
    }

    CuttingPlan plan() {
        return plan(Map.of());
    }

    CuttingPlan plan(Map<String, BigFraction> duals) {
        Map<String, Integer> boards = new TreeMap<>();
        layouts.forEach(l -> boards.merge(l.stock(), l.repeat(), Integer::sum));
        YieldFigures yield = figures();
        List<BuyingLine> buying = new ArrayList<>();
        Money cost = Money.ofMinor(0, JobSketch.USD);
        int bought = 0;
        for (StockItem.ForSale sale : job.forSale()) {
            int quantity = boards.getOrDefault(sale.id(), 0);
            if (quantity > 0) {
                Money price = Money.rounded(sale.price().amount(), JobSketch.USD);
                cost = cost.plus(price.times(quantity));
                bought += quantity;
                buying.add(new BuyingLine(sale.id(), quantity, price, price.times(quantity), feet(sale, quantity)));
            }
        }
        BigInteger value = switch (job.goal()) {
            case COST -> BigInteger.valueOf(cost.minorUnits());
            case BOARDS -> BigInteger.valueOf(bought);
            case WASTE ->
                yield.used().minus(yield.parts()).minus(yield.offcutsKept()).cubicNanometres();
        };
        Certificate certificate = CertificateChecker.certify(job, duals, placed());
        BigInteger bound = CertificateChecker.bound(job, certificate, placed());
        Status status = unplaced.isEmpty() ? bound.equals(value) ? Status.OPTIMAL : Status.FEASIBLE : Status.PARTIAL;
        CutSequencer.Sequence sequence = CutSequencer.sequence(job, layouts);
        PlanHeader header = new PlanHeader("test", "sha-256:0", status, StopReason.WORK_LIMIT, true, 1, 1, 1, "1.0.0");
        Derived derived = new Derived(buying, rack(), sequence.steps(), sequence.setUps(), yield, warnings);
        return new CuttingPlan(
                header,
                cost,
                new Objective(job.goal() == null ? Goal.COST : job.goal(), value, bound, null),
                layouts,
                unplaced,
                certificate,
                List.of(),
                derived);
    }

    Map<String, Integer> placed() {
        Map<String, Integer> placed = new TreeMap<>();
        for (Part part : job.parts()) {
            long pieces = layouts.stream()
                    .flatMap(l -> l.pieces().stream())
                    .filter(p -> p.part().equals(part.id()))
                    .flatMap(p -> p.numbers().stream())
                    .distinct()
                    .count();
            placed.put(part.id(), (int) Math.min(pieces, job.demand(part)));
        }
        return placed;
    }

    private static BigDecimal feet(StockItem.ForSale sale, int quantity) {
        if (sale.form() == Form.SHEET) {
            return null;
        }
        BigDecimal inch = BigDecimal.valueOf(25_400_000L);
        BigDecimal l = BigDecimal.valueOf(sale.length().nanometres()).divide(inch);
        Length width = sale.nominal() == null ? sale.width() : sale.nominal().nominalWidth();
        Length thickness =
                sale.nominal() == null ? sale.thickness() : sale.nominal().nominalThickness();
        BigDecimal w = BigDecimal.valueOf(width.nanometres()).divide(inch);
        BigDecimal t = BigDecimal.valueOf(thickness.nanometres()).divide(inch).max(BigDecimal.ONE);
        return l.multiply(w)
                .multiply(t)
                .multiply(BigDecimal.valueOf(quantity))
                .divide(BigDecimal.valueOf(144), 2, RoundingMode.HALF_UP);
    }

    private YieldFigures figures() {
        BigInteger parts = BigInteger.ZERO;
        BigInteger rough = BigInteger.ZERO;
        BigInteger kept = BigInteger.ZERO;
        BigInteger zones = BigInteger.ZERO;
        BigInteger thrown = BigInteger.ZERO;
        for (Layout layout : layouts) {
            BigInteger repeat = BigInteger.valueOf(layout.repeat());
            for (PlacedPiece p : layout.pieces()) {
                rough = rough.add(Volume.of(p.length(), p.width(), layout.thickness())
                        .cubicNanometres()
                        .multiply(repeat));
                Part part = part(p.part());
                long finished = p.members().isEmpty()
                        ? layout.repeat()
                        : p.members().stream().filter(m -> m == 1).count();
                Length width = layout.width();
                Length thickness = layout.thickness();
                if (part.section() instanceof Section.Measured m) {
                    width = m.width();
                    thickness = m.thickness();
                }
                parts = parts.add(Volume.of(part.length(), width, thickness)
                        .times(finished)
                        .cubicNanometres());
            }
            for (Layout.LeftOver o : layout.offcuts()) {
                BigInteger volume = Volume.of(o.length(), o.width(), layout.thickness())
                        .cubicNanometres()
                        .multiply(repeat);
                if (o.keep()) {
                    kept = kept.add(volume);
                    continue;
                }
                thrown = thrown.add(volume);
                for (Zone z : stock(layout.stock()).zones()) {
                    Length from = z.from().max(o.x());
                    Length to = z.to().min(o.x().plus(o.length()));
                    if (from.isLessThan(to)) {
                        zones = zones.add(Volume.of(to.minus(from), o.width(), layout.thickness())
                                .cubicNanometres());
                    }
                }
            }
        }
        BigDecimal ratio = used.signum() == 0
                ? BigDecimal.ZERO
                : new BigDecimal(parts).divide(new BigDecimal(used), 4, RoundingMode.DOWN);
        return new YieldFigures(
                new Volume(used),
                new Volume(parts),
                new Volume(rough.subtract(parts)),
                new Volume(kerf),
                new Volume(trim),
                new Volume(zones),
                new Volume(kept),
                new Volume(thrown.subtract(zones)),
                ratio);
    }

    private List<StockItem.OnHand> rack() {
        List<StockItem.OnHand> rack = new ArrayList<>();
        for (Layout layout : layouts) {
            StockItem item = stock(layout.stock());
            Trim t = trimOf(item);
            for (Layout.LeftOver o : layout.offcuts()) {
                if (!o.keep()) {
                    continue;
                }
                Length end = o.x().plus(o.length());
                Length far = o.y().plus(o.width());
                Trim own = new Trim(
                        o.x().isZero() ? t.start() : Length.ZERO,
                        end.equals(item.length()) ? t.end() : Length.ZERO,
                        o.y().isZero() ? t.edge() : Length.ZERO,
                        far.equals(item.width()) ? t.farEdge() : Length.ZERO);
                List<Zone> zones = item.zones().stream()
                        .filter(z -> z.from().isLessThan(end) && o.x().isLessThan(z.to()))
                        .map(z -> new Zone(
                                z.from().max(o.x()).minus(o.x()),
                                z.to().min(end).minus(o.x()),
                                null,
                                null,
                                z.severity(),
                                z.face(),
                                z.metal()))
                        .toList();
                rack.add(new StockItem.OnHand(
                        layout.stock() + "-" + rack.size(),
                        item.form(),
                        o.width().equals(item.width()) ? item.nominal() : null,
                        o.length(),
                        o.width(),
                        item.thickness(),
                        item.material(),
                        item.grain(),
                        own,
                        layout.repeat(),
                        zones));
            }
        }
        return rack;
    }
}
