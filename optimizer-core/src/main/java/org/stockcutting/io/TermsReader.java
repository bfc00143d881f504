package org.stockcutting.io;

import java.math.BigDecimal;
import java.util.Currency;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Delivery;
import org.stockcutting.job.FaultCode;
import org.stockcutting.job.OwnWood;
import org.stockcutting.job.Seasons;
import org.stockcutting.job.TradeTerms;
import org.stockcutting.job.YardCuts;
import org.stockcutting.material.Weight;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Money;

/** Reads what is reckoned about the load and the bill: {@code woods}, {@code seasons}, the car's load. */
final class TermsReader {

    private final DocObject doc;
    private final char decimal;
    private final Currency currency;

    private TermsReader(DocObject doc, Reading reading, Currency currency) {
        this.currency = currency;
        this.doc = doc;
        this.decimal = reading.decimal();
    }

    static TradeTerms read(DocObject doc, DocObject shop, Reading reading, Currency currency) {
        TermsReader reader = new TermsReader(doc, reading, currency);
        Weight load = shop.parsed("carLoad", FaultCode.NOT_A_WEIGHT, text -> Weights.weight(text, reading.decimal()));
        return new TradeTerms(
                load, reader.woods(), reader.seasons(), reader.tax(), reader.delivery(), reader.yardCuts());
    }

    /** What a set-up is worth: money like the rest, though it decides how boards are cut. */
    static @Nullable Money setUpPrice(DocObject doc, Reading reading, Currency currency) {
        return new TermsReader(doc, reading, currency).money(doc, "setUpPrice");
    }

    private SortedMap<String, OwnWood> woods() {
        SortedMap<String, OwnWood> found = new TreeMap<>();
        DocObject woods = doc.objectOrEmpty("woods");
        for (String material : woods.names()) {
            DocObject wood = woods.named(material);
            if (wood != null) {
                found.put(
                        material,
                        new OwnWood(
                                wood.text("like"),
                                wood.parsed("density", FaultCode.NOT_A_WEIGHT, text -> Weights.density(text, decimal)),
                                wood.amount("movement")));
            }
        }
        return found;
    }

    private @Nullable BigDecimal tax() {
        DocObject tax = doc.object("tax");
        return tax == null ? null : Or.of(tax.amount("percent"), BigDecimal.ZERO);
    }

    private @Nullable Delivery delivery() {
        DocObject delivery = doc.object("delivery");
        return delivery == null
                ? null
                : new Delivery(
                        Or.of(money(delivery, "price"), Money.ofMinor(0, currency)), money(delivery, "freeFrom"));
    }

    private @Nullable YardCuts yardCuts() {
        DocObject cuts = doc.object("yardCuts");
        return cuts == null
                ? null
                : new YardCuts(
                        Or.of(cuts.word("form", Form.values(), Form::word), Form.SHEET),
                        Or.of(money(cuts, "price"), Money.ofMinor(0, currency)),
                        Or.of(cuts.integer("free"), 0));
    }

    /** Whole minor units: a till takes nothing else. */
    private @Nullable Money money(DocObject in, String name) {
        BigDecimal amount = in.amount(name);
        if (amount == null) {
            return null;
        }
        int decimals = currency.getDefaultFractionDigits();
        if (amount.scale() > decimals) {
            in.fault(
                    name,
                    FaultCode.NOT_AN_AMOUNT,
                    com.fasterxml.jackson.databind.node.TextNode.valueOf(Amounts.text(amount, decimal)),
                    "an amount with at most " + decimals + " decimals");
            return null;
        }
        return new Money(amount, currency);
    }

    private Seasons seasons() {
        DocObject seasons = doc.object("seasons");
        if (seasons == null) {
            return Seasons.HEATED_ROOM;
        }
        return new Seasons(
                Or.of(seasons.amount("driest"), Seasons.HEATED_ROOM.driest()),
                Or.of(seasons.amount("dampest"), Seasons.HEATED_ROOM.dampest()));
    }
}
