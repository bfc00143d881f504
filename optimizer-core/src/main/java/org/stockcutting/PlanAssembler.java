package org.stockcutting;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.check.CertificateChecker;
import org.stockcutting.check.LeftoverBound;
import org.stockcutting.io.JobHash;
import org.stockcutting.job.Job;
import org.stockcutting.part.Part;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.Certificate;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.Objective;
import org.stockcutting.plan.PlanHeader;
import org.stockcutting.plan.Status;
import org.stockcutting.plan.StopReason;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.report.Derivation;
import org.stockcutting.sequence.CutSequencer;
import org.stockcutting.solve.Diagnosis;
import org.stockcutting.solve.SolvedComponent;
import org.stockcutting.solve.instance.Weights;
import org.stockcutting.solve.layout.Board;
import org.stockcutting.solve.layout.LayoutWriter;
import org.stockcutting.solve.layout.Valuation;
import org.stockcutting.stock.StockItem;

/** Puts a plan together from solved components: layouts, what is missing and why, value, bound, status, and all that follows. */
final class PlanAssembler {

    private final Job job;
    private final List<RoughPiece> pieces;
    private final List<StockItem> stock;
    private final CancelToken cancel;

    PlanAssembler(Job job, List<RoughPiece> pieces, List<StockItem> stock, CancelToken cancel) {
        this.job = job;
        this.pieces = pieces;
        this.stock = stock;
        this.cancel = cancel;
    }

    CuttingPlan assemble(List<SolvedComponent> solved, List<Board> boards, boolean spares) {
        List<Layout> layouts = LayoutWriter.write(job, boards, pieces, spares);
        Map<String, Integer> placed = placed(layouts);
        Map<String, Integer> used = new TreeMap<>();
        layouts.forEach(layout -> used.merge(layout.stock(), layout.repeat(), Integer::sum));
        Missing missing = missing(solved, placed, used);
        Valuation valuation = new Valuation(job);
        Certificate certificate = CertificateChecker.certify(job, SolvedComponent.proposals(solved), placed, used);
        BigInteger bound = CertificateChecker.claimed(job, certificate, placed);
        BigInteger value = valuation.value(layouts);
        BigInteger searched =
                searchedBound(solved, certificate, missing.unplaced().isEmpty());
        Objective objective = new Objective(
                job.goal(), value, bound, searched != null && searched.compareTo(bound) > 0 ? searched : null);
        CutSequencer.Sequence sequence = CutSequencer.sequence(job, layouts);
        return new CuttingPlan(
                header(solved, objective, layouts, missing),
                valuation.cost(layouts),
                objective,
                layouts,
                missing.unplaced(),
                certificate,
                List.of(),
                Derivation.derive(job, layouts, sequence.steps(), sequence.setUps())
                        .withLongestOffcut(LeftoverBound.of(job, layouts, certificate, placed, value)));
    }

    /** Finished pieces placed of each part; spares not counted, glued-up parts only when complete. */
    private Map<String, Integer> placed(List<Layout> layouts) {
        Map<String, Set<Integer>> numbers = new TreeMap<>();
        for (Layout layout : layouts) {
            for (PlacedPiece piece : layout.pieces()) {
                numbers.computeIfAbsent(piece.part(), id -> new HashSet<>()).addAll(piece.numbers());
            }
        }
        Map<String, Integer> placed = new TreeMap<>();
        for (Part part : job.parts()) {
            int demand = job.demand(part);
            long pieces = numbers.getOrDefault(part.id(), Set.of()).stream()
                    .filter(number -> number <= demand)
                    .count();
            placed.put(part.id(), (int) pieces * part.gang());
        }
        return placed;
    }

    /**
     * Parts that are missing.
     *
     * @param unplaced what is missing and why
     * @param all true if it is proved of each that not all of it can be placed
     * @param any true if it is proved of one
     */
    private record Missing(List<Unplaced> unplaced, boolean all, boolean any) {}

    private Missing missing(List<SolvedComponent> solved, Map<String, Integer> placed, Map<String, Integer> used) {
        Diagnosis diagnosis = new Diagnosis(job, stock);
        Set<String> searched = new HashSet<>();
        for (SolvedComponent component : solved) {
            if (component.provedPlacement()) {
                component
                        .component()
                        .pieces()
                        .forEach(piece -> searched.add(piece.part().id()));
            }
        }
        List<Unplaced> unplaced = new ArrayList<>();
        boolean all = true;
        boolean any = false;
        for (RoughPiece piece : pieces) {
            String id = piece.part().id();
            int missing = job.demand(piece.part()) - placed.getOrDefault(id, 0);
            if (missing > 0) {
                boolean exhausted = searched.contains(id);
                boolean proof = exhausted || diagnosis.isImpossible(piece);
                all &= proof;
                any |= proof;
                unplaced.add(diagnosis.explain(piece, missing, exhausted, used));
            }
        }
        return new Missing(unplaced, all, any);
    }

    /** Searched bounds where there are any, certified ones for the rest; null if no component has a searched one. */
    private static @Nullable BigInteger searchedBound(
            List<SolvedComponent> solved, Certificate certificate, boolean allPlaced) {
        BigInteger sum = BigInteger.ZERO;
        Set<String> covered = new HashSet<>();
        for (SolvedComponent component : solved) {
            BigInteger searched = component.searchedBound();
            if (searched != null && (allPlaced || component.provedPlacement())) {
                sum = sum.add(searched);
                component.component().stock().forEach(item -> covered.add(item.id()));
            }
        }
        if (covered.isEmpty()) {
            return null;
        }
        for (Certificate.Component component : certificate.components()) {
            if (component.stock().stream().noneMatch(covered::contains)) {
                sum = sum.add(component.bound());
            }
        }
        return sum;
    }

    private PlanHeader header(
            List<SolvedComponent> solved, Objective objective, List<Layout> layouts, Missing missing) {
        boolean cutShort = solved.stream().anyMatch(SolvedComponent::cutShort);
        long work = solved.stream().mapToLong(SolvedComponent::work).sum();
        return new PlanHeader(
                job.name(),
                JobHash.of(job),
                status(objective, layouts, missing),
                stopReason(objective, missing, cutShort),
                !cutShort,
                job.effort().seed(),
                work,
                Weights.VERSION,
                Optimizer.VERSION);
    }

    private static Status status(Objective objective, List<Layout> layouts, Missing missing) {
        if (missing.unplaced().isEmpty()) {
            return objective.value().equals(objective.bound()) ? Status.OPTIMAL : Status.FEASIBLE;
        }
        if (layouts.isEmpty()) {
            return Status.NO_PLAN;
        }
        return missing.any() ? Status.INFEASIBLE : Status.PARTIAL;
    }

    private StopReason stopReason(Objective objective, Missing missing, boolean cutShort) {
        boolean closed =
                objective.value().equals(objective.bound()) || objective.value().equals(objective.searchedBound());
        if (closed && missing.all()) {
            return StopReason.PROVED;
        }
        if (cancel.isCancelled()) {
            return StopReason.CANCELLED;
        }
        return cutShort ? StopReason.TIME_LIMIT : StopReason.WORK_LIMIT;
    }
}
