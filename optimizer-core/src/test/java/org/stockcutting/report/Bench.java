package org.stockcutting.report;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.TreeMap;
import org.stockcutting.job.AllowanceProfile;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.ShopRules;
import org.stockcutting.job.Writing;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthReader;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.length.Volume;
import org.stockcutting.material.Grain;
import org.stockcutting.material.NominalCatalog;
import org.stockcutting.material.NominalSize;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.Direction;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Derived;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.YieldFigures;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Price;
import org.stockcutting.stock.PriceUnit;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Trim;
import org.stockcutting.stock.Zone;

/** A small job in inches, put together by hand. */
final class Bench {

    static final Currency USD = Currency.getInstance("USD");
    private static final LengthReader INCHES = new LengthReader(LengthUnit.INCH, '.');

    final List<Part> parts = new ArrayList<>();
    final List<StockItem.ForSale> forSale = new ArrayList<>();
    final List<StockItem.OnHand> onHand = new ArrayList<>();
    final TreeMap<String, AllowanceProfile> allowances = new TreeMap<>(Job.builtInAllowances());
    Trim boardTrim = Trim.NONE;
    Trim sheetTrim = Trim.NONE;

    Job job() {
        ShopRules plain = ShopRules.defaults();
        ShopRules shop = new ShopRules(
                plain.kerf(),
                boardTrim,
                sheetTrim,
                plain.limits(),
                List.of(),
                plain.thicknessTolerance(),
                plain.maxPlaning(),
                null);
        Writing writing = new Writing(LengthUnit.INCH, '.', null, USD);
        return new Job("bench", writing, 1, shop, allowances, parts, forSale, onHand, Goal.COST, Effort.defaults());
    }

    Derived derive(Layout... layouts) {
        return Derivation.derive(job(), List.of(layouts), List.of(), 0);
    }

    Bench part(String id, String length, String width, String thickness, Making making) {
        return part(id, length, new Section.Measured(in(width), in(thickness)), making);
    }

    Bench part(String id, String length, Section section, Making making) {
        parts.add(new Part(id, 1, in(length), section, "wood", null, WoodClass.CLEAR, 0, making, null, null));
        return this;
    }

    Bench board(String id, String nominal, String length, String price, PriceUnit per) {
        NominalSize size = NominalCatalog.standard().find(nominal).orElseThrow();
        forSale.add(new StockItem.ForSale(
                id,
                Form.BOARD,
                size,
                in(length),
                size.width(),
                size.thickness(),
                "wood",
                Grain.LENGTH,
                null,
                null,
                price(price, per)));
        return this;
    }

    Bench sheet(String id, String length, String width, String thickness, String price, Trim own) {
        forSale.add(new StockItem.ForSale(
                id,
                Form.SHEET,
                null,
                in(length),
                in(width),
                in(thickness),
                "wood",
                Grain.ANY,
                own,
                null,
                price(price, PriceUnit.PIECE)));
        return this;
    }

    Bench owned(
            String id,
            Form form,
            String nominal,
            String length,
            String width,
            String thickness,
            Trim own,
            Zone... zones) {
        NominalSize size =
                nominal == null ? null : NominalCatalog.standard().find(nominal).orElseThrow();
        onHand.add(new StockItem.OnHand(
                id, form, size, in(length), in(width), in(thickness), "wood", Grain.LENGTH, own, 9, List.of(zones)));
        return this;
    }

    Layout layout(String stock, int repeat, CutNode cuts, List<PlacedPiece> pieces, Layout.LeftOver... rests) {
        StockItem item = new Lookup(job()).stock(stock);
        return new Layout(stock, repeat, item.length(), item.width(), item.thickness(), pieces, cuts, List.of(rests));
    }

    static PlacedPiece piece(String part, String x, String y, String length, String width) {
        return new PlacedPiece(part, List.of(1), List.of(), in(x), in(y), in(length), in(width), false);
    }

    static Layout.LeftOver rest(String x, String y, String length, String width, boolean keep) {
        return new Layout.LeftOver(in(x), in(y), in(length), in(width), keep);
    }

    /** Cuts with slots written {@code from..to}, blanks between them. */
    static CutNode cuts(Direction direction, String slots, CutNode... pieces) {
        List<CutNode.Slot> list = new ArrayList<>();
        for (String slot : slots.split(" ", -1)) {
            String[] ends = slot.split("\\.\\.", -1);
            list.add(new CutNode.Slot(in(ends[0]), in(ends[1])));
        }
        return new CutNode.Cuts(direction, list, List.of(pieces));
    }

    static CutNode leaf(String part) {
        return new CutNode.PartLeaf(part);
    }

    static Zone zone(String from, String to, String fromEdge, String toEdge) {
        return new Zone(
                in(from),
                in(to),
                fromEdge == null ? null : in(fromEdge),
                toEdge == null ? null : in(toEdge),
                Zone.Severity.UNUSABLE,
                Zone.Face.BOTH,
                false);
    }

    static Trim trim(String start, String end, String edge, String farEdge) {
        return new Trim(orNull(start), orNull(end), orNull(edge), orNull(farEdge));
    }

    /** Cubic inches. */
    static Volume cubic(String inches) {
        BigDecimal cube = new BigDecimal(Volume.of(in("1"), in("1"), in("1")).cubicNanometres());
        return new Volume(new BigDecimal(inches).multiply(cube).toBigIntegerExact());
    }

    static Volume sumOfShares(YieldFigures yield) {
        return yield.parts()
                .plus(yield.allowance())
                .plus(yield.kerf())
                .plus(yield.trim())
                .plus(yield.zones())
                .plus(yield.offcutsKept())
                .plus(yield.waste());
    }

    static Length in(String text) {
        return INCHES.read(text);
    }

    private static Length orNull(String text) {
        return text == null ? null : in(text);
    }

    private static Price price(String amount, PriceUnit per) {
        return amount == null ? null : new Price(new BigDecimal(amount), USD, per);
    }
}
