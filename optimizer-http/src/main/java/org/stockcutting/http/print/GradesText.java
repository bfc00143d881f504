package org.stockcutting.http.print;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.stockcutting.job.Job;
import org.stockcutting.wood.Chance;
import org.stockcutting.wood.GradeMixes;

/** What a job costs from each grade and from mixes of them, for a terminal. */
public final class GradesText {

    private static final List<Boolean> RIGHT = List.of(false, true, true, true, true, false);

    private final Amounts amounts;

    public GradesText(Job job) {
        this.amounts = new Amounts(job.writing());
    }

    /** The page. */
    public String print(GradeMixes grades) {
        TextPage page = new TextPage();
        page.wrapped(
                "Grades side by side: an estimate from the knots that are usual in each grade, seed " + grades.seed()
                        + ". \"To be sure\" buys enough to finish with a chance of " + percent(grades.wanted()) + ".",
                "");
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("wood", "without knots", "to be sure", "boards", "chance", ""));
        for (int i = 0; i < grades.mixes().size(); i++) {
            GradeMixes.Mix mix = grades.mixes().get(i);
            Chance chance = mix.chance();
            rows.add(List.of(
                    name(mix),
                    mix.planned() == null ? "-" : amounts.money(mix.planned()),
                    mix.cost() == null ? "not reached" : amounts.money(mix.cost()),
                    mix.boards() == 0 ? "-" : Integer.toString(mix.boards()),
                    chance == null ? "-" : percent(chance.share()),
                    i == grades.best() ? "<- the cheapest of these" : ""));
        }
        page.table(RIGHT, rows);
        page.wrapped(
                "Only mixes of two grades were tried, in which the parts that ask most of the wood come from the dearer one and the others"
                        + " from the cheaper, or from what is left of the dearer.",
                "");
        return page.toString();
    }

    private static String name(GradeMixes.Mix mix) {
        String alone = mix.alone();
        if (alone != null) {
            return "all " + Clip.to(alone, 30);
        }
        SortedMap<String, List<String>> parts = new TreeMap<>();
        for (Map.Entry<String, String> entry : mix.grades().entrySet()) {
            parts.computeIfAbsent(entry.getValue(), grade -> new ArrayList<>()).add(entry.getKey());
        }
        List<String> said = new ArrayList<>();
        parts.forEach((grade, ids) -> said.add(Clip.to(grade, 20) + ": " + Clip.to(String.join(", ", ids), 24)));
        return String.join("; ", said);
    }

    private String percent(BigDecimal share) {
        return amounts.decimal(share.movePointRight(2).setScale(1, RoundingMode.HALF_UP)) + " %";
    }
}
