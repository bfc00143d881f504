package org.stockcutting.part;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;

/**
 * What is done to a part after it has its size, and how exact that is.
 *
 * @param taper how it is tapered, or null
 * @param marks what is marked on it, in the order of the parts list
 * @param fit whether it gets its finished length from the parts list or from the work it goes into
 * @param hand whether it has a mirror image
 * @param ends how both ends are mitred, or null where they are square
 * @param tolerance how much shorter or narrower is acceptable, at least 0: the plan itself never uses it, near misses ask about it
 */
public record Shaping(
        @Nullable Taper taper,
        List<Mark> marks,
        Fit fit,
        Hand hand,
        Length tolerance,
        @Nullable Ends ends) {

    /** Nothing is done to it. */
    public static final Shaping NONE = new Shaping(null, List.of(), Fit.TO_SIZE, Hand.NONE);

    public Shaping {
        marks = List.copyOf(marks);
    }

    /** A part with square ends. */
    public Shaping(@Nullable Taper taper, List<Mark> marks, Fit fit, Hand hand, Length tolerance) {
        this(taper, marks, fit, hand, tolerance, null);
    }

    /** A part whose sizes are what they are. */
    public Shaping(@Nullable Taper taper, List<Mark> marks, Fit fit, Hand hand) {
        this(taper, marks, fit, hand, Length.ZERO);
    }

    /** When a part gets its finished length. */
    public enum Fit {
        /** From the parts list. */
        TO_SIZE("to-size"),
        /** Marked from the work once that stands: no final cut to length is planned. */
        AFTER_ASSEMBLY("after-assembly");

        private final String word;

        Fit(String word) {
            this.word = word;
        }

        /** The word used in documents. */
        public String word() {
            return word;
        }
    }

    /** Which of two mirror images a part is. */
    public enum Hand {
        /** All copies are alike. */
        NONE("none"),
        /** All copies are left ones. */
        LEFT("left"),
        /** All copies are right ones. */
        RIGHT("right"),
        /** Odd numbers are left ones, even numbers right ones. */
        PAIRS("pairs");

        private final String word;

        Hand(String word) {
            this.word = word;
        }

        /** The word used in documents. */
        public String word() {
            return word;
        }

        /** Left or right for a copy; null where all are alike. */
        public @Nullable Hand of(int number) {
            return switch (this) {
                case NONE -> null;
                case LEFT, RIGHT -> this;
                case PAIRS -> number % 2 == 1 ? LEFT : RIGHT;
            };
        }
    }

    /** True if the part is done once it has its size. */
    public boolean isNone() {
        return withTolerance(Length.ZERO).equals(NONE);
    }

    /** The mark farthest from the reference end, to the far side of its bore; zero where none is measured from there. */
    public Length lowestMark() {
        Length lowest = Length.ZERO;
        for (Mark mark : marks) {
            Length end = mark.fromEnd();
            if (end != null) {
                Length bore = mark.bore();
                Length radius = bore == null ? Length.ZERO : Length.ofNanometres((bore.nanometres() + 1) / 2);
                lowest = lowest.max(end.plus(radius));
            }
        }
        return lowest;
    }

    /**
     * Where the taper begins, from the reference end: as it says, else a quarter of the length or just below the lowest mark, whichever
     * is farther down; null where nothing is tapered. Common practice, no source.
     */
    public @Nullable Length taperStart(Length length) {
        if (taper == null) {
            return null;
        }
        Length said = taper.start();
        return said == null ? Length.ofNanometres(length.nanometres() / 4).max(lowestMark()) : said;
    }

    /** The same, tapered another way. */
    public Shaping withTaper(@Nullable Taper other) {
        return new Shaping(other, marks, fit, hand, tolerance, ends);
    }

    /** The same, with other ends. */
    public Shaping withEnds(@Nullable Ends other) {
        return new Shaping(taper, marks, fit, hand, tolerance, other);
    }

    /** The same, of another hand. */
    public Shaping withHand(Hand other) {
        return new Shaping(taper, marks, fit, other, tolerance, ends);
    }

    /** The same, to be that much smaller at most. */
    public Shaping withTolerance(Length other) {
        return new Shaping(taper, marks, fit, hand, other, ends);
    }
}
