package org.stockcutting.io;

import static org.stockcutting.io.FieldType.BOOLEAN;
import static org.stockcutting.io.FieldType.GOAL_VALUE;
import static org.stockcutting.io.FieldType.INTEGER;
import static org.stockcutting.io.FieldType.LENGTH;
import static org.stockcutting.io.FieldType.LIST;
import static org.stockcutting.io.FieldType.OBJECT;
import static org.stockcutting.io.FieldType.TEXT;

import org.stockcutting.job.Goal;
import org.stockcutting.plan.Comparison;
import org.stockcutting.plan.Status;

/** Every field of a comparison document, in the order it is written. */
public final class ComparisonFields {

    /** Fields of a comparison document. */
    public static final FieldTable COMPARISON = FieldTable.of()
            .with(ComparisonFields::header)
            .with(b -> section(b, "/components/*"))
            .with(b -> ranked(b, ""))
            .with(ComparisonFields::savings)
            .with(ComparisonFields::limits)
            .with(b -> PlanFields.estimates(b, ""))
            .build();

    private ComparisonFields() {}

    private static FieldTable.Builder header(FieldTable.Builder t) {
        return t.in("")
                .or("format", INTEGER, "1", "version of the document's form")
                .needs("job", TEXT, "name of the job")
                .needs("jobHash", TEXT, "hash of the job")
                .needsWord("goal", Words.of(Goal.values(), Goal::word), "the job's goal")
                .may("reproducible", BOOLEAN, "false if the clock or a cancel cut a search short; true where absent")
                .or("seed", INTEGER, "1", "seed used")
                .or("work", INTEGER, "0", "weighted steps of all searches")
                .or("workVersion", INTEGER, "1", "version of the weights")
                .or("engine", TEXT, "unknown", "version of the engine")
                .needs("components", LIST, "independent parts of the job")
                .needs("choices", LIST, "choices of stock over the whole job, all together last")
                .needs("best", OBJECT, "best choices of the whole job")
                .needs("front", LIST, "indexes of the choices that no other one beats")
                .needs("limits", LIST, "what the shop's limits cost")
                .may(
                        "estimates",
                        LIST,
                        "what to buy of boards of random size beside every choice; no part of any cost, bound or rank");
    }

    private static FieldTable.Builder section(FieldTable.Builder t, String at) {
        return ranked(
                t.in(at)
                        .needs("parts", LIST, "ids of the parts")
                        .needs("choices", LIST, "choices of stock, all together last")
                        .needs("best", OBJECT, "best choices among those that make every part")
                        .needs("front", LIST, "indexes of the choices that no other one beats")
                        .needs("savings", LIST, "what each entry saves beside all others"),
                at);
    }

    private static FieldTable.Builder ranked(FieldTable.Builder t, String at) {
        return choice(t, at + "/choices/*")
                .in(at + "/best")
                .may("cost", INTEGER, "index of the cheapest choice")
                .may("waste", INTEGER, "index of the choice that loses the least wood")
                .may("boards", INTEGER, "index of the choice with the fewest boards")
                .may("setUps", INTEGER, "index of the choice with the fewest set-ups");
    }

    private static FieldTable.Builder choice(FieldTable.Builder t, String at) {
        FieldTable.Builder figures = t.in(at)
                .needs("stock", LIST, "ids of what is for sale")
                .needsWord("status", Words.of(Status.values(), Status::word), "how good its plan is")
                .may("cost", OBJECT, "money paid for stock")
                .needs("objective", OBJECT, "value and bound under the job's goal")
                .needs("boards", INTEGER, "boards and sheets bought")
                .needs("yield", OBJECT, "where the wood goes")
                .needs("setUps", INTEGER, "how often a stop or fence is moved")
                .may("weight", TEXT, "weight of what is bought, in kg, where the density of all of it is known")
                .may("longest", LENGTH, "longest board or sheet to carry home")
                .may("unplaced", LIST, "parts without wood, and why");
        return PlanFields.unplaced(PlanFields.yields(PlanFields.costAndObjective(figures, at), at), at);
    }

    private static FieldTable.Builder savings(FieldTable.Builder t) {
        String at = "/components/*/savings/*";
        return choice(
                difference(t.in(at).needs("stock", TEXT, "id of the entry"), "all others together"), at + "/without");
    }

    private static FieldTable.Builder limits(FieldTable.Builder t) {
        String at = "/limits/*";
        FieldTable.Builder named = t.in(at)
                .needsWord("limit", Words.of(Comparison.Limit.values(), Comparison.Limit::word), "kind of limit")
                .may("name", TEXT, "name of the group or id of the stock");
        return choice(difference(named, "everything together without the limit"), at + "/without");
    }

    private static FieldTable.Builder difference(FieldTable.Builder t, String without) {
        return t.may("saves", GOAL_VALUE, "difference of the values found, in the unit of the goal")
                .may("atLeast", GOAL_VALUE, "proved: the least possible values differ by no less")
                .may("atMost", GOAL_VALUE, "proved: the least possible values differ by no more")
                .may("needed", BOOLEAN, "true if parts are left out otherwise; false where absent")
                .needs("without", OBJECT, without);
    }
}
