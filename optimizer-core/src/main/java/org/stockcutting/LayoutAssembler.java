package org.stockcutting;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.apache.commons.math3.fraction.BigFraction;
import org.jspecify.annotations.Nullable;
import org.stockcutting.check.CertificateChecker;
import org.stockcutting.check.LeftoverBound;
import org.stockcutting.job.Job;
import org.stockcutting.part.Part;
import org.stockcutting.plan.Certificate;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.Objective;
import org.stockcutting.plan.PlanHeader;
import org.stockcutting.plan.Status;
import org.stockcutting.plan.StopReason;
import org.stockcutting.report.Derivation;
import org.stockcutting.sequence.CutSequencer;
import org.stockcutting.solve.instance.Weights;
import org.stockcutting.solve.layout.Valuation;

/** Makes a plan of layouts that come from elsewhere, its bound proved by the duals of another plan of the same job. */
final class LayoutAssembler {

    private final Job job;
    private final String hash;
    private final @Nullable CuttingPlan scratch;

    /**
     * @param job the job
     * @param hash its hash
     * @param scratch a plan of the job, or null where nothing is proved but that no value is below zero
     */
    LayoutAssembler(Job job, String hash, @Nullable CuttingPlan scratch) {
        this.job = job;
        this.hash = hash;
        this.scratch = scratch;
    }

    CuttingPlan assemble(KeptBoards.Answer answer) {
        List<Layout> layouts = new ArrayList<>(answer.layouts());
        layouts.sort(Comparator.comparing(Layout::stock));
        Map<String, Integer> used = new TreeMap<>();
        layouts.forEach(layout -> used.merge(layout.stock(), layout.repeat(), Integer::sum));
        Map<String, Integer> placed = placed(layouts);
        Certificate certificate = CertificateChecker.certify(job, proposals(), placed, used);
        BigInteger bound = CertificateChecker.claimed(job, certificate, placed);
        Valuation valuation = new Valuation(job);
        BigInteger value = valuation.value(layouts);
        Objective objective = new Objective(job.goal(), value, bound, searched(answer, bound));
        CutSequencer.Sequence sequence = CutSequencer.sequence(job, layouts);
        return new CuttingPlan(
                header(answer, objective),
                valuation.cost(layouts),
                objective,
                layouts,
                answer.unplaced(),
                certificate,
                List.of(),
                Derivation.derive(job, layouts, sequence.steps(), sequence.setUps())
                        .withLongestOffcut(LeftoverBound.of(job, layouts, certificate, placed, value)));
    }

    private List<Map<String, BigFraction>> proposals() {
        List<Map<String, BigFraction>> proposals = new ArrayList<>();
        proposals.add(new TreeMap<>());
        if (scratch != null) {
            for (Certificate.Component component : scratch.certificate().components()) {
                component.duals().forEach(dual -> proposals.get(0).put(dual.part(), dual.value()));
                for (List<Certificate.Dual> row : component.rows()) {
                    Map<String, BigFraction> worths = new TreeMap<>();
                    row.forEach(dual -> worths.put(dual.part(), dual.value()));
                    proposals.add(worths);
                }
            }
        }
        return proposals;
    }

    private Map<String, Integer> placed(List<Layout> layouts) {
        Map<String, Set<Integer>> numbers = new TreeMap<>();
        layouts.forEach(layout -> layout.pieces()
                .forEach(piece -> numbers.computeIfAbsent(piece.part(), id -> new HashSet<>())
                        .addAll(piece.numbers())));
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

    /** What search proved of the other plan holds here where both place everything. */
    private @Nullable BigInteger searched(KeptBoards.Answer answer, BigInteger bound) {
        if (scratch == null
                || !scratch.unplaced().isEmpty()
                || !answer.unplaced().isEmpty()) {
            return null;
        }
        BigInteger searched = scratch.objective().searchedBound();
        return searched != null && searched.compareTo(bound) > 0 ? searched : null;
    }

    private PlanHeader header(KeptBoards.Answer answer, Objective objective) {
        boolean all = answer.unplaced().isEmpty();
        boolean optimal = all && objective.value().equals(objective.bound());
        boolean closed = optimal || (all && objective.value().equals(objective.searchedBound()));
        boolean cutShort =
                answer.cutShort() || (scratch != null && !scratch.header().reproducible());
        StopReason other = scratch == null || closed
                ? StopReason.WORK_LIMIT
                : scratch.header().stopReason();
        Status partial = answer.layouts().isEmpty() ? Status.NO_PLAN : Status.PARTIAL;
        return new PlanHeader(
                job.name(),
                hash,
                optimal
                        ? Status.OPTIMAL
                        : all
                                ? Status.FEASIBLE
                                : scratch == null ? partial : scratch.header().status(),
                closed ? StopReason.PROVED : other == StopReason.PROVED ? StopReason.WORK_LIMIT : other,
                !cutShort,
                job.effort().seed(),
                answer.work() + (scratch == null ? 0 : scratch.header().work()),
                Weights.VERSION,
                Optimizer.VERSION);
    }
}
