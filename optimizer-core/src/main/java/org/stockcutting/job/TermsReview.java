package org.stockcutting.job;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import org.stockcutting.material.WoodTable;

/** Reviews what is reckoned about load and bill. */
final class TermsReview {

    private static final BigDecimal LEAST_MOISTURE = new BigDecimal("6");
    private static final BigDecimal MOST_MOISTURE = new BigDecimal("14");
    /** Osmium, the heaviest stuff there is, has 22,590 kg/m3. */
    private static final BigDecimal MOST_DENSITY = new BigDecimal("25000");
    /** A hundred tonnes: more than any lorry carries. */
    private static final BigDecimal MOST_LOAD = new BigDecimal("100000");
    /** The greatest coefficient of the handbook is under a two-hundredth. */
    private static final BigDecimal MOST_MOVEMENT = new BigDecimal("0.02");

    private final TradeTerms terms;
    private final Findings findings;

    TermsReview(Job job, Findings findings) {
        this.terms = job.terms();
        this.findings = findings;
    }

    void review() {
        if (terms.carLoad() != null) {
            within("/shop/carLoad", terms.carLoad().kilograms(), MOST_LOAD, "kg");
        }
        terms.woods().forEach(this::wood);
        seasons();
    }

    private void wood(String name, OwnWood wood) {
        String at = "/woods/" + ShopReview.escaped(name);
        findings.text(at, name, JobReview.LONGEST_NAME, false);
        if (wood.like() != null && WoodTable.standard().find(wood.like()).isEmpty()) {
            findings.add(
                    at + "/like",
                    FaultCode.UNKNOWN_WOOD,
                    wood.like(),
                    "a wood such as SPF or oak, white",
                    "The table of woods has no \"" + wood.like()
                            + "\"; name another, or give density and movement instead.");
        }
        if (wood.density() != null) {
            within(at + "/density", wood.density().kilogramsPerCubicMetre(), MOST_DENSITY, "kg/m3");
        }
        if (wood.movement() != null) {
            within(at + "/movement", wood.movement(), MOST_MOVEMENT, "of the width for each per cent of moisture");
        }
    }

    private void within(String at, @Nullable BigDecimal number, BigDecimal most, String unit) {
        if (number == null) {
            return;
        }
        if (number.signum() <= 0) {
            findings.add(
                    at,
                    FaultCode.NOT_POSITIVE,
                    number.toPlainString(),
                    "more than 0",
                    "This is " + number.toPlainString() + "; it must be more than 0.");
        } else if (number.compareTo(most) > 0) {
            findings.add(
                    at,
                    FaultCode.OUT_OF_RANGE,
                    number.toPlainString(),
                    "at most " + most.toPlainString(),
                    "This is " + number.toPlainString() + " " + unit + "; more than " + most.toPlainString()
                            + " is taken for a slip of the pen.");
        }
    }

    private void seasons() {
        BigDecimal driest = terms.seasons().driest();
        BigDecimal dampest = terms.seasons().dampest();
        moisture("/seasons/driest", driest);
        moisture("/seasons/dampest", dampest);
        if (driest.compareTo(dampest) >= 0) {
            findings.add(
                    "/seasons/dampest",
                    FaultCode.CONFLICT,
                    dampest.toPlainString(),
                    "more than " + driest.toPlainString(),
                    "The dampest season has " + dampest.toPlainString() + " % moisture, the driest "
                            + driest.toPlainString() + " %; swap them, or leave both out.",
                    "/seasons/driest");
        }
    }

    private void moisture(String at, BigDecimal percent) {
        if (percent.compareTo(LEAST_MOISTURE) < 0 || percent.compareTo(MOST_MOISTURE) > 0) {
            findings.add(
                    at,
                    FaultCode.OUT_OF_RANGE,
                    percent.toPlainString(),
                    "6 to 14",
                    "Movement is only known from 6 to 14 % moisture; " + percent.toPlainString() + " % is outside.");
        }
    }
}
