package org.stockcutting.wood;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.stockcutting.length.Length;

/**
 * Boards cut as a maker cuts rough lumber: crosscut to sections between the bad spots, each section ripped. The longest piece that is still
 * wanted comes first; the width beside it is filled as full as it can be. Quick and never better than a plan: what is bought by it is enough.
 */
final class RoughSawing {

    /** Steps of search in one section. */
    private static final int STEPS = 300;

    private final List<Want> wants;
    private final long crosscutKerf;
    private final long ripKerf;
    private final long[] left;

    private int steps;
    private long best;
    private final int[] chosen;
    private final int[] bestChosen;

    /**
     * @param wants what is wanted, in any order
     */
    RoughSawing(List<Want> wants, Length crosscutKerf, Length ripKerf) {
        this.wants = wants.stream()
                .sorted(Comparator.comparingLong(Want::length)
                        .thenComparingLong(Want::leastWidth)
                        .reversed()
                        .thenComparing(Want::part))
                .toList();
        this.crosscutKerf = crosscutKerf.nanometres();
        this.ripKerf = ripKerf.nanometres();
        this.left = this.wants.stream().mapToLong(Want::wanted).toArray();
        this.chosen = new int[left.length];
        this.bestChosen = new int[left.length];
    }

    /** True if nothing is wanted any more. */
    boolean isDone() {
        for (long wanted : left) {
            if (wanted > 0) {
                return false;
            }
        }
        return true;
    }

    /** What is still wanted, longest first. */
    List<Want> open() {
        List<Want> open = new ArrayList<>();
        for (int w = 0; w < left.length; w++) {
            if (left[w] > 0) {
                open.add(wants.get(w));
            }
        }
        return open;
    }

    /**
     * Cuts one board.
     *
     * @param width its usable width
     */
    void cut(Line board, long width) {
        List<Line.Span> free = new ArrayList<>(List.of(new Line.Span(board.from(), board.to())));
        for (int w = 0; w < left.length; w++) {
            while (left[w] > 0 && wants.get(w).leastWidth() <= width && section(w, board, width, free)) {
                // As many sections for this kind as the board gives.
            }
        }
    }

    /** One section led by this kind, where the least of a clear stretch is left over; false if there is no room. */
    private boolean section(int lead, Line board, long width, List<Line.Span> free) {
        Want want = wants.get(lead);
        int where = -1;
        long at = 0;
        long least = Long.MAX_VALUE;
        for (Line.Span clear : board.clear(want.woodClass())) {
            for (int i = 0; i < free.size(); i++) {
                long from = Math.max(free.get(i).from(), clear.from());
                long rest = Math.min(free.get(i).to(), clear.to()) - from - want.length();
                if (rest >= 0 && rest < least) {
                    least = rest;
                    where = i;
                    at = from;
                }
            }
        }
        if (where < 0) {
            return false;
        }
        rip(lead, board, at, width);
        Line.Span span = free.remove(where);
        long end = at + want.length() + crosscutKerf;
        if (span.to() > end) {
            free.add(where, new Line.Span(end, span.to()));
        }
        if (at - crosscutKerf > span.from()) {
            free.add(where, new Line.Span(span.from(), at - crosscutKerf));
        }
        return true;
    }

    private void rip(int lead, Line board, long at, long width) {
        List<Integer> fitting = new ArrayList<>();
        int stave = wants.get(lead).isStave() ? lead : -1;
        for (int w = lead; w < left.length; w++) {
            Want want = wants.get(w);
            boolean clear =
                    board.isClear(Length.ofNanometres(at), Length.ofNanometres(want.length()), want.woodClass());
            if (left[w] > 0 && clear && want.isStave()) {
                stave = stave < 0 ? w : stave;
            } else if (left[w] > 0 && clear) {
                fitting.add(w);
            }
        }
        steps = 0;
        Arrays.fill(bestChosen, 0);
        if (stave == lead) {
            best = area(
                    jointed(wants.get(lead), width + ripKerf), wants.get(lead).length());
        } else {
            bestChosen[lead] = 1;
            best = area(wants.get(lead).leastWidth(), wants.get(lead).length());
        }
        fill(fitting, 0, width + ripKerf, 0, lead, stave);
        long room = width + ripKerf;
        for (int w : fitting) {
            left[w] -= bestChosen[w];
            room -= bestChosen[w] * (wants.get(w).leastWidth() + ripKerf);
        }
        if (stave >= 0) {
            left[stave] = Math.max(0, left[stave] - jointed(wants.get(stave), room));
        }
    }

    /** Fills what is left of the width; the last thing in it are staves, which take any width. */
    private void fill(List<Integer> fitting, int index, long room, long area, int lead, int stave) {
        if (index == fitting.size() || ++steps > STEPS) {
            for (int i = index; i < fitting.size(); i++) {
                chosen[fitting.get(i)] = 0;
            }
            long staves = stave < 0 ? 0 : jointed(wants.get(stave), room);
            long filled = area + (stave < 0 ? 0 : area(staves, wants.get(stave).length()));
            boolean led = stave == lead ? staves > 0 : chosen[lead] > 0;
            if (led && filled > best) {
                best = filled;
                System.arraycopy(chosen, 0, bestChosen, 0, chosen.length);
            }
            return;
        }
        int w = fitting.get(index);
        Want want = wants.get(w);
        long each = want.leastWidth() + ripKerf;
        int most = (int) Math.min(left[w], room / each);
        for (int count = most; count >= (w == lead ? 1 : 0); count--) {
            chosen[w] = count;
            fill(
                    fitting,
                    index + 1,
                    room - count * each,
                    area + count * area(want.leastWidth(), want.length()),
                    lead,
                    stave);
        }
        chosen[w] = 0;
    }

    /** In square hundredths of a millimetre: fine enough to compare, and no overflow. */
    private static long area(long width, long length) {
        return width / 10_000 * (length / 10_000);
    }

    /** Jointed width that staves give in so much room, a kerf counted for each. */
    private long jointed(Want stave, long room) {
        long most = stave.mostWidth() + ripKerf;
        long least = stave.leastWidth() + ripKerf;
        long count = Math.max(1, -Math.floorDiv(-room, most));
        long gained = 0;
        for (long n = count; n >= Math.max(1, count - 1); n--) {
            long each = Math.min(most, room / n);
            if (each >= least) {
                gained = Math.max(gained, n * (each - ripKerf - stave.perStave()));
            }
        }
        return gained;
    }
}
