package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.AllowanceProfile;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;
import org.stockcutting.job.KeepRule;
import org.stockcutting.job.SawLimits;
import org.stockcutting.job.ShopRules;
import org.stockcutting.job.Shortage;
import org.stockcutting.job.WoodRules;
import org.stockcutting.job.Writing;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.stock.Money;

/** Writes jobs as documents with every default filled in and every length exact; {@link JobReader} reads the same job back. */
public final class JobWriter {

    private JobWriter() {}

    /** The job as a document. */
    public static String write(Job job) {
        return JsonOutput.pretty(tree(job, true));
    }

    /** The job without its parts and stock: what stands beside CSV tables. */
    public static String writeShop(Job job) {
        return JsonOutput.pretty(tree(job, false));
    }

    static ObjectNode tree(Job job, boolean withLists) {
        Writing writing = job.writing();
        LengthWriter lengths = new LengthWriter(writing.unit(), writing.decimal());
        ObjectNode doc = JsonOutput.object();
        doc.put("format", JobReader.FORMAT).put("name", job.name());
        doc.put("unit", writing.unit().symbol()).put("decimal", String.valueOf(writing.decimal()));
        put(doc, "precision", writing.precision(), lengths);
        doc.put("currency", writing.currency().getCurrencyCode()).put("sets", job.sets());
        if (job.shortage() != Shortage.MOST_WOOD) {
            doc.put("whenShort", job.shortage().word());
        }
        TermsNodes terms = new TermsNodes(job.terms(), writing.decimal());
        ObjectNode shop = shop(job.shop(), lengths);
        terms.putShop(shop);
        doc.set("shop", shop);
        ObjectNode allowances = doc.putObject("allowances");
        job.allowances().forEach((name, profile) -> allowances.set(name, profile(profile, lengths)));
        if (withLists) {
            ArrayNode parts = doc.putArray("parts");
            job.parts().forEach(part -> parts.add(PartNodes.part(job, part, lengths)));
            StockNodes stock = new StockNodes(lengths, writing.decimal());
            ArrayNode forSale = doc.putArray("stock");
            job.forSale().forEach(item -> forSale.add(stock.forSale(item)));
            job.random().forEach(boards -> forSale.add(stock.random(boards)));
            ArrayNode onHand = doc.putArray("onHand");
            job.onHand().forEach(item -> onHand.add(stock.onHand(item)));
        }
        doc.put("goal", job.goal().word());
        doc.set("effort", effort(job.effort()));
        terms.put(doc);
        if (!job.compare().isEmpty()) {
            ArrayNode subsets = doc.putArray("compare");
            job.compare().forEach(subset -> subset.forEach(subsets.addArray()::add));
        }
        if (!job.shop().zoneMargin().isZero()) {
            put(doc, "zoneMargin", job.shop().zoneMargin(), lengths);
        }
        MachineNodes.put(doc, job.shop().machines(), lengths);
        Money setUpPrice = job.shop().setUpPrice();
        if (setUpPrice != null) {
            doc.put("setUpPrice", Amounts.text(setUpPrice.amount(), writing.decimal()));
        }
        if (!job.wood().equals(WoodRules.defaults())) {
            doc.set("wood", WoodNodes.wood(job.wood(), lengths));
        }
        return doc;
    }

    private static ObjectNode shop(ShopRules shop, LengthWriter lengths) {
        ObjectNode node = JsonOutput.object();
        ObjectNode kerf = node.putObject("kerf");
        put(kerf, "crosscut", shop.kerf().crosscut(), lengths);
        put(kerf, "rip", shop.kerf().rip(), lengths);
        node.set("boardTrim", StockNodes.trim(shop.boardTrim(), lengths));
        node.set("sheetTrim", StockNodes.trim(shop.sheetTrim(), lengths));
        node.set("limits", limits(shop.limits(), lengths));
        ArrayNode keep = node.putArray("keepOffcuts");
        for (KeepRule rule : shop.keepOffcuts()) {
            ObjectNode entry = keep.addObject().put("form", rule.form().word());
            put(entry, "length", rule.length(), lengths);
            put(entry, "width", rule.width(), lengths);
        }
        put(node, "thicknessTolerance", shop.thicknessTolerance(), lengths);
        put(node, "maxPlaning", shop.maxPlaning(), lengths);
        put(node, "carLength", shop.carLength(), lengths);
        put(node, "stopReach", shop.stopReach(), lengths);
        return node;
    }

    private static ObjectNode limits(SawLimits limits, LengthWriter lengths) {
        ObjectNode node = JsonOutput.object();
        put(node, "ripCapacity", limits.ripCapacity(), lengths);
        put(node, "longestRip", limits.longestRip(), lengths);
        put(node, "crosscutCapacity", limits.crosscutCapacity(), lengths);
        if (limits.stages() != null) {
            node.put("stages", limits.stages());
        }
        node.put("firstCut", limits.firstCut().word());
        put(node, "minimumPiece", limits.minimumPiece(), lengths);
        return node;
    }

    private static ObjectNode profile(AllowanceProfile profile, LengthWriter lengths) {
        ObjectNode node = JsonOutput.object();
        put(node, "length", profile.length(), lengths);
        put(node, "width", profile.width(), lengths);
        put(node, "thickness", profile.thickness(), lengths);
        put(node, "perStave", profile.perStave(), lengths);
        put(node, "staveThickness", profile.staveThickness(), lengths);
        put(node, "perPly", profile.perPly(), lengths);
        return node;
    }

    private static ObjectNode effort(Effort effort) {
        ObjectNode node = JsonOutput.object();
        if (effort.work() != null) {
            node.put("work", effort.work());
        }
        if (effort.seconds() != null) {
            node.put("seconds", effort.seconds());
        }
        return node.put("seed", effort.seed()).put("threads", effort.threads());
    }

    /** Puts an exact length, nothing for null. */
    static void put(ObjectNode node, String name, @Nullable Length length, LengthWriter lengths) {
        if (length != null) {
            node.put(name, lengths.exact(length));
        }
    }
}
