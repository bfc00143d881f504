package org.stockcutting.solve.lp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.optim.MaxIter;
import org.apache.commons.math3.optim.linear.LinearConstraint;
import org.apache.commons.math3.optim.linear.LinearConstraintSet;
import org.apache.commons.math3.optim.linear.LinearObjectiveFunction;
import org.apache.commons.math3.optim.linear.NonNegativeConstraint;
import org.apache.commons.math3.optim.linear.Relationship;
import org.apache.commons.math3.optim.linear.SimplexSolver;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Against the simplex solver of Apache Commons Math 3.6.1. */
class RevisedSimplexTest {

    static IntStream seeds() {
        return IntStream.range(0, 200);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void agreesWithAnotherSolverColdAndWarm(int seed) {
        Random random = new Random(seed);
        RandomProgramme programme = new RandomProgramme(random);
        RevisedSimplex simplex = programme.simplex(programme.columns.size() / 2);
        check(seed, simplex, programme, programme.columns.size() / 2);

        for (int c = programme.columns.size() / 2; c < programme.columns.size(); c++) {
            programme.addTo(simplex, c);
        }
        check(seed, simplex, programme, programme.columns.size());

        int[] basis = simplex.basis();
        for (int i = 0; i < programme.rhs.length; i++) {
            programme.rhs[i] = Math.max(0, programme.rhs[i] - random.nextInt(4));
            simplex.setRightHandSide(i, programme.rhs[i]);
        }
        check(seed, simplex, programme, programme.columns.size());

        for (int c = 0; c < programme.columns.size(); c += 3) {
            programme.costs[c] += 5;
            simplex.setCost(c, programme.costs[c]);
        }
        check(seed, simplex, programme, programme.columns.size());

        simplex.restore(basis);
        check(seed, simplex, programme, programme.columns.size());
    }

    private static void check(int seed, RevisedSimplex simplex, RandomProgramme programme, int columns) {
        assertThat(simplex.minimise()).isTrue();
        double expected = programme.oracle(columns);
        double dual = 0;
        double[] duals = simplex.duals();
        for (int i = 0; i < duals.length; i++) {
            assertThat(programme.atLeast[i] ? duals[i] : -duals[i])
                    .as("seed %d sign of dual %d", seed, i)
                    .isGreaterThan(-1e-7);
            dual += duals[i] * programme.rhs[i];
        }
        assertThat(dual).as("seed %d strong duality", seed).isCloseTo(simplex.objective(), within(1e-6));
        double cost = 0;
        for (int c = 0; c < columns; c++) {
            cost += programme.costs[c] * simplex.value(c);
        }
        for (int i = 0; i < duals.length; i++) {
            cost += programme.penalties[i] * simplex.shortfall(i);
        }
        assertThat(cost).as("seed %d cost of the values", seed).isCloseTo(simplex.objective(), within(1e-6));
        for (int i = 0; i < duals.length; i++) {
            double row = 0;
            for (int c = 0; c < columns; c++) {
                row += programme.columns.get(c)[i] * simplex.value(c);
            }
            double slack =
                    programme.atLeast[i] ? row + simplex.shortfall(i) - programme.rhs[i] : programme.rhs[i] - row;
            assertThat(slack).as("seed %d row %d", seed, i).isGreaterThan(-1e-7);
        }
        assertThat(simplex.objective()).as("seed %d", seed).isCloseTo(expected, within(1e-6));
    }

    private static final class RandomProgramme {
        final boolean[] atLeast;
        final double[] rhs;
        final double[] penalties;
        final List<double[]> columns = new ArrayList<>();
        final double[] costs;

        RandomProgramme(Random random) {
            int rows = 2 + random.nextInt(12);
            int count = 2 + random.nextInt(40);
            atLeast = new boolean[rows];
            rhs = new double[rows];
            penalties = new double[rows];
            costs = new double[count];
            for (int i = 0; i < rows; i++) {
                atLeast[i] = random.nextInt(4) > 0;
                rhs[i] = random.nextInt(12);
                penalties[i] = 50 + random.nextInt(200);
            }
            for (int c = 0; c < count; c++) {
                double[] column = new double[rows];
                for (int i = 0; i < rows; i++) {
                    column[i] = random.nextInt(3) == 0 ? random.nextInt(4) : 0;
                }
                columns.add(column);
                costs[c] = 1 + random.nextInt(20);
            }
        }

        RevisedSimplex simplex(int count) {
            RevisedSimplex simplex = new RevisedSimplex(atLeast, rhs, penalties, 1e-9, operations -> true);
            for (int c = 0; c < count; c++) {
                addTo(simplex, c);
            }
            return simplex;
        }

        void addTo(RevisedSimplex simplex, int c) {
            double[] column = columns.get(c);
            int[] rows =
                    IntStream.range(0, rhs.length).filter(i -> column[i] != 0).toArray();
            double[] values = IntStream.of(rows).mapToDouble(i -> column[i]).toArray();
            assertThat(simplex.addColumn(costs[c], rows, values)).isEqualTo(c);
        }

        /** Solves the dual programme: its start is feasible, so the oracle needs no first phase (where it went wrong at times). */
        double oracle(int count) {
            int rows = rhs.length;
            double[] objective = new double[rows];
            List<LinearConstraint> constraints = new ArrayList<>();
            for (int i = 0; i < rows; i++) {
                objective[i] = atLeast[i] ? rhs[i] : -rhs[i];
                if (atLeast[i]) {
                    double[] left = new double[rows];
                    left[i] = 1;
                    constraints.add(new LinearConstraint(left, Relationship.LEQ, penalties[i]));
                }
            }
            for (int c = 0; c < count; c++) {
                double[] left = columns.get(c).clone();
                for (int i = 0; i < rows; i++) {
                    left[i] = atLeast[i] ? left[i] : -left[i];
                }
                constraints.add(new LinearConstraint(left, Relationship.LEQ, costs[c]));
            }
            return new SimplexSolver()
                    .optimize(
                            new MaxIter(10_000),
                            new LinearObjectiveFunction(objective, 0),
                            new LinearConstraintSet(constraints),
                            GoalType.MAXIMIZE,
                            new NonNegativeConstraint(true))
                    .getValue();
        }
    }
}
