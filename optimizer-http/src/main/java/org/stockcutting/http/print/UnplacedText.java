package org.stockcutting.http.print;

import org.stockcutting.plan.Unplaced;

/** Says in a sentence why a part got no wood, and the way out. */
public final class UnplacedText {

    private UnplacedText() {}

    /** The sentence. */
    public static String sentence(Unplaced missing) {
        StringBuilder text = new StringBuilder()
                .append(missing.quantity())
                .append(" of ")
                .append(missing.part())
                .append(": ")
                .append(reason(missing.reason()));
        if (missing.needs() != null && missing.limit() != null) {
            boolean size = missing.reason() != Unplaced.Reason.NO_STOCK_OF_MATERIAL;
            text.append(" (needs ").append(missing.needs()).append(size ? ", the most there is: " : "; there is: ");
            text.append(missing.limit()).append(')');
        }
        String stop = missing.remedy().endsWith(".") ? "" : ".";
        return text + ". Way out: " + missing.remedy() + stop;
    }

    private static String reason(Unplaced.Reason reason) {
        return switch (reason) {
            case LONGER_THAN_ANY_STOCK -> "longer than any stock";
            case WIDER_THAN_ANY_STOCK -> "wider than any stock";
            case NO_STOCK_OF_MATERIAL -> "no stock of that wood";
            case NO_STOCK_OF_THICKNESS -> "no stock of that thickness";
            case GRAIN_DOES_NOT_FIT -> "the grain would run the wrong way";
            case NO_CLEAR_ZONE -> "no stretch of wood clear enough";
            case STOCK_EXHAUSTED -> "the stock runs out";
            case EXCLUDED_BY_RULE -> "a shop rule forbids it";
            case NOT_REACHED_BEFORE_LIMIT -> "no place found before the search ended";
        };
    }
}
