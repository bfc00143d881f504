package org.stockcutting.http.print;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.stockcutting.draw.PrintedLengths;
import org.stockcutting.job.Job;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.Part;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.wood.Chance;
import org.stockcutting.wood.GroupRisk;
import org.stockcutting.wood.KnotModel;
import org.stockcutting.wood.WoodRisk;

/** How many boards to take to be sure, for a terminal. */
public final class SureText {

    private static final List<Boolean> RIGHT = List.of(true, true, true, false);

    /** Rows that are shown above and below the number to take. */
    private static final int NEAR = 6;

    private final Amounts amounts;
    private final PrintedLengths lengths;
    private final Set<String> clearParts;

    public SureText(Job job) {
        this.amounts = new Amounts(job.writing());
        this.lengths = new PrintedLengths(job.writing());
        this.clearParts = job.parts().stream()
                .filter(part -> part.woodClass() == WoodClass.CLEAR)
                .map(Part::id)
                .collect(Collectors.toSet());
    }

    /** The page: the plan's figures first, the estimate beside them. */
    public String print(CuttingPlan plan, WoodRisk risk) {
        TextPage page = new TextPage();
        page.line(plan.header().job());
        if (plan.cost() != null) {
            page.line("The plan, for wood without knots: " + amounts.money(plan.cost()) + ".");
        }
        if (risk.groups().isEmpty()) {
            return page.line("Nothing is bought, so there is nothing to be unsure of.")
                    .toString();
        }
        page.line("How many boards to be sure: an estimate from "
                + risk.chance().trials() + " simulated purchases, seed " + risk.seed() + ".");
        risk.groups().forEach(group -> group(page, group));
        verdict(page, risk);
        return page.toString();
    }

    private void group(TextPage page, GroupRisk group) {
        page.gap().wrapped("For " + String.join(", ", group.parts()), "  ");
        for (int i = 0; i < group.planned().size(); i++) {
            GroupRisk.Planned line = group.planned().get(i);
            page.wrapped(
                    "the plan needs " + line.quantity() + " of " + line.stock() + "; "
                            + model(group.models().get(i)),
                    "  ");
        }
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("boards", "chance to finish", "95 % sure between", ""));
        boolean skipped = false;
        for (GroupRisk.Row row : group.rows()) {
            Chance chance = row.chance();
            if (row.more() > 0 && Math.abs(row.more() - group.take()) > NEAR) {
                skipped = true;
                continue;
            }
            if (skipped && row.more() <= group.take()) {
                rows.add(List.of("...", "", "", ""));
            }
            skipped = false;
            rows.add(List.of(
                    Integer.toString(row.boards()),
                    percent(chance.share(), RoundingMode.HALF_UP),
                    percent(chance.low(), RoundingMode.FLOOR) + " and " + percent(chance.high(), RoundingMode.CEILING),
                    row.more() == group.take() ? "<- take these" : ""));
        }
        page.table(RIGHT, rows);
        page.wrapped("More boards than the plan needs are of " + group.extra() + ".", "  ");
        List<String> clear = group.parts().stream().filter(clearParts::contains).toList();
        boolean knots =
                group.models().stream().anyMatch(model -> model.tightKnots().signum() > 0);
        if (!clear.isEmpty() && knots && group.take() > 0) {
            page.wrapped(
                    "Taken to be clear of every knot: " + String.join(", ", clear)
                            + ". A part that may have tight knots needs fewer boards: say so with its class.",
                    "  ");
        }
    }

    private String model(KnotModel model) {
        return "a bad spot of " + lengths.part(model.zone()) + " after " + lengths.part(model.clearRun())
                + " of clear wood on average, ends checked " + lengths.part(model.endCheck()) + ", "
                + percent(model.unusableBoards(), RoundingMode.HALF_UP) + " of boards useless: " + model.origin();
    }

    private void verdict(TextPage page, WoodRisk risk) {
        int more = risk.groups().stream().mapToInt(GroupRisk::take).sum();
        int needed = risk.groups().stream().mapToInt(GroupRisk::needed).sum();
        String cost = risk.extraCost() == null || more == 0 ? "" : ", " + amounts.money(risk.extraCost()) + " more";
        page.gap()
                .wrapped(
                        "The plan needs " + needed + ", take " + (needed + more) + cost + ": "
                                + percent(risk.chance().share(), RoundingMode.HALF_UP) + " chance to finish ("
                                + percent(risk.wanted(), RoundingMode.HALF_UP) + " wanted). Chance that at least one"
                                + " goes back whole: " + percent(risk.goesBack().share(), RoundingMode.HALF_UP) + ".",
                        "  ");
        if (!risk.reached()) {
            page.wrapped(
                    "No number of boards that was tried gives the chance you want: look for clearer wood or longer boards,"
                            + " or let parts take tight knots (class).",
                    "  ");
        }
    }

    private String percent(BigDecimal share, RoundingMode rounding) {
        BigDecimal percent = share.movePointRight(2).setScale(1, rounding);
        return amounts.decimal(percent.stripTrailingZeros().scale() <= 0 ? percent.setScale(0) : percent) + " %";
    }
}
