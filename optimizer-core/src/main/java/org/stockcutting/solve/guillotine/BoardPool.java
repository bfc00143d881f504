package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;

/**
 * Boards that a search has come by, each content once: where no two pieces are alike, they are what a programme over whole boards can
 * be made of (a set-covering heuristic: Monaci, Toth, INFORMS Journal on Computing 18, 2006).
 */
final class BoardPool {

    /** Boards that wait to be taken; more are not looked at. */
    private static final int MOST = 10_000;

    private final Set<Board> seen = Collections.newSetFromMap(new IdentityHashMap<>());
    private final Set<List<Integer>> contents = new HashSet<>();
    private final List<Board> waiting = new ArrayList<>();

    void collect(Draft draft) {
        for (Board board : draft.boards) {
            if (waiting.size() < MOST && seen.add(board) && contents.add(content(board))) {
                waiting.add(board);
            }
        }
    }

    private static List<Integer> content(Board board) {
        List<Integer> content = new ArrayList<>();
        content.add(board.stock);
        Arrays.stream(board.counts).forEach(content::add);
        return content;
    }

    /** The boards that came since the last call. */
    List<Board> take() {
        List<Board> taken = List.copyOf(waiting);
        waiting.clear();
        seen.clear();
        return taken;
    }
}
