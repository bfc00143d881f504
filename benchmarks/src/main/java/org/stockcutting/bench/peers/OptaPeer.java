package org.stockcutting.bench.peers;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Timer;
import java.util.TimerTask;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicLong;
import org.optaplanner.core.api.score.buildin.bendablelong.BendableLongScore;
import org.optaplanner.core.api.score.stream.ConstraintStreamImplType;
import org.optaplanner.core.api.solver.Solver;
import org.optaplanner.core.api.solver.SolverFactory;
import org.optaplanner.core.config.constructionheuristic.ConstructionHeuristicPhaseConfig;
import org.optaplanner.core.config.constructionheuristic.ConstructionHeuristicType;
import org.optaplanner.core.config.heuristic.selector.move.composite.UnionMoveSelectorConfig;
import org.optaplanner.core.config.heuristic.selector.move.generic.ChangeMoveSelectorConfig;
import org.optaplanner.core.config.heuristic.selector.move.generic.PillarChangeMoveSelectorConfig;
import org.optaplanner.core.config.heuristic.selector.move.generic.PillarSwapMoveSelectorConfig;
import org.optaplanner.core.config.heuristic.selector.move.generic.SwapMoveSelectorConfig;
import org.optaplanner.core.config.localsearch.LocalSearchPhaseConfig;
import org.optaplanner.core.config.localsearch.decider.acceptor.LocalSearchAcceptorConfig;
import org.optaplanner.core.config.localsearch.decider.forager.LocalSearchForagerConfig;
import org.optaplanner.core.config.score.director.ScoreDirectorFactoryConfig;
import org.optaplanner.core.config.solver.SolverConfig;
import org.optaplanner.core.config.solver.termination.TerminationConfig;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;

/**
 * The constraint solver alone: each piece chooses its bin. It starts from best-fit decreasing with the best stock for each board, as its
 * user would hand it over (the solver's own construction opens the cheapest boards one by one and ended far behind that), then anneals over
 * moves and swaps of pieces, and of whole or part bins, until the time is over. On sheets a bin is a sheet, and the score packs it by
 * shelves. These settings were the best of those tried on twelve other jobs of the built-in kinds: late acceptance with a history of 50,
 * 400 and 3,000, tabu, step-counting hill climbing, two starting temperatures, with and without moves of bins, cheapest insertion.
 *
 * <p>The solver is built before the clock starts.
 */
final class OptaPeer implements Peer {

    /** Beyond these the value range alone outgrows the time. */
    private static final long MOST_PAIRS = 20_000_000;

    private static final String TEMPERATURE = "[0]hard/[1/10000]soft";

    /** Seed and time are part of the engine's settings, so a factory serves one of each. */
    private record Settings(long millis, long seed) {
        static Settings of(long nanos, long seed) {
            return new Settings(Math.max(1, nanos / 1_000_000), seed);
        }
    }

    private final Map<Settings, SolverFactory<OptaPlan>> factories = new HashMap<>();

    @Override
    public String name() {
        return "OptaPlanner";
    }

    @Override
    public Optional<String> declines(Instance instance) {
        return instance.groups().isEmpty() ? Optional.empty() : Optional.of("knows no groups");
    }

    @Override
    public void prepare(long nanos, long seed) {
        factory(nanos, seed);
    }

    /** Building takes about a second the first time. */
    private SolverFactory<OptaPlan> factory(long nanos, long seed) {
        return factories.computeIfAbsent(Settings.of(nanos, seed), OptaPeer::build);
    }

    private static SolverFactory<OptaPlan> build(Settings settings) {
        return SolverFactory.create(new SolverConfig()
                .withSolutionClass(OptaPlan.class)
                .withEntityClasses(OptaPiece.class)
                .withScoreDirectorFactory(new ScoreDirectorFactoryConfig()
                        .withConstraintProviderClass(OptaConstraints.class)
                        .withConstraintStreamImplType(ConstraintStreamImplType.BAVET))
                .withRandomSeed(settings.seed())
                .withTerminationConfig(new TerminationConfig().withMillisecondsSpentLimit(settings.millis()))
                .withPhases(
                        new ConstructionHeuristicPhaseConfig()
                                .withConstructionHeuristicType(ConstructionHeuristicType.FIRST_FIT_DECREASING),
                        new LocalSearchPhaseConfig()
                                .withMoveSelectorConfig(new UnionMoveSelectorConfig()
                                        .withMoveSelectors(
                                                new ChangeMoveSelectorConfig(),
                                                new SwapMoveSelectorConfig(),
                                                new PillarChangeMoveSelectorConfig(),
                                                new PillarSwapMoveSelectorConfig()))
                                .withAcceptorConfig(new LocalSearchAcceptorConfig()
                                        .withSimulatedAnnealingStartingTemperature(TEMPERATURE))
                                .withForagerConfig(new LocalSearchForagerConfig().withAcceptedCountLimit(1))));
    }

    @Override
    public Found solve(Instance instance, long nanos, long seed) {
        SolverFactory<OptaPlan> factory = factory(nanos, seed);
        long start = System.nanoTime();
        Load greedy = Greedy.bestFit().load(instance, start + nanos);
        List<OptaBin> bins = bins(instance, greedy);
        List<OptaPiece> pieces = pieces(instance);
        if (bins.isEmpty() || (long) bins.size() * pieces.size() > MOST_PAIRS) {
            return Found.NOTHING;
        }
        OptaStart.assign(instance, greedy, bins, pieces);
        Solver<OptaPlan> solver = factory.buildSolver();
        AtomicLong toBest = new AtomicLong();
        AtomicLong least = new AtomicLong(Long.MAX_VALUE);
        solver.addEventListener(event -> {
            // Better wishes at the same cost are no news.
            BendableLongScore better = (BendableLongScore) event.getNewBestScore();
            boolean valid = better.isSolutionInitialized() && better.hardScore(0) == 0;
            if (valid && -better.softScore(0) < least.get()) {
                least.set(-better.softScore(0));
                toBest.set(System.nanoTime() - start);
            }
        });
        if (pieces.size() == 1 && bins.size() == 1) {
            // The engine has no move to make and would never end; the only assignment there is needs no search.
            return found(List.of(new Lying(pieces.get(0).item(), bins.get(0))), System.nanoTime() - start);
        }
        OptaPlan best = timed(solver, new OptaPlan(bins, pieces), nanos - (System.nanoTime() - start));
        BendableLongScore score = best.score();
        if (score == null || !score.isSolutionInitialized() || score.hardScore(0) < 0) {
            return Found.NOTHING;
        }
        return found(
                best.pieces().stream()
                        .map(piece -> new Lying(piece.item(), piece.binOrThrow()))
                        .toList(),
                toBest.get());
    }

    private static OptaPlan timed(Solver<OptaPlan> solver, OptaPlan plan, long nanos) {
        Timer timer = new Timer("peer-clock", true);
        timer.schedule(
                new TimerTask() {
                    @Override
                    public void run() {
                        solver.terminateEarly();
                    }
                },
                Math.max(1, nanos / 1_000_000));
        try {
            return solver.solve(plan);
        } finally {
            timer.cancel();
        }
    }

    /** A piece in a bin. */
    private record Lying(int item, OptaBin bin) {}

    private static Found found(List<Lying> pieces, long nanos) {
        Map<Integer, List<Lying>> byBoard = new TreeMap<>();
        pieces.forEach(piece -> byBoard.computeIfAbsent(piece.bin().board(), b -> new ArrayList<>())
                .add(piece));
        List<Fill> boards = new ArrayList<>();
        for (List<Lying> lying : byBoard.values()) {
            boards.add(board(lying));
        }
        return new Found(Load.uses(boards), nanos, false);
    }

    private static Fill board(List<Lying> lying) {
        OptaBin bin = lying.get(0).bin();
        if (bin.isLine()) {
            LineFill line = new LineFill(bin.instance(), bin.stock(), Fill.Choice.FIRST);
            lying.forEach(piece -> line.addTo(piece.bin().segment(), piece.item()));
            return line;
        }
        ShelfFill sheet = new ShelfFill(bin.instance(), bin.stock(), Fill.Choice.BEST);
        List<Integer> order = Fill.decreasing(bin.instance());
        lying.stream()
                .sorted(Comparator.comparingInt(piece -> order.indexOf(piece.item())))
                .forEach(piece -> sheet.add(piece.item()));
        return sheet;
    }

    private static List<OptaBin> bins(Instance instance, Load greedy) {
        int[] counts = BoardCounts.of(instance, greedy);
        List<OptaBin> bins = new ArrayList<>();
        int board = 0;
        for (int s = 0; s < counts.length; s++) {
            long cost = instance.stocks().get(s).cost();
            boolean line = instance.isOneDimensional();
            List<Segments.Segment> segments =
                    line ? Segments.of(instance, s).list() : List.of(new Segments.Segment(0, 0));
            for (int n = 0; n < counts[s]; n++, board++) {
                for (int k = 0; k < segments.size(); k++) {
                    long capacity = segments.get(k).capacity();
                    bins.add(new OptaBin(bins.size(), board, s, k, capacity, cost, instance));
                }
            }
        }
        return bins;
    }

    private static List<OptaPiece> pieces(Instance instance) {
        boolean line = instance.isOneDimensional();
        List<Integer> order = Fill.decreasing(instance);
        List<OptaPiece> pieces = new ArrayList<>();
        for (int rank = 0; rank < order.size(); rank++) {
            int item = order.get(rank);
            ItemType type = instance.items().get(item);
            long size = line ? type.length() + instance.crosscutKerf() : type.length() * Math.max(1, type.width());
            for (int n = 0; n < type.demand(); n++) {
                pieces.add(new OptaPiece(pieces.size(), item, rank, size, type.perBoard()));
            }
        }
        return pieces;
    }
}
