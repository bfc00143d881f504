package org.stockcutting;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.stockcutting.blank.BlankPlanner;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.job.Job;
import org.stockcutting.mishap.Lines;
import org.stockcutting.mishap.Trees;
import org.stockcutting.mishap.Unit;
import org.stockcutting.mishap.Want;
import org.stockcutting.mishap.Wood;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.stock.StockItem;

/**
 * One way to go on: some pieces of wood are cut as they were planned, and only what they do not give is planned from everything else, the
 * rests of the kept pieces included.
 */
final class KeptBoards {

    /**
     * The rest of a kept piece of wood, as stock of the smaller job.
     *
     * @param unit which kept piece, by place in the list
     * @param place where the rest lies on it
     */
    private record Rest(int unit, Layout.LeftOver place) {}

    /**
     * Layouts of the whole job that is left, and what has no place in them.
     *
     * @param work steps that planning took
     * @param cutShort true if the clock or a cancel cut it short
     */
    record Answer(List<Layout> layouts, List<Unplaced> unplaced, long work, boolean cutShort) {}

    private final Job job;
    private final Map<String, Part> parts = new HashMap<>();
    private final List<Layout> kept = new ArrayList<>();
    private final List<StockItem.OnHand> keptStock = new ArrayList<>();
    private final SortedSet<Want> open;
    private final Map<String, Rest> rests = new HashMap<>();

    /**
     * @param job the job that is left
     * @param units the pieces of wood that are cut as planned
     */
    KeptBoards(Job job, List<Unit> units) {
        this.job = job;
        job.parts().forEach(part -> parts.put(part.id(), part));
        this.open = new TreeSet<>(wants(job));
        for (Unit unit : units) {
            for (int i = 0; i < unit.layout().pieces().size(); i++) {
                if (!unit.spares().contains(i)) {
                    open.remove(Want.of(unit.layout().pieces().get(i), 0));
                }
            }
        }
        Map<String, Integer> sparesGiven = new HashMap<>();
        for (Unit unit : units) {
            kept.add(withSpares(unit, sparesGiven));
            keptStock.add(unit.stock());
        }
    }

    /** Every rough piece that a job asks for. */
    static SortedSet<Want> wants(Job job) {
        SortedSet<Want> wants = new TreeSet<>();
        for (RoughPiece piece : BlankPlanner.plan(job)) {
            for (int number = 1;
                    number <= job.demand(piece.part());
                    number += piece.part().gang()) {
                for (int member = 1; member <= piece.perPart(); member++) {
                    boolean whole = piece.kind() == RoughPiece.Kind.WHOLE;
                    wants.add(new Want(piece.part().id(), number, whole ? 0 : member));
                }
            }
        }
        return wants;
    }

    /**
     * Units that may be kept together: none that holds only some of the pieces that have to share a board, or only some staves of a
     * panel that asks for different boards.
     */
    static List<Unit> closed(Job job, List<Unit> units) {
        Map<String, String> bound = new HashMap<>();
        Set<String> panels = new HashSet<>();
        for (Part part : job.parts()) {
            if (part.group() != null) {
                bound.put(part.id(), "group " + part.group());
            }
            if (part.making() instanceof Making.GlueUp glueUp && glueUp.from() != Making.StaveSource.ANY) {
                panels.add(part.id());
            }
        }
        List<Unit> closed = new ArrayList<>(units);
        boolean changed = true;
        while (changed) {
            Map<String, SortedSet<Want>> together = new HashMap<>();
            for (Want want : wants(job)) {
                String key = key(want, bound, panels);
                if (key != null) {
                    together.computeIfAbsent(key, k -> new TreeSet<>()).add(want);
                }
            }
            closed.forEach(unit -> wantsOf(unit).forEach(want -> {
                String key = key(want, bound, panels);
                if (key != null) {
                    Objects.requireNonNull(together.get(key)).remove(want);
                }
            }));
            changed = closed.removeIf(unit -> wantsOf(unit).stream().anyMatch(want -> {
                String key = key(want, bound, panels);
                return key != null && !Objects.requireNonNull(together.get(key)).isEmpty();
            }));
        }
        return closed;
    }

    private static @Nullable String key(Want want, Map<String, String> groups, Set<String> panels) {
        String group = groups.get(want.part());
        if (group != null) {
            return group;
        }
        return panels.contains(want.part()) ? want.part() + " #" + want.number() : null;
    }

    private static List<Want> wantsOf(Unit unit) {
        List<Want> wants = new ArrayList<>();
        for (int i = 0; i < unit.layout().pieces().size(); i++) {
            if (!unit.spares().contains(i)) {
                wants.add(Want.of(unit.layout().pieces().get(i), 0));
            }
        }
        return wants;
    }

    /** A planned spare becomes a piece that is missing, if there is one; else it stays a spare, with the next number. */
    private Layout withSpares(Unit unit, Map<String, Integer> given) {
        if (unit.spares().isEmpty()) {
            return unit.layout();
        }
        List<PlacedPiece> pieces = new ArrayList<>(unit.layout().pieces());
        List<PlacedPiece> dropped = new ArrayList<>();
        for (int place : unit.spares()) {
            PlacedPiece spare = pieces.get(place);
            Part part = Objects.requireNonNull(parts.get(spare.part()));
            Want missing = part.group() != null
                    ? null
                    : open.stream()
                            .filter(want -> want.part().equals(part.id()) && want.member() == 0)
                            .findFirst()
                            .orElse(null);
            int next = job.demand(part) + given.getOrDefault(part.id(), 0) + 1;
            if (missing != null && spare.members().isEmpty()) {
                open.remove(missing);
                pieces.set(place, Want.relabelled(spare, List.of(missing)));
            } else if (spare.members().isEmpty() && next <= job.demand(part) + part.spares()) {
                given.merge(part.id(), 1, Integer::sum);
                pieces.set(place, Want.relabelled(spare, List.of(new Want(part.id(), next, 0))));
            } else {
                dropped.add(spare);
            }
        }
        pieces.removeAll(dropped);
        CutNode cuts = Trees.withLeaves(unit.layout(), (leaf, place) -> {
            boolean gone = leaf instanceof CutNode.PartLeaf part
                    && dropped.stream()
                            .anyMatch(piece -> piece.part().equals(part.part())
                                    && piece.x().equals(place.x())
                                    && piece.y().equals(place.y()));
            return gone ? CutNode.RestLeaf.OFFCUT : leaf;
        });
        return Trees.layout(job, unit.stock(), unit.layout(), pieces, cuts);
    }

    /** Pieces that the kept boards do not give. */
    SortedSet<Want> open() {
        return open;
    }

    List<Layout> layouts() {
        return kept;
    }

    /** The smaller job, or null where the kept boards give everything. */
    @Nullable Smaller smaller() {
        if (open.isEmpty()) {
            return null;
        }
        Lines lines = Lines.of(job, open, Map.of(), Map.of());
        List<StockItem.OnHand> onHand = new ArrayList<>(job.onHand());
        onHand.removeIf(item -> keptStock.stream().anyMatch(own -> own.id().equals(item.id())));
        for (int u = 0; u < kept.size(); u++) {
            List<Layout.LeftOver> offcuts = kept.get(u).offcuts();
            for (int o = 0; o < offcuts.size(); o++) {
                String id = keptStock.get(u).id() + " rest " + (o + 1);
                StockItem.OnHand rest = Wood.offcut(job, keptStock.get(u), offcuts.get(o), id);
                if (Wood.isUsable(job, rest)
                        && onHand.stream().noneMatch(other -> other.id().equals(id))) {
                    onHand.add(rest);
                    rests.put(id, new Rest(u, offcuts.get(o)));
                }
            }
        }
        Job smaller = new Job(
                job.name(),
                job.writing(),
                1,
                job.shop(),
                lines.allowances(),
                lines.parts(),
                job.forSale(),
                onHand,
                job.goal(),
                job.effort());
        return new Smaller(smaller, lines);
    }

    /**
     * What is left to plan.
     *
     * @param job the job
     * @param lines what its lines stand for
     */
    record Smaller(Job job, Lines lines) {}

    /** Kept layouts and the plan of the rest as layouts of the whole. */
    Answer joined(Smaller smaller, CuttingPlan plan) {
        List<Layout> layouts = new ArrayList<>(kept);
        for (Layout layout : plan.layouts()) {
            Layout own = renamed(layout, smaller.lines());
            Rest rest = rests.get(layout.stock());
            if (rest == null) {
                layouts.add(own);
            } else {
                layouts.set(rest.unit(), grafted(layouts.get(rest.unit()), rest, own));
            }
        }
        List<Unplaced> unplaced = new ArrayList<>();
        for (Unplaced line : plan.unplaced()) {
            Want original = smaller.lines().original(new Want(line.part(), 1, 0));
            Want member = smaller.lines().original(new Want(line.part(), 1, 1));
            Want own = original == null ? member : original;
            String part = own == null ? line.part() : own.part();
            unplaced.add(new Unplaced(part, line.quantity(), line.reason(), line.needs(), line.limit(), line.remedy()));
        }
        return new Answer(
                layouts, unplaced, plan.header().work(), !plan.header().reproducible());
    }

    Answer alone() {
        return new Answer(kept, List.of(), 0, false);
    }

    private Layout renamed(Layout layout, Lines lines) {
        Map<String, String> names = new HashMap<>();
        List<PlacedPiece> pieces = new ArrayList<>();
        for (PlacedPiece piece : layout.pieces()) {
            List<Want> labels = new ArrayList<>();
            for (int copy = 0; copy < layout.repeat(); copy++) {
                labels.add(Objects.requireNonNull(lines.original(Want.of(piece, copy))));
            }
            names.put(piece.part(), labels.get(0).part());
            pieces.add(Want.relabelled(piece, labels));
        }
        CutNode cuts = Trees.withLeaves(
                layout,
                (leaf, place) -> leaf instanceof CutNode.PartLeaf part
                        ? new CutNode.PartLeaf(names.getOrDefault(part.part(), part.part()))
                        : leaf);
        return new Layout(
                layout.stock(),
                layout.repeat(),
                layout.length(),
                layout.width(),
                layout.thickness(),
                pieces,
                cuts,
                layout.offcuts());
    }

    private Layout grafted(Layout board, Rest rest, Layout piece) {
        Layout.LeftOver at = rest.place();
        CutNode graft = Trees.moved(piece.cuts(), at.x(), at.y());
        List<PlacedPiece> pieces = new ArrayList<>(board.pieces());
        piece.pieces().forEach(own -> pieces.add(Trees.moved(own, at.x(), at.y())));
        CutNode cuts = Trees.withLeaves(
                board,
                (leaf, place) -> leaf == CutNode.RestLeaf.OFFCUT
                                && place.x().equals(at.x())
                                && place.y().equals(at.y())
                        ? graft
                        : leaf);
        return Trees.layout(job, keptStock.get(rest.unit()), board, pieces, cuts);
    }
}
