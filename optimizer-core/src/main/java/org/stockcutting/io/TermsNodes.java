package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ObjectNode;
import org.stockcutting.job.Delivery;
import org.stockcutting.job.Seasons;
import org.stockcutting.job.TradeTerms;
import org.stockcutting.job.YardCuts;

/** What is reckoned about load and bill, as it stands in documents; nothing where nothing was said. */
final class TermsNodes {

    private final TradeTerms terms;
    private final char decimal;

    TermsNodes(TradeTerms terms, char decimal) {
        this.terms = terms;
        this.decimal = decimal;
    }

    void putShop(ObjectNode shop) {
        if (terms.carLoad() != null) {
            shop.put("carLoad", Weights.text(terms.carLoad(), decimal));
        }
    }

    private void putMoney(ObjectNode doc) {
        if (terms.taxPercent() != null) {
            doc.putObject("tax").put("percent", Amounts.text(terms.taxPercent(), decimal));
        }
        Delivery delivery = terms.delivery();
        if (delivery != null) {
            ObjectNode node = doc.putObject("delivery")
                    .put("price", Amounts.text(delivery.price().amount(), decimal));
            if (delivery.freeFrom() != null) {
                node.put("freeFrom", Amounts.text(delivery.freeFrom().amount(), decimal));
            }
        }
        YardCuts cuts = terms.yardCuts();
        if (cuts != null) {
            doc.putObject("yardCuts")
                    .put("form", cuts.form().word())
                    .put("price", Amounts.text(cuts.price().amount(), decimal))
                    .put("free", cuts.free());
        }
    }

    void put(ObjectNode doc) {
        if (!terms.woods().isEmpty()) {
            ObjectNode woods = doc.putObject("woods");
            terms.woods().forEach((name, wood) -> {
                ObjectNode node = woods.putObject(name);
                PlanWriter.putText(node, "like", wood.like());
                if (wood.density() != null) {
                    node.put("density", Weights.text(wood.density(), decimal));
                }
                if (wood.movement() != null) {
                    node.put("movement", Amounts.text(wood.movement(), decimal));
                }
            });
        }
        putMoney(doc);
        if (!terms.seasons().equals(Seasons.HEATED_ROOM)) {
            doc.putObject("seasons")
                    .put("driest", Amounts.text(terms.seasons().driest(), decimal))
                    .put("dampest", Amounts.text(terms.seasons().dampest(), decimal));
        }
    }
}
