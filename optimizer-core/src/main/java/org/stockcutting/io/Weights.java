package org.stockcutting.io;

import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.stockcutting.material.Density;
import org.stockcutting.material.Weight;

/** Weights and densities as text with their unit; exact, and written so that they are read back equal. */
final class Weights {

    private static final Pattern WEIGHT = Pattern.compile("([0-9]{1,9}(?:[.,][0-9]{1,18})?) ?(lb|kg)");
    private static final Pattern DENSITY = Pattern.compile("([0-9]{1,9}(?:[.,][0-9]{1,18})?) ?(lb/ft3|kg/m3)");

    /** In kilograms such a number has at most the decimals that are read. */
    private static final int MOST_DECIMALS_OF_POUNDS = 9;

    private Weights() {}

    static @Nullable Weight weight(String text, char decimal) {
        Matcher matcher = WEIGHT.matcher(text.strip());
        BigDecimal number = number(matcher, decimal);
        if (number == null || (matcher.group(2).equals("lb") && number.scale() > MOST_DECIMALS_OF_POUNDS)) {
            return null;
        }
        return matcher.group(2).equals("lb") ? Weight.pounds(number) : new Weight(number);
    }

    static @Nullable Density density(String text, char decimal) {
        Matcher matcher = DENSITY.matcher(text.strip());
        BigDecimal number = number(matcher, decimal);
        if (number == null) {
            return null;
        }
        return matcher.group(2).equals("lb/ft3") ? Density.poundsPerCubicFoot(number) : new Density(number);
    }

    private static @Nullable BigDecimal number(Matcher matcher, char decimal) {
        char other = decimal == '.' ? ',' : '.';
        if (!matcher.matches() || matcher.group(1).indexOf(other) >= 0) {
            return null;
        }
        return new BigDecimal(matcher.group(1).replace(',', '.'));
    }

    static String text(Weight weight, char decimal) {
        return Amounts.text(weight.kilograms(), decimal) + " kg";
    }

    static String text(Density density, char decimal) {
        return Amounts.text(density.kilogramsPerCubicMetre(), decimal) + " kg/m3";
    }
}
