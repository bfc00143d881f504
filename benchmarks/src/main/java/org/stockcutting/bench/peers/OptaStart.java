package org.stockcutting.bench.peers;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.stockcutting.solve.instance.Instance;

/** Where the constraint solver starts: every piece in the bin that a greedy load gives it; pieces without a place stay without a bin. */
final class OptaStart {

    private OptaStart() {}

    static void assign(Instance instance, Load greedy, List<OptaBin> bins, List<OptaPiece> pieces) {
        Map<Integer, Deque<OptaPiece>> waiting = new HashMap<>();
        pieces.forEach(piece -> waiting.computeIfAbsent(piece.item(), item -> new ArrayDeque<>())
                .add(piece));
        Map<Integer, Deque<List<OptaBin>>> boards = boards(bins);
        for (Fill fill : greedy.boards()) {
            Deque<List<OptaBin>> free = boards.getOrDefault(fill.stock, new ArrayDeque<>());
            if (!free.isEmpty()) {
                place(instance, fill, free.remove(), waiting);
            }
        }
    }

    /** Bins of each board by segment, boards by stock. */
    private static Map<Integer, Deque<List<OptaBin>>> boards(List<OptaBin> bins) {
        Map<Integer, Deque<List<OptaBin>>> boards = new HashMap<>();
        for (int from = 0; from < bins.size(); ) {
            int to = from;
            while (to < bins.size() && bins.get(to).board() == bins.get(from).board()) {
                to++;
            }
            boards.computeIfAbsent(bins.get(from).stock(), stock -> new ArrayDeque<>())
                    .add(bins.subList(from, to));
            from = to;
        }
        return boards;
    }

    private static void place(
            Instance instance, Fill fill, List<OptaBin> segments, Map<Integer, Deque<OptaPiece>> waiting) {
        if (fill instanceof LineFill line) {
            for (int s = 0; s < segments.size(); s++) {
                for (int item : line.rows().get(s)) {
                    waiting.getOrDefault(item, new ArrayDeque<>()).remove().startIn(segments.get(s));
                }
            }
            return;
        }
        for (int item = 0; item < instance.items().size(); item++) {
            for (int n = 0; n < fill.counts()[item]; n++) {
                waiting.getOrDefault(item, new ArrayDeque<>()).remove().startIn(segments.get(0));
            }
        }
    }
}
