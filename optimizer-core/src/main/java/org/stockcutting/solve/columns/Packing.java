package org.stockcutting.solve.columns;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeMap;

/** Boards cut so far, and what is left to place on what boards are left. Mutable; {@link #copy} branches off. */
final class Packing {

    private final LineModel model;
    final int[] left;
    final int[] boards;
    final List<Pattern> patterns;
    final List<Integer> copies;
    long cost;

    Packing(LineModel model) {
        this.model = model;
        this.left = model.demands();
        int need = 0;
        for (int demand : left) {
            need = (int) Math.min(Integer.MAX_VALUE / 2, (long) need + demand);
        }
        int most = need;
        this.boards = model.lines.stream().mapToInt(l -> l.copies(most)).toArray();
        this.patterns = new ArrayList<>();
        this.copies = new ArrayList<>();
    }

    private Packing(Packing other) {
        this.model = other.model;
        this.left = other.left.clone();
        this.boards = other.boards.clone();
        this.patterns = new ArrayList<>(other.patterns);
        this.copies = new ArrayList<>(other.copies);
        this.cost = other.cost;
    }

    Packing copy() {
        return new Packing(this);
    }

    /** Cuts a pattern so often; it must fit into what is left. */
    void use(Pattern pattern, int times) {
        patterns.add(pattern);
        copies.add(times);
        cost += times * pattern.cost();
        boards[pattern.line()] -= times;
        for (int i = 0; i < pattern.units().length; i++) {
            left[pattern.units()[i]] -= times * pattern.counts()[i];
        }
    }

    Unit unit(int number) {
        return model.units.get(number);
    }

    boolean isComplete() {
        for (int l : left) {
            if (l > 0) {
                return false;
            }
        }
        return true;
    }

    long unplacedWeight() {
        long weight = 0;
        for (int u = 0; u < left.length; u++) {
            weight += left[u] * model.units.get(u).weight();
        }
        return weight;
    }

    boolean isBetterThan(Packing other) {
        long mine = unplacedWeight();
        long theirs = other.unplacedWeight();
        return mine != theirs ? mine < theirs : cost < other.cost;
    }

    /** The same pieces, each board exchanged for the cheapest one left that holds them. */
    Packing onCheapestBoards() {
        Packing result = new Packing(model);
        System.arraycopy(boards, 0, result.boards, 0, boards.length);
        List<Pattern> wanted = new ArrayList<>();
        for (int i = 0; i < patterns.size(); i++) {
            for (int c = 0; c < copies.get(i); c++) {
                wanted.add(patterns.get(i));
            }
        }
        for (Pattern pattern : wanted) {
            Pattern cheapest = pattern;
            result.boards[pattern.line()]++;
            for (Line line : model.lines) {
                Pattern moved = result.boards[line.index] > 0 && !line.hasZones ? moved(pattern, line) : pattern;
                if (moved.cost() < cheapest.cost()) {
                    cheapest = moved;
                }
            }
            result.use(cheapest, 1);
        }
        return result;
    }

    private Pattern moved(Pattern pattern, Line line) {
        if (line.index == pattern.line() || line.stock.cost() >= pattern.cost() && line.stock.offcutValue() == 0) {
            return pattern;
        }
        for (int unit : pattern.units()) {
            if (!model.takes[line.index][unit]) {
                return pattern;
            }
        }
        if (model.size(pattern) > line.capacity) {
            return pattern;
        }
        TreeMap<Integer, Integer> counts = new TreeMap<>();
        for (int i = 0; i < pattern.units().length; i++) {
            counts.put(pattern.units()[i], pattern.counts()[i]);
        }
        Pattern moved = model.follow(line, counts);
        return Arrays.equals(moved.counts(), pattern.counts()) ? moved : pattern;
    }
}
