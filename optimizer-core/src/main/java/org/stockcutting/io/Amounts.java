package org.stockcutting.io;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.FaultCode;

/** Reads amounts of money: exact decimals as text or number, never a grouping mark. */
final class Amounts {

    private static final Pattern FORM = Pattern.compile("-?[0-9]{1,12}([.,][0-9]{1,9})?");
    /** Three digits behind the mark that is not the job's: may be a thousand or a fraction. */
    private static final Pattern THREE = Pattern.compile("-?[0-9]{1,3}[.,][0-9]{3}");

    private static final int MOST_DECIMALS = 9;

    private Amounts() {}

    static @Nullable BigDecimal read(JsonNode node, String pointer, Reading reading) {
        if (node.isNumber()) {
            BigDecimal number = node.decimalValue();
            if (number.scale() <= MOST_DECIMALS && number.precision() - number.scale() <= 12 && number.scale() >= -12) {
                return plain(number);
            }
        } else if (node.isTextual()) {
            String text = node.textValue().strip();
            boolean ambiguous = THREE.matcher(text).matches() && text.indexOf(reading.decimal()) < 0;
            if (FORM.matcher(text).matches() && !ambiguous) {
                return plain(new BigDecimal(text.replace(',', '.')));
            }
        }
        String wanted = "an amount such as \"3" + reading.decimal() + "98\"";
        reading.faults()
                .add(
                        pointer,
                        FaultCode.NOT_AN_AMOUNT,
                        node.isTextual() ? node.textValue() : node.toString(),
                        wanted,
                        Faults.shown(node) + " is no amount of money; write " + wanted
                                + ", without currency sign or grouping mark, with at most " + MOST_DECIMALS
                                + " decimals.");
        return null;
    }

    /** Equal amounts get equal forms: no trailing zeros, no powers of ten. */
    private static BigDecimal plain(BigDecimal amount) {
        BigDecimal stripped = amount.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }

    /** The amount as text that {@link #read} takes in a job with this decimal mark. */
    static String text(BigDecimal amount, char decimal) {
        return plain(amount).toPlainString().replace('.', decimal);
    }
}
