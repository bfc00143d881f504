package org.stockcutting.job;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.stock.Bill;
import org.stockcutting.stock.Offer;
import org.stockcutting.stock.Price;
import org.stockcutting.stock.PriceUnit;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Tally;

/** Reviews packs, price breaks and premiums of what is for sale. */
final class OfferReview {

    /** A dozen premiums or breaks are a long price list. */
    private static final int MOST_STEPS = 20;

    private static final BigDecimal MOST_PERCENT = new BigDecimal("1000");

    private final Findings findings;

    OfferReview(Findings findings) {
        this.findings = findings;
    }

    void review(String at, StockItem.ForSale item) {
        Offer offer = item.offer();
        Price price = item.price();
        findings.within(
                at + "/pack",
                offer.pack(),
                1,
                JobReview.MOST_PIECES,
                got -> item.id() + " is sold in packs of " + got
                        + "; give 1 or more, or leave it out for single pieces.");
        if (price != null && price.per() == PriceUnit.PACK && offer.pack() == 1) {
            findings.add(
                    at + "/price/per",
                    FaultCode.CONFLICT,
                    PriceUnit.PACK.word(),
                    "a pack of 2 or more",
                    "The price of " + item.id() + " is for a pack, but nothing says how many are in one; give pack.",
                    at + "/pack");
        }
        tally(at, item, price);
        steps(at + "/priceBreaks", offer.breaks().size(), item.id(), price);
        steps(at + "/widthPremiums", offer.premiums().size(), item.id(), price);
        breaks(at, item.id(), offer.breaks(), price);
        premiums(at, item.id(), offer.premiums());
    }

    /** A rule that counts a short or narrow board as nothing would give it away. */
    private void tally(String at, StockItem.ForSale item, @Nullable Price price) {
        boolean byFoot =
                price != null && (price.per() == PriceUnit.BOARD_FOOT || price.per() == PriceUnit.THOUSAND_BOARD_FEET);
        if (byFoot
                && item.length().isPositive()
                && item.width().isPositive()
                && item.thickness().isPositive()
                && Bill.tallied(item).signum() == 0) {
            findings.add(
                    at + "/tally",
                    FaultCode.CONFLICT,
                    item.offer().tally().word(),
                    Tally.EXACT.word(),
                    item.id() + " has no whole foot by the tally "
                            + item.offer().tally().word()
                            + ", so it would cost nothing; give it the tally exact, or a price by the piece.",
                    at + "/length");
        }
    }

    private void steps(String at, int steps, String id, @Nullable Price price) {
        if (steps > MOST_STEPS) {
            findings.add(
                    at,
                    FaultCode.TOO_MANY,
                    steps + " steps",
                    "at most " + MOST_STEPS,
                    "The price list of " + id + " has " + steps + " steps; at most " + MOST_STEPS + " are taken.");
        }
        if (steps > 0 && price == null) {
            findings.add(
                    at,
                    FaultCode.MISSING_PRICE,
                    "no price",
                    "a price",
                    id + " has steps of a price but no price that they change; give price too.");
        }
    }

    private void breaks(String at, String id, List<Offer.Break> breaks, @Nullable Price price) {
        int before = 1;
        BigDecimal amountBefore = price == null ? null : price.amount();
        String priceBefore = at + "/price/amount";
        for (int i = 0; i < breaks.size(); i++) {
            Offer.Break step = breaks.get(i);
            String here = at + "/priceBreaks/" + i;
            int least = before + 1;
            findings.within(
                    here + "/from",
                    step.from(),
                    least,
                    JobReview.MOST_PIECES,
                    got -> "This price of " + id + " begins at " + got + " pieces; the steps go upwards, so at least "
                            + least + " is wanted.");
            BigDecimal amount = step.amount();
            if (amount.signum() < 0) {
                negative(here + "/amount", id, amount);
            } else if (amountBefore != null && amount.compareTo(amountBefore) > 0) {
                findings.add(
                        here + "/amount",
                        FaultCode.CONFLICT,
                        amount.toPlainString(),
                        "at most " + amountBefore.toPlainString(),
                        "From " + step.from() + " pieces on " + id + " costs " + amount.toPlainString()
                                + ", more than the " + amountBefore.toPlainString()
                                + " before; a price for more pieces is a lower one.",
                        priceBefore);
            }
            before = Math.max(before, step.from());
            amountBefore = amount;
            priceBefore = here + "/amount";
        }
    }

    private void premiums(String at, String id, List<Offer.Premium> premiums) {
        Length before = Length.ZERO;
        for (int i = 0; i < premiums.size(); i++) {
            Offer.Premium premium = premiums.get(i);
            String here = at + "/widthPremiums/" + i;
            findings.positive(here + "/over", premium.over());
            if (i > 0 && !premium.over().isMoreThan(before)) {
                findings.add(
                        here + "/over",
                        FaultCode.CONFLICT,
                        findings.say(premium.over()),
                        "more than " + findings.say(before),
                        "The widths of these premiums of " + id + " go upwards; sort them and leave doubles out.",
                        at + "/widthPremiums/" + (i - 1) + "/over");
            }
            if (premium.percent().signum() < 0) {
                negative(here + "/percent", id, premium.percent());
            } else if (premium.percent().compareTo(MOST_PERCENT) > 0) {
                findings.add(
                        here + "/percent",
                        FaultCode.OUT_OF_RANGE,
                        premium.percent().toPlainString(),
                        "at most " + MOST_PERCENT.toPlainString(),
                        "A premium of " + premium.percent().toPlainString() + " % is taken for a slip of the pen.");
            }
            before = premium.over();
        }
    }

    private void negative(String at, String id, BigDecimal amount) {
        findings.add(
                at,
                FaultCode.NEGATIVE,
                amount.toPlainString(),
                "0 or more",
                "This step of the price of " + id + " is " + amount.toPlainString() + "; give 0 or more.");
    }
}
