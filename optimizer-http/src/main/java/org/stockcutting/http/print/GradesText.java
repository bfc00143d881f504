package org.stockcutting.http.print;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.stock.Money;
import org.stockcutting.wood.Chance;
import org.stockcutting.wood.GradeMixes;

/** What a job costs from each grade and from mixes of them, for a terminal. */
public final class GradesText {

    private static final List<Boolean> RIGHT = List.of(false, true, true, true, true, true, false);

    private static final int NAME = 32;
    private static final int NO_LIMIT = Integer.MAX_VALUE;

    private final Job job;
    private final Amounts amounts;

    public GradesText(Job job) {
        this.job = job;
        this.amounts = new Amounts(job.writing());
    }

    /** The page. */
    public String print(GradeMixes grades) {
        TextPage page = new TextPage();
        page.wrapped(
                "Grades side by side: an estimate from the knots that are usual in each grade, seed " + grades.seed()
                        + ". \"To be sure\" buys enough to finish with a chance of " + percent(grades.wanted())
                        + "; \"on average\" is what you would have spent had you bought board by board until it was enough.",
                "");
        boolean one = grades.families().size() == 1
                && grades.families().get(0).parts().size() == job.parts().size();
        for (GradeMixes.Family family : grades.families()) {
            if (!one) {
                page.gap().wrapped("For " + String.join(", ", family.parts()) + ":", "  ");
            }
            table(page, family);
        }
        if (!one) {
            page.gap().wrapped(together(grades), "  ");
        }
        page.wrapped(
                "Only mixes of two grades were tried, in which the parts that ask most of the wood come from the dearer one and the others"
                        + " from the cheaper, or from what is left of the dearer.",
                "");
        if (!job.random().isEmpty()) {
            page.wrapped("Boards of random size are left aside here; 'plan' says what to buy of them.", "");
        }
        return page.toString();
    }

    private void table(TextPage page, GradeMixes.Family family) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("wood", "no knots", "on average", "to be sure", "boards", "chance", ""));
        for (int i = 0; i < family.mixes().size(); i++) {
            GradeMixes.Mix mix = family.mixes().get(i);
            Chance chance = mix.chance();
            rows.add(List.of(
                    name(family, mix),
                    money(mix.planned(), chance == null ? "not made" : "-"),
                    money(mix.expected(), "-"),
                    money(mix.cost(), chance == null ? "-" : "not reached"),
                    mix.boards() == 0 ? "-" : Integer.toString(mix.boards()),
                    chance == null ? "-" : percent(chance.share()),
                    i == family.best() ? "<- cheapest" : ""));
        }
        page.table(RIGHT, rows);
        if (family.best() >= 0 && family.mixes().get(family.best()).alone() == null) {
            page.wrapped("  The cheapest: " + shared(family.mixes().get(family.best()), NO_LIMIT) + ".", "    ");
        }
    }

    private String together(GradeMixes grades) {
        GradeMixes.Mix mix = grades.together();
        if (mix == null) {
            return "The whole job: no mix that was tried gives the chance you want for all of it.";
        }
        Chance chance = mix.chance();
        if (chance == null) {
            return "The whole job: some parts can't be made from what is for sale and on hand; 'plan' says which.";
        }
        return "The whole job, each from its cheapest: " + money(mix.planned(), "no price known")
                + " without knots, " + money(mix.cost(), "not reached") + " to be sure, "
                + mix.boards() + " boards, chance " + percent(chance.share()) + ".";
    }

    private String money(@Nullable Money money, String none) {
        return money == null ? none : amounts.money(money);
    }

    /** A part that takes one grade only may come from another one. */
    private static String name(GradeMixes.Family family, GradeMixes.Mix mix) {
        String alone = mix.grades().size() == family.parts().size() ? mix.alone() : null;
        return alone != null ? Clip.to("all " + alone, NAME) : Clip.to(shared(mix, NAME / 2), NAME);
    }

    private static String shared(GradeMixes.Mix mix, int room) {
        SortedMap<String, List<String>> parts = new TreeMap<>();
        for (Map.Entry<String, String> entry : mix.grades().entrySet()) {
            parts.computeIfAbsent(entry.getValue(), grade -> new ArrayList<>()).add(entry.getKey());
        }
        List<String> said = new ArrayList<>();
        parts.forEach((grade, ids) -> said.add(Clip.to(grade + ": " + String.join(", ", ids), room)));
        return String.join("; ", said);
    }

    private String percent(BigDecimal share) {
        return amounts.decimal(share.movePointRight(2).setScale(1, RoundingMode.HALF_UP)) + " %";
    }
}
