package org.stockcutting.bench.peers;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.stockcutting.solve.instance.Answer;

/** Filled boards, and what they come to. */
record Load(List<Fill> boards, int missing) {

    Load {
        boards = List.copyOf(boards);
    }

    long cost() {
        return boards.stream().mapToLong(Fill::cost).sum();
    }

    /** More placed first, then less cost. */
    boolean isBetterThan(Load other) {
        return missing != other.missing ? missing < other.missing : cost() < other.cost();
    }

    boolean isComplete() {
        return missing == 0;
    }

    List<Answer.PatternUse> uses() {
        return uses(boards);
    }

    /** Equal boards become one use, in order of stock. */
    static List<Answer.PatternUse> uses(List<? extends Fill> boards) {
        Map<Answer.PatternUse, Integer> copies = new LinkedHashMap<>();
        boards.stream()
                .sorted((a, b) -> Integer.compare(a.stock, b.stock))
                .forEach(board -> copies.merge(new Answer.PatternUse(board.stock, 1, board.layout()), 1, Integer::sum));
        return copies.entrySet().stream()
                .map(e -> new Answer.PatternUse(
                        e.getKey().stock(), e.getValue(), e.getKey().layout()))
                .toList();
    }
}
