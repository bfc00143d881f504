package org.stockcutting.wood;

import java.util.List;
import org.stockcutting.material.WoodClass;

/**
 * A quick answer to "can all these pieces be crosscut from these boards", exact in its positions. {@link Verdict#YES} and
 * {@link Verdict#NO} are certain; for the rest a planner must be asked.
 */
final class QuickCut {

    /** Orders tried before a planner is asked. */
    private static final int TRIES = 24;

    /** What is known after a quick look. */
    enum Verdict {
        YES,
        NO,
        UNKNOWN
    }

    private final List<Slice> slices;
    private final long kerf;
    private final boolean whole;
    private final boolean oneClass;

    /**
     * @param linear true if no piece may turn and every zone covers its board's width: with one piece a slice only lengths count then
     */
    QuickCut(List<Slice> slices, long kerf, boolean linear) {
        this.slices = List.copyOf(slices);
        this.kerf = kerf;
        this.whole = linear && slices.stream().allMatch(Slice::isWhole);
        this.oneClass = slices.stream().map(Slice::woodClass).distinct().count() == 1;
    }

    Verdict decide(List<Line> boards, Noise noise) {
        if (whole && isShort(boards)) {
            return Verdict.NO;
        }
        Bench bench = new Bench(slices, boards, kerf);
        int[] byLength = Orders.byLength(slices);
        int[] byClass = Orders.byClass(slices);
        if (bench.placesAll(byLength) || bench.placesAll(byClass)) {
            return Verdict.YES;
        }
        if (whole && oneClass) {
            Filling filling = new Filling(slices, kerf);
            WoodClass woodClass = slices.get(0).woodClass();
            if (filling.placesAll(boards, woodClass, true) || filling.placesAll(boards, woodClass, false)) {
                return Verdict.YES;
            }
        }
        for (int i = 0; i < TRIES; i++) {
            if (bench.placesAll(Orders.disturbed(i % 2 == 0 ? byLength : byClass, noise))) {
                return Verdict.YES;
            }
        }
        return Verdict.UNKNOWN;
    }

    /** True if the wood cannot suffice: in sum, or for the pieces from some length on, for the pieces of some class and stricter. */
    private boolean isShort(List<Line> boards) {
        for (WoodClass woodClass : WoodClass.values()) {
            List<Slice> strict = slices.stream()
                    .filter(slice -> slice.woodClass().compareTo(woodClass) <= 0)
                    .toList();
            if (!strict.isEmpty() && isShort(boards, woodClass, strict)) {
                return true;
            }
        }
        return false;
    }

    private boolean isShort(List<Line> boards, WoodClass woodClass, List<Slice> strict) {
        long shortest = strict.stream().mapToLong(Slice::length).min().orElse(0);
        long wanted =
                strict.stream().mapToLong(s -> s.demand() * (s.length() + kerf)).sum();
        for (Line board : boards) {
            for (Line.Span span : board.clear(woodClass)) {
                wanted -= span.length() >= shortest ? span.length() + kerf : 0;
            }
        }
        if (wanted > 0) {
            return true;
        }
        return strict.stream().anyMatch(slice -> tooFew(boards, woodClass, strict, slice.length()));
    }

    private boolean tooFew(List<Line> boards, WoodClass woodClass, List<Slice> strict, long length) {
        long wanted = strict.stream()
                .filter(slice -> slice.length() >= length)
                .mapToLong(Slice::demand)
                .sum();
        for (Line board : boards) {
            for (Line.Span span : board.clear(woodClass)) {
                wanted -= (span.length() + kerf) / (length + kerf);
            }
        }
        return wanted > 0;
    }
}
