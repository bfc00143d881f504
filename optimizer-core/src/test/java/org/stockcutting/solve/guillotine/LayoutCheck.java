package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.Region;
import org.stockcutting.solve.instance.StockType;

/**
 * Checks an answer by walking its regions in real coordinates. Shares no code with the engine. A region at the usable end counts the
 * raw end behind it for upper limits and not for the least piece, as the raw end may be sawn off earlier or later.
 */
final class LayoutCheck {

    private final Instance instance;
    private final StockType stock;
    private final List<Region.Item> items = new ArrayList<>();
    private final List<String> faults = new ArrayList<>();

    private LayoutCheck(Instance instance, StockType stock) {
        this.instance = instance;
        this.stock = stock;
    }

    /** All that is wrong with an answer, empty if nothing is. */
    static List<String> faults(Instance instance, Answer answer) {
        List<String> faults = new ArrayList<>();
        int[] placed = new int[instance.items().size()];
        int[] used = new int[instance.stocks().size()];
        for (Answer.PatternUse use : answer.uses()) {
            LayoutCheck check = new LayoutCheck(instance, instance.stocks().get(use.stock()));
            check.layout(use.layout());
            faults.addAll(check.faults);
            used[use.stock()] += use.copies();
            check.items.forEach(item -> placed[item.item()] += use.copies());
        }
        for (int s = 0; s < used.length; s++) {
            int copies = instance.stocks().get(s).copies();
            if (copies != StockType.UNLIMITED && used[s] > copies) {
                faults.add("stock " + s + " used " + used[s] + " of " + copies);
            }
        }
        for (int t = 0; t < placed.length; t++) {
            int demand = instance.items().get(t).demand();
            if (placed[t] + answer.unplaced().get(t) != demand
                    || answer.unplaced().get(t) < 0) {
                faults.add("item " + t + " placed " + placed[t] + " missing "
                        + answer.unplaced().get(t));
            }
        }
        return faults;
    }

    static long cost(Instance instance, Answer answer) {
        return answer.uses().stream()
                .mapToLong(
                        use -> use.copies() * instance.stocks().get(use.stock()).cost())
                .sum();
    }

    static long weightMissing(Instance instance, Answer answer) {
        long weight = 0;
        for (int t = 0; t < instance.items().size(); t++) {
            weight += answer.unplaced().get(t) * instance.items().get(t).weight();
        }
        return weight;
    }

    private void layout(Region root) {
        if (root.x() != 0 || root.y() != 0 || root.length() != stock.length() || root.width() != stock.width()) {
            faults.add("root is not the usable rectangle: " + root);
        }
        walk(root, null, 0);
        counts();
        for (int i = 0; i < items.size(); i++) {
            for (int j = 0; j < i; j++) {
                apart(items.get(i), items.get(j));
            }
        }
    }

    private void apart(Region.Item a, Region.Item b) {
        boolean x = a.x() + a.length() + instance.crosscutKerf() <= b.x()
                || b.x() + b.length() + instance.crosscutKerf() <= a.x();
        boolean y = a.y() + a.width() + instance.ripKerf() <= b.y() || b.y() + b.width() + instance.ripKerf() <= a.y();
        if (!x && !y) {
            faults.add("no kerf between " + a + " and " + b);
        }
    }

    private void counts() {
        int[] counts = new int[instance.items().size()];
        items.forEach(item -> counts[item.item()]++);
        for (int t = 0; t < counts.length; t++) {
            if (counts[t] > instance.items().get(t).perBoard()) {
                faults.add("item " + t + " is " + counts[t] + " times on a board");
            }
        }
        for (Instance.Group group : instance.groups()) {
            int sets = counts[group.items().get(0)] / group.perSet().get(0);
            for (int i = 0; i < group.items().size(); i++) {
                if (counts[group.items().get(i)] != sets * group.perSet().get(i)) {
                    faults.add("broken set " + group);
                }
            }
        }
    }

    private void walk(Region region, @Nullable Boolean direction, int stages) {
        if (region instanceof Region.Item item) {
            item(item);
            return;
        }
        Region.Split split = (Region.Split) region;
        boolean crosscut = split.crosscut();
        int stage = direction != null && direction == crosscut ? stages : stages + 1;
        stage(crosscut, direction, stage, split);
        long at = crosscut ? split.x() : split.y();
        long end = at + (crosscut ? split.length() : split.width());
        long kerf = crosscut ? instance.crosscutKerf() : instance.ripKerf();
        for (Region part : split.parts()) {
            long from = crosscut ? part.x() : part.y();
            long to = from + (crosscut ? part.length() : part.width());
            if (from < at || to > end) {
                faults.add("part leaves its place: " + part + " in " + split);
            }
            if (from > at) {
                cut(split, crosscut ? at : lastStrip(split, at, from, end), from - kerf, end);
            }
            if (to < end) {
                cut(split, from, to, end);
            }
            at = to + kerf;
            across(split, part, crosscut, stage);
        }
    }

    /** What lies free in front of a part may be ripped off in strips, each as wide as the fence reaches; where the last one begins. */
    private long lastStrip(Region.Split split, long at, long from, long end) {
        long reach = instance.limits().ripCapacity();
        long begin = at;
        while (reach > 0 && from - instance.ripKerf() - begin > reach && end - from > reach) {
            long strip = Math.min(begin + reach, from - instance.ripKerf());
            cut(split, begin, strip, end);
            // The last two passes may overlap.
            begin = Math.min(strip + instance.ripKerf(), from - instance.ripKerf());
        }
        return begin;
    }

    /** A part that is smaller than its strip needs a further cut along the other axis. */
    private void across(Region.Split split, Region part, boolean crosscut, int stage) {
        boolean smaller = crosscut
                ? part.width() < split.width() || part.y() != split.y()
                : part.length() < split.length() || part.x() != split.x();
        if (smaller) {
            Region.Split extra = crosscut
                    ? new Region.Split(false, part.x(), split.y(), part.length(), split.width(), List.of(part))
                    : new Region.Split(true, split.x(), part.y(), split.length(), part.width(), List.of(part));
            walk(extra, crosscut, stage);
        } else {
            walk(part, crosscut, stage);
        }
    }

    private void stage(boolean crosscut, @Nullable Boolean direction, int stage, Region.Split split) {
        Instance.Limits limits = instance.limits();
        Boolean first = limits.firstCut();
        if (stage > limits.stages()) {
            faults.add("stage " + stage + ": " + split);
        }
        if (direction == null && first != null && first != crosscut) {
            faults.add("first cut: " + split);
        }
    }

    private void cut(Region.Split node, long at, long slot, long end) {
        Instance.Limits limits = instance.limits();
        long kerf = node.crosscut() ? instance.crosscutKerf() : instance.ripKerf();
        boolean lastX = node.x() + node.length() == stock.length();
        boolean lastY = node.y() + node.width() == stock.width();
        if (node.crosscut()) {
            require(end - at >= limits.minimumPiece(), "short piece is crosscut", node);
            require(
                    node.width() + (lastY ? stock.rawFarEdge() : 0) <= limits.crosscutCapacity(),
                    "wide crosscut",
                    node);
            metal(node, slot, slot + kerf, node.y(), node.y() + node.width());
        } else {
            require(node.length() >= limits.minimumPiece(), "short piece is ripped", node);
            require(node.length() + (lastX ? stock.rawEnd() : 0) <= limits.longestRip(), "long rip", node);
            long behind = Math.max(0, end + (lastY ? stock.rawFarEdge() : 0) - slot - kerf);
            require(Math.min(slot - at, behind) <= limits.ripCapacity(), "beyond the fence", node);
            metal(node, node.x(), node.x() + node.length(), slot, slot + kerf);
        }
    }

    private void metal(Region.Split node, long x0, long x1, long y0, long y1) {
        for (StockType.ZoneRect zone : stock.zones()) {
            require(
                    !zone.metal() || x0 >= zone.x1() || x1 <= zone.x0() || y0 >= zone.y1() || y1 <= zone.y0(),
                    "cut through metal",
                    node);
        }
    }

    private void require(boolean holds, String fault, Region where) {
        if (!holds) {
            faults.add(fault + ": " + where);
        }
    }

    private void item(Region.Item item) {
        items.add(item);
        ItemType type = instance.items().get(item.item());
        StockType.Placing place = stock.places().get(item.item());
        require(item.turned() ? place.turned() : place.straight(), "lies as it may not", item);
        long width = type.width() == 0 ? stock.width() : type.width();
        require(item.length() == (item.turned() ? width : type.length()), "length", item);
        require(item.width() == (item.turned() ? type.length() : width), "width", item);
        require(
                item.x() >= 0
                        && item.y() >= 0
                        && item.x() + item.length() <= stock.length()
                        && item.y() + item.width() <= stock.width(),
                "outside",
                item);
        for (StockType.ZoneRect zone : stock.zones()) {
            boolean accepted = !zone.metal() && zone.severity() < place.woodClass();
            boolean overlap = item.x() < zone.x1()
                    && zone.x0() < item.x() + item.length()
                    && item.y() < zone.y1()
                    && zone.y0() < item.y() + item.width();
            require(accepted || !overlap, "covers a zone", item);
        }
        rawEnds(item);
    }

    /** The raw end behind a piece at the usable end is sawn off: a cut like others, only the fence doesn't matter. */
    private void rawEnds(Region.Item item) {
        Instance.Limits limits = instance.limits();
        long rawX = item.x() + item.length() == stock.length() ? stock.rawEnd() : 0;
        long rawY = item.y() + item.width() == stock.width() ? stock.rawFarEdge() : 0;
        if (rawX > 0) {
            require(item.width() + rawY <= limits.crosscutCapacity(), "wide trim", item);
            require(item.length() + rawX >= limits.minimumPiece(), "short trim", item);
        }
        if (rawY > 0) {
            require(item.length() + rawX <= limits.longestRip(), "long trim", item);
            require(item.length() >= limits.minimumPiece(), "short piece is trimmed", item);
        }
    }
}
