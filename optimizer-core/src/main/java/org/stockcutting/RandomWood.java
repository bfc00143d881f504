package org.stockcutting;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.stockcutting.blank.BlankPlanner;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobOrder;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Derived;
import org.stockcutting.plan.Estimate;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.Status;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.plan.Warning;
import org.stockcutting.solve.Diagnosis;
import org.stockcutting.stock.RandomBoards;
import org.stockcutting.stock.StockItem;
import org.stockcutting.wood.RandomPurchase;

/**
 * What a plan leaves out and boards of random size can give is no longer left out but estimated: the plan is for the wood that is known, the
 * estimate stands beside it. A line goes to the cheapest boards that can give it.
 */
final class RandomWood {

    static final String WARNING = "estimate";

    private final Job job;
    private final CuttingPlan plan;
    private final Map<String, RoughPiece> pieces;
    private final List<RandomPurchase> purchases = new ArrayList<>();

    /**
     * @param job a job in canonical order
     * @param plan a plan of it
     */
    RandomWood(Job job, CuttingPlan plan) {
        this.job = job;
        this.plan = plan;
        this.pieces = BlankPlanner.plan(job).stream()
                .collect(Collectors.toMap(piece -> piece.part().id(), piece -> piece));
        for (int i = 0; i < job.random().size(); i++) {
            purchases.add(new RandomPurchase(job, job.random().get(i), i));
        }
    }

    /** The plan with its estimates. */
    CuttingPlan added() {
        if (job.random().isEmpty() || plan.unplaced().isEmpty()) {
            return plan;
        }
        SortedMap<Integer, List<RandomPurchase.Wanted>> wanted = new TreeMap<>();
        List<Unplaced> open = new ArrayList<>();
        for (Unplaced line : plan.unplaced()) {
            RoughPiece piece = piece(line);
            int boards = cheapest(piece);
            if (boards < 0) {
                open.add(explained(line, piece));
            } else {
                wanted.computeIfAbsent(boards, key -> new ArrayList<>())
                        .add(new RandomPurchase.Wanted(piece, line.quantity()));
            }
        }
        List<Estimate> estimates = new ArrayList<>();
        wanted.forEach((boards, lines) -> {
            Optional<Estimate> estimate = purchases.get(boards).estimate(lines);
            estimate.ifPresentOrElse(estimates::add, () -> lines.forEach(line -> open.add(hopeless(line))));
        });
        open.sort(Comparator.comparing(Unplaced::part));
        return written(estimates, open);
    }

    private RoughPiece piece(Unplaced line) {
        RoughPiece piece = pieces.get(line.part());
        if (piece == null) {
            throw new IllegalArgumentException("the job has no part " + line.part());
        }
        return piece;
    }

    /** Index of the boards that give it for the least money a volume, those without a price last; -1 if none does. */
    private int cheapest(RoughPiece piece) {
        int best = -1;
        for (int i = 0; i < purchases.size(); i++) {
            if (purchases.get(i).canGive(piece)
                    && (best < 0
                            || BY_PRICE.compare(
                                            job.random().get(i), job.random().get(best))
                                    < 0)) {
                best = i;
            }
        }
        return best;
    }

    private static final Comparator<RandomBoards> BY_PRICE = Comparator.comparing(
            boards -> RandomPurchase.priceOfCubicMetre(boards), Comparator.nullsLast(Comparator.naturalOrder()));

    /** The reason in view of the random boards too. */
    private Unplaced explained(Unplaced line, RoughPiece piece) {
        boolean sized = switch (line.reason()) {
            case LONGER_THAN_ANY_STOCK, WIDER_THAN_ANY_STOCK, NO_STOCK_OF_MATERIAL, NO_STOCK_OF_THICKNESS -> true;
            default -> false;
        };
        if (!sized) {
            return line;
        }
        List<StockItem> all = new ArrayList<>(JobOrder.stock(job));
        job.random().forEach(boards -> all.add(boards.largest(job.shop().carLength())));
        Map<String, Integer> used = new TreeMap<>();
        plan.layouts().forEach((Layout layout) -> used.merge(layout.stock(), layout.repeat(), Integer::sum));
        return new Diagnosis(job, all).explain(piece, line.quantity(), false, used);
    }

    /** What no sensible purchase gives is left out; where there is other wood, for the reason that it was left out for. */
    private Unplaced hopeless(RandomPurchase.Wanted line) {
        String id = line.piece().part().id();
        Unplaced before = plan.unplaced().stream()
                .filter(unplaced -> unplaced.part().equals(id))
                .findFirst()
                .orElseThrow();
        if (before.reason() != Unplaced.Reason.NO_STOCK_OF_MATERIAL) {
            return before;
        }
        return new Unplaced(
                id,
                line.quantity(),
                Unplaced.Reason.NO_CLEAR_ZONE,
                null,
                null,
                "boards of this grade hardly ever have so long a clear stretch: take a clearer grade, or let the part take knots");
    }

    private CuttingPlan written(List<Estimate> estimates, List<Unplaced> open) {
        List<Warning> said = new ArrayList<>();
        for (int i = 0; i < estimates.size(); i++) {
            said.add(
                    new Warning(
                            WARNING,
                            "/estimates/" + i,
                            "What to buy of " + estimates.get(i).stock()
                                    + " is an estimate from drawn boards, not a plan: measure the boards before they are cut, and plan again."));
        }
        Derived derived = plan.derived();
        if (!derived.nearMisses().isEmpty()) {
            // A near miss of a part that is estimated now would speak of wood that is not known.
            derived = derived.withNearMisses(derived.nearMisses().stream()
                    .filter(miss -> estimates.stream()
                            .flatMap(estimate -> estimate.parts().stream())
                            .noneMatch(served -> served.part().equals(miss.part())))
                    .toList());
        }
        return plan.withHeader(plan.header().withStatus(status(estimates, open)))
                .withUnplaced(open)
                .withDerived(derived.withEstimates(estimates, said));
    }

    private Status status(List<Estimate> estimates, List<Unplaced> open) {
        if (estimates.isEmpty()) {
            return plan.header().status();
        }
        return open.isEmpty() ? Status.FEASIBLE : status(open, plan.layouts().isEmpty());
    }

    /** How good a plan is that leaves these parts out. */
    static Status status(List<Unplaced> open, boolean nothingCut) {
        if (open.stream().anyMatch(RandomWood::isImpossible)) {
            return Status.INFEASIBLE;
        }
        return nothingCut ? Status.NO_PLAN : Status.PARTIAL;
    }

    private static boolean isImpossible(Unplaced line) {
        return switch (line.reason()) {
            case LONGER_THAN_ANY_STOCK,
                    WIDER_THAN_ANY_STOCK,
                    NO_STOCK_OF_MATERIAL,
                    NO_STOCK_OF_THICKNESS,
                    GRAIN_DOES_NOT_FIT -> true;
            default -> false;
        };
    }
}
