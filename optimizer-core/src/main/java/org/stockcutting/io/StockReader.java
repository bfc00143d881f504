package org.stockcutting.io;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Currency;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.FaultCode;
import org.stockcutting.length.Length;
import org.stockcutting.material.Grain;
import org.stockcutting.material.NominalCatalog;
import org.stockcutting.material.NominalSize;
import org.stockcutting.stock.Condition;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Offer;
import org.stockcutting.stock.Price;
import org.stockcutting.stock.PriceUnit;
import org.stockcutting.stock.RandomBoards;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Tally;
import org.stockcutting.stock.Trim;

/** Reads what is for sale and what is on hand. */
final class StockReader {

    private final Reading reading;
    private final NominalCatalog catalog;
    private final String jobMaterial;
    private final Currency jobCurrency;
    private final Set<String> taken = new HashSet<>();
    private Tally jobTally = Tally.EXACT;

    StockReader(Reading reading, NominalCatalog catalog, String jobMaterial, Currency jobCurrency) {
        this.reading = reading;
        this.catalog = catalog;
        this.jobMaterial = jobMaterial;
        this.jobCurrency = jobCurrency;
    }

    /** What both kinds of entries have in common. */
    private record Common(
            String id,
            Form form,
            @Nullable NominalSize nominal,
            Length length,
            Length width,
            Length thickness,
            String material,
            Grain grain,
            @Nullable Trim trim,
            @Nullable String grade) {}

    /**
     * Reads both lists: ids that are made up must be unique over both, and over the ids that were given.
     *
     * @param random takes the boards of random size, which stand among what is for sale
     */
    void read(
            DocObject doc,
            List<StockItem.ForSale> forSale,
            List<StockItem.OnHand> onHand,
            List<RandomBoards> random,
            StockPlaces places) {
        if (!doc.has("stock") && !doc.has("onHand")) {
            doc.missing("stock", "a list of stock, or onHand", "what can be bought");
        }
        jobTally = Or.of(tally(doc), Tally.EXACT);
        List<@Nullable DocObject> sold = doc.objects("stock");
        List<@Nullable DocObject> owned = doc.objects("onHand");
        for (List<@Nullable DocObject> list : List.of(sold, owned)) {
            for (DocObject entry : list) {
                String id = entry != null && entry.isText("id") ? entry.text("id") : null;
                if (id != null) {
                    taken.add(id);
                }
            }
        }
        for (DocObject entry : sold) {
            boolean byVolume = entry != null && entry.isText("form") && Fields.RANDOM.equals(entry.word("form"));
            places.next(byVolume);
            if (byVolume) {
                random.add(random(Objects.requireNonNull(entry)));
            } else {
                forSale.add(forSale(entry, forSale.size()));
            }
        }
        for (DocObject entry : owned) {
            onHand.add(onHand(entry, onHand.size()));
        }
    }

    /** One entry on hand by itself, as plans list their offcuts. */
    StockItem.OnHand onHand(@Nullable DocObject entry, int index) {
        Common c = entry == null ? standIn("on hand " + index) : common(entry);
        Integer quantity = entry == null ? null : entry.integer("quantity");
        return new StockItem.OnHand(
                c.id,
                c.form,
                c.nominal,
                c.length,
                c.width,
                c.thickness,
                c.material,
                c.grain,
                c.trim,
                Or.of(quantity, 1),
                entry == null ? List.of() : ZoneReader.read(entry, c.width, reading),
                entry == null ? Condition.TRUE : condition(entry),
                c.grade);
    }

    private static Condition condition(DocObject entry) {
        return new Condition(
                Or.of(entry.length("bow"), Length.ZERO),
                Or.of(entry.length("crook"), Length.ZERO),
                entry.length("widthEnd"),
                entry.bool("straightEdge"));
    }

    private RandomBoards random(DocObject entry) {
        Common c = common(entry);
        for (String name : List.of("leastLength", "leastWidth")) {
            if (!entry.has(name)) {
                entry.missing(name, "a length", "the least of the boards; length and width are the greatest");
            }
        }
        exclude(
                entry,
                List.of("available", "grain", "pack", "priceBreaks", "widthPremiums", "tally"),
                "Boards of random size",
                "are bought by volume, of whatever sizes come, with the grain along them");
        return new RandomBoards(
                c.id,
                c.nominal,
                Or.size(entry.length("leastLength")),
                c.length,
                Or.size(entry.length("leastWidth")),
                c.width,
                c.thickness,
                c.material,
                c.trim,
                price(entry),
                c.grade);
    }

    private void exclude(DocObject entry, List<String> names, String what, String why) {
        for (String name : names) {
            if (entry.has(name)) {
                reading.faults()
                        .add(
                                entry.pointer(name),
                                FaultCode.CONFLICT,
                                name,
                                "nothing",
                                what + " " + why + ", so they have no " + name + "; take the field out.");
            }
        }
    }

    private StockItem.ForSale forSale(@Nullable DocObject entry, int index) {
        if (entry != null) {
            exclude(entry, List.of("leastLength", "leastWidth"), "Boards of a fixed size", "are all alike");
        }
        Common c = entry == null ? standIn("stock " + index) : common(entry);
        return new StockItem.ForSale(
                c.id,
                c.form,
                c.nominal,
                c.length,
                c.width,
                c.thickness,
                c.material,
                c.grain,
                c.trim,
                entry == null ? null : entry.integer("available"),
                entry == null ? null : price(entry),
                c.grade,
                entry == null ? Offer.PLAIN : offer(entry));
    }

    private static @Nullable Tally tally(DocObject node) {
        return node.word("tally", Tally.values(), Tally::word);
    }

    private Offer offer(DocObject entry) {
        List<Offer.Break> breaks = new ArrayList<>();
        for (DocObject node : entry.objects("priceBreaks")) {
            Integer from = node == null ? null : node.integer("from");
            BigDecimal amount = node == null ? null : node.amount("amount");
            breaks.add(new Offer.Break(Or.of(from, breaks.size() + 2), Or.of(amount, BigDecimal.ZERO)));
        }
        List<Offer.Premium> premiums = new ArrayList<>();
        for (DocObject node : entry.objects("widthPremiums")) {
            Length over = node == null ? null : node.length("over");
            BigDecimal percent = node == null ? null : node.amount("percent");
            premiums.add(new Offer.Premium(Or.size(over), Or.of(percent, BigDecimal.ZERO)));
        }
        if (!entry.has("tally") && jobTally != Tally.EXACT) {
            reading.filledIn(entry.pointer("tally"), jobTally.word());
        }
        return new Offer(Or.of(entry.integer("pack"), 1), breaks, premiums, Or.of(tally(entry), jobTally));
    }

    private static Common standIn(String id) {
        return new Common(id, Form.BOARD, null, Or.SIZE, Or.SIZE, Or.SIZE, Or.NAME, Grain.LENGTH, null, null);
    }

    private Common common(DocObject entry) {
        Form form = Or.of(entry.word("form", Form.values(), Form::word), Form.BOARD);
        NominalSize nominal = nominal(entry);
        Length length = entry.length("length");
        Length width = side(entry, "width", nominal == null ? null : nominal.width());
        Length thickness = side(entry, "thickness", nominal == null ? null : nominal.thickness());
        String material = entry.text("material");
        if (!entry.has("material")) {
            reading.filledIn(entry.pointer("material"), jobMaterial);
        }
        String given = entry.text("id");
        String id = given == null ? "" : given;
        if (given == null) {
            String made = StockIds.of(nominal, Or.size(length), Or.size(width), Or.size(thickness), reading);
            id = unique(made);
            reading.filledIn(entry.pointer("id"), id);
        }
        return new Common(
                id,
                form,
                nominal,
                Or.size(length),
                Or.size(width),
                Or.size(thickness),
                Or.of(material, jobMaterial),
                grain(entry, form),
                TrimReader.read(entry, "trim", form == Form.SHEET),
                entry.text("grade"));
    }

    private String unique(String made) {
        String id = made;
        for (int i = 2; !taken.add(id); i++) {
            id = made + "-" + i;
        }
        return id;
    }

    private Grain grain(DocObject entry, Form form) {
        Grain standard = form == Form.SHEET ? Grain.ANY : Grain.LENGTH;
        if (Fields.RANDOM.equals(entry.isText("form") ? entry.text("form") : null)) {
            return standard;
        }
        if (!entry.has("grain")) {
            reading.filledIn(entry.pointer("grain"), standard.word());
            return standard;
        }
        return Or.of(entry.word("grain", Grain.values(), Grain::word), standard);
    }

    private @Nullable NominalSize nominal(DocObject entry) {
        String name = entry.text("nominal");
        if (name == null) {
            return null;
        }
        NominalSize found = catalog.find(name).orElse(null);
        if (found == null) {
            reading.faults()
                    .add(
                            entry.pointer("nominal"),
                            FaultCode.UNKNOWN_NOMINAL,
                            name,
                            "a trade size of the catalog, such as 2x4",
                            "The catalog has no trade size \"" + Faults.shown(name)
                                    + "\"; give width and thickness instead."
                                    + Nearest.hint(name, new TreeSet<>(catalog.names())));
        }
        return found;
    }

    /** A measured side wins over the catalog's. */
    private @Nullable Length side(DocObject entry, String name, @Nullable Length catalogs) {
        Length measured = entry.length(name);
        if (entry.has(name)) {
            return measured;
        }
        if (catalogs == null) {
            boolean explained =
                    entry.has("nominal") && reading.faults().pointers().contains(entry.pointer("nominal"));
            if (!explained) {
                entry.missing(name, "a length, or a nominal that has one", "measured " + name);
            }
            return null;
        }
        reading.filledIn(entry.pointer(name), reading.writer().exact(catalogs));
        return catalogs;
    }

    private @Nullable Price price(DocObject entry) {
        DocObject price = entry.object("price");
        if (price == null) {
            return null;
        }
        BigDecimal amount = price.amount("amount");
        PriceUnit per = price.word("per", PriceUnit.values(), PriceUnit::word);
        Currency currency = Currencies.read(price, reading);
        if (!price.has("currency")) {
            reading.filledIn(price.pointer("currency"), jobCurrency.getCurrencyCode());
        }
        return new Price(Or.of(amount, BigDecimal.ZERO), Or.of(currency, jobCurrency), Or.of(per, PriceUnit.PIECE));
    }
}
