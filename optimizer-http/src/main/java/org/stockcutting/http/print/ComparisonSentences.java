package org.stockcutting.http.print;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.stockcutting.draw.PrintedLengths;
import org.stockcutting.job.Job;
import org.stockcutting.job.SawLimits;
import org.stockcutting.length.Length;
import org.stockcutting.plan.Choice;
import org.stockcutting.plan.Comparison;
import org.stockcutting.plan.Difference;
import org.stockcutting.plan.Unplaced;

/** What a comparison says in sentences: is this length worth buying, and what does that limit cost. */
final class ComparisonSentences {

    private final Job job;
    private final Amounts amounts;
    private final PrintedLengths lengths;

    ComparisonSentences(Job job) {
        this.job = job;
        this.amounts = new Amounts(job.writing());
        this.lengths = new PrintedLengths(job.writing());
    }

    /** One sentence an entry: what it saves beside all the others. */
    List<String> savings(Comparison.Section section) {
        List<String> sentences = new ArrayList<>();
        for (Comparison.Saving saving : section.savings()) {
            sentences.add(saving(saving, section.allTogether()));
        }
        return sentences;
    }

    private String saving(Comparison.Saving saving, Choice all) {
        String id = saving.stock();
        Difference difference = saving.difference();
        if (difference.needed()) {
            return id + " is needed: without it " + missing(saving.without()) + " can't be made" + fixed() + ".";
        }
        return difference.saves() == null
                ? id + ": with it or without it, " + missing(all) + " can't be made."
                : id + " beside the others saves " + amount(difference);
    }

    /** One sentence a limit: what it costs to keep it. */
    List<String> limits(Comparison comparison) {
        List<String> sentences = new ArrayList<>();
        for (Comparison.LimitPrice price : comparison.limits()) {
            String what = limit(price);
            Difference difference = price.difference();
            Choice all = comparison.whole().allTogether();
            if (difference.needed()) {
                sentences.add("Without " + what + " everything can be made" + fixed() + "; with it "
                        + (all.isComplete() ? "some parts need rough boards." : missing(all) + " can't."));
            } else if (difference.saves() == null) {
                sentences.add("Lifting " + what + " does not make everything possible.");
            } else {
                sentences.add(
                        Character.toUpperCase(what.charAt(0)) + what.substring(1) + " costs " + amount(difference));
            }
        }
        return sentences;
    }

    /** The whole job with everything that is for sale. */
    String whole(Comparison.Section whole) {
        Choice all = whole.allTogether();
        return all.isComplete()
                ? "All together: " + amounts.value(job.goal(), all.objective().value()) + ", "
                        + PlanText.counted(all.boards(), "piece") + " to buy."
                : "The whole job can't be made from what is for sale and on hand.";
    }

    /** Boards of random size might still give a part. */
    private String fixed() {
        return job.random().isEmpty() ? "" : " from boards of fixed sizes";
    }

    /** What is said of boards of random size, where something is left to them. */
    List<String> estimates(Comparison comparison) {
        EstimateText text = new EstimateText(job, amounts, lengths);
        return comparison.estimates().stream()
                .flatMap(estimate -> text.sentences(estimate).stream())
                .toList();
    }

    private String limit(Comparison.LimitPrice price) {
        String name = price.name() == null ? "" : price.name();
        return switch (price.limit()) {
            case CAR_LENGTH -> "the limit of the car" + printed(job.shop().carLength());
            case STAGES -> "the limit of " + job.shop().limits().stages() + " cutting directions in a row";
            case FIRST_CUT ->
                job.shop().limits().firstCut() == SawLimits.FirstCut.RIP
                        ? "ripping before anything is crosscut"
                        : "crosscutting before anything is ripped";
            case GROUP -> "having " + name + " from one board";
            case CUT_FROM -> "cutting " + name + " where it was chosen";
            case AVAILABLE -> "the short supply of " + name;
        };
    }

    private String printed(@org.jspecify.annotations.Nullable Length length) {
        return length == null ? "" : ", " + lengths.part(length) + " " + lengths.unit() + ",";
    }

    /** The amount with what is proved of it, and a full stop. */
    private String amount(Difference difference) {
        BigInteger saves = orZero(difference.saves());
        BigInteger least = orZero(difference.atLeast());
        BigInteger most = orZero(difference.atMost());
        String found = saves.signum() == 0 ? "nothing" : amounts.value(job.goal(), saves);
        if (least.equals(most)) {
            return found + ": proved.";
        }
        String range = least.signum() == 0
                ? "not more than " + amounts.value(job.goal(), most)
                : "from " + amounts.bound(job.goal(), least) + " to " + amounts.value(job.goal(), most);
        return found + "; proved: " + range + ".";
    }

    private static BigInteger orZero(@org.jspecify.annotations.Nullable BigInteger number) {
        return number == null ? BigInteger.ZERO : number;
    }

    private static String missing(Choice choice) {
        return choice.unplaced().stream().map(Unplaced::part).limit(4).collect(Collectors.joining(", "))
                + (choice.unplaced().size() > 4 ? " and more" : "");
    }
}
