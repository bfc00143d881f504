package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.material.Grain;
import org.stockcutting.stock.Condition;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Offer;
import org.stockcutting.stock.Price;
import org.stockcutting.stock.RandomBoards;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Tally;
import org.stockcutting.stock.Trim;
import org.stockcutting.stock.Zone;

/** Stock as it stands in documents. */
final class StockNodes {

    private final LengthWriter lengths;
    private final char decimal;

    StockNodes(LengthWriter lengths, char decimal) {
        this.lengths = lengths;
        this.decimal = decimal;
    }

    ObjectNode forSale(StockItem.ForSale item) {
        ObjectNode node = price(common(item, true), item.price());
        if (item.available() != null) {
            node.put("available", item.available());
        }
        offer(node, item.offer());
        return withTrim(node, item.ownTrim());
    }

    /** Boards of random size. */
    ObjectNode random(RandomBoards boards) {
        ObjectNode node = JsonOutput.object().put("id", boards.id()).put("form", Fields.RANDOM);
        if (boards.nominal() != null) {
            node.put("nominal", boards.nominal().name());
        }
        JobWriter.put(node, "leastLength", boards.leastLength(), lengths);
        JobWriter.put(node, "length", boards.length(), lengths);
        JobWriter.put(node, "leastWidth", boards.leastWidth(), lengths);
        JobWriter.put(node, "width", boards.width(), lengths);
        JobWriter.put(node, "thickness", boards.thickness(), lengths);
        node.put("material", boards.material());
        if (boards.grade() != null) {
            node.put("grade", boards.grade());
        }
        return withTrim(price(node, boards.price()), boards.ownTrim());
    }

    private ObjectNode price(ObjectNode node, @Nullable Price price) {
        if (price != null) {
            node.putObject("price")
                    .put("amount", Amounts.text(price.amount(), decimal))
                    .put("per", price.per().word())
                    .put("currency", price.currency().getCurrencyCode());
        }
        return node;
    }

    /** Nothing where it is sold by the piece at one price. */
    private void offer(ObjectNode node, Offer offer) {
        if (offer.pack() > 1) {
            node.put("pack", offer.pack());
        }
        if (!offer.breaks().isEmpty()) {
            ArrayNode breaks = node.putArray("priceBreaks");
            for (Offer.Break step : offer.breaks()) {
                breaks.addObject().put("from", step.from()).put("amount", Amounts.text(step.amount(), decimal));
            }
        }
        if (!offer.premiums().isEmpty()) {
            ArrayNode premiums = node.putArray("widthPremiums");
            for (Offer.Premium premium : offer.premiums()) {
                ObjectNode entry = premiums.addObject();
                JobWriter.put(entry, "over", premium.over(), lengths);
                entry.put("percent", Amounts.text(premium.percent(), decimal));
            }
        }
        if (offer.tally() != Tally.EXACT) {
            node.put("tally", offer.tally().word());
        }
    }

    /** An entry with every default filled in. */
    ObjectNode onHand(StockItem.OnHand item) {
        return zones(withTrim(common(item, true).put("quantity", item.quantity()), item.ownTrim()), item);
    }

    /** An offcut in a plan: an entry that says only what is not the default. */
    ObjectNode offcut(StockItem.OnHand item) {
        return zones(withTrim(common(item, false).put("quantity", item.quantity()), item.ownTrim()), item);
    }

    private ObjectNode common(StockItem item, boolean full) {
        ObjectNode node = JsonOutput.object().put("id", item.id());
        if (full || item.form() != Form.BOARD) {
            node.put("form", item.form().word());
        }
        if (item.nominal() != null) {
            node.put("nominal", item.nominal().name());
        }
        JobWriter.put(node, "length", item.length(), lengths);
        JobWriter.put(node, "width", item.width(), lengths);
        JobWriter.put(node, "thickness", item.thickness(), lengths);
        node.put("material", item.material());
        if (full || item.grain() != (item.form() == Form.SHEET ? Grain.ANY : Grain.LENGTH)) {
            node.put("grain", item.grain().word());
        }
        if (item.grade() != null) {
            node.put("grade", item.grade());
        }
        return node;
    }

    private ObjectNode withTrim(ObjectNode node, @Nullable Trim trim) {
        if (trim != null) {
            node.set("trim", trim(trim, lengths));
        }
        return node;
    }

    static ObjectNode trim(Trim trim, LengthWriter lengths) {
        ObjectNode node = JsonOutput.object();
        JobWriter.put(node, "start", trim.start(), lengths);
        JobWriter.put(node, "end", trim.end(), lengths);
        JobWriter.put(node, "edge", trim.edge(), lengths);
        JobWriter.put(node, "farEdge", trim.farEdge(), lengths);
        return node;
    }

    private void condition(ObjectNode node, Condition told) {
        JobWriter.put(node, "widthEnd", told.widthEnd(), lengths);
        JobWriter.put(node, "bow", told.bow().isZero() ? null : told.bow(), lengths);
        JobWriter.put(node, "crook", told.crook().isZero() ? null : told.crook(), lengths);
        if (told.straightEdge() != null) {
            node.put("straightEdge", told.straightEdge());
        }
    }

    private ObjectNode zones(ObjectNode node, StockItem.OnHand item) {
        condition(node, item.condition());
        if (item.zones().isEmpty()) {
            return node;
        }
        ArrayNode zones = node.putArray("zones");
        for (Zone zone : item.zones()) {
            ObjectNode entry = zones.addObject();
            JobWriter.put(entry, "from", zone.from(), lengths);
            JobWriter.put(entry, "to", zone.to(), lengths);
            JobWriter.put(entry, "fromEdge", zone.fromEdge(), lengths);
            JobWriter.put(entry, "toEdge", zone.toEdge(), lengths);
            entry.put("severity", zone.severity().word())
                    .put("face", zone.face().word());
            if (zone.metal()) {
                entry.put("kind", Fields.METAL);
            }
        }
        return node;
    }
}
