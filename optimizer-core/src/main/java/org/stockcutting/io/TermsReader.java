package org.stockcutting.io;

import java.util.SortedMap;
import java.util.TreeMap;
import org.stockcutting.job.FaultCode;
import org.stockcutting.job.OwnWood;
import org.stockcutting.job.Seasons;
import org.stockcutting.job.TradeTerms;
import org.stockcutting.material.Weight;

/** Reads what is reckoned about the load and the bill: {@code woods}, {@code seasons}, the car's load. */
final class TermsReader {

    private final DocObject doc;
    private final char decimal;

    private TermsReader(DocObject doc, Reading reading) {
        this.doc = doc;
        this.decimal = reading.decimal();
    }

    static TradeTerms read(DocObject doc, DocObject shop, Reading reading) {
        TermsReader reader = new TermsReader(doc, reading);
        Weight load = shop.parsed("carLoad", FaultCode.NOT_A_WEIGHT, text -> Weights.weight(text, reading.decimal()));
        return new TradeTerms(load, reader.woods(), reader.seasons());
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
