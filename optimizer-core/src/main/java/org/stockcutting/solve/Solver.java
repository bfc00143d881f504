package org.stockcutting.solve;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.jspecify.annotations.Nullable;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Engine;
import org.stockcutting.solve.instance.WorkMeter;
import org.stockcutting.solve.layout.Board;
import org.stockcutting.solve.layout.Numbering;
import org.stockcutting.stock.StockItem;

/**
 * Solves a job component by component. Each component has its own work limit and seed, fixed before anything starts, so the answer does
 * not depend on the number of threads.
 */
public final class Solver {

    private final EngineLadder ladder = new EngineLadder();

    /** Hears of improvements: what is known of every component at this moment. Called from solving threads, one at a time. */
    @FunctionalInterface
    public interface SolveListener {
        void improved(List<SolvedComponent> soFar);
    }

    /**
     * Solves every component.
     *
     * @param job the job, lists sorted by id
     * @param pieces rough pieces, by part id
     * @param stock everything for sale and on hand, by id
     */
    public List<SolvedComponent> solve(
            Job job,
            List<RoughPiece> pieces,
            List<StockItem> stock,
            Budget budget,
            CancelToken cancel,
            SolveListener listener) {
        List<Component> components = ComponentSplitter.split(job, pieces, stock);
        Run run = new Run(job, components, budget, cancel, listener);
        return budget.threads() == 1 || components.size() == 1 ? run.alone() : run.spread();
    }

    /** One solve: the state that its components share. */
    private final class Run {
        private final Job job;
        private final List<Component> components;
        private final Budget budget;
        private final CancelToken cancel;
        private final SolveListener listener;
        private final List<SolvedComponent> soFar = new ArrayList<>();
        private final long started = System.nanoTime();
        private final long allPieces;

        Run(Job job, List<Component> components, Budget budget, CancelToken cancel, SolveListener listener) {
            this.job = job;
            this.components = components;
            this.budget = budget;
            this.cancel = cancel;
            this.listener = listener;
            components.forEach(component -> soFar.add(SolvedComponent.untouched(component)));
            this.allPieces = components.stream().mapToLong(this::pieces).sum();
        }

        List<SolvedComponent> alone() {
            for (int c = 0; c < components.size(); c++) {
                tell(c, solveOne(c));
            }
            return List.copyOf(soFar);
        }

        List<SolvedComponent> spread() {
            ExecutorService pool = Executors.newFixedThreadPool(Math.min(budget.threads(), components.size()));
            try {
                List<Future<?>> futures = new ArrayList<>();
                for (int c = 0; c < components.size(); c++) {
                    int index = c;
                    futures.add(pool.submit(() -> tell(index, solveOne(index))));
                }
                for (Future<?> future : futures) {
                    await(future);
                }
                return List.copyOf(soFar);
            } finally {
                pool.shutdownNow();
            }
        }

        private void await(Future<?> future) {
            try {
                future.get();
            } catch (InterruptedException e) {
                cancel.cancel();
                Thread.currentThread().interrupt();
                throw new IllegalStateException("interrupted while planning", e);
            } catch (ExecutionException e) {
                throw new IllegalStateException("planning failed", e.getCause());
            }
        }

        private synchronized void tell(int index, SolvedComponent solved) {
            soFar.set(index, solved);
            listener.improved(List.copyOf(soFar));
        }

        private SolvedComponent solveOne(int index) {
            Component component = components.get(index);
            if (component.stock().isEmpty() || component.pieces().isEmpty()) {
                return soFar.get(index);
            }
            long limit = budget.workFor(pieces(component), allPieces, components.size());
            long begin = budget.clockOnly() ? System.nanoTime() : started;
            long nanos = budget.nanosFor(pieces(component), allPieces, components.size());
            WorkMeter meter = new WorkMeter(limit, begin + nanos, cancel);
            if (!StaveSearch.suits(component)) {
                return attempt(index, component.pieces(), meter, limit, true);
            }
            SolvedComponent solved = new StaveSearch(
                            job, component, (pieces, part, share, told) -> attempt(index, pieces, part, share, told))
                    .run(meter, limit);
            return solved.after(meter.used(), meter.wasCutShort());
        }

        /** Solves the component with these pieces, which are its own but for the widths of staves. */
        private SolvedComponent attempt(int index, List<RoughPiece> pieces, WorkMeter meter, long limit, boolean told) {
            Component component = components.get(index);
            Pins pins = Pins.of(job, new Component(pieces, component.stock()));
            Rows rows = Rows.of(job, pins.component(), !pins.isEmpty());
            Reduced reduced = Reduction.reduce(job, rows);
            if (reduced.instance().items().isEmpty()) {
                return pinned(component, pins);
            }
            long seed = budget.seed() * 31 + index;
            Engine.EngineListener listening = (better, cost) -> {
                if (told) {
                    tell(index, solved(component, pins, rows, reduced, better, meter));
                }
            };
            Answer answer = StaircaseSearch.suits(reduced, job.goal())
                    ? new StaircaseSearch(
                                    reduced,
                                    job.goal(),
                                    ladder,
                                    found -> finished(reduced, found),
                                    meter,
                                    limit,
                                    seed,
                                    listening)
                            .run()
                    : ladder.climb(reduced, found -> finished(reduced, found), meter, limit, seed, listening);
            return solved(component, pins, rows, reduced, answer, meter);
        }

        private SolvedComponent pinned(Component component, Pins pins) {
            List<Board> boards = pins.inserted(List.of());
            return new SolvedComponent(component, boards, boards, new TreeMap<>(), null, false, 0, false);
        }

        private SolvedComponent solved(
                Component component, Pins pins, Rows rows, Reduced reduced, Answer answer, WorkMeter meter) {
            @Nullable BigInteger searched = null;
            // Under the goal waste real leftovers reach past the usable area and lie beside ripped pieces, which no
            // instance shows.
            boolean comparable = reduced.exact() && job.goal() != Goal.WASTE;
            if (comparable && answer.searchedBound() != Answer.NO_BOUND) {
                searched = BigInteger.valueOf(answer.searchedBound()).multiply(reduced.costUnit());
            }
            boolean limited = Numbering.mayForbid(job);
            return new SolvedComponent(
                    component,
                    pins.inserted(rows.expanded(boards(reduced, answer, false))),
                    limited ? pins.inserted(rows.expanded(boards(reduced, answer, true))) : List.of(),
                    rows.spread(Duals.of(reduced, answer.duals())),
                    answer.rows().stream()
                            .map(row -> rows.spread(Duals.of(reduced, row)))
                            .toList(),
                    searched,
                    reduced.exact() && answer.provedPlacement(),
                    meter.used(),
                    meter.wasCutShort());
        }

        private int[] finished(Reduced reduced, Answer answer) {
            return Numbering.finished(job, reduced.instance(), reduced.members(), reduced.stock(), answer.uses());
        }

        private List<Board> boards(Reduced reduced, Answer answer, boolean asCut) {
            return Numbering.number(
                    job,
                    reduced.instance(),
                    reduced.members(),
                    reduced.stock(),
                    reduced.unitX(),
                    reduced.unitY(),
                    answer.uses(),
                    asCut);
        }

        private long pieces(Component component) {
            return component.pieces().stream()
                    .mapToLong(piece -> Reduced.demand(piece, job.sets()))
                    .sum();
        }
    }
}
