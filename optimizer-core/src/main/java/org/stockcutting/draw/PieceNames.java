package org.stockcutting.draw;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.job.Job;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.StepKind;
import org.stockcutting.report.ChalkMarks;

/** How a placed piece is called on paper: part, number, and which stave or ply of it. */
public final class PieceNames {

    /** Ranges of numbers that still fit in a label; the rest stands in the legend. */
    private static final int SHOWN_RANGES = 3;

    private final Job job;
    private final ChalkMarks marks;

    public PieceNames(Job job) {
        this.job = job;
        marks = new ChalkMarks(job);
    }

    /** Part and number: {@code rail #1}, {@code top #2 stave 3}, on equal boards {@code rail #1, 3, 5}, and gangs each by itself. */
    public String name(PlacedPiece piece) {
        StringBuilder name =
                new StringBuilder(piece.part()).append(" #").append(shortened(counted(piece, piece.numbers())));
        if (!piece.members().isEmpty()) {
            name.append(' ')
                    .append(memberWord(piece.part()))
                    .append(' ')
                    .append(shortened(ranges(distinct(piece.members()))));
        }
        return name.toString();
    }

    /** The mark to chalk on it: {@code C3}, {@code C3/2}, on equal boards {@code C1-3}, and gangs each by itself: {@code C1-2,3-4}. */
    public String mark(PlacedPiece piece) {
        String letters = marks.of(piece.part());
        String mark = letters + together(counted(piece, distinct(piece.numbers())));
        return piece.members().isEmpty() ? mark : mark + "/" + together(ranges(distinct(piece.members())));
    }

    /** True if {@link #name} leaves numbers out. */
    public boolean isShortened(PlacedPiece piece) {
        return counted(piece, piece.numbers()).size() > SHOWN_RANGES
                || ranges(distinct(piece.members())).size() > SHOWN_RANGES;
    }

    /** Every number, one a board. */
    public String fullNumbers(PlacedPiece piece) {
        StringBuilder text = new StringBuilder();
        List<Integer> numbers = numbers(piece);
        for (int i = 0; i < numbers.size(); i++) {
            text.append(i == 0 ? "" : ", ").append(numbers.get(i));
            if (!piece.members().isEmpty()) {
                text.append(" (").append(memberWord(piece.part())).append(' ');
                text.append(piece.members().get(i)).append(')');
            }
        }
        return text.toString();
    }

    /** Every copy that the piece becomes on any of its boards: all of a gang. */
    public List<Integer> numbers(PlacedPiece piece) {
        return piece.numbers().stream()
                .flatMap(first -> gang(piece.part(), first).stream())
                .toList();
    }

    /** The copies that a step works on: all of a gang until it is cut apart. */
    public List<Integer> numbers(SequenceStep step, SequenceStep.Piece piece) {
        SequenceStep.SawCut cut = step.cut();
        boolean apart =
                step.kind() == StepKind.MITRE || (step.kind() == StepKind.CROSSCUT && cut != null && cut.to() == null);
        boolean nested = job.parts().stream().anyMatch(part -> part.id().equals(piece.part()) && part.isNested());
        if ((apart && !nested) || step.shape() != null) {
            return List.of(piece.number());
        }
        return gang(piece.part(), piece.number());
    }

    /** The copies that one rough piece of a part becomes. */
    public List<Integer> gang(String id, int first) {
        for (Part part : job.parts()) {
            if (part.id().equals(id)) {
                return part.gangFrom(first);
            }
        }
        return List.of(first);
    }

    /** Numbers as ranges: {@code 1-3, 7}. */
    public static String joined(List<Integer> numbers) {
        return String.join(", ", ranges(numbers));
    }

    private String memberWord(String partId) {
        for (Part part : job.parts()) {
            if (part.id().equals(partId) && part.making() instanceof Making.Lamination) {
                return "ply";
            }
        }
        return "stave";
    }

    /** What a piece is on each of its boards; what a gang becomes is one range, or two gangs would look like one of twice as many. */
    private List<String> counted(PlacedPiece piece, List<Integer> numbers) {
        return gang(piece.part(), 1).size() == 1
                ? ranges(numbers)
                : numbers.stream()
                        .map(first -> {
                            List<Integer> gang = gang(piece.part(), first);
                            return first + "-" + gang.get(gang.size() - 1);
                        })
                        .toList();
    }

    private static String together(List<String> ranges) {
        return shortened(ranges).replace(", ", ",");
    }

    private static List<Integer> distinct(List<Integer> numbers) {
        return numbers.stream().distinct().toList();
    }

    private static String shortened(List<String> ranges) {
        if (ranges.size() <= SHOWN_RANGES) {
            return String.join(", ", ranges);
        }
        return ranges.get(0) + ", " + ranges.get(1) + " .. " + ranges.get(ranges.size() - 1);
    }

    private static List<String> ranges(List<Integer> numbers) {
        List<String> ranges = new ArrayList<>();
        int i = 0;
        while (i < numbers.size()) {
            int j = i;
            while (j + 1 < numbers.size() && numbers.get(j + 1).intValue() == numbers.get(j) + 1) {
                j++;
            }
            int first = numbers.get(i);
            int last = numbers.get(j);
            ranges.add(first == last ? "" + first : first + (j == i + 1 ? ", " : "-") + last);
            i = j + 1;
        }
        return ranges;
    }
}
