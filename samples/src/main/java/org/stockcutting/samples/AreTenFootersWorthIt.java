package org.stockcutting.samples;

import java.math.BigInteger;
import org.stockcutting.Optimizer;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.plan.Choice;
import org.stockcutting.plan.Comparison;
import org.stockcutting.stock.Money;

/** Are ten-footers worth it? What each length comes to alone, what both come to, and what it saves to have the other one too. */
public final class AreTenFootersWorthIt {

    private AreTenFootersWorthIt() {}

    static String answer() {
        StringBuilder out = new StringBuilder();
        Job job = JobBuilder.inches("Three raised beds")
                .material("douglas fir")
                .boardTrim("1/2", "1/4")
                .sets(3)
                .part("long side", 4, "58-1/2", "2x8")
                .part("short side", 4, "34", "2x8")
                .part("divider", 1, "31", "2x8")
                .part("seat", 2, "43", "2x8")
                .board("2x8-8", "2x8", "8'", "9.68")
                .board("2x8-10", "2x8", "10'", "12.48")
                .build();
        Comparison comparison = new Optimizer().compare(job);
        for (Choice choice : comparison.whole().choices()) {
            out.append(String.join(" and ", choice.stock()))
                    .append(": ")
                    .append(choice.isComplete() ? choice.cost() : "not everything can be made")
                    .append(", ")
                    .append(choice.boards())
                    .append(" boards\n");
        }
        for (Comparison.Saving saving : comparison.components().get(0).savings()) {
            BigInteger cents = saving.difference().saves();
            out.append(saving.stock());
            if (cents == null) {
                out.append(" is needed\n");
            } else {
                Money saves =
                        Money.ofMinor(cents.longValueExact(), job.writing().currency());
                boolean proved = cents.equals(saving.difference().atLeast());
                out.append(" saves ").append(saves).append(proved ? ", proved\n" : "\n");
            }
        }
        return out.toString();
    }

    public static void main(String[] args) {
        System.out.print(answer());
    }
}
