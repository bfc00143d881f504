package org.stockcutting.http.print;

import org.stockcutting.draw.PrintedLengths;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.part.Side;
import org.stockcutting.plan.NearMiss;
import org.stockcutting.stock.Money;

/** Says in a sentence what a slightly smaller part would save. */
public final class NearMissText {

    private final Amounts amounts;
    private final LengthWriter exact;
    private final PrintedLengths lengths;

    NearMissText(Amounts amounts, LengthWriter exact, PrintedLengths lengths) {
        this.amounts = amounts;
        this.exact = exact;
        this.lengths = lengths;
    }

    /** The sentence: by how much, what for, and whether less would do. The reduction is never rounded. */
    String sentence(NearMiss miss) {
        StringBuilder text = new StringBuilder("If ")
                .append(Clip.to(miss.part(), 40))
                .append(" may be ")
                .append(exact.exact(miss.by()))
                .append(' ')
                .append(lengths.unit())
                .append(miss.side() == Side.LENGTH ? " shorter" : " narrower")
                .append(": ")
                .append(gain(miss));
        return text.append(miss.smallest() ? ". Less would not do." : ".").toString();
    }

    private String gain(NearMiss miss) {
        StringBuilder text = new StringBuilder();
        if (miss.places() > 0) {
            append(text, PlanText.counted(miss.places(), "part") + " more can be made");
        }
        append(text, fewer(miss.boards(), "board"));
        append(text, fewer(miss.sheets(), "sheet"));
        Money saves = miss.saves();
        if (saves != null && saves.minorUnits() != 0) {
            append(
                    text,
                    saves.minorUnits() > 0
                            ? amounts.money(saves) + " saved"
                            : amounts.money(saves.times(-1)) + " more to pay");
        }
        return text.toString();
    }

    private static String fewer(int count, String word) {
        return count == 0 ? "" : PlanText.counted(Math.abs(count), word) + (count > 0 ? " less" : " more");
    }

    private static void append(StringBuilder text, String more) {
        if (!more.isEmpty()) {
            text.append(text.isEmpty() ? "" : ", ").append(more);
        }
    }
}
