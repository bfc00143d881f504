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

    private static final BigDecimal MOST_TAX = new BigDecimal("100");
    static final BigDecimal MOST_MONEY = new BigDecimal("1000000000");

    private final TradeTerms terms;
    private final Findings findings;

    TermsReview(Job job, Findings findings) {
        this.terms = job.terms();
        this.findings = findings;
    }

    void review() {
        if (terms.carLoad() != null) {
            within("/shop/carLoad", terms.carLoad().kilograms(), MOST_LOAD);
        }
        terms.woods().forEach(this::wood);
        seasons();
        money();
    }

    private void money() {
        if (terms.taxPercent() != null) {
            notNegative("/tax/percent", terms.taxPercent(), MOST_TAX);
        }
        Delivery delivery = terms.delivery();
        if (delivery != null) {
            notNegative("/delivery/price", delivery.price().amount(), MOST_MONEY);
            if (delivery.freeFrom() != null) {
                notNegative("/delivery/freeFrom", delivery.freeFrom().amount(), MOST_MONEY);
            }
        }
        YardCuts cuts = terms.yardCuts();
        if (cuts != null) {
            notNegative("/yardCuts/price", cuts.price().amount(), MOST_MONEY);
            findings.within(
                    "/yardCuts/free",
                    cuts.free(),
                    0,
                    JobReview.MOST_PIECES,
                    got -> "The yard makes " + got + " cuts for nothing; give 0 or more.");
        }
    }

    private void notNegative(String at, BigDecimal number, BigDecimal most) {
        if (number.signum() < 0) {
            findings.add(
                    at,
                    FaultCode.NEGATIVE,
                    number.toPlainString(),
                    "0 or more",
                    "This is " + number.toPlainString() + "; it must be 0 or more.");
        } else {
            notMore(at, number, most);
        }
    }

    private void notMore(String at, BigDecimal number, BigDecimal most) {
        if (number.compareTo(most) > 0) {
            findings.add(
                    at,
                    FaultCode.OUT_OF_RANGE,
                    number.toPlainString(),
                    "at most " + most.toPlainString(),
                    "This is " + number.toPlainString() + "; more than " + most.toPlainString()
                            + " is taken for a slip of the pen.");
        }
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
            within(at + "/density", wood.density().kilogramsPerCubicMetre(), MOST_DENSITY);
        }
        if (wood.movement() != null) {
            within(at + "/movement", wood.movement(), MOST_MOVEMENT);
        }
    }

    private void within(String at, @Nullable BigDecimal number, BigDecimal most) {
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
        } else {
            notMore(at, number, most);
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
