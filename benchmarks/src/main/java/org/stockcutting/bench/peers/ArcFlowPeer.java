package org.stockcutting.bench.peers;

import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;

/**
 * CP-SAT with an arc-flow model (Valerio de Carvalho, Annals of Operations Research 86, 1999): a pattern is a path over positions, pieces
 * longest first, and a flow is a plan. First-fit decreasing is given as a hint. One graph serves all stretches of all stocks; a stretch is left at its own end.
 */
final class ArcFlowPeer implements Peer {

    /** Beyond this the solver gets nowhere in seconds, and the model alone takes them. */
    private static final int MOST_ARCS = 150_000;

    @Override
    public String name() {
        return "CP-SAT arc-flow";
    }

    @Override
    public Optional<String> declines(Instance instance) {
        if (!instance.groups().isEmpty()) {
            return Optional.of("knows no groups");
        }
        if (!instance.isOneDimensional()) {
            return Optional.of("is for one dimension");
        }
        for (int i = 0; i < instance.items().size(); i++) {
            ItemType type = instance.items().get(i);
            if (type.perBoard() < type.demand()) {
                return Optional.of("knows no limit of copies on a board");
            }
            for (int s = 0; s < instance.stocks().size(); s++) {
                long longest = Segments.of(instance, s).list().stream()
                        .mapToLong(Segments.Segment::capacity)
                        .max()
                        .orElse(0);
                boolean fits = type.length() + instance.crosscutKerf() <= longest;
                if (fits && !LineFill.takes(instance, s, i)) {
                    return Optional.of("knows no parts that only some boards may give");
                }
            }
        }
        return CpSat.missing();
    }

    @Override
    public Found solve(Instance instance, long nanos, long seed) {
        long start = System.nanoTime();
        Load greedy = new Greedy("", Fill.Choice.FIRST).load(instance, start + nanos);
        Graph graph = new Graph(instance, BoardCounts.of(instance, greedy));
        if (!graph.build()) {
            return Found.NOTHING;
        }
        graph.hint(greedy);
        CpSat.Run run = CpSat.run(graph.model, start, nanos, seed);
        return run.found()
                ? new Found(Load.uses(graph.read(run)), run.nanosToBest(), run.optimal() && Segments.areExact(instance))
                : Found.NOTHING;
    }

    /** A piece of this item from a position on; item -1 is a step to the next position. */
    private record Arc(int item, long from, long to, IntVar flow) {}

    /** Paths that end in this stretch of this stock. */
    private record Exit(int stock, int segment, long at, IntVar flow) {}

    private static final class Graph {
        private final Instance instance;
        private final int[] counts;
        private final CpModel model = new CpModel();
        private final List<Arc> arcs = new ArrayList<>();
        private final List<Exit> exits = new ArrayList<>();
        private final List<IntVar> boards = new ArrayList<>();
        private int mostPaths;

        Graph(Instance instance, int[] counts) {
            this.instance = instance;
            this.counts = counts;
        }

        /** False if the graph is too large. */
        boolean build() {
            addExits();
            long capacity = exits.stream().mapToLong(Exit::at).max().orElse(0);
            if (capacity > 1_000_000 || !addPieces((int) capacity)) {
                return false;
            }
            addSteps();
            conserve();
            meetDemand();
            LinearExprBuilder cost = LinearExpr.newBuilder();
            for (int s = 0; s < counts.length; s++) {
                cost.addTerm(boards.get(s), instance.stocks().get(s).cost());
            }
            model.minimize(cost);
            return true;
        }

        private void addExits() {
            for (int s = 0; s < counts.length; s++) {
                IntVar used = model.newIntVar(0, counts[s], "");
                boards.add(used);
                List<Segments.Segment> segments = Segments.of(instance, s).list();
                for (int k = 0; k < segments.size(); k++) {
                    IntVar flow = model.newIntVar(0, counts[s], "");
                    model.addLessOrEqual(flow, used);
                    exits.add(new Exit(s, k, segments.get(k).capacity(), flow));
                    mostPaths += counts[s];
                }
            }
        }

        /** Longest first, so that most positions are never reached; within an item no more steps than its demand. */
        private boolean addPieces(int capacity) {
            boolean[] reached = new boolean[capacity + 1];
            reached[0] = true;
            for (int item : Fill.decreasing(instance)) {
                ItemType type = instance.items().get(item);
                int size = Math.toIntExact(type.length() + instance.crosscutKerf());
                int[] copies = new int[capacity + 1];
                for (int v = 0; v + size <= capacity; v++) {
                    if (!reached[v] || copies[v] >= type.demand()) {
                        continue;
                    }
                    IntVar flow = model.newIntVar(0, type.demand(), "");
                    arcs.add(new Arc(item, v, v + size, flow));
                    if (arcs.size() > MOST_ARCS) {
                        return false;
                    }
                    if (!reached[v + size]) {
                        reached[v + size] = true;
                        copies[v + size] = copies[v] + 1;
                    }
                }
            }
            return true;
        }

        private void addSteps() {
            TreeMap<Long, Boolean> positions = new TreeMap<>();
            arcs.forEach(arc -> positions.put(arc.to(), true));
            exits.forEach(exit -> positions.put(exit.at(), true));
            Long before = null;
            for (long position : positions.keySet()) {
                if (before != null) {
                    arcs.add(new Arc(-1, before, position, model.newIntVar(0, mostPaths, "")));
                }
                before = position;
            }
        }

        private void conserve() {
            Map<Long, LinearExprBuilder> balance = new TreeMap<>();
            for (Arc arc : arcs) {
                balance.computeIfAbsent(arc.from(), v -> LinearExpr.newBuilder())
                        .addTerm(arc.flow(), -1);
                balance.computeIfAbsent(arc.to(), v -> LinearExpr.newBuilder()).addTerm(arc.flow(), 1);
            }
            for (Exit exit : exits) {
                balance.computeIfAbsent(exit.at(), v -> LinearExpr.newBuilder()).addTerm(exit.flow(), -1);
            }
            balance.remove(0L);
            balance.values().forEach(sum -> model.addEquality(sum, 0));
        }

        private void meetDemand() {
            List<LinearExprBuilder> sums = new ArrayList<>();
            instance.items().forEach(item -> sums.add(LinearExpr.newBuilder()));
            arcs.stream()
                    .filter(arc -> arc.item() >= 0)
                    .forEach(arc -> sums.get(arc.item()).add(arc.flow()));
            for (int i = 0; i < sums.size(); i++) {
                model.addEquality(sums.get(i), instance.items().get(i).demand());
            }
        }

        /** The greedy plan as a flow: rows longest first are paths of this graph. */
        void hint(Load greedy) {
            Map<Long, Map<Integer, Arc>> leaving = new TreeMap<>();
            arcs.forEach(arc ->
                    leaving.computeIfAbsent(arc.from(), v -> new TreeMap<>()).put(arc.item(), arc));
            Map<IntVar, Long> flows = new LinkedHashMap<>();
            arcs.forEach(arc -> flows.put(arc.flow(), 0L));
            exits.forEach(exit -> flows.put(exit.flow(), 0L));
            boards.forEach(used -> flows.put(used, 0L));
            for (Fill fill : greedy.boards()) {
                flows.merge(boards.get(fill.stock), 1L, Long::sum);
                for (Exit exit : exits) {
                    List<Integer> row = exit.stock() == fill.stock
                            ? ((LineFill) fill).rows().get(exit.segment())
                            : List.of();
                    if (!row.isEmpty()) {
                        flows.merge(exit.flow(), 1L, Long::sum);
                        follow(row, exit, leaving, flows);
                    }
                }
            }
            flows.forEach(model::addHint);
        }

        private void follow(
                List<Integer> row, Exit exit, Map<Long, Map<Integer, Arc>> leaving, Map<IntVar, Long> flows) {
            List<Integer> order = Fill.decreasing(instance);
            List<Integer> items = new ArrayList<>(row);
            items.sort(Comparator.comparingInt(order::indexOf));
            long at = 0;
            for (int n = 0; at < exit.at(); n++) {
                Arc arc = leaving.getOrDefault(at, Map.of()).get(n < items.size() ? items.get(n) : -1);
                if (arc == null) {
                    return;
                }
                flows.merge(arc.flow(), 1L, Long::sum);
                at = arc.to();
            }
        }

        List<LineFill> read(CpSat.Run run) {
            Map<Long, Deque<Arc>> out = new TreeMap<>();
            for (Arc arc : arcs) {
                for (int n = run.value(arc.flow()); n > 0; n--) {
                    Deque<Arc> from = out.computeIfAbsent(arc.from(), v -> new ArrayDeque<>());
                    from.add(arc);
                }
            }
            Map<Long, Deque<Exit>> ends = new TreeMap<>();
            for (Exit exit : exits) {
                for (int n = run.value(exit.flow()); n > 0; n--) {
                    ends.computeIfAbsent(exit.at(), v -> new ArrayDeque<>()).add(exit);
                }
            }
            Map<Integer, List<LineFill>> byStock = new TreeMap<>();
            Map<Exit, Integer> next = new HashMap<>();
            while (!out.getOrDefault(0L, new ArrayDeque<>()).isEmpty()) {
                List<Integer> items = new ArrayList<>();
                Exit exit = walk(out, ends, items);
                int board = next.merge(exit, 1, Integer::sum) - 1;
                List<LineFill> fills = byStock.computeIfAbsent(exit.stock(), s -> new ArrayList<>());
                while (fills.size() <= board) {
                    fills.add(new LineFill(instance, exit.stock(), Fill.Choice.FIRST));
                }
                items.forEach(item -> fills.get(board).addTo(exit.segment(), item));
            }
            return byStock.values().stream().flatMap(List::stream).toList();
        }

        /** One path; what flows into a position flows out, so it always comes to an end of a stretch. */
        private static Exit walk(Map<Long, Deque<Arc>> out, Map<Long, Deque<Exit>> ends, List<Integer> items) {
            long at = 0;
            while (true) {
                Deque<Arc> arcs = out.getOrDefault(at, new ArrayDeque<>());
                Deque<Exit> here = ends.getOrDefault(at, new ArrayDeque<>());
                if (arcs.isEmpty()) {
                    return here.remove();
                }
                Arc arc = arcs.remove();
                if (arc.item() >= 0) {
                    items.add(arc.item());
                }
                at = arc.to();
            }
        }
    }
}
