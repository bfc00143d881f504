package org.stockcutting.solve;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.job.Job;
import org.stockcutting.job.Rule;
import org.stockcutting.job.Rules;
import org.stockcutting.pattern.fit.Fit;
import org.stockcutting.stock.StockItem;

/** Splits a job into independent components by union-find; pieces that fit nothing stand alone without stock. */
public final class ComponentSplitter {

    private final List<RoughPiece> pieces;
    private final List<StockItem> stock;
    private final int[] parent;

    private ComponentSplitter(List<RoughPiece> pieces, List<StockItem> stock) {
        this.pieces = pieces;
        this.stock = stock;
        this.parent = new int[pieces.size() + stock.size()];
        for (int i = 0; i < parent.length; i++) {
            parent[i] = i;
        }
    }

    /** Components in the order of their first piece; stock that nothing fits is left out. */
    public static List<Component> split(Job job, List<RoughPiece> pieces, List<StockItem> stock) {
        ComponentSplitter splitter = new ComponentSplitter(pieces, stock);
        splitter.joinByFit(new Fit(job.shop()));
        splitter.joinByRule(Rules.of(job));
        return splitter.collect();
    }

    private void joinByFit(Fit fit) {
        for (int p = 0; p < pieces.size(); p++) {
            RoughPiece piece = StaveSplits.narrowest(pieces.get(p));
            for (int s = 0; s < stock.size(); s++) {
                if (root(p) != root(pieces.size() + s)
                        && fit.ways(piece, stock.get(s)).any()) {
                    join(p, pieces.size() + s);
                }
            }
        }
    }

    /** Parts of one rule are planned together even where no stock serves them both: the rule then says what is wrong. */
    private void joinByRule(List<Rule> rules) {
        for (Rule rule : rules) {
            int first = -1;
            for (int p = 0; p < pieces.size(); p++) {
                if (rule.parts().contains(pieces.get(p).part().id())) {
                    first = first < 0 ? p : join(first, p);
                }
            }
        }
    }

    private int join(int a, int b) {
        parent[root(b)] = root(a);
        return root(a);
    }

    private int root(int node) {
        int at = node;
        while (parent[at] != at) {
            parent[at] = parent[parent[at]];
            at = parent[at];
        }
        return at;
    }

    private List<Component> collect() {
        TreeMap<Integer, List<RoughPiece>> byRoot = new TreeMap<>();
        List<Integer> order = new ArrayList<>();
        for (int p = 0; p < pieces.size(); p++) {
            int root = root(p);
            if (!byRoot.containsKey(root)) {
                order.add(root);
            }
            byRoot.computeIfAbsent(root, key -> new ArrayList<>()).add(pieces.get(p));
        }
        List<Component> components = new ArrayList<>();
        for (int root : order) {
            List<StockItem> own = new ArrayList<>();
            for (int s = 0; s < stock.size(); s++) {
                if (root(pieces.size() + s) == root) {
                    own.add(stock.get(s));
                }
            }
            components.add(new Component(byRoot.getOrDefault(root, List.of()), own));
        }
        return components;
    }
}
