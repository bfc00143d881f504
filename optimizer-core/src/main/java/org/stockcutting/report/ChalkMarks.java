package org.stockcutting.report;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.stockcutting.job.Job;
import org.stockcutting.part.Part;

/**
 * Short marks to chalk on wood: a letter or two for every line of the parts list, then the number of the piece, {@code C3}; a stave or a
 * ply has its own number behind a stroke, {@code C3/2}. A part whose id is already one or two capital letters keeps it. I and O are left
 * out, since on wood they look like 1 and 0 (common practice, no source).
 */
public final class ChalkMarks {

    private static final String LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ";
    private static final Pattern IS_MARK = Pattern.compile("[A-Z]{1,2}");

    private final Map<String, String> letters = new LinkedHashMap<>();

    /** Marks for the parts of a job, dealt in the order of its parts list. */
    public ChalkMarks(Job job) {
        Set<String> taken = new HashSet<>();
        for (Part part : job.parts()) {
            if (IS_MARK.matcher(part.id()).matches()) {
                taken.add(part.id());
            }
        }
        int next = 0;
        for (Part part : job.parts()) {
            String mark = part.id();
            if (!IS_MARK.matcher(mark).matches()) {
                do {
                    mark = letters(next++);
                } while (!taken.add(mark));
            }
            letters.put(part.id(), mark);
        }
    }

    /**
     * The letters of a part.
     *
     * @throws IllegalArgumentException if the job has no such part
     */
    public String of(String part) {
        String mark = letters.get(part);
        if (mark == null) {
            throw new IllegalArgumentException("the job has no part called " + part);
        }
        return mark;
    }

    /** The mark of one piece; {@code member} is the stave or ply, or 0 for a whole part. */
    public String of(String part, int number, int member) {
        return of(part) + number + (member == 0 ? "" : "/" + member);
    }

    /** The mark of a piece that becomes several parts: {@code C4-6}. */
    public String of(String part, List<Integer> numbers) {
        int first = numbers.get(0);
        int last = numbers.get(numbers.size() - 1);
        return of(part) + first + (first == last ? "" : "-" + last);
    }

    /** A to Z, then AA, AB and so on. */
    private static String letters(int index) {
        int base = LETTERS.length();
        StringBuilder mark = new StringBuilder();
        for (int i = index; i >= 0; i = i / base - 1) {
            mark.insert(0, LETTERS.charAt(i % base));
        }
        return mark.toString();
    }
}
