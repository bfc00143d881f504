package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.solve.instance.Instance;

/** Up to a handful of single pieces and their subsets as bit masks; equal pieces are taken in order, so that no subset occurs twice. */
final class Pieces {

    private final Model model;
    private final int[] types;
    private final boolean[] canonical;

    Pieces(Model model) {
        this.model = model;
        this.types = typesOf(model);
        this.canonical = new boolean[1 << types.length];
        for (int mask = 0; mask < canonical.length; mask++) {
            canonical[mask] = isInOrder(mask);
        }
    }

    private static int[] typesOf(Model model) {
        List<Integer> types = new ArrayList<>();
        for (int t = 0; t < model.types; t++) {
            for (int n = 0; n < model.item(t).demand() && model.hasPlace(t); n++) {
                types.add(t);
            }
        }
        return types.stream().mapToInt(Integer::intValue).toArray();
    }

    /** How many pieces a model has that can be placed at all, no further counted than the limit + 1. */
    static int count(Model model, int limit) {
        int count = 0;
        for (int t = 0; t < model.types && count <= limit; t++) {
            count += model.hasPlace(t) ? Math.min(limit + 1, model.item(t).demand()) : 0;
        }
        return count;
    }

    private boolean isInOrder(int mask) {
        for (int i = 1; i < types.length; i++) {
            if (types[i] == types[i - 1] && has(mask, i) && !has(mask, i - 1)) {
                return false;
            }
        }
        return true;
    }

    int all() {
        return (1 << types.length) - 1;
    }

    int size() {
        return types.length;
    }

    int type(int i) {
        return types[i];
    }

    static boolean has(int mask, int i) {
        return (mask >> i & 1) != 0;
    }

    /** True if the mask is the one that stands for its pieces by type. */
    boolean isCanonical(int mask) {
        return canonical[mask];
    }

    /** The mask that stands for the same pieces by type. */
    int canonical(int mask) {
        int result = 0;
        int start = 0;
        for (int i = 1; i <= types.length; i++) {
            if (i == types.length || types[i] != types[start]) {
                int many = Integer.bitCount(mask >> start & ((1 << (i - start)) - 1));
                result |= ((1 << many) - 1) << start;
                start = i;
            }
        }
        return result;
    }

    long weight(int mask) {
        long weight = 0;
        for (int i = 0; i < types.length; i++) {
            weight += has(mask, i) ? model.item(types[i]).weight() : 0;
        }
        return weight;
    }

    /** True if sets and the most per board allow exactly these pieces on one board. */
    boolean mayShareBoard(int mask) {
        int[] counts = new int[model.types];
        for (int i = 0; i < types.length; i++) {
            counts[types[i]] += has(mask, i) ? 1 : 0;
        }
        for (int t = 0; t < model.types; t++) {
            if (counts[t] > model.item(t).perBoard()) {
                return false;
            }
        }
        for (Instance.Group group : model.instance.groups()) {
            int sets = counts[group.items().get(0)] / group.perSet().get(0);
            for (int i = 0; i < group.items().size(); i++) {
                if (counts[group.items().get(i)] != sets * group.perSet().get(i)) {
                    return false;
                }
            }
        }
        return true;
    }
}
