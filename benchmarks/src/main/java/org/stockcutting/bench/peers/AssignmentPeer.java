package org.stockcutting.bench.peers;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;

/**
 * CP-SAT with the assignment model (Kantorovich, Management Science 6, 1960): how many pieces of each item lie in each bin, and which
 * boards are used. Boards of a stock are used in order, and first-fit decreasing is given as a hint. Sheets: {@link LevelModel}.
 */
final class AssignmentPeer implements Peer {

    private static final long MOST_VARIABLES = 400_000;

    @Override
    public String name() {
        return "CP-SAT assignment";
    }

    @Override
    public Optional<String> declines(Instance instance) {
        if (!instance.groups().isEmpty()) {
            return Optional.of("knows no groups");
        }
        return CpSat.missing();
    }

    @Override
    public Found solve(Instance instance, long nanos, long seed) {
        long start = System.nanoTime();
        if (!instance.isOneDimensional()) {
            return new LevelModel(instance, start + nanos).solve(start, nanos, seed);
        }
        Load greedy = new Greedy("", Fill.Choice.FIRST).load(instance, start + nanos);
        return new Lines(instance, greedy).solve(start, nanos, seed);
    }

    /** A board of the model: its use, and for each stretch the count of each item, null where it may not lie. */
    private record Board(int stock, BoolVar used, List<IntVar[]> counts) {}

    private static final class Lines {
        private final Instance instance;
        private final Load greedy;
        private final CpModel model = new CpModel();
        private final List<Board> boards = new ArrayList<>();
        private final LinearExprBuilder cost = LinearExpr.newBuilder();

        Lines(Instance instance, Load greedy) {
            this.instance = instance;
            this.greedy = greedy;
        }

        Found solve(long start, long nanos, long seed) {
            int[] counts = BoardCounts.of(instance, greedy);
            long variables = 0;
            for (int s = 0; s < counts.length; s++) {
                variables += (long) counts[s]
                        * instance.items().size()
                        * Segments.of(instance, s).list().size();
            }
            if (variables > MOST_VARIABLES) {
                return Found.NOTHING;
            }
            for (int s = 0; s < counts.length; s++) {
                addStock(s, counts[s]);
            }
            meetDemand();
            hint();
            model.minimize(cost);
            CpSat.Run run = CpSat.run(model, start, nanos, seed);
            return run.found() ? read(run) : Found.NOTHING;
        }

        private void addStock(int stock, int copies) {
            BoolVar before = null;
            for (int n = 0; n < copies; n++) {
                BoolVar used = model.newBoolVar("");
                if (before != null) {
                    model.addImplication(used, before);
                }
                before = used;
                Board board = new Board(stock, used, new ArrayList<>());
                for (Segments.Segment segment : Segments.of(instance, stock).list()) {
                    board.counts().add(stretch(board, segment));
                }
                limitCopies(board);
                cost.addTerm(used, instance.stocks().get(stock).cost());
                boards.add(board);
            }
        }

        private IntVar[] stretch(Board board, Segments.Segment segment) {
            IntVar[] counts = new IntVar[instance.items().size()];
            LinearExprBuilder load = LinearExpr.newBuilder();
            for (int i = 0; i < counts.length; i++) {
                ItemType type = instance.items().get(i);
                long size = type.length() + instance.crosscutKerf();
                long most = LineFill.takes(instance, board.stock(), i)
                        ? Math.min(type.perBoard(), segment.capacity() / Math.max(1, size))
                        : 0;
                counts[i] = model.newIntVar(0, most, "");
                load.addTerm(counts[i], size);
            }
            load.addTerm(board.used(), -segment.capacity());
            model.addLessOrEqual(load, 0);
            return counts;
        }

        private void limitCopies(Board board) {
            for (int i = 0; board.counts().size() > 1 && i < instance.items().size(); i++) {
                if (instance.items().get(i).perBoard() < instance.items().get(i).demand()) {
                    LinearExprBuilder sum = LinearExpr.newBuilder();
                    for (IntVar[] stretch : board.counts()) {
                        sum.add(stretch[i]);
                    }
                    model.addLessOrEqual(sum, instance.items().get(i).perBoard());
                }
            }
        }

        private void meetDemand() {
            for (int i = 0; i < instance.items().size(); i++) {
                LinearExprBuilder sum = LinearExpr.newBuilder();
                for (Board board : boards) {
                    for (IntVar[] stretch : board.counts()) {
                        sum.add(stretch[i]);
                    }
                }
                model.addEquality(sum, instance.items().get(i).demand());
            }
        }

        private void hint() {
            List<Fill> left = new ArrayList<>(greedy.boards());
            for (Board board : boards) {
                LineFill fill = null;
                for (Fill candidate : left) {
                    if (candidate.stock == board.stock()) {
                        fill = (LineFill) candidate;
                        left.remove(candidate);
                        break;
                    }
                }
                model.addHint(board.used(), fill != null);
                for (int k = 0; k < board.counts().size(); k++) {
                    for (int i = 0; i < instance.items().size(); i++) {
                        int item = i;
                        long count = fill == null
                                ? 0
                                : fill.rows().get(k).stream()
                                        .filter(other -> other == item)
                                        .count();
                        model.addHint(board.counts().get(k)[i], count);
                    }
                }
            }
        }

        private Found read(CpSat.Run run) {
            List<LineFill> fills = new ArrayList<>();
            for (Board board : boards) {
                LineFill fill = new LineFill(instance, board.stock(), Fill.Choice.FIRST);
                for (int k = 0; k < board.counts().size(); k++) {
                    for (int i = 0; i < instance.items().size(); i++) {
                        for (int n = run.value(board.counts().get(k)[i]); n > 0; n--) {
                            fill.addTo(k, i);
                        }
                    }
                }
                if (!fill.isEmpty()) {
                    fills.add(fill);
                }
            }
            return new Found(Load.uses(fills), run.nanosToBest(), run.optimal() && Segments.areExact(instance));
        }
    }
}
