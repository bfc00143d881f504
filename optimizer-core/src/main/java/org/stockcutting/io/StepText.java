package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.stockcutting.job.FaultCode;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.stock.Offer;

/**
 * Price breaks and width premiums in one cell: {@code 10: 3.20; 50: 2.90} is 3.20 from 10 pieces on, {@code 8: 10; 12: 25} is 10 % more
 * for boards over 8 wide.
 */
final class StepText {

    private static final Pattern WHOLE = Pattern.compile("[0-9]{1,9}");

    private StepText() {}

    /** Price breaks as a job document has them; a faulty one is reported at this place and left out. */
    static ArrayNode breaks(String cell, String place, Faults faults) {
        ArrayNode list = JsonOutput.list();
        for (String text : cell.split(";")) {
            String[] pair = pair(text);
            if (pair.length == 2 && WHOLE.matcher(pair[0]).matches()) {
                list.addObject().put("from", Integer.parseInt(pair[0])).put("amount", pair[1]);
            } else {
                fault(text, place, "pieces and a price, such as 10: 3.20", faults);
            }
        }
        return list;
    }

    /** Width premiums as a job document has them. */
    static ArrayNode premiums(String cell, String place, Faults faults) {
        ArrayNode list = JsonOutput.list();
        for (String text : cell.split(";")) {
            String[] pair = pair(text);
            if (pair.length == 2) {
                ObjectNode premium = list.addObject();
                premium.put("over", pair[0]).put("percent", pair[1]);
            } else {
                fault(text, place, "a width and a percentage, such as 8: 10", faults);
            }
        }
        return list;
    }

    private static String[] pair(String text) {
        String[] pair = text.split(":", -1);
        for (int i = 0; i < pair.length; i++) {
            pair[i] = pair[i].strip();
        }
        return pair;
    }

    private static void fault(String text, String place, String wanted, Faults faults) {
        if (!text.isBlank()) {
            faults.add(
                    place,
                    FaultCode.NOT_A_PRICE_STEP,
                    text.strip(),
                    wanted,
                    "\"" + Faults.shown(text.strip()) + "\" is no step of a price list; write " + wanted
                            + ", steps apart by semicolons.");
        }
    }

    static String writeBreaks(List<Offer.Break> breaks, char decimal) {
        return breaks.stream()
                .map(step -> step.from() + ": " + Amounts.text(step.amount(), decimal))
                .collect(Collectors.joining("; "));
    }

    static String writePremiums(List<Offer.Premium> premiums, LengthWriter lengths, char decimal) {
        return premiums.stream()
                .map(premium -> lengths.exact(premium.over()) + ": " + Amounts.text(premium.percent(), decimal))
                .collect(Collectors.joining("; "));
    }
}
