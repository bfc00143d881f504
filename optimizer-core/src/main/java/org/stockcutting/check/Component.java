package org.stockcutting.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;

/**
 * Parts and stock that have to do with each other: a connected component of "this part can come from this board", zones and saws
 * aside. Plans of different components never touch, so their bounds add up.
 *
 * @param boards by id
 * @param roughs by part id
 */
record Component(List<Board> boards, List<Rough> roughs) {

    /** All components that have stock, by their first stock id. */
    static List<Component> of(Facts facts) {
        TreeMap<String, Board> boards = new TreeMap<>(facts.boards());
        TreeMap<String, Rough> roughs = new TreeMap<>(facts.roughs());
        List<Component> components = new ArrayList<>();
        while (!boards.isEmpty()) {
            Board seed = boards.pollFirstEntry().getValue();
            Component component = grow(seed, boards, roughs, facts);
            if (!component.roughs.isEmpty()) {
                components.add(component);
            }
        }
        return components;
    }

    private static Component grow(
            Board seed, TreeMap<String, Board> boards, TreeMap<String, Rough> roughs, Facts facts) {
        TreeMap<String, Board> mine = new TreeMap<>();
        TreeMap<String, Rough> parts = new TreeMap<>();
        List<Board> open = new ArrayList<>(List.of(seed));
        while (!open.isEmpty()) {
            Board board = open.remove(open.size() - 1);
            mine.put(board.id(), board);
            for (Rough rough :
                    take(roughs, r -> Fit.anyhow(r, board, facts.job().shop()))) {
                parts.put(rough.part().id(), rough);
                open.addAll(take(boards, b -> Fit.anyhow(rough, b, facts.job().shop())));
            }
        }
        return new Component(List.copyOf(mine.values()), List.copyOf(parts.values()));
    }

    private static <T> List<T> take(TreeMap<String, T> from, Predicate<T> wanted) {
        List<T> taken = from.values().stream().filter(wanted).toList();
        from.values().removeAll(Set.copyOf(taken));
        return taken;
    }

    List<String> ids() {
        return boards.stream().map(Board::id).toList();
    }

    Set<String> parts() {
        Set<String> ids = new TreeSet<>();
        roughs.forEach(rough -> ids.add(rough.part().id()));
        return ids;
    }
}
