package org.stockcutting.bench.instances;

import java.util.ArrayList;
import java.util.List;

/** Whole numbers between white space, one after the other, with the line they stand on for what must be said about them. */
final class Numbers {

    /** Larger counts are taken for a damaged file. */
    private static final int MOST = 200_000;

    private record Word(String text, int line) {}

    private final List<Word> words = new ArrayList<>();
    private int next;

    Numbers(String text) {
        int line = 0;
        for (String row : text.split("\\R", -1)) {
            line++;
            for (String word : row.trim().split("\\s+")) {
                if (!word.isEmpty()) {
                    words.add(new Word(word, line));
                }
            }
        }
    }

    /** The next number; at least {@code least}. */
    long number(String what, long least) {
        if (next >= words.size()) {
            throw new InstanceFormatException("the file ends; wanted " + what);
        }
        Word word = words.get(next++);
        long value;
        try {
            value = Long.parseLong(word.text());
        } catch (NumberFormatException e) {
            throw wrong(word, what);
        }
        if (value < least) {
            throw wrong(word, what + " of at least " + least);
        }
        return value;
    }

    /** A size, a capacity. */
    long size(String what) {
        return number(what, 1);
    }

    /** How many lines or pieces follow. */
    int count(String what) {
        long count = number(what, 0);
        if (count > MOST) {
            throw new InstanceFormatException(what + " is " + count + "; wanted at most " + MOST);
        }
        return (int) count;
    }

    /** How many words stand on the line of the next one, from it on. */
    int wordsOnLine() {
        int end = next;
        while (end < words.size() && words.get(end).line() == words.get(next).line()) {
            end++;
        }
        return end - next;
    }

    /** Leaves out the words that stand behind the last number on its line. */
    void skipLine() {
        int line = next == 0 ? 0 : words.get(next - 1).line();
        while (next < words.size() && words.get(next).line() == line) {
            next++;
        }
    }

    /** Says that more stands in the file than belongs there. */
    void end() {
        if (next < words.size()) {
            throw wrong(words.get(next), "the end of the file");
        }
    }

    private static InstanceFormatException wrong(Word word, String wanted) {
        return new InstanceFormatException("line " + word.line() + ": got \"" + word.text() + "\", wanted " + wanted);
    }
}
