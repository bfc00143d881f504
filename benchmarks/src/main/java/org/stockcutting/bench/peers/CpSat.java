package org.stockcutting.bench.peers;

import com.google.ortools.Loader;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverSolutionCallback;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.IntVar;
import java.util.Optional;

/** Runs a model on CP-SAT with {@value #WORKERS} workers. */
final class CpSat {

    static final int WORKERS = 2;

    private static final Optional<String> MISSING = load();

    private CpSat() {}

    /** Why the solver cannot run on this machine; empty if it can. */
    static Optional<String> missing() {
        return MISSING;
    }

    private static Optional<String> load() {
        try {
            Loader.loadNativeLibraries();
            return Optional.empty();
        } catch (UnsatisfiedLinkError | RuntimeException e) {
            return Optional.of("the native part of OR-Tools for this machine is not in this jar");
        }
    }

    /**
     * What came of a run.
     *
     * @param solver to read values from; meaningless unless {@code found}
     * @param nanosToBest from the start given
     */
    record Run(CpSolver solver, boolean found, boolean optimal, long nanosToBest) {
        int value(IntVar variable) {
            return Math.toIntExact(solver.value(variable));
        }
    }

    /** Solves in what is left of the time: making the model counts. */
    static Run run(CpModel model, long start, long nanos, long seed) {
        CpSolver solver = new CpSolver();
        double seconds = Math.max(0.01, (start + nanos - System.nanoTime()) / 1e9);
        solver.getParameters()
                .setMaxTimeInSeconds(seconds)
                .setNumWorkers(WORKERS)
                .setRandomSeed((int) (seed & 0x7fffffff));
        long[] best = {0};
        CpSolverStatus status = solver.solve(model, new CpSolverSolutionCallback() {
            @Override
            public void onSolutionCallback() {
                best[0] = System.nanoTime() - start;
            }
        });
        boolean optimal = status == CpSolverStatus.OPTIMAL;
        return new Run(solver, optimal || status == CpSolverStatus.FEASIBLE, optimal, best[0]);
    }
}
