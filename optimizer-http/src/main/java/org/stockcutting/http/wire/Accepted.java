package org.stockcutting.http.wire;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Content negotiation by the Accept header: RFC 9110, sections 12.4.2 and 12.5.1. */
final class Accepted {

    private Accepted() {}

    /**
     * The type to answer in.
     *
     * @param header Accept header, or null where there is none
     * @param offered what can be answered, the preferred first
     * @throws ProblemException 406 if none is accepted
     */
    static String choose(@Nullable String header, List<String> offered) {
        if (header == null || header.isBlank()) {
            return offered.get(0);
        }
        String best = null;
        BigDecimal bestQuality = BigDecimal.ZERO;
        for (String type : offered) {
            BigDecimal quality = quality(header, type);
            if (quality.compareTo(bestQuality) > 0) {
                best = type;
                bestQuality = quality;
            }
        }
        if (best == null) {
            throw new ProblemException(
                    ProblemKind.NOT_ACCEPTABLE, "The answer comes as " + String.join(" or ", offered) + ".");
        }
        return best;
    }

    /** Quality of a type: that of the most precise range that matches it. */
    private static BigDecimal quality(String header, String type) {
        int precision = -1;
        BigDecimal quality = BigDecimal.ZERO;
        for (String range : header.split(",", -1)) {
            String[] parts = range.split(";", -1);
            int matched = precision(parts[0].strip().toLowerCase(Locale.ROOT), type);
            if (matched > precision) {
                precision = matched;
                quality = weight(parts);
            }
        }
        return quality;
    }

    private static int precision(String range, String type) {
        if (range.equals(type)) {
            return 2;
        }
        if (range.endsWith("/*") && !range.startsWith("*") && type.startsWith(range.substring(0, range.length() - 1))) {
            return 1;
        }
        return range.equals("*/*") ? 0 : -1;
    }

    private static BigDecimal weight(String[] parts) {
        for (int i = 1; i < parts.length; i++) {
            String parameter = parts[i].strip().toLowerCase(Locale.ROOT);
            if (parameter.matches("q=(0(\\.[0-9]{0,3})?|1(\\.0{0,3})?)")) {
                String number = parameter.substring(2);
                return new BigDecimal(number.endsWith(".") ? number + "0" : number);
            }
        }
        return BigDecimal.ONE;
    }
}
