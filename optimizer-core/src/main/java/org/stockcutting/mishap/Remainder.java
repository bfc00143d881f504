package org.stockcutting.mishap;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.part.Binding;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.Replan;
import org.stockcutting.plan.Worklog;
import org.stockcutting.stock.Bill;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/** Builds the job that is left: parts that are still wanted, wood in hand as it now is, what is still for sale. */
final class Remainder {

    private static final int LETTERS = 26;

    private final Job job;
    private final Progress progress;
    private final Set<String> missing;
    private final Bench bench;
    private final Lines lines;
    private final Set<String> ids = new HashSet<>();
    private final List<StockItem.OnHand> onHand = new ArrayList<>();
    private final List<Unit> units = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();

    Remainder(Job job, Worklog worklog, Progress progress) {
        this.job = job;
        this.progress = progress;
        this.missing = new HashSet<>(worklog.missing());
        this.bench = new Bench(job, worklog, progress, planned());
        this.lines = Lines.of(job, bench.wanted(), bench.copies(), bench.spares(), bench.widths());
        job.forSale().forEach(item -> ids.add(item.id()));
        notes.addAll(bench.notes());
    }

    LeftToDo leftToDo() {
        rack();
        uncut();
        progress.sawn().forEach((name, board) -> {
            touchedPieces(board);
            if (!missing.contains(name)) {
                blocks(board);
            }
        });
        rules();
        onHand.sort(Comparator.comparing(StockItem.OnHand::id));
        units.sort(Comparator.comparing(Unit::id));
        Job left = lines.parts().isEmpty() ? null : job();
        return new LeftToDo(left, units, bench.finished(), lines.lines(), lost(), notes);
    }

    private Job job() {
        return new Job(
                        job.name(),
                        job.writing(),
                        1,
                        // Half done, the cheapest way on counts: set-ups were weighed once, when there was a choice.
                        job.shop().withSetUpPrice(null),
                        lines.allowances(),
                        lines.parts(),
                        forSale(),
                        onHand,
                        job.goal(),
                        job.effort())
                .withRandom(job.random());
    }

    /** Pieces that boards which are there are still going to give. */
    private SortedSet<Want> planned() {
        SortedSet<Want> planned = new TreeSet<>();
        progress.sawn().forEach((name, board) -> {
            if (!missing.contains(name)) {
                Set<PlacedPiece> cut = new HashSet<>(board.finished());
                board.board().layout().pieces().stream()
                        .filter(piece -> !cut.contains(piece))
                        .forEach(piece ->
                                planned.add(Want.of(piece, board.board().copy())));
            }
        });
        return planned;
    }

    /** What the job wants and no unit gives. */
    private List<Want> lost() {
        SortedSet<Want> lost = new TreeSet<>(lines.again());
        bench.wanted().forEach(want -> {
            Want renamed = lines.renamed(want);
            if (renamed != null) {
                lost.add(renamed);
            }
        });
        units.forEach(unit -> unit.layout().pieces().forEach(piece -> lost.remove(Want.of(piece, 0))));
        return List.copyOf(lost);
    }

    /** Boards of each stock that the plan cuts. */
    private Map<String, Integer> cut() {
        Map<String, Integer> cut = new TreeMap<>();
        progress.boards().values().forEach(board -> cut.merge(board.stock().id(), 1, Integer::sum));
        return cut;
    }

    /** What was bought of an entry, boards that came with the others included. */
    private int bought(StockItem.ForSale item, Map<String, Integer> cut) {
        return Bill.purchase(item, cut.getOrDefault(item.id(), 0), job.goal() == Goal.BOARDS)
                .pieces();
    }

    /** Boards that came with a pack, or that were cheaper taken than left. */
    private void uncut() {
        Map<String, Integer> cut = cut();
        for (StockItem.ForSale item : job.forSale()) {
            int whole = bought(item, cut) - cut.getOrDefault(item.id(), 0);
            if (whole > 0) {
                Area all = new Area(Length.ZERO, Length.ZERO, item.length(), item.width());
                StockItem.OnHand board = Wood.piece(job, item, all, List.of(), item.id());
                onHand.add(board.pieces(free(item.id() + " uncut"), whole, List.of()));
            }
        }
    }

    /** What was bought for the plan is gone from the shelf. */
    private List<StockItem.ForSale> forSale() {
        Map<String, Integer> cut = cut();
        List<StockItem.ForSale> left = new ArrayList<>();
        for (StockItem.ForSale item : job.forSale()) {
            Integer available = item.available();
            int rest = available == null ? 1 : available - bought(item, cut);
            if (rest > 0) {
                left.add(available == null ? item : item.withAvailable(rest));
            }
        }
        return left;
    }

    /** Wood on the rack that the plan does not use. */
    private void rack() {
        for (StockItem.OnHand item : job.onHand()) {
            int plain = 0;
            for (int k = 1; k <= item.quantity(); k++) {
                String name = item.id() + " #" + k;
                if (progress.boards().containsKey(name) || missing.contains(name)) {
                    continue;
                }
                List<Zone> found = progress.found(name);
                if (found.isEmpty()) {
                    plain++;
                } else {
                    onHand.add(item.pieces(free(item.quantity() == 1 ? item.id() : name), 1, joined(item, found)));
                }
            }
            if (plain > 0) {
                onHand.add(item.pieces(free(item.id()), plain, item.zones()));
            }
        }
    }

    private static List<Zone> joined(StockItem item, List<Zone> found) {
        List<Zone> zones = new ArrayList<>(item.zones());
        zones.addAll(found);
        return zones;
    }

    private void blocks(SawnBoard board) {
        PlannedBoard planned = board.board();
        List<Zone> zones = joined(planned.stock(), progress.found(planned.name()));
        boolean single = planned.stock() instanceof StockItem.OnHand owned && owned.quantity() == 1;
        String name = single ? planned.stock().id() : planned.name();
        int count = 0;
        for (SawnBoard.Block block : board.blocks()) {
            StockItem.OnHand piece = Wood.piece(job, planned.stock(), block.area(), zones, name);
            List<PlacedPiece> pieces = pieces(planned, block);
            boolean serves = !pieces.isEmpty()
                    || board.isUntouched()
                    || bench.mayServe(new Bench.PlacedSize(
                            block.area().length(), block.area().width()));
            if (!serves || !Wood.isUsable(job, piece)) {
                continue;
            }
            count++;
            String id = free(board.blocks().size() == 1 ? name : name + "-" + letters(count));
            StockItem.OnHand own = piece.pieces(id, 1, piece.zones());
            onHand.add(own);
            unit(planned, block, pieces, own);
        }
    }

    private static List<PlacedPiece> pieces(PlannedBoard board, SawnBoard.Block block) {
        Area area = block.area();
        return board.layout().pieces().stream()
                .filter(piece -> !new Area(
                                piece.x(),
                                piece.y(),
                                piece.x().plus(piece.extentX()),
                                piece.y().plus(piece.extentY()))
                        .within(area)
                        .isEmpty())
                .toList();
    }

    /** The cuts still planned for a block; spares that nobody wants any more become offcuts. */
    private void unit(PlannedBoard board, SawnBoard.Block block, List<PlacedPiece> pieces, StockItem.OnHand stock) {
        Length dx = Length.ZERO.minus(block.area().x0());
        Length dy = Length.ZERO.minus(block.area().y0());
        Map<PlacedPiece, String> names = new java.util.HashMap<>();
        List<PlacedPiece> moved = new ArrayList<>();
        Set<PlacedPiece> spares = new HashSet<>();
        for (PlacedPiece piece : pieces) {
            Want own = Want.of(piece, board.copy());
            Want renamed = lines.renamed(own);
            Part spareLine = lines.spareLine(piece.part());
            if (renamed == null && spareLine == null) {
                continue;
            }
            PlacedPiece there = Trees.moved(
                    Want.relabelled(
                            piece,
                            List.of(
                                    renamed == null
                                            ? new Want(
                                                    java.util.Objects.requireNonNull(spareLine)
                                                            .id(),
                                                    own.number(),
                                                    own.member())
                                            : renamed)),
                    dx,
                    dy);
            moved.add(there);
            names.put(Trees.moved(piece, dx, dy), there.part());
            if (renamed == null) {
                spares.add(there);
            }
        }
        if (moved.isEmpty()) {
            return;
        }
        Layout frame = new Layout(
                stock.id(),
                1,
                stock.length(),
                stock.width(),
                stock.thickness(),
                List.of(),
                Trees.moved(block.rest(), dx, dy),
                List.of());
        CutNode cuts = Trees.withLeaves(
                frame, (leaf, place) -> leaf instanceof CutNode.PartLeaf part ? renamed(part, place, names) : leaf);
        Layout layout = Trees.layout(job, stock, frame, moved, cuts);
        List<Integer> places = new ArrayList<>();
        for (int i = 0; i < layout.pieces().size(); i++) {
            if (spares.contains(layout.pieces().get(i))) {
                places.add(i);
            }
        }
        units.add(new Unit(stock, layout, places));
    }

    private static CutNode renamed(CutNode.PartLeaf leaf, Layout.LeftOver place, Map<PlacedPiece, String> names) {
        for (Map.Entry<PlacedPiece, String> entry : names.entrySet()) {
            PlacedPiece piece = entry.getKey();
            if (piece.part().equals(leaf.part())
                    && piece.x().equals(place.x())
                    && piece.y().equals(place.y())) {
                return new CutNode.PartLeaf(entry.getValue());
            }
        }
        return CutNode.RestLeaf.OFFCUT;
    }

    /** A bad stretch that was found on a piece that is already cut is the maker's to judge. */
    private void touchedPieces(SawnBoard board) {
        for (Zone zone : progress.found(board.board().name())) {
            Area bad = Wood.area(zone, board.board().stock());
            for (PlacedPiece piece : board.finished()) {
                Area there = new Area(
                        piece.x(),
                        piece.y(),
                        piece.x().plus(piece.extentX()),
                        piece.y().plus(piece.extentY()));
                if (!there.within(bad).isEmpty()) {
                    notes.add("The bad stretch on " + board.board().name() + " reaches into "
                            + Bench.named(piece, board.board().copy())
                            + ", which is cut already and counts as good: report it as spoiled if it is not.");
                }
            }
        }
    }

    /** Rules that bind pieces which are cut to pieces which are not. */
    private void rules() {
        Set<String> started = new TreeSet<>();
        for (Replan.Line line : lines.lines()) {
            Part part = job.parts().stream()
                    .filter(own -> own.id().equals(line.part()))
                    .findFirst()
                    .orElseThrow();
            boolean panelRule =
                    part.making() instanceof Making.GlueUp glueUp && glueUp.from() != Making.StaveSource.ANY;
            if (!line.members().isEmpty() && panelRule) {
                started.add("Some staves of " + part.id() + " are cut already: the rule on which boards its staves "
                        + "come from is not held against the rest.");
            }
            boolean paired = part.selection().binding() != Binding.SAME_BOARD;
            if (part.group() != null && paired && isWithoutMate(line)) {
                started.add("Pieces that belong with " + part.id()
                        + " are cut already: the rest need not come from the same wood.");
            }
            if (part.group() != null && !paired && line.numbers().size() < part.quantity()) {
                started.add("Some pieces of group " + part.group() + " are cut already: the rest lie on one board "
                        + "together, which need not be the board of the first.");
            }
        }
        notes.addAll(started);
    }

    private boolean isWithoutMate(Replan.Line line) {
        return lines.parts().stream().anyMatch(part -> part.id().equals(line.line()) && part.group() == null);
    }

    private String free(@Nullable String wanted) {
        String id = String.valueOf(wanted);
        for (int i = 2; !ids.add(id); i++) {
            id = wanted + " (" + i + ")";
        }
        return id;
    }

    /** 1 is a, 26 is z, 27 is aa. */
    private static String letters(int number) {
        StringBuilder letters = new StringBuilder();
        for (int rest = number; rest > 0; rest = (rest - 1) / LETTERS) {
            letters.insert(0, (char) ('a' + (rest - 1) % LETTERS));
        }
        return letters.toString();
    }
}
