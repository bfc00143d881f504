package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.solve.instance.StockType.ZoneRect;

/**
 * What parts of a board with bad zones are worth when a table knows the worth of clear rests: as they are where they are clear, otherwise
 * crosscut at the ends of all their zones, or cut as a tree says.
 */
final class ClearRests {

    private final Model model;
    private final PricingTable clear;
    private final PatternReader reader;
    private final List<ZoneRect> zones;
    /** By zone: the padded end of what ends before it, and where it ends. */
    private final int[] before;

    private final int[] behind;
    private long operations;

    /** @param zones those that matter, by their start */
    ClearRests(Model model, PricingTable clear, List<ZoneRect> zones) {
        this.model = model;
        this.clear = clear;
        this.reader = new PatternReader(clear, true, PartOrder.FREE);
        this.zones = zones;
        this.before =
                zones.stream().mapToInt(zone -> (int) (zone.x0() + model.kerfX)).toArray();
        this.behind = zones.stream().mapToInt(zone -> (int) zone.x1()).toArray();
    }

    /** Operations so far. */
    long operations() {
        return operations;
    }

    /** What a part between these places is worth when cut this way; cuts that lie outside of it are left out. */
    int value(CutTree tree, int x0, int x1, int y0, int y1) {
        CutTree.Cut cut = tree.first();
        if (cut == null) {
            return uncut(x0, x1, y0, y1);
        }
        int at = cut.at();
        if (at <= (cut.crosscut() ? x0 : y0)) {
            return value(cut.behind(), x0, x1, y0, y1);
        }
        if (at >= (cut.crosscut() ? x1 : y1)) {
            return value(cut.before(), x0, x1, y0, y1);
        }
        return cut.crosscut()
                ? value(cut.before(), x0, at, y0, y1) + value(cut.behind(), at, x1, y0, y1)
                : value(cut.before(), x0, x1, y0, at) + value(cut.behind(), x0, x1, at, y1);
    }

    /** What is left of a part when it is crosscut at the ends of all its zones, if it has any. */
    int uncut(int x0, int x1, int y0, int y1) {
        int hit = 0;
        for (int z = 0; z < zones.size(); z++) {
            hit |= isIn(zones.get(z), x0, x1, y0, y1) ? 1 << z : 0;
        }
        operations += 1 + zones.size();
        return uncut(x0, x1, hit, line(y1 - y0));
    }

    /**
     * The same where it is known which zones a part has.
     *
     * @param hit these zones, as bits
     * @param line for the width of the part
     */
    int uncut(int x0, int x1, int hit, int[] line) {
        int from = x0;
        int sum = 0;
        for (int left = hit; left != 0; left &= left - 1) {
            int z = Integer.numberOfTrailingZeros(left);
            sum += before[z] > from ? line[clear.along.before(before[z] - from)] : 0;
            from = Math.max(from, behind[z]);
        }
        return x1 > from ? sum + line[clear.along.before(x1 - from)] : sum;
    }

    /** What clear rests of this width are worth, by the index of their length. */
    int[] line(int width) {
        return clear.line(clear.across.before(width));
    }

    private boolean isIn(ZoneRect zone, int x0, int x1, int y0, int y1) {
        return x0 < zone.x1() && x1 - model.kerfX > zone.x0() && y0 < zone.y1() && y1 - model.kerfY > zone.y0();
    }

    /** The pattern of a part that is cut this way. */
    Cell read(CutTree tree, int x0, int x1, int y0, int y1) {
        CutTree.Cut cut = tree.first();
        if (cut == null) {
            return readUncut(x0, x1, y0, y1);
        }
        int at = cut.at();
        if (at <= (cut.crosscut() ? x0 : y0)) {
            return read(cut.behind(), x0, x1, y0, y1);
        }
        if (at >= (cut.crosscut() ? x1 : y1)) {
            return read(cut.before(), x0, x1, y0, y1);
        }
        List<Cell> parts = cut.crosscut()
                ? List.of(read(cut.before(), x0, at, y0, y1), read(cut.behind(), at, x1, y0, y1))
                : List.of(read(cut.before(), x0, x1, y0, at), read(cut.behind(), x0, x1, at, y1));
        return Cell.join(cut.crosscut(), x1 - x0, y1 - y0, parts, PartOrder.FIXED);
    }

    private Cell readUncut(int x0, int x1, int y0, int y1) {
        List<Cell> parts = new ArrayList<>();
        int width = y1 - y0;
        int from = x0;
        for (int z = 0; z < zones.size(); z++) {
            if (isIn(zones.get(z), x0, x1, y0, y1)) {
                if (before[z] > from) {
                    parts.add(reader.read(width, before[z] - from));
                    from = before[z];
                }
                int to = Math.min(behind[z], x1);
                if (to > from) {
                    parts.add(Cell.rest(to - from, width));
                    from = to;
                }
            }
        }
        if (x1 > from) {
            parts.add(reader.read(width, x1 - from));
        }
        return parts.size() == 1 ? parts.get(0) : Cell.join(true, x1 - x0, width, parts, PartOrder.FIXED);
    }
}
