package org.stockcutting.job;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Price;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Trim;
import org.stockcutting.stock.Zone;

/** Reviews what is for sale and what is on hand. */
final class StockReview {

    /** Keeps every sum of prices in minor units far inside a {@code long}. */
    private static final BigDecimal DEAREST = new BigDecimal("1000000");

    private final Job job;
    private final Findings findings;

    StockReview(Job job, Findings findings) {
        this.job = job;
        this.findings = findings;
    }

    void review() {
        List<StockItem.ForSale> forSale = job.forSale();
        List<StockItem.OnHand> onHand = job.onHand();
        if (forSale.isEmpty() && onHand.isEmpty() && job.random().isEmpty()) {
            findings.add(
                    "/stock",
                    FaultCode.NO_STOCK,
                    "none",
                    "stock or onHand",
                    "There is nothing to cut from; list what can be bought under stock, or what is owned under onHand.",
                    "/onHand");
        }
        count("/stock", forSale.size() + job.random().size(), JobReview.MOST_FOR_SALE);
        count("/onHand", onHand.size(), JobReview.MOST_ON_HAND);
        for (int i = 0; i < forSale.size(); i++) {
            forSale("/stock/" + i, forSale.get(i));
        }
        for (int i = 0; i < onHand.size(); i++) {
            onHand("/onHand/" + i, onHand.get(i));
        }
        carLength();
    }

    private void count(String pointer, int got, int most) {
        if (got > most) {
            findings.add(
                    pointer,
                    FaultCode.TOO_MANY,
                    got + " entries",
                    "at most " + most,
                    "There are " + got + " entries; at most " + most
                            + " are taken: join equal ones or leave some out.");
        }
    }

    /** Where the car takes none of what is for sale and nothing is owned, nothing is left to plan with. */
    private void carLength() {
        Length car = job.shop().carLength();
        boolean nothing = job.onHand().isEmpty()
                && job.random().isEmpty()
                && !job.forSale().isEmpty();
        if (car == null
                || !nothing
                || !job.forSale().stream().allMatch(s -> s.length().isMoreThan(car))) {
            return;
        }
        findings.add(
                "/shop/carLength",
                FaultCode.NO_STOCK,
                findings.say(car),
                "at least the length of one entry",
                "Everything for sale is longer than the " + findings.say(car)
                        + " that fit the car; offer shorter stock or leave carLength out.",
                "/stock");
    }

    private void forSale(String at, StockItem.ForSale item) {
        common(at, item);
        findings.within(
                at + "/available",
                item.available(),
                0,
                Integer.MAX_VALUE,
                got -> "Of " + item.id() + " " + got + " can be had; give 0 or more, or leave it out for any number.");
        new OfferReview(findings).review(at, item);
        Price price = item.price();
        if (price != null) {
            price(at, item.id(), price);
        } else if (job.goal() == Goal.COST) {
            findings.add(
                    at + "/price",
                    FaultCode.MISSING_PRICE,
                    "no price",
                    "a price",
                    "The goal is the least money, but " + item.id()
                            + " has no price; give one, or take waste or boards as the goal.",
                    at + "/price",
                    "/goal");
        }
    }

    /** Amount and currency of a price. */
    void price(String at, String id, Price price) {
        BigDecimal amount = price.amount();
        if (amount.signum() < 0) {
            findings.add(
                    at + "/price/amount",
                    FaultCode.NEGATIVE,
                    amount.toPlainString(),
                    "0 or more",
                    "The price of " + id + " is " + amount.toPlainString() + "; give 0 or more.");
        } else if (amount.compareTo(DEAREST) > 0) {
            findings.add(
                    at + "/price/amount",
                    FaultCode.OUT_OF_RANGE,
                    amount.toPlainString(),
                    "at most " + DEAREST,
                    "The price of " + id + " is " + amount.toPlainString() + "; at most " + DEAREST + " is taken.");
        }
        if (!price.currency().equals(job.writing().currency())) {
            findings.add(
                    at + "/price/currency",
                    FaultCode.MIXED_CURRENCIES,
                    price.currency().getCurrencyCode(),
                    job.writing().currency().getCurrencyCode(),
                    "The price of " + id + " is in " + price.currency().getCurrencyCode() + ", the job is in "
                            + job.writing().currency().getCurrencyCode()
                            + "; amounts of different money cannot be added: convert one.",
                    "/currency");
        }
    }

    private void onHand(String at, StockItem.OnHand item) {
        common(at, item);
        findings.within(
                at + "/quantity",
                item.quantity(),
                1,
                JobReview.MOST_PIECES,
                got -> "Of " + item.id() + " " + got + " are on hand; give 1 to " + JobReview.MOST_PIECES
                        + ", or leave the entry out.");
        new ConditionReview(findings).review(at, item);
        for (int i = 0; i < item.zones().size(); i++) {
            zone(at, at + "/zones/" + i, item, item.zones().get(i));
        }
    }

    /** What every board or sheet must have: sizes, a name for its wood, something left between the trims. */
    void common(String at, StockItem item) {
        findings.positive(at + "/length", item.length());
        findings.positive(at + "/width", item.width());
        findings.positive(at + "/thickness", item.thickness());
        findings.text(at + "/material", item.material(), JobReview.LONGEST_NAME, false);
        findings.text(at + "/grade", item.grade(), JobReview.LONGEST_NAME, false);
        if (item.form() == Form.SHEET && item.nominal() != null) {
            findings.add(
                    at + "/nominal",
                    FaultCode.NOMINAL_ON_SHEET,
                    item.nominal().name(),
                    "width and thickness",
                    "Sheet " + item.id() + " has a trade size of boards; give its width and thickness instead.",
                    at + "/form");
        }
        Trim own = item.ownTrim();
        if (own != null) {
            ShopReview.trim(at + "/trim", own, findings);
        }
        String shopTrim = item.form() == Form.SHEET ? "/shop/sheetTrim" : "/shop/boardTrim";
        Trim shops =
                item.form() == Form.SHEET ? job.shop().sheetTrim() : job.shop().boardTrim();
        Trim trim = item.trimIn(shops);
        String said = own == null ? shopTrim : at + "/trim";
        left(at, item, "length", item.length(), trim.startOrZero(), trim.endOrZero(), said);
        left(at, item, "width", item.width(), trim.edgeOrZero(), trim.farEdgeOrZero(), said);
    }

    private void left(String at, StockItem item, String side, Length size, Length near, Length far, String said) {
        boolean fits = near.nanometres() < size.nanometres() - Math.min(size.nanometres(), far.nanometres());
        if (fits || !size.isPositive() || near.isNegative() || far.isNegative()) {
            return;
        }
        findings.add(
                at + "/" + side,
                FaultCode.NOTHING_LEFT,
                findings.say(size),
                "more than " + findings.say(near) + " and " + findings.say(far) + " together",
                "Trims of " + findings.say(near) + " and " + findings.say(far) + " leave nothing of the "
                        + findings.say(size) + " " + side + " of " + item.id() + "; check the size and " + said + ".",
                said,
                at + "/form");
    }

    private void zone(String at, String pointer, StockItem.OnHand item, Zone zone) {
        findings.notNegative(pointer + "/from", zone.from());
        span(pointer, "from", "to", zone.from(), zone.to(), at + "/length");
        inside(pointer + "/to", at + "/length", item, "length", zone.to(), item.length());
        if (zone.fromEdge() != null && zone.toEdge() != null) {
            findings.notNegative(pointer + "/fromEdge", zone.fromEdge());
            span(pointer, "fromEdge", "toEdge", zone.fromEdge(), zone.toEdge(), at + "/width");
        }
        inside(pointer + "/toEdge", at + "/width", item, "width", zone.toEdge(), item.width());
    }

    private void span(String pointer, String first, String last, Length from, Length to, String size) {
        if (!from.isLessThan(to)) {
            findings.add(
                    pointer + "/" + last,
                    FaultCode.EMPTY_ZONE,
                    findings.say(to),
                    "more than " + findings.say(from),
                    "This zone runs from " + findings.say(from) + " to " + findings.say(to) + "; " + last
                            + " must lie beyond " + first + ".",
                    pointer + "/" + first,
                    size);
        }
    }

    private void inside(
            String pointer, String sizePointer, StockItem item, String side, @Nullable Length to, Length size) {
        if (to != null && to.isMoreThan(size)) {
            findings.add(
                    pointer,
                    FaultCode.ZONE_OUTSIDE,
                    findings.say(to),
                    "at most " + findings.say(size),
                    "This zone ends at " + findings.say(to) + ", but the " + side + " of " + item.id() + " is "
                            + findings.say(size) + "; measure again from the same end and edge.",
                    sizePointer);
        }
    }
}
