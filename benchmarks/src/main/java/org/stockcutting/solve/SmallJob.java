package org.stockcutting.solve;

import java.util.List;
import java.util.TreeMap;
import org.stockcutting.blank.BlankPlanner;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobOrder;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.layout.Board;
import org.stockcutting.solve.layout.Numbering;

/**
 * One component of a job in small integers, for methods other than ours. It stands in this package only to reach the reduction; it
 * belongs to the benchmarks.
 */
public final class SmallJob {

    private final Job job;
    private final Component component;
    private final Reduced reduced;

    private SmallJob(Job job, Component component) {
        this.job = job;
        this.component = component;
        this.reduced = Reduction.reduce(job, component);
    }

    /** The components of a job that have both pieces and stock; the lists of the job must be sorted by id. */
    public static List<SmallJob> of(Job job) {
        return ComponentSplitter.split(job, BlankPlanner.plan(job), JobOrder.stock(job)).stream()
                .filter(component ->
                        !component.stock().isEmpty() && !component.pieces().isEmpty())
                .map(component -> new SmallJob(job, component))
                .toList();
    }

    public Instance instance() {
        return reduced.instance();
    }

    /** False if lengths or costs were rounded, so that proofs of a method are none for the job. */
    public boolean isExact() {
        return reduced.exact();
    }

    /** Rough pieces to be placed. */
    public long pieces() {
        return reduced.instance().items().stream()
                .mapToLong(item -> item.demand())
                .sum();
    }

    /** Boards with numbered pieces; no duals and no bound, since other methods prove nothing that could be checked. */
    public SolvedComponent solved(List<Answer.PatternUse> uses) {
        return new SolvedComponent(
                component, boards(uses, false), boards(uses, true), new TreeMap<>(), null, false, 0, false);
    }

    private List<Board> boards(List<Answer.PatternUse> uses, boolean asCut) {
        return Numbering.number(
                job,
                reduced.instance(),
                reduced.members(),
                reduced.stock(),
                reduced.unitX(),
                reduced.unitY(),
                uses,
                asCut);
    }
}
