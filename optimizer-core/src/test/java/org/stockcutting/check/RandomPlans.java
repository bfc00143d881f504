package org.stockcutting.check;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.KeepRule;
import org.stockcutting.length.Length;
import org.stockcutting.material.Grain;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.CutNode.RestLeaf;
import org.stockcutting.pattern.Direction;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Trim;

/** Random valid plans: boards are first sawn to bits at random, then the job is what the bits ask for. */
final class RandomPlans {

    private static final long STEP = 6_350_000L;
    private static final long INCH = 25_400_000L;

    private final Random random;
    private final JobSketch sketch = new JobSketch();
    private final Map<String, Integer> counts = new TreeMap<>();
    private final Map<String, Part> parts = new TreeMap<>();

    record Sample(Job job, CuttingPlan plan) {}

    private RandomPlans(long seed) {
        this.random = new Random(seed);
    }

    static Sample make(long seed) {
        for (long attempt = 0; ; attempt++) {
            Sample sample = new RandomPlans(seed * 1000 + attempt).sample();
            if (sample != null) {
                return sample;
            }
        }
    }

    private record Cut(String stock, int repeat, CutNode tree) {}

    private Sample sample() {
        sketch.crosscutKerf = steps(random.nextInt(4));
        sketch.ripKerf = steps(random.nextInt(4));
        sketch.boardTrim = new Trim(trimmed(), trimmed(), trimmed(), trimmed());
        sketch.sheetTrim = new Trim(trimmed(), trimmed(), trimmed(), trimmed());
        sketch.keep.add(new KeepRule(Form.BOARD, JobSketch.in("10"), JobSketch.in("2")));
        sketch.keep.add(new KeepRule(Form.SHEET, JobSketch.in("12"), JobSketch.in("6")));
        sketch.goal = Goal.values()[random.nextInt(3)];
        sketch.forSale.add(sale("a"));
        sketch.forSale.add(sale("b"));
        StockItem.ForSale like = sale("c");
        sketch.onHand.add(new StockItem.OnHand(
                "c",
                like.form(),
                null,
                like.length(),
                like.width(),
                like.thickness(),
                "oak",
                like.grain(),
                random.nextBoolean() ? null : new Trim(trimmed(), trimmed(), trimmed(), trimmed()),
                2,
                List.of()));
        List<Cut> cuts = new ArrayList<>();
        cuts.add(board(sketch.forSale.get(0), 1 + random.nextInt(3)));
        cuts.add(board(sketch.forSale.get(random.nextInt(2)), 1 + random.nextInt(2)));
        cuts.add(board(sketch.onHand.get(0), 1 + random.nextInt(2)));
        if (parts.isEmpty()) {
            return null;
        }
        counts.forEach((id, count) -> sketch.parts.add(
                JobSketch.resized(parts.get(id), count, parts.get(id).length())));
        Job job = sketch.build();
        PlanSketch plan = new PlanSketch(job);
        Set<Object> shapes = new HashSet<>();
        for (Cut cut : cuts) {
            plan.cut(cut.stock, cut.repeat, cut.tree);
            boolean empty = plan.layouts.get(plan.layouts.size() - 1).pieces().isEmpty();
            if (empty || !shapes.add(cut.stock + cut.tree)) {
                return null;
            }
        }
        return new Sample(job, plan.plan());
    }

    private StockItem.ForSale sale(String id) {
        boolean sheet = random.nextBoolean();
        String length = String.valueOf((sheet ? 40 : 30) + random.nextInt(40));
        String width = String.valueOf((sheet ? 20 : 4) + random.nextInt(sheet ? 20 : 6));
        return JobSketch.sale(
                id,
                sheet ? Form.SHEET : Form.BOARD,
                length,
                width,
                "0.75",
                sheet && random.nextBoolean() ? Grain.ANY : Grain.LENGTH,
                (5 + random.nextInt(40)) + "." + (10 + random.nextInt(90)));
    }

    private Length trimmed() {
        int kind = random.nextInt(4);
        return kind == 0 ? null : kind == 1 ? Length.ZERO : steps(1 + random.nextInt(8));
    }

    private static Length steps(long count) {
        return Length.ofNanometres(count * STEP);
    }

    private Cut board(StockItem item, int repeat) {
        Trim shop = item.form() == Form.SHEET ? sketch.sheetTrim : sketch.boardTrim;
        Trim trim = item.ownTrim() == null ? shop : item.ownTrim();
        long[] raw = {0, 0, item.length().nanometres(), item.width().nanometres()};
        long[] usable = {
            trim.startOrZero().nanometres(),
            trim.edgeOrZero().nanometres(),
            raw[2] - trim.endOrZero().nanometres(),
            raw[3] - trim.farEdgeOrZero().nanometres()
        };
        return new Cut(item.id(), repeat, trimStart(item, repeat, raw, usable, 0));
    }

    private CutNode trimStart(StockItem item, int repeat, long[] r, long[] usable, int axis) {
        if (axis == 2) {
            return region(item, repeat, r, usable, 4);
        }
        long trim = usable[axis];
        if (trim == 0) {
            return trimStart(item, repeat, r, usable, axis + 1);
        }
        long kerf = kerf(axis);
        long[] inner = r.clone();
        inner[axis] = trim;
        return new CutNode.Cuts(
                axis == 0 ? Direction.CROSSCUT : Direction.RIP,
                List.of(slot(Math.max(0, trim - kerf), trim)),
                List.of(
                        trim > kerf ? RestLeaf.TRIM : RestLeaf.SLIVER,
                        trimStart(item, repeat, inner, usable, axis + 1)));
    }

    private long kerf(int axis) {
        return axis == 0 ? sketch.crosscutKerf.nanometres() : sketch.ripKerf.nanometres();
    }

    private static CutNode.Slot slot(long from, long to) {
        return new CutNode.Slot(Length.ofNanometres(from), Length.ofNanometres(to));
    }

    private CutNode region(StockItem item, int repeat, long[] r, long[] usable, int depth) {
        int axis = random.nextInt(2);
        long kerf = kerf(axis);
        List<CutNode.Slot> slots = new ArrayList<>();
        List<CutNode> pieces = new ArrayList<>();
        long at = r[axis];
        long end = r[axis + 2];
        long limit = Math.min(end, usable[axis + 2]);
        int wanted = depth == 0 ? 0 : 1 + random.nextInt(3);
        while (pieces.size() < wanted) {
            long size = random.nextInt(8) == 0 ? limit - at : (1 + random.nextInt(9)) * 2 * INCH;
            if (size <= 0 || at + size > limit || at + size == end) {
                break;
            }
            long to = Math.min(at + size + kerf, end);
            long[] child = r.clone();
            child[axis] = at;
            child[axis + 2] = at + size;
            slots.add(slot(at + size, to));
            pieces.add(region(item, repeat, child, usable, depth - 1));
            at = to;
            if (at >= limit) {
                break;
            }
        }
        if (slots.isEmpty()) {
            return leaf(item, repeat, r, usable);
        }
        long[] rest = r.clone();
        rest[axis] = at;
        if (at == end) {
            pieces.add(RestLeaf.SLIVER);
        } else if (limit < end && slots.get(slots.size() - 1).from().nanometres() == limit) {
            pieces.add(RestLeaf.TRIM);
        } else {
            pieces.add(at < limit ? region(item, repeat, rest, usable, depth - 1) : RestLeaf.OFFCUT);
        }
        return new CutNode.Cuts(axis == 0 ? Direction.CROSSCUT : Direction.RIP, slots, pieces);
    }

    private CutNode leaf(StockItem item, int repeat, long[] r, long[] usable) {
        boolean inside = r[0] >= usable[0] && r[1] >= usable[1] && r[2] <= usable[2] && r[3] <= usable[3];
        if (!inside || random.nextInt(4) == 0) {
            return RestLeaf.OFFCUT;
        }
        Length ex = Length.ofNanometres(r[2] - r[0]);
        Length ey = Length.ofNanometres(r[3] - r[1]);
        boolean turned = random.nextInt(3) == 0;
        Grain grain = turned ? Grain.WIDTH : random.nextBoolean() ? Grain.LENGTH : null;
        Length length = turned ? ey : ex;
        Length width = turned ? ex : ey;
        String id = "p" + length.nanometres() / STEP + "x" + width.nanometres() / STEP
                + (grain == null ? "" : grain.word());
        parts.putIfAbsent(
                id,
                new Part(
                        id,
                        1,
                        length,
                        new Section.Measured(width, JobSketch.in("0.75")),
                        "oak",
                        grain,
                        WoodClass.CLEAR,
                        0,
                        new Making.AsCut(),
                        null,
                        null));
        counts.merge(id, repeat, Integer::sum);
        return new CutNode.PartLeaf(id);
    }
}
