package org.stockcutting.job;

import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.stockcutting.material.GradeTable;
import org.stockcutting.part.Part;
import org.stockcutting.stock.RandomBoards;
import org.stockcutting.stock.StockItem;

/** Reviews names of grades: yards have their own, so a name is good if the table of grades knows it or some stock of the job has it. */
final class GradeReview {

    private final Findings findings;
    private final Set<String> known;

    GradeReview(Job job, Findings findings) {
        this.findings = findings;
        this.known = Stream.concat(
                        Stream.concat(job.forSale().stream(), job.onHand().stream())
                                .map(StockItem::grade),
                        job.random().stream().map(RandomBoards::grade))
                .filter(grade -> grade != null)
                .collect(Collectors.toCollection(TreeSet::new));
        known.addAll(GradeTable.standard().names());
    }

    /** Grades that a part takes. */
    void part(String at, Part part) {
        for (String grade : part.selection().grades()) {
            if (grade.contains(";")) {
                findings.add(
                        at + "/grades",
                        FaultCode.BAD_CHARACTER,
                        grade,
                        "a name without semicolons",
                        "The grade \"" + grade
                                + "\" has a semicolon, which stands between grades in a table; give it another name.");
            }
            name(at + "/grades", grade);
        }
    }

    /** One name of a grade; what is null says nothing. */
    void name(String pointer, @Nullable String grade) {
        findings.text(pointer, grade, JobReview.LONGEST_NAME, false);
        if (grade == null || grade.isBlank() || known.contains(grade)) {
            return;
        }
        findings.add(
                pointer,
                FaultCode.UNKNOWN_GRADE,
                grade,
                "one of " + String.join(", ", known),
                "No stock of the job is of grade \"" + grade
                        + "\", and the table of grades has no such name; correct it, or give"
                        + " that grade to the stock that has it.");
    }
}
