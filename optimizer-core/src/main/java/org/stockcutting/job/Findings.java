package org.stockcutting.job;

import java.util.ArrayList;
import java.util.List;
import java.util.NavigableSet;
import java.util.TreeSet;
import java.util.function.LongFunction;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.length.LengthWriter;

/** Collects what a review finds, and leaves out what only follows from a value that could not be read. */
final class Findings {

    /** One kilometre: far beyond any board, and three of them multiplied, or thousands added, overflow nothing. */
    static final Length LONGEST = Length.ofNanometres(1_000 * LengthUnit.METRE.nanometres());

    private final NavigableSet<String> unreadable;
    private final LengthWriter writer;
    private final List<Fault> faults = new ArrayList<>();

    Findings(Writing writing, Iterable<String> unreadable) {
        this.writer = new LengthWriter(writing.unit(), writing.decimal());
        this.unreadable = new TreeSet<>();
        unreadable.forEach(this.unreadable::add);
    }

    List<Fault> list() {
        return faults.size() <= JobReview.MOST ? List.copyOf(faults) : List.copyOf(faults.subList(0, JobReview.MOST));
    }

    /** The length with its unit, for sentences. */
    String say(Length length) {
        return writer.withUnit(length);
    }

    /**
     * Adds a finding.
     *
     * @param uses further pointers whose values the finding rests on
     */
    void add(String pointer, FaultCode code, String got, String expected, String text, String... uses) {
        if (isUnreadable(pointer)) {
            return;
        }
        for (String use : uses) {
            if (isUnreadable(use)) {
                return;
            }
        }
        faults.add(new Fault(pointer, code.word(), shown(got), expected, text));
    }

    /** True if the value at this pointer, one it is part of, or a part of it could not be read. */
    private boolean isUnreadable(String pointer) {
        if (unreadable.isEmpty()) {
            return false;
        }
        for (int end = pointer.length(); end > 0; end = pointer.lastIndexOf('/', end - 1)) {
            if (unreadable.contains(pointer.substring(0, end))) {
                return true;
            }
        }
        String below = unreadable.higher(pointer + "/");
        return below != null && below.startsWith(pointer + "/");
    }

    void positive(String pointer, @Nullable Length length) {
        if (length == null) {
            return;
        }
        if (!length.isPositive()) {
            add(
                    pointer,
                    FaultCode.NOT_POSITIVE,
                    say(length),
                    "more than 0",
                    "This size is " + say(length) + "; it must be more than 0.");
        }
        notTooLong(pointer, length);
    }

    void notNegative(String pointer, @Nullable Length length) {
        if (length == null) {
            return;
        }
        if (length.isNegative()) {
            add(
                    pointer,
                    FaultCode.NEGATIVE,
                    say(length),
                    "0 or more",
                    "This size is " + say(length) + "; it must be 0 or more.");
        }
        notTooLong(pointer, length);
    }

    private void notTooLong(String pointer, Length length) {
        if (length.isMoreThan(LONGEST)) {
            add(
                    pointer,
                    FaultCode.OUT_OF_RANGE,
                    say(length),
                    "at most " + say(LONGEST),
                    "This size is " + say(length) + "; more than " + say(LONGEST) + " is taken for a slip of the pen.");
        }
    }

    void within(String pointer, @Nullable Number number, long least, long most, LongFunction<String> advice) {
        if (number == null || (number.longValue() >= least && number.longValue() <= most)) {
            return;
        }
        long got = number.longValue();
        FaultCode code = got <= 0 && least == 1
                ? FaultCode.NOT_POSITIVE
                : got < 0 && least == 0 ? FaultCode.NEGATIVE : FaultCode.OUT_OF_RANGE;
        add(pointer, code, Long.toString(got), "from " + least + " to " + most, advice.apply(got));
    }

    /** Names are printed, drawn and written to files: no control characters, no endless ones. */
    void text(String pointer, @Nullable String text, int longest, boolean blankAllowed) {
        if (text == null) {
            return;
        }
        if (text.length() > longest) {
            add(
                    pointer,
                    FaultCode.TOO_LONG,
                    text,
                    "at most " + longest + " characters",
                    "This text has " + text.length() + " characters; at most " + longest + " are taken.");
        }
        if (!blankAllowed && text.isBlank()) {
            add(
                    pointer,
                    FaultCode.BLANK,
                    text,
                    "a name",
                    "This name is empty; give it at least one letter or leave it out.");
        }
        int at = firstBad(text);
        if (at >= 0) {
            String code = String.format("U+%04X", (int) text.charAt(at));
            add(
                    pointer,
                    FaultCode.BAD_CHARACTER,
                    code,
                    "printable characters",
                    "Character " + (at + 1) + " of this text is " + code + ", which cannot be printed; take it out.");
        }
    }

    private static int firstBad(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean paired = Character.isHighSurrogate(c)
                    && i + 1 < text.length()
                    && Character.isLowSurrogate(text.charAt(i + 1));
            if (paired) {
                i++;
            } else if (Character.isISOControl(c) || Character.isSurrogate(c) || c == '\u2028' || c == '\u2029') {
                return i;
            }
        }
        return -1;
    }

    private static String shown(String got) {
        StringBuilder clean = new StringBuilder();
        got.codePoints()
                .limit(JobReview.SHOWN)
                .map(c -> Character.isISOControl(c) || Character.getType(c) == Character.SURROGATE ? '?' : c)
                .forEach(clean::appendCodePoint);
        return got.codePointCount(0, got.length()) > JobReview.SHOWN ? clean + "..." : clean.toString();
    }
}
