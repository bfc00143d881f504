package org.stockcutting.solve.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.Region;
import org.stockcutting.solve.instance.StockType;

/**
 * Turns a found plan back into patterns and proves on the way, in plain integers and without the engine, that it keeps every hard rule.
 * Boards come in a canonical order, so that plans that are the same on the bench are the same in the document.
 */
final class Ending {

    private static final Comparator<List<Integer>> BY_ITEMS = (a, b) -> {
        for (int i = 0; i < Math.min(a.size(), b.size()); i++) {
            int order = Integer.compare(a.get(i), b.get(i));
            if (order != 0) {
                return order;
            }
        }
        return Integer.compare(a.size(), b.size());
    };

    private final Instance instance;
    private final StartReader start;

    Ending(Instance instance, StartReader start) {
        this.instance = instance;
        this.start = start;
    }

    /** The plan's patterns, or empty where it breaks a hard rule. */
    Optional<List<Answer.PatternUse>> patterns(BoardPlan plan) {
        TreeMap<Integer, List<Piece>> byBoard = new TreeMap<>();
        plan.pieces()
                .forEach(piece -> byBoard.computeIfAbsent(piece.board().id(), id -> new ArrayList<>())
                        .add(piece));
        TreeMap<Integer, TreeMap<List<Integer>, Integer>> copies = new TreeMap<>();
        long value = 0;
        for (List<Piece> pieces : byBoard.values()) {
            StockFacts facts = pieces.get(0).board().facts();
            Optional<List<Piece>> order = CutOrder.of(facts, pieces);
            if (order.isEmpty() || !keepsRules(facts, pieces)) {
                return Optional.empty();
            }
            value += facts.value(load(facts, pieces));
            List<Integer> items = order.get().stream().map(Piece::item).toList();
            copies.computeIfAbsent(facts.index(), s -> new TreeMap<>(BY_ITEMS)).merge(items, 1, Integer::sum);
        }
        return value > plan.frame().cap() ? Optional.empty() : Optional.of(merge(copies));
    }

    private boolean keepsRules(StockFacts facts, List<Piece> pieces) {
        List<Integer> items = pieces.stream().map(Piece::item).toList();
        Map<Integer, Integer> counts = new HashMap<>();
        items.forEach(item -> counts.merge(item, 1, Integer::sum));
        return facts.overrun(load(facts, pieces)) == 0
                && items.stream().allMatch(facts::takes)
                && pieces.stream().allMatch(piece -> counts.getOrDefault(piece.item(), 0) <= piece.perBoard())
                && start.groups().stream().allMatch(group -> group.misfit(group.count(items)) == 0);
    }

    private static Load load(StockFacts facts, List<Piece> pieces) {
        Load load = Load.EMPTY;
        for (Piece piece : pieces) {
            load = load.plus(piece, facts);
        }
        return load;
    }

    private List<Answer.PatternUse> merge(TreeMap<Integer, TreeMap<List<Integer>, Integer>> copies) {
        List<Answer.PatternUse> uses = new ArrayList<>(start.fixed());
        copies.forEach((stock, patterns) ->
                patterns.forEach((items, count) -> uses.add(new Answer.PatternUse(stock, count, row(stock, items)))));
        uses.sort(Comparator.comparingInt(Answer.PatternUse::stock));
        return uses;
    }

    private Region row(int stock, List<Integer> items) {
        StockType board = instance.stocks().get(stock);
        List<Region> parts = new ArrayList<>();
        long x = 0;
        for (int item : items) {
            ItemType type = instance.items().get(item);
            long width = type.width() == 0 ? board.width() : type.width();
            parts.add(new Region.Item(item, false, x, 0, type.length(), width));
            x += type.length() + instance.crosscutKerf();
        }
        return new Region.Split(true, 0, 0, board.length(), board.width(), parts);
    }
}
