package org.stockcutting.http.print;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.stockcutting.draw.PrintedLengths;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.plan.Choice;
import org.stockcutting.plan.Comparison;

/** The table of a comparison as words and figures, for the terminal and the page alike. */
final class ComparisonRows {

    /** One avoirdupois pound is exactly 453.59237 g (NIST Handbook 44, appendix C). */
    private static final BigDecimal POUND = new BigDecimal("453.59237");

    private static final BigDecimal KILOGRAM = BigDecimal.valueOf(1_000);

    private final Job job;
    private final Amounts amounts;
    private final PrintedLengths lengths;

    ComparisonRows(Job job) {
        this.job = job;
        this.amounts = new Amounts(job.writing());
        this.lengths = new PrintedLengths(job.writing());
    }

    List<String> head() {
        String value = switch (job.goal()) {
            case COST -> "cost";
            case BOARDS -> "boards";
            case WASTE -> "waste";
        };
        List<String> head = new ArrayList<>(List.of("what can be bought", value, "not under"));
        if (job.goal() != Goal.COST) {
            head.add("cost");
        }
        head.addAll(List.of("to buy", "set-ups", "yield", "weight", "longest", ""));
        return head;
    }

    /** One entry a column: true for figures. */
    List<Boolean> right() {
        return IntStream.range(0, head().size())
                .mapToObj(column -> column > 0 && column < head().size() - 1)
                .toList();
    }

    /** Complete choices, the best first. */
    List<List<String>> complete(Comparison.Section section) {
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < section.choices().size(); i++) {
            if (section.choices().get(i).isComplete()) {
                order.add(i);
            }
        }
        order.sort(Comparator.comparing(
                        (Integer i) -> section.choices().get(i).objective().value())
                .thenComparing(i -> i));
        return order.stream().map(i -> row(section, i)).toList();
    }

    /** Names of choices that leave parts out. */
    List<String> incomplete(Comparison.Section section) {
        return section.choices().stream()
                .filter(choice -> !choice.isComplete())
                .map(choice -> name(section, choice))
                .toList();
    }

    String name(Comparison.Section section, Choice choice) {
        if (choice.stock().isEmpty()) {
            return "nothing";
        }
        boolean all = choice == section.allTogether() && choice.stock().size() > 2;
        return all ? "all " + choice.stock().size() : String.join(" + ", choice.stock());
    }

    private List<String> row(Comparison.Section section, int index) {
        Choice choice = section.choices().get(index);
        List<String> row = new ArrayList<>();
        row.add(name(section, choice));
        row.add(amounts.value(job.goal(), choice.objective().value()));
        row.add(amounts.bound(job.goal(), choice.objective().bound()));
        if (job.goal() != Goal.COST) {
            row.add(choice.cost() == null ? "-" : amounts.money(choice.cost()));
        }
        row.add(Integer.toString(choice.boards()));
        row.add(Integer.toString(choice.setUps()));
        row.add(amounts.decimal(choice.yield().ratio().movePointRight(2).setScale(1, RoundingMode.DOWN)) + "%");
        row.add(weight(choice));
        row.add(choice.longest() == null ? "-" : lengths.part(choice.longest()) + " " + lengths.unit());
        boolean others = section.choices().stream().filter(Choice::isComplete).count() > 1;
        row.add(others && section.front().contains(index) ? "*" : "");
        return row;
    }

    private String weight(Choice choice) {
        if (choice.weightGrams() == null) {
            return "-";
        }
        boolean imperial = job.writing().unit().isImperial();
        BigDecimal weight =
                BigDecimal.valueOf(choice.weightGrams()).divide(imperial ? POUND : KILOGRAM, 0, RoundingMode.UP);
        return weight.toPlainString() + (imperial ? " lb" : " kg");
    }
}
