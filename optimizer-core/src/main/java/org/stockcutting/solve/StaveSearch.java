package org.stockcutting.solve;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.blank.RoughSection;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.fit.Fit;
import org.stockcutting.pattern.fit.UsableArea;
import org.stockcutting.solve.instance.WorkMeter;
import org.stockcutting.solve.layout.Board;
import org.stockcutting.solve.layout.Label;
import org.stockcutting.solve.layout.LayoutWriter;
import org.stockcutting.solve.layout.Valuation;
import org.stockcutting.stock.Bill;
import org.stockcutting.stock.StockItem;

/**
 * Staves of free width, chosen together with the other parts: each panel of a component in turn is tried in its likeliest splits with a
 * little work each; what does better than equal staves stays. The best split and equal staves then get the same work, and the better plan
 * is taken, equal staves where both are worth the same. All panels of one line are split alike.
 */
final class StaveSearch {

    /** Share of the work that goes into short trials. */
    private static final int TRIAL_SHARE = 4;
    /** Trials of one component. */
    private static final int MOST_TRIALS = 36;
    /** Trials of one panel: further splits are unlikely to be better. */
    private static final int MOST_SPLITS = 12;
    /** Trials shorter than this say nothing. */
    private static final long LEAST_TRIAL = 2_000;

    private final Job job;
    private final Component component;
    private final Attempt attempt;
    private final Valuation valuation;
    private @Nullable Found best;

    /** Solves the component with these pieces instead of its own, with part of the work; listeners hear of one attempt only. */
    @FunctionalInterface
    interface Attempt {
        SolvedComponent of(List<RoughPiece> pieces, WorkMeter meter, long limit, boolean told);
    }

    /** A plan: finished wood that is placed and its value under the goal. */
    private record Found(SolvedComponent solved, BigInteger placed, BigInteger value) {

        boolean isBetterThan(@Nullable Found other) {
            int more = other == null ? 1 : placed.compareTo(other.placed);
            return other == null || more > 0 || (more == 0 && value.compareTo(other.value) < 0);
        }
    }

    StaveSearch(Job job, Component component, Attempt attempt) {
        this.job = job;
        this.component = component;
        this.attempt = attempt;
        this.valuation = new Valuation(job);
    }

    /** True if some panel of the component leaves a choice. */
    static boolean suits(Component component) {
        return component.pieces().stream().anyMatch(StaveSplits::isFree);
    }

    /** @param limit work of the whole search, {@link Long#MAX_VALUE} where only the clock limits */
    SolvedComponent run(WorkMeter meter, long limit) {
        boolean clock = limit == Long.MAX_VALUE;
        List<RoughPiece> equal = component.pieces();
        List<RoughPiece> chosen = trials(meter, meter.left() / TRIAL_SHARE);
        boolean both = chosen != equal;
        WorkMeter first = both ? meter.head(meter.left() / 2) : meter.part(limit);
        keep(solve(equal, first, clock ? limit : first.left(), true));
        meter.absorb(first);
        if (both) {
            WorkMeter second = meter.part(limit);
            keep(solve(chosen, second, clock ? limit : second.left(), false));
            meter.absorb(second);
        }
        return Objects.requireNonNull(best).solved();
    }

    private void keep(Found found) {
        if (found.isBetterThan(best)) {
            best = found;
        }
    }

    /** The pieces with the splits that did best; the component's own list where none did better. */
    private List<RoughPiece> trials(WorkMeter meter, long work) {
        List<RoughPiece> panels = component.pieces().stream()
                .filter(StaveSplits::isFree)
                .sorted(Comparator.comparing(StaveSearch::wood).reversed())
                .toList();
        int most = Math.max(1, Math.min(MOST_SPLITS, MOST_TRIALS / panels.size()));
        List<List<List<RoughPiece>>> splits =
                panels.stream().map(panel -> splits(panel, most)).toList();
        long each = work / (1 + splits.stream().mapToLong(List::size).sum());
        List<RoughPiece> pieces = component.pieces();
        if (each < LEAST_TRIAL || splits.stream().allMatch(List::isEmpty)) {
            return pieces;
        }
        Found leader = trial(pieces, meter, each);
        for (int p = 0; p < panels.size(); p++) {
            List<RoughPiece> before = pieces;
            for (List<RoughPiece> split : splits.get(p)) {
                List<RoughPiece> other = with(before, panels.get(p), split);
                Found found = meter.isExhausted() ? leader : trial(other, meter, each);
                if (found.isBetterThan(leader)) {
                    leader = found;
                    pieces = other;
                }
            }
        }
        if (pieces != component.pieces()) {
            best = leader;
        }
        return pieces;
    }

    private static BigInteger wood(RoughPiece panel) {
        return PieceWeight.of(panel)
                .multiply(
                        BigInteger.valueOf((long) panel.perPart() * panel.part().quantity()));
    }

    private Found trial(List<RoughPiece> pieces, WorkMeter meter, long work) {
        WorkMeter part = meter.part(work);
        Found found = solve(pieces, part, work, false);
        meter.absorb(part);
        return found;
    }

    private Found solve(List<RoughPiece> pieces, WorkMeter meter, long limit, boolean told) {
        SolvedComponent solved = attempt.of(pieces, meter, limit, told);
        BigInteger placed = BigInteger.ZERO;
        for (Board board : solved.boards()) {
            for (Label label : board.labels()) {
                placed = placed.add(PieceWeight.of(label.piece()));
            }
        }
        return new Found(solved, placed, valuation.value(LayoutWriter.write(job, solved.boards(), pieces, false)));
    }

    private static List<RoughPiece> with(List<RoughPiece> pieces, RoughPiece panel, List<RoughPiece> split) {
        List<RoughPiece> changed = new ArrayList<>();
        for (RoughPiece piece : pieces) {
            if (piece.part().id().equals(panel.part().id())) {
                if (piece.members().before() == 0) {
                    changed.addAll(split);
                }
            } else {
                changed.add(piece);
            }
        }
        return changed;
    }

    private List<List<RoughPiece>> splits(RoughPiece panel, int most) {
        Fit fit = new Fit(job.shop());
        RoughPiece narrow = StaveSplits.narrowest(panel);
        List<StaveSplits.Source> sources = new ArrayList<>();
        List<Length> others = new ArrayList<>();
        for (StockItem item : component.stock()) {
            if (fit.ways(narrow, item).straight()) {
                Length width = UsableArea.of(item, job.shop()).width();
                sources.add(new StaveSplits.Source(width, rate(item)));
                for (RoughPiece piece : component.pieces()) {
                    if (piece.section() instanceof RoughSection.Sized sized
                            && fit.ways(piece, item).straight()) {
                        others.add(sized.width());
                    }
                }
            }
        }
        return StaveSplits.of(
                panel,
                sources,
                others.stream().distinct().toList(),
                job.shop().kerf().rip(),
                job.writing().unit(),
                most);
    }

    /** Cost of a unit of length under the goal; wood on hand counts half as much as wood of its width would cost. */
    private double rate(StockItem item) {
        double length = item.length().nanometres();
        if (job.goal() == Goal.COST && item instanceof StockItem.ForSale sale && sale.price() != null) {
            return Bill.price(sale).minorUnits() / length;
        }
        if (job.goal() == Goal.BOARDS && item instanceof StockItem.ForSale) {
            return 1 / length;
        }
        double least = component.stock().stream()
                .filter(other ->
                        job.goal() == Goal.COST && other instanceof StockItem.ForSale sale && sale.price() != null)
                .mapToDouble(other -> Bill.price((StockItem.ForSale) other).minorUnits()
                        / (double) other.length().nanometres()
                        / other.width().nanometres())
                .min()
                .orElse(1);
        return least / 2 * item.width().nanometres();
    }
}
