package org.stockcutting.http.print;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.stockcutting.draw.PrintedLengths;
import org.stockcutting.job.Job;
import org.stockcutting.plan.Enough;
import org.stockcutting.plan.Unplaced;

/** Whether the boards that were picked are enough yet, for a terminal. */
public final class EnoughText {

    private final Job job;
    private final PrintedLengths lengths;

    public EnoughText(Job job) {
        this.job = job;
        this.lengths = new PrintedLengths(job.writing());
    }

    /** The page: a paragraph a board, the verdict last. */
    public String print(Enough enough) {
        TextPage page = new TextPage()
                .line(job.name() + ": are the boards on hand enough yet?")
                .line("Nothing is bought here; boards count in the order in which they are listed.")
                .gap();
        for (int i = 0; i < enough.steps().size(); i++) {
            Enough.Step step = enough.steps().get(i);
            page.wrapped((i + 1) + ". with " + step.board() + ": " + told(step), "   ");
        }
        page.gap();
        verdict(page, enough);
        return page.toString();
    }

    private String told(Enough.Step step) {
        if (!step.isEnough()) {
            return "not yet. No board for " + missing(step.missing()) + "." + spare("Not used", step);
        }
        String left = step.longestLeft().isPositive()
                ? " Longest piece left over: " + lengths.gap(step.longestLeft()) + " " + lengths.unit() + "."
                : " No piece is left over.";
        return "enough." + left + spare("To spare", step);
    }

    private static String missing(List<Unplaced> missing) {
        List<String> parts = new ArrayList<>();
        missing.forEach(part -> parts.add(part.quantity() + " " + part.part()));
        return String.join(", ", parts);
    }

    private static String spare(String what, Enough.Step step) {
        return step.unused().isEmpty() ? "" : " " + what + ": " + String.join(", ", step.unused()) + ".";
    }

    private static void verdict(TextPage page, Enough enough) {
        Enough.Step last = enough.atLast();
        if (!last.isEnough()) {
            page.line("Not enough yet.");
            last.missing().forEach(part -> page.wrapped("  " + UnplacedText.sentence(part), "    "));
            return;
        }
        Optional<Enough.Step> first = enough.firstEnough();
        first.ifPresent(step -> page.wrapped("Enough since " + step.board() + ".", "  "));
        if (!last.unused().isEmpty()) {
            page.wrapped(
                    "Nothing is cut from " + String.join(", ", last.unused()) + ": put back what you need not keep.",
                    "  ");
        }
    }
}
