package org.stockcutting.solve;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.blank.RoughSection;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.KeepRule;
import org.stockcutting.job.Rule;
import org.stockcutting.job.Rules;
import org.stockcutting.job.SawLimits;
import org.stockcutting.length.Length;
import org.stockcutting.part.Making;
import org.stockcutting.pattern.fit.Fit;
import org.stockcutting.pattern.fit.UsableArea;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/** Turns a component into an instance of small integers; see {@link Scale} for the unit of length and {@link GoalCosts} for cost. */
final class Reduction {

    private static final int MOST_WEIGHT_BITS = 36;

    private final Job job;
    private final Component component;
    private final Scale scale;
    private final Fit fit;
    private final ItemMerger merger;
    /** True once a zone was taken larger or a limit smaller than it is, for the sake of a trim: then no search proves anything. */
    private boolean rounded;
    /** True if some pieces are blanks of several: these take a stage of their own. */
    private boolean joined;

    private Reduction(Job job, Component component) {
        this.job = job;
        this.component = component;
        this.scale = Scale.of(job, component);
        this.fit = new Fit(job.shop());
        this.merger = new ItemMerger(job);
    }

    /** The component as the engines see it, its sequences joined into blanks. */
    static Reduced reduce(Job job, Rows rows) {
        Reduction reduction = new Reduction(job, rows.component());
        reduction.joined = !rows.isEmpty();
        // A run may fit otherwise than as a blank: with a zone in a saw cut, say. Bounds do not rest on blanks.
        reduction.rounded = rows.isInexact();
        return reduction.build();
    }

    static Reduced reduce(Job job, Component component) {
        return reduce(job, Rows.of(job, component, false));
    }

    private Reduced build() {
        List<List<RoughPiece>> members = merger.merge(component);
        OutOfTrue uneven = new OutOfTrue(job, component);
        Reduced first = build(members, uneven);
        if (!uneven.isCrooked() || (first.instance().isOneDimensional() && hasNoLimits())) {
            return first;
        }
        // Somewhere pieces may be ripped before they are cut to length: the whole crook goes there.
        return build(members, uneven.rippedWhole());
    }

    private boolean hasNoLimits() {
        return job.shop().limits().equals(SawLimits.NONE);
    }

    private Reduced build(List<List<RoughPiece>> members, OutOfTrue uneven) {
        int pieces = component.pieces().stream()
                .mapToInt(piece -> Reduced.demand(piece, job.sets()))
                .sum();
        GoalCosts costs = GoalCosts.of(job, component.stock(), scale, pieces);
        List<StockType> stocks = new ArrayList<>();
        for (int s = 0; s < component.stock().size(); s++) {
            stocks.add(stockType(component.stock().get(s), members, costs, s, uneven));
        }
        Instance instance = new Instance(
                items(members),
                stocks,
                Scale.up(job.shop().kerf().crosscut().nanometres(), scale.unitX()),
                Scale.up(job.shop().kerf().rip().nanometres(), scale.unitY()),
                limits(),
                keepRules(),
                groups(members));
        // Stave widths are chosen beforehand; others that the job allows may do better, so no search proves anything.
        boolean staves = component.pieces().stream().anyMatch(piece -> piece.kind() == RoughPiece.Kind.STAVE);
        boolean exact = scale.exact() && costs.exact() && !rounded && !staves;
        return new Reduced(
                instance, members, component.stock(), scale.unitX(), scale.unitY(), costs.unit(), leastOffcut(), exact);
    }

    private List<ItemType> items(List<List<RoughPiece>> members) {
        List<BigInteger> weights =
                members.stream().map(type -> PieceWeight.of(type.get(0))).toList();
        BigInteger unit =
                weights.stream().reduce(BigInteger.ZERO, BigInteger::gcd).max(BigInteger.ONE);
        BigInteger largest = weights.stream().reduce(BigInteger.ONE, BigInteger::max);
        while (largest.divide(unit).bitLength() > MOST_WEIGHT_BITS) {
            unit = unit.shiftLeft(1);
        }
        List<ItemType> items = new ArrayList<>();
        for (int i = 0; i < members.size(); i++) {
            RoughPiece piece = members.get(i).get(0);
            int demand = merger.demand(members.get(i));
            items.add(new ItemType(
                    Scale.up(piece.length().nanometres(), scale.unitX()),
                    piece.section() instanceof RoughSection.Sized sized
                            ? Scale.up(sized.width().nanometres(), scale.unitY())
                            : 0,
                    weights.get(i).divide(unit).max(BigInteger.ONE).longValueExact(),
                    demand,
                    Math.min(demand, mostPerBoard(piece))));
        }
        return items;
    }

    /** Staves of one panel from different boards: a board may give one stave to each of the panels. */
    private int mostPerBoard(RoughPiece piece) {
        boolean different = piece.part().making() instanceof Making.GlueUp glueUp
                && glueUp.from() == Making.StaveSource.DIFFERENT_BOARDS;
        return different ? job.demand(piece.part()) : Integer.MAX_VALUE;
    }

    private StockType stockType(
            StockItem item, List<List<RoughPiece>> members, GoalCosts costs, int index, OutOfTrue uneven) {
        UsableArea area = UsableArea.of(item, job.shop());
        long length = Scale.down(area.length().nanometres(), scale.unitX());
        long width = Scale.down(area.width().nanometres(), scale.unitY());
        List<StockType.Placing> places = new ArrayList<>();
        for (List<RoughPiece> type : members) {
            Fit.Ways ways = sawable(type.get(0), item, area);
            places.add(new StockType.Placing(ways.straight(), ways.turned(), woodClass(type.get(0))));
        }
        return new StockType(
                length,
                width,
                Scale.down(item.length().minus(area.x1()).nanometres(), scale.unitX()),
                Scale.down(item.width().minus(area.y1()).nanometres(), scale.unitY()),
                costs.costs().get(index),
                item.copies().isPresent() ? item.copies().getAsInt() : StockType.UNLIMITED,
                costs.offcutValues().get(index),
                zones(item, area, length, width, uneven.missing(item)),
                places);
    }

    private static int woodClass(RoughPiece piece) {
        return piece.part().woodClass().ordinal() + (piece.part().selection().goodFaceOnly() ? StockType.FACES : 0);
    }

    private static int severity(Zone zone) {
        return zone.severity().ordinal() + (zone.face() == Zone.Face.DOWN ? StockType.FACES : 0);
    }

    /** Behind a start or edge trim every piece has a cut before it that is at least as long as its side: no engine sees that cut. */
    private Fit.Ways sawable(RoughPiece piece, StockItem item, UsableArea area) {
        Fit.Ways ways = fit.ways(piece, item);
        Length width = Fit.widthOn(piece, area);
        return new Fit.Ways(
                ways.straight() && trimsReach(piece.length(), width, area),
                ways.turned() && trimsReach(width, piece.length(), area));
    }

    private boolean trimsReach(Length along, Length across, UsableArea area) {
        SawLimits limits = job.shop().limits();
        boolean rip = area.y0().isZero() || limits.longestRip() == null || !along.isMoreThan(limits.longestRip());
        boolean crosscut = area.x0().isZero()
                || limits.crosscutCapacity() == null
                || !across.isMoreThan(limits.crosscutCapacity());
        return rip && crosscut;
    }

    private List<StockType.ZoneRect> zones(
            StockItem item, UsableArea area, long length, long width, List<Zone> missing) {
        List<StockType.ZoneRect> rects = new ArrayList<>();
        TrimMetal metal = new TrimMetal(item, area, job.shop().kerf());
        rounded |= !missing.isEmpty();
        List<Zone> all = new ArrayList<>(fit.zones(item));
        all.addAll(missing);
        for (Zone zone : all) {
            Length fromEdge = zone.fromEdge() == null ? Length.ZERO : zone.fromEdge();
            Length toEdge = zone.toEdge() == null ? item.width() : zone.toEdge();
            long x0 = Math.max(0, Scale.down(zone.from().minus(area.x0()).nanometres(), scale.unitX()));
            long x1 = Math.min(length, Scale.up(zone.to().minus(area.x0()).nanometres(), scale.unitX()));
            long y0 = Math.max(0, Scale.down(fromEdge.minus(area.y0()).nanometres(), scale.unitY()));
            long y1 = Math.min(width, Scale.up(toEdge.minus(area.y0()).nanometres(), scale.unitY()));
            StockType.ZoneRect rect = new StockType.ZoneRect(x0, y0, x1, y1, severity(zone), zone.metal());
            if (zone.metal()) {
                rect = metal.widen(zone, rect, length, width);
                rounded |= rect.x0() != x0 || rect.x1() != x1 || rect.y0() != y0 || rect.y1() != y1;
            }
            if (rect.x0() < rect.x1() && rect.y0() < rect.y1()) {
                rects.add(rect);
            }
        }
        rects.sort(java.util.Comparator.comparingLong(StockType.ZoneRect::x0)
                .thenComparingLong(StockType.ZoneRect::y0)
                .thenComparingLong(StockType.ZoneRect::x1)
                .thenComparingLong(StockType.ZoneRect::y1));
        return rects;
    }

    private int stages(SawLimits limits) {
        if (limits.stages() == null) {
            return Integer.MAX_VALUE;
        }
        return joined ? Math.max(1, limits.stages() - 1) : limits.stages();
    }

    private Instance.Limits limits() {
        SawLimits limits = job.shop().limits();
        return new Instance.Limits(
                atMost(limits.ripCapacity(), scale.unitY()),
                atMost(withoutTrim(limits.longestRip(), true), scale.unitX()),
                atMost(withoutTrim(limits.crosscutCapacity(), false), scale.unitY()),
                stages(limits),
                limits.firstCut() == SawLimits.FirstCut.ANY
                        ? null
                        : Boolean.valueOf(limits.firstCut() == SawLimits.FirstCut.CROSSCUT),
                limits.minimumPiece() == null
                        ? 0
                        : Scale.up(limits.minimumPiece().nanometres(), scale.unitX()));
    }

    /** Cuts over a whole board run through its start or edge trim, which engines do not see; where the limit can bite it is less by that. */
    private @Nullable Length withoutTrim(@Nullable Length limit, boolean along) {
        Length trim = Length.ZERO;
        boolean bites = false;
        for (StockItem item : component.stock()) {
            UsableArea area = UsableArea.of(item, job.shop());
            trim = trim.max(along ? area.x0() : area.y0());
            bites |= limit != null && (along ? item.length() : item.width()).isMoreThan(limit);
        }
        if (limit == null || !bites || trim.isZero()) {
            return limit;
        }
        rounded = true;
        return trim.isMoreThan(limit) ? Length.ZERO : limit.minus(trim);
    }

    private static long atMost(@Nullable Length limit, long unit) {
        return limit == null ? Long.MAX_VALUE : Scale.down(limit.nanometres(), unit);
    }

    private long leastOffcut() {
        List<KeepRule> rules = job.shop().keepOffcuts();
        long least = rules.stream()
                .filter(rule -> component.stock().stream().anyMatch(stock -> stock.form() == rule.form()))
                .mapToLong(rule -> Scale.up(rule.length().nanometres(), scale.unitX()))
                .min()
                .orElse(Long.MAX_VALUE);
        return rules.isEmpty() ? 0 : least;
    }

    private List<Instance.Keep> keepRules() {
        List<Instance.Keep> keep = new ArrayList<>();
        if (job.goal() == Goal.WASTE) {
            for (KeepRule rule : job.shop().keepOffcuts()) {
                if (component.stock().stream().anyMatch(stock -> stock.form() == rule.form())) {
                    keep.add(new Instance.Keep(
                            Scale.up(rule.length().nanometres(), scale.unitX()),
                            Scale.up(rule.width().nanometres(), scale.unitY())));
                }
            }
        }
        return keep;
    }

    private List<Instance.Group> groups(List<List<RoughPiece>> members) {
        List<Instance.Group> groups = new ArrayList<>();
        for (Rule rule : Rules.of(job)) {
            if (!(rule instanceof Rule.Sequence)) {
                addGroup(groups, members, rule);
            }
        }
        Map<String, List<Integer>> panels = new LinkedHashMap<>();
        for (int i = 0; i < members.size(); i++) {
            RoughPiece piece = members.get(i).get(0);
            boolean oneBoard = piece.part().group() == null
                    && piece.part().making() instanceof Making.GlueUp glueUp
                    && glueUp.from() == Making.StaveSource.ONE_BOARD;
            if (oneBoard) {
                panels.computeIfAbsent(piece.part().id(), id -> new ArrayList<>())
                        .add(i);
            }
        }
        for (List<Integer> items : panels.values()) {
            List<Integer> perSet =
                    items.stream().map(i -> members.get(i).get(0).perPart()).toList();
            groups.add(new Instance.Group(items, perSet));
        }
        return groups;
    }

    private static void addGroup(List<Instance.Group> groups, List<List<RoughPiece>> members, Rule rule) {
        List<Integer> items = new ArrayList<>();
        List<Integer> perSet = new ArrayList<>();
        for (int i = 0; i < members.size(); i++) {
            RoughPiece piece = members.get(i).get(0);
            if (rule.parts().contains(piece.part().id())) {
                items.add(i);
                perSet.add(rule.together(piece.part()) * piece.perPart());
            }
        }
        if (!items.isEmpty()) {
            groups.add(new Instance.Group(items, perSet));
        }
    }
}
