package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * In which order the parts of a cut follow each other.
 *
 * <p>Where a rip must leave one of its sides within the fence's reach, no two parts of a strip can be larger than that, and everything
 * else must be ripped off before the one that is. A rest behind it that is too wide itself is ripped off in steps, first.
 *
 * @param movable true if parts may change their order, so that all rest comes to lie at the end
 * @param ascending true if smaller parts must come first (limits that depend on the order of the cuts)
 * @param reach most padded extent of a part next to the fence; {@link Long#MAX_VALUE} where any will do
 * @param lastReach the same for what is at the board's far edge
 */
record PartOrder(boolean movable, boolean ascending, long reach, long lastReach) {

    /** Parts stay where they are. */
    static final PartOrder FIXED = new PartOrder(false, false, Long.MAX_VALUE, Long.MAX_VALUE);
    /** Only the rest goes to the end. */
    static final PartOrder FREE = new PartOrder(true, false, Long.MAX_VALUE, Long.MAX_VALUE);

    /** The parts in this order, rests merged where nothing speaks against it. */
    List<Cell> tidy(boolean crosscut, List<Cell> parts) {
        return movable ? restLast(crosscut, parts) : restMerged(crosscut, parts);
    }

    /** True if a split has a part beyond the fence, so that all others must be within its reach. */
    boolean crowds(Cell split) {
        boolean crowds = false;
        for (int i = 0; i < split.parts.length && !split.crosscut && reach < Long.MAX_VALUE; i++) {
            crowds |= !split.parts[i].isRest() && split.parts[i].width > reach;
        }
        return crowds;
    }

    private List<Cell> restLast(boolean crosscut, List<Cell> parts) {
        List<Cell> tidy = new ArrayList<>(parts.size());
        long rest = 0;
        long across = 0;
        for (Cell part : parts) {
            if (part.isRest()) {
                rest += part.along(crosscut);
                across = part.along(!crosscut);
            } else {
                tidy.add(part);
            }
        }
        if (ascending) {
            tidy.sort(Comparator.comparingLong(part -> part.along(crosscut)));
        }
        if (rest > 0) {
            if (!crosscut
                    && reach > 0
                    && !tidy.isEmpty()
                    && tidy.get(tidy.size() - 1).along(false) > reach) {
                int largest = tidy.size() - 1;
                for (; rest > lastReach && rest > 0; rest -= Math.min(rest, reach)) {
                    tidy.add(largest++, Cell.rest(across, Math.min(rest, reach)));
                }
            }
            if (rest > 0) {
                tidy.add(crosscut ? Cell.rest(rest, across) : Cell.rest(across, rest));
            }
        }
        return tidy;
    }

    private static List<Cell> restMerged(boolean crosscut, List<Cell> parts) {
        List<Cell> tidy = new ArrayList<>(parts.size());
        for (Cell part : parts) {
            int last = tidy.size() - 1;
            if (part.isRest() && last >= 0 && tidy.get(last).isRest()) {
                Cell before = tidy.get(last);
                tidy.set(
                        last,
                        crosscut
                                ? Cell.rest(before.length + part.length, part.width)
                                : Cell.rest(part.length, before.width + part.width));
            } else {
                tidy.add(part);
            }
        }
        return tidy;
    }
}
