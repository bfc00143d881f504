package org.stockcutting.check;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.TreeMap;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.KeepRule;
import org.stockcutting.job.Kerf;
import org.stockcutting.job.SawLimits;
import org.stockcutting.job.ShopRules;
import org.stockcutting.job.Writing;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.material.Grain;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Price;
import org.stockcutting.stock.PriceUnit;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Trim;
import org.stockcutting.stock.Zone;

/** Short ways to write jobs in tests; lengths in inches. */
final class JobSketch {

    static final Currency USD = Currency.getInstance("USD");

    Length crosscutKerf = in("0.125");
    Length ripKerf = in("0.125");
    Trim boardTrim = Trim.NONE;
    Trim sheetTrim = Trim.NONE;
    SawLimits limits = SawLimits.NONE;
    List<KeepRule> keep = new ArrayList<>();
    Length carLength;
    int sets = 1;
    Goal goal = Goal.COST;
    final List<Part> parts = new ArrayList<>();
    final List<StockItem.ForSale> forSale = new ArrayList<>();
    final List<StockItem.OnHand> onHand = new ArrayList<>();

    static JobSketch of(Job job) {
        JobSketch sketch = new JobSketch();
        sketch.crosscutKerf = job.shop().kerf().crosscut();
        sketch.ripKerf = job.shop().kerf().rip();
        sketch.boardTrim = job.shop().boardTrim();
        sketch.sheetTrim = job.shop().sheetTrim();
        sketch.limits = job.shop().limits();
        sketch.keep = new ArrayList<>(job.shop().keepOffcuts());
        sketch.carLength = job.shop().carLength();
        sketch.sets = job.sets();
        sketch.goal = job.goal();
        sketch.parts.addAll(job.parts());
        sketch.forSale.addAll(job.forSale());
        sketch.onHand.addAll(job.onHand());
        return sketch;
    }

    Job build() {
        ShopRules shop = new ShopRules(
                new Kerf(crosscutKerf, ripKerf),
                boardTrim,
                sheetTrim,
                limits,
                keep,
                in("0.0625"),
                in("0.5"),
                carLength);
        return new Job(
                "test",
                new Writing(LengthUnit.INCH, '.', null, USD),
                sets,
                shop,
                new TreeMap<>(Job.builtInAllowances()),
                parts,
                forSale,
                onHand,
                goal,
                Effort.defaults());
    }

    static Length in(String inches) {
        return Length.inches(inches);
    }

    static Trim trim(String start, String end, String edge, String farEdge) {
        return new Trim(side(start), side(end), side(edge), side(farEdge));
    }

    private static Length side(String inches) {
        return inches == null ? null : in(inches);
    }

    static Part part(String id, int quantity, String length, String width, String thickness) {
        return new Part(
                id,
                quantity,
                in(length),
                new Section.Measured(in(width), in(thickness)),
                "oak",
                null,
                WoodClass.CLEAR,
                0,
                new Making.AsCut(),
                null,
                null);
    }

    static Part with(Part p, Grain grain, Making making, String group, WoodClass woodClass, int spares) {
        return new Part(
                p.id(),
                p.quantity(),
                p.length(),
                p.section(),
                p.material(),
                grain,
                woodClass,
                spares,
                making,
                group,
                p.note());
    }

    static Part resized(Part p, int quantity, Length length) {
        return new Part(
                p.id(),
                quantity,
                length,
                p.section(),
                p.material(),
                p.grain(),
                p.woodClass(),
                p.spares(),
                p.making(),
                p.group(),
                p.note());
    }

    static StockItem.ForSale sale(
            String id, Form form, String length, String width, String thickness, Grain grain, String dollars) {
        return new StockItem.ForSale(
                id,
                form,
                null,
                in(length),
                in(width),
                in(thickness),
                "oak",
                grain,
                null,
                null,
                new Price(new BigDecimal(dollars), USD, PriceUnit.PIECE));
    }

    static StockItem.ForSale available(StockItem.ForSale s, Integer available) {
        return new StockItem.ForSale(
                s.id(),
                s.form(),
                s.nominal(),
                s.length(),
                s.width(),
                s.thickness(),
                s.material(),
                s.grain(),
                s.ownTrim(),
                available,
                s.price());
    }

    static StockItem.OnHand owned(String id, String length, String width, String thickness, Trim trim, Zone... zones) {
        return new StockItem.OnHand(
                id,
                Form.BOARD,
                null,
                in(length),
                in(width),
                in(thickness),
                "oak",
                Grain.LENGTH,
                trim,
                1,
                List.of(zones));
    }

    static StockItem.OnHand zoned(StockItem.OnHand o, List<Zone> zones) {
        return new StockItem.OnHand(
                o.id(),
                o.form(),
                o.nominal(),
                o.length(),
                o.width(),
                o.thickness(),
                o.material(),
                o.grain(),
                o.ownTrim(),
                o.quantity(),
                zones);
    }
}
