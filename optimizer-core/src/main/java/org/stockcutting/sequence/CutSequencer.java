package org.stockcutting.sequence;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.stockcutting.job.Job;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.SequenceStep;

/**
 * Puts all steps of a plan in one order: sheets before boards, first ends squared before all, then position by position of stop, fence and
 * planer. No cut comes before those that free its piece of wood, no piece gets its size before it is planed, and glued-up parts are
 * trimmed last.
 *
 * <p>Which sequence has the fewest set-ups is a scheduling problem with precedence and hard in general. Several greedy orders are tried and
 * the best one is kept, so {@code setUps} is what this sequence takes, not the least there is. Stateless.
 */
public final class CutSequencer {

    private CutSequencer() {}

    /**
     * A sequence of steps.
     *
     * @param steps numbered from 1
     * @param setUps how often a stop, fence or planer is set to a new position
     */
    public record Sequence(List<SequenceStep> steps, int setUps) {
        public Sequence {
            steps = List.copyOf(steps);
        }
    }

    /**
     * Sequences a plan.
     *
     * @param job tells sheets from boards, what is made of each rough piece, and in which unit the maker reads
     * @param layouts a plan's layouts, in its order: boards are numbered {@code {stock} #k} along it
     * @throws IllegalArgumentException if a part of the job cannot be made as it says; a job that passed the review has no such part
     */
    public static Sequence sequence(Job job, List<Layout> layouts) {
        Workshop workshop = new Workshop(job);
        PieceWork pieceWork = new PieceWork(workshop);
        Map<String, Integer> boards = new HashMap<>();
        for (Layout layout : layouts) {
            for (int copy = 0; copy < layout.repeat(); copy++) {
                int k = boards.merge(layout.stock(), 1, Integer::sum);
                new BoardReader(workshop, pieceWork, layout, copy, layout.stock() + " #" + k).read();
            }
        }
        pieceWork.glue();
        Sequence best = null;
        for (Bench.Preference preference : Bench.Preference.values()) {
            Sequence made = made(workshop.tasks(), preference);
            if (best == null || made.setUps() < best.setUps()) {
                best = made;
            }
        }
        return best == null ? new Sequence(List.of(), 0) : best;
    }

    private static Sequence made(List<Task> tasks, Bench.Preference preference) {
        Bench bench = new Bench(tasks, preference);
        bench.work();
        return new Sequence(bench.steps(), bench.setUps());
    }
}
