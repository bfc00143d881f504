package org.stockcutting.bench.peers;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.Region;
import org.stockcutting.solve.instance.StockType;

/**
 * Sheets by levels for CP-SAT (Lodi, Martello, Vigo, Models and bounds for two-dimensional level packing problems, Journal of
 * Combinatorial Optimization 8, 2004): each piece opens a level or lies on one that a piece before it has opened; each level lies on a
 * sheet. A piece opens a level the way round that makes it lowest, and lies on another's the way round that is shortest there. First-fit
 * decreasing height is given as a hint. Plans that are no shelves are left out, so nothing is proved.
 */
final class LevelModel {

    private static final int MOST_PIECES = 250;

    private final Instance instance;
    private final CpModel model = new CpModel();
    private final List<Piece> pieces = new ArrayList<>();
    private final List<Sheet> sheets = new ArrayList<>();
    private final long kerfX;
    private final long kerfY;

    private final Load greedy;

    /** A piece as it opens a level, highest first. */
    private record Piece(int item, boolean turned, long length, long height, boolean both) {
        Piece other() {
            return new Piece(item, !turned, height, length, both);
        }

        /** As it lies on a level of this height, or null if it does not fit. */
        @Nullable Piece on(long level) {
            Piece best = height <= level ? this : null;
            boolean shorter = both && length <= level && (best == null || height < length);
            return shorter ? other() : best;
        }
    }

    private record Sheet(int stock, BoolVar used) {}

    LevelModel(Instance instance, long deadline) {
        this.instance = instance;
        this.kerfX = instance.crosscutKerf();
        this.kerfY = instance.ripKerf();
        this.greedy = new Greedy("", Fill.Choice.FIRST).load(instance, deadline);
        int[] counts = BoardCounts.of(instance, greedy);
        for (int s = 0; s < counts.length; s++) {
            for (int n = 0; instance.stocks().get(s).zones().isEmpty() && n < counts[s]; n++) {
                sheets.add(new Sheet(s, model.newBoolVar("")));
            }
        }
        for (int item : Fill.decreasing(instance)) {
            Piece piece = piece(item);
            for (int n = 0; piece != null && n < instance.items().get(item).demand(); n++) {
                pieces.add(piece);
            }
        }
        pieces.sort((a, b) -> Long.compare(b.height(), a.height()));
    }

    private @Nullable Piece piece(int item) {
        long length = instance.items().get(item).length();
        long width = instance.items().get(item).width();
        boolean straight =
                instance.stocks().stream().anyMatch(s -> s.places().get(item).straight());
        boolean turned =
                instance.stocks().stream().anyMatch(s -> s.places().get(item).turned());
        boolean turn = turned && (!straight || length < width);
        boolean lies = (turned || straight) && width > 0;
        return lies ? new Piece(item, turn, turn ? width : length, turn ? length : width, turned && straight) : null;
    }

    Peer.Found solve(long start, long nanos, long seed) {
        int n = pieces.size();
        int wanted = instance.items().stream().mapToInt(i -> i.demand()).sum();
        if (n == 0 || n < wanted || n > MOST_PIECES) {
            return Peer.Found.NOTHING;
        }
        BoolVar[][] on = new BoolVar[n][n];
        BoolVar[][] lies = new BoolVar[n][sheets.size()];
        declare(on, lies);
        placeEachOnce(on);
        fillLevels(on, lies);
        fillSheets(lies);
        hint(on, lies);
        LinearExprBuilder cost = LinearExpr.newBuilder();
        sheets.forEach(
                s -> cost.addTerm(s.used(), instance.stocks().get(s.stock()).cost()));
        model.minimize(cost);
        CpSat.Run run = CpSat.run(model, start, nanos, seed);
        return run.found() ? new Peer.Found(read(run, on, lies), run.nanosToBest(), false) : Peer.Found.NOTHING;
    }

    /** {@code on[i][j]}: j lies on the level that i opens; {@code on[i][i]}: i opens one; {@code lies[i][k]}: it lies on sheet k. */
    private void declare(BoolVar[][] on, BoolVar[][] lies) {
        for (int i = 0; i < pieces.size(); i++) {
            for (int j = i; j < pieces.size(); j++) {
                on[i][j] = model.newBoolVar("");
                if (lying(i, j) == null) {
                    model.addEquality(on[i][j], 0);
                }
            }
            for (int k = 0; k < sheets.size(); k++) {
                lies[i][k] = model.newBoolVar("");
            }
        }
    }

    private void placeEachOnce(BoolVar[][] on) {
        for (int j = 0; j < pieces.size(); j++) {
            LinearExprBuilder sum = LinearExpr.newBuilder();
            for (int i = 0; i <= j; i++) {
                sum.add(on[i][j]);
            }
            model.addEquality(sum, 1);
        }
    }

    private void fillLevels(BoolVar[][] on, BoolVar[][] lies) {
        for (int i = 0; i < pieces.size(); i++) {
            LinearExprBuilder length = LinearExpr.newBuilder();
            LinearExprBuilder places = LinearExpr.newBuilder();
            for (int j = i; j < pieces.size(); j++) {
                Piece lying = lying(i, j);
                length.addTerm(on[i][j], lying == null ? 0 : lying.length() + kerfX);
                model.addImplication(on[i][j], on[i][i]);
            }
            for (int k = 0; k < sheets.size(); k++) {
                StockType stock = instance.stocks().get(sheets.get(k).stock());
                length.addTerm(lies[i][k], -(stock.length() + kerfX));
                places.add(lies[i][k]);
                forbid(on, lies, i, k, stock);
            }
            model.addLessOrEqual(length, 0);
            model.addEquality(places, on[i][i]);
        }
    }

    private void forbid(BoolVar[][] on, BoolVar[][] lies, int i, int k, StockType stock) {
        for (int j = i; j < pieces.size(); j++) {
            Piece lying = lying(i, j);
            StockType.Placing place = stock.places().get(pieces.get(j).item());
            if (lying != null && (lying.turned() ? !place.turned() : !place.straight())) {
                model.addAtMostOne(new BoolVar[] {on[i][j], lies[i][k]});
            }
        }
    }

    private void fillSheets(BoolVar[][] lies) {
        for (int k = 0; k < sheets.size(); k++) {
            StockType stock = instance.stocks().get(sheets.get(k).stock());
            LinearExprBuilder height = LinearExpr.newBuilder();
            for (int i = 0; i < pieces.size(); i++) {
                height.addTerm(lies[i][k], pieces.get(i).height() + kerfY);
            }
            height.addTerm(sheets.get(k).used(), -(stock.width() + kerfY));
            model.addLessOrEqual(height, 0);
            if (k > 0 && sheets.get(k - 1).stock() == sheets.get(k).stock()) {
                model.addImplication(sheets.get(k).used(), sheets.get(k - 1).used());
            }
        }
    }

    private @Nullable Piece lying(int level, int j) {
        return level == j ? pieces.get(j) : pieces.get(j).on(pieces.get(level).height());
    }

    /** The greedy plan; pieces of one item are taken in their order, so the one that opens a level comes first. */
    private void hint(BoolVar[][] on, BoolVar[][] lies) {
        Map<Integer, Deque<Integer>> numbers = new TreeMap<>();
        for (int j = 0; j < pieces.size(); j++) {
            numbers.computeIfAbsent(pieces.get(j).item(), item -> new ArrayDeque<>())
                    .add(j);
        }
        Set<BoolVar> yes = new HashSet<>();
        boolean[] taken = new boolean[sheets.size()];
        for (Fill fill : greedy.boards()) {
            int sheet = free(taken, fill.stock);
            for (ShelfFill.Shelf shelf : ((ShelfFill) fill).shelves()) {
                int level = -1;
                for (ShelfFill.Piece piece : shelf.pieces) {
                    int j = numbers.getOrDefault(piece.item(), new ArrayDeque<>())
                            .remove();
                    level = level < 0 ? j : level;
                    if (j < level || sheet < 0) {
                        return;
                    }
                    yes.add(on[level][j]);
                }
                yes.add(lies[level][sheet]);
            }
        }
        for (int i = 0; i < pieces.size(); i++) {
            for (int j = i; j < pieces.size(); j++) {
                model.addHint(on[i][j], yes.contains(on[i][j]));
            }
            for (int k = 0; k < sheets.size(); k++) {
                model.addHint(lies[i][k], yes.contains(lies[i][k]));
            }
        }
        for (int k = 0; k < sheets.size(); k++) {
            model.addHint(sheets.get(k).used(), taken[k]);
        }
    }

    private int free(boolean[] taken, int stock) {
        for (int k = 0; k < taken.length; k++) {
            if (!taken[k] && sheets.get(k).stock() == stock) {
                taken[k] = true;
                return k;
            }
        }
        return -1;
    }

    private List<Answer.PatternUse> read(CpSat.Run run, BoolVar[][] on, BoolVar[][] lies) {
        List<Answer.PatternUse> uses = new ArrayList<>();
        for (int k = 0; k < sheets.size(); k++) {
            StockType stock = instance.stocks().get(sheets.get(k).stock());
            List<Region> rows = new ArrayList<>();
            long y = 0;
            for (int i = 0; i < pieces.size(); i++) {
                if (run.value(lies[i][k]) == 1) {
                    rows.add(row(run, on[i], i, y, stock.length()));
                    y += pieces.get(i).height() + kerfY;
                }
            }
            if (!rows.isEmpty()) {
                Region sheet = new Region.Split(false, 0, 0, stock.length(), stock.width(), rows);
                uses.add(new Answer.PatternUse(sheets.get(k).stock(), 1, sheet));
            }
        }
        return uses;
    }

    private Region row(CpSat.Run run, BoolVar[] on, int level, long y, long length) {
        List<Region> columns = new ArrayList<>();
        long height = pieces.get(level).height();
        long x = 0;
        for (int j = level; j < pieces.size(); j++) {
            if (run.value(on[j]) == 1) {
                Piece piece = Objects.requireNonNull(lying(level, j));
                Region item = new Region.Item(piece.item(), piece.turned(), x, y, piece.length(), piece.height());
                columns.add(new Region.Split(false, x, y, piece.length(), height, List.of(item)));
                x += piece.length() + kerfX;
            }
        }
        return new Region.Split(true, 0, y, length, height, columns);
    }
}
