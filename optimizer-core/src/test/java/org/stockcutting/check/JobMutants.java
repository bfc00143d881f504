package org.stockcutting.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.UnaryOperator;
import org.stockcutting.check.RandomPlans.Sample;
import org.stockcutting.job.Job;
import org.stockcutting.job.SawLimits;
import org.stockcutting.length.Length;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.Direction;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.PlanHeader;
import org.stockcutting.plan.Status;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Trim;
import org.stockcutting.stock.Zone;

/** Ways to ask for something else than a valid plan gives: the job changed, the plan as it is. */
final class JobMutants {

    private JobMutants() {}

    static StockItem stock(Job job, String id) {
        List<StockItem> all = new ArrayList<>(job.forSale());
        all.addAll(job.onHand());
        return all.stream().filter(i -> i.id().equals(id)).findFirst().orElseThrow();
    }

    interface JobChange {
        void apply(JobSketch sketch);
    }

    static Sample job(Sample s, JobChange change) {
        JobSketch sketch = JobSketch.of(s.job());
        change.apply(sketch);
        return new Sample(sketch.build(), s.plan());
    }

    static Sample limits(Sample s, SawLimits limits) {
        return job(s, j -> j.limits = limits);
    }

    static Sample aPart(Sample s, Random r, UnaryOperator<Part> change) {
        int i = r.nextInt(s.job().parts().size());
        return job(s, j -> j.parts.set(i, change.apply(j.parts.get(i))));
    }

    static Part section(Part p, Length thickness, String material) {
        Length width = ((Section.Measured) p.section()).width();
        return new Part(
                p.id(),
                p.quantity(),
                p.length(),
                new Section.Measured(width, thickness),
                material,
                p.grain(),
                p.woodClass(),
                p.spares(),
                p.making(),
                p.group(),
                p.note());
    }

    /** Moves the trim just beyond where some piece starts. */
    static Sample outside(Sample s, Random r) {
        Layout l = s.plan().layouts().get(0);
        Length x = l.pieces().get(0).x().plus(Mutants.NM);
        Trim trim = new Trim(x, null, null, null);
        return job(s, j -> {
            j.boardTrim = trim;
            j.sheetTrim = trim;
        });
    }

    static Sample wideKerf(Sample s, Random r) {
        Direction direction = r.nextBoolean() ? Direction.RIP : Direction.CROSSCUT;
        long kerf = (direction == Direction.RIP
                        ? s.job().shop().kerf().rip()
                        : s.job().shop().kerf().crosscut())
                .nanometres();
        boolean full = kerf > 0 && s.plan().layouts().stream().anyMatch(l -> hasSlot(l.cuts(), direction, kerf));
        if (!full) {
            return null;
        }
        // A kerf wider by a nanometre makes every full slot too narrow.
        return job(s, j -> {
            if (direction == Direction.RIP) {
                j.ripKerf = Length.ofNanometres(kerf + 1);
            } else {
                j.crosscutKerf = Length.ofNanometres(kerf + 1);
            }
        });
    }

    /** A slot of this width with wood on both sides. */
    static boolean hasSlot(CutNode node, Direction direction, long width) {
        if (!(node instanceof CutNode.Cuts cuts)) {
            return false;
        }
        boolean found = cuts.pieces().stream().anyMatch(p -> hasSlot(p, direction, width));
        for (int i = 0; i < cuts.slots().size(); i++) {
            boolean sliver = cuts.pieces().get(i) == CutNode.RestLeaf.SLIVER
                    || cuts.pieces().get(i + 1) == CutNode.RestLeaf.SLIVER;
            CutNode.Slot slot = cuts.slots().get(i);
            found |= cuts.cut() == direction
                    && !sliver
                    && slot.to().minus(slot.from()).nanometres() == width;
        }
        return found;
    }

    /** True if some board is cut in this direction other than at its trims. */
    static boolean slots(Sample s, Direction direction) {
        return s.plan().layouts().stream().anyMatch(l -> inner(s, l, l.cuts(), direction));
    }

    static boolean both(Sample s) {
        return s.plan().layouts().stream()
                .anyMatch(l -> inner(s, l, l.cuts(), Direction.RIP) && inner(s, l, l.cuts(), Direction.CROSSCUT));
    }

    static boolean inner(Sample s, Layout l, CutNode node, Direction direction) {
        if (!(node instanceof CutNode.Cuts cuts)) {
            return false;
        }
        // Two or more pieces that are no trim, so the cut is no trim either.
        long real = cuts.pieces().stream()
                .filter(p -> !(p instanceof CutNode.RestLeaf leaf) || leaf == CutNode.RestLeaf.OFFCUT)
                .count();
        return (cuts.cut() == direction && real > 1) || cuts.pieces().stream().anyMatch(p -> inner(s, l, p, direction));
    }

    static Sample zone(Sample s, boolean metal) {
        Layout l = s.plan().layouts().get(s.plan().layouts().size() - 1);
        PlacedPiece p = l.pieces().get(0);
        Length end = p.x().plus(p.extentX());
        boolean cut =
                end.isLessThan(l.length()) && !s.job().shop().kerf().crosscut().isZero();
        if (!l.stock().equals("c")
                || (metal
                        && !(cut
                                && l.cuts() instanceof CutNode.Cuts c
                                && c.slots().stream().anyMatch(t -> t.from().equals(end))))) {
            return null;
        }
        Length from = metal ? end : p.x().plus(Mutants.NM);
        Zone zone = new Zone(from, from.plus(Mutants.NM), null, null, Zone.Severity.UNUSABLE, Zone.Face.BOTH, metal);
        return job(s, j -> j.onHand.set(0, JobSketch.zoned(j.onHand.get(0), List.of(zone))));
    }

    static Sample fewer(Sample s, Random r) {
        int used = s.plan().layouts().stream()
                .filter(l -> l.stock().equals("a"))
                .mapToInt(Layout::repeat)
                .sum();
        return job(s, j -> j.forSale.set(0, JobSketch.available(j.forSale.get(0), used - 1)));
    }

    static Sample grouped(Sample s, Random r) {
        String wide = s.plan().layouts().stream()
                .filter(l -> l.repeat() > 1)
                .map(l -> l.pieces().get(0).part())
                .findFirst()
                .orElse(null);
        return wide == null
                ? null
                : job(
                        s,
                        j -> j.parts.replaceAll(p -> p.id().equals(wide)
                                ? JobSketch.with(p, p.grain(), p.making(), "together", p.woodClass(), 0)
                                : p));
    }

    static Sample falseReason(Sample s, Random r) {
        Part p = s.job().parts().get(0);
        List<Unplaced.Reason> lies = List.of(
                Unplaced.Reason.LONGER_THAN_ANY_STOCK,
                Unplaced.Reason.WIDER_THAN_ANY_STOCK,
                Unplaced.Reason.NO_STOCK_OF_MATERIAL,
                Unplaced.Reason.NO_STOCK_OF_THICKNESS,
                Unplaced.Reason.GRAIN_DOES_NOT_FIT,
                Unplaced.Reason.NO_CLEAR_ZONE,
                Unplaced.Reason.EXCLUDED_BY_RULE);
        Sample more = job(s, j -> j.parts.set(0, JobSketch.resized(p, p.quantity() + 1, p.length())));
        CuttingPlan plan = more.plan();
        Unplaced line = new Unplaced(p.id(), 1, lies.get(r.nextInt(lies.size())), null, null, "none");
        PlanHeader h = plan.header();
        PlanHeader header =
                new PlanHeader(h.job(), h.jobHash(), Status.PARTIAL, h.stopReason(), true, 1, 1, 1, h.engine());
        return new Sample(
                more.job(),
                new CuttingPlan(
                        header,
                        plan.cost(),
                        plan.objective(),
                        plan.layouts(),
                        List.of(line),
                        plan.certificate(),
                        List.of(),
                        plan.derived()));
    }
}
