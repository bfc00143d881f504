package org.stockcutting.job;

import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.stock.Condition;
import org.stockcutting.stock.StockItem;

/** Reviews how true a measured board is said to be. */
final class ConditionReview {

    private final Findings findings;

    ConditionReview(Findings findings) {
        this.findings = findings;
    }

    void review(String at, StockItem.OnHand item) {
        Condition told = item.condition();
        findings.notNegative(at + "/bow", told.bow());
        crook(at, told.crook(), item);
        taper(at, told.widthEnd(), item);
    }

    private void crook(String at, Length crook, StockItem.OnHand item) {
        findings.notNegative(at + "/crook", crook);
        if (crook.isPositive() && item.width().isPositive() && !crook.isLessThan(item.width())) {
            findings.add(
                    at + "/crook",
                    FaultCode.OUT_OF_RANGE,
                    findings.say(crook),
                    "less than the width, " + findings.say(item.width()),
                    "The crook of " + item.id() + " is " + findings.say(crook) + ", but it is only "
                            + findings.say(item.width())
                            + " wide; measure the gap between its edge and a line from end to end.",
                    at + "/width");
        }
    }

    private void taper(String at, @Nullable Length end, StockItem.OnHand item) {
        findings.positive(at + "/widthEnd", end);
        if (end != null && end.isMoreThan(item.width()) && item.width().isPositive()) {
            findings.add(
                    at + "/widthEnd",
                    FaultCode.OUT_OF_RANGE,
                    findings.say(end),
                    "at most the width at the start, " + findings.say(item.width()),
                    "Board " + item.id() + " is " + findings.say(end) + " wide at its far end and "
                            + findings.say(item.width())
                            + " at its start; measure it from its wide end, zones too.",
                    at + "/width");
        }
    }
}
