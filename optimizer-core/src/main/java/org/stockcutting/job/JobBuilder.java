package org.stockcutting.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthReader;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.material.Grain;
import org.stockcutting.material.NominalCatalog;
import org.stockcutting.material.NominalSize;
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

/**
 * Builds a job in a program, with the defaults a document would have. Lengths are texts as makers write them, read in the job's unit; a
 * text that is no exact length is refused with a {@link org.stockcutting.length.LengthFormatException}. What the short forms do not say
 * is added as records: {@link #part(Part)}, {@link #stock(StockItem.ForSale)}, {@link #stock(StockItem.OnHand)}.
 *
 * <p>Not safe to share between threads.
 */
public final class JobBuilder {

    private final String name;
    private final LengthUnit unit;
    private final LengthReader reader;
    private final List<Part> parts = new ArrayList<>();
    private final List<StockItem.ForSale> forSale = new ArrayList<>();
    private final List<StockItem.OnHand> onHand = new ArrayList<>();
    private Currency currency;
    private String material = "wood";
    private ShopRules shop = ShopRules.defaults();
    private @Nullable Goal goal;
    private Effort effort = Effort.defaults();
    private int sets = 1;
    private WoodRules wood = WoodRules.defaults();

    private JobBuilder(String name, LengthUnit unit, String currency) {
        this.name = name;
        this.unit = unit;
        this.reader = new LengthReader(unit, '.');
        this.currency = Currency.getInstance(currency);
    }

    /** A job in inches and US dollars. */
    public static JobBuilder inches(String name) {
        return new JobBuilder(name, LengthUnit.INCH, "USD");
    }

    /** A job in millimetres and euros. */
    public static JobBuilder millimetres(String name) {
        return new JobBuilder(name, LengthUnit.MILLIMETRE, "EUR");
    }

    /** Another currency, an ISO 4217 code; for the prices that follow. */
    public JobBuilder currency(String code) {
        currency = Currency.getInstance(code);
        return this;
    }

    /** Material of the parts and stock that follow. */
    public JobBuilder material(String word) {
        material = word;
        return this;
    }

    /** The whole shop at once; {@link ShopRules#defaults()} where this is not called. */
    public JobBuilder shop(ShopRules rules) {
        shop = rules;
        return this;
    }

    /** What is trimmed off the two raw ends of every board. */
    public JobBuilder boardTrim(String start, String end) {
        shop = shop.withBoardTrim(new Trim(length(start), length(end), null, null));
        return this;
    }

    /** Offcuts of this form at least so long and so wide go back on the rack. */
    public JobBuilder keep(Form form, String length, String width) {
        List<KeepRule> rules = new ArrayList<>(shop.keepOffcuts());
        rules.add(new KeepRule(form, length(length), length(width)));
        shop = shop.withKeepOffcuts(rules);
        return this;
    }

    /** What is to be least; where this is not called, money if anything for sale has a price, else waste. */
    public JobBuilder goal(Goal least) {
        goal = least;
        return this;
    }

    /** How hard to search; {@link Effort#defaults()} where this is not called. */
    public JobBuilder effort(Effort hard) {
        effort = hard;
        return this;
    }

    /** How many times the whole parts list is made. */
    public JobBuilder sets(int count) {
        sets = count;
        return this;
    }

    /** A part cut from a trade size as it comes. */
    public JobBuilder part(String id, int quantity, String length, String nominal) {
        return part(id, quantity, length, new Section.Nominal(nominal), new Making.AsCut());
    }

    /** A part with a finished width and thickness, cut to size. */
    public JobBuilder part(String id, int quantity, String length, String width, String thickness) {
        return part(id, quantity, length, new Section.Measured(length(width), length(thickness)), new Making.AsCut());
    }

    /** A part made in a way of its own: milled, glued up, laminated. */
    public JobBuilder part(String id, int quantity, String length, Section section, Making making) {
        return part(new Part(
                id, quantity, length(length), section, material, null, WoodClass.CLEAR, 0, making, null, null));
    }

    /** A part as a record, for what the short forms do not say. */
    public JobBuilder part(Part part) {
        parts.add(part);
        return this;
    }

    /** A board for sale by trade size, at a price a piece. */
    public JobBuilder board(String id, String nominal, String length, String price) {
        NominalSize size = size(nominal);
        Length width = size.width();
        if (width == null) {
            throw new IllegalArgumentException(nominal + " names only a thickness: add the board as a record");
        }
        return stock(new StockItem.ForSale(
                id,
                Form.BOARD,
                size,
                length(length),
                width,
                size.thickness(),
                material,
                Grain.LENGTH,
                null,
                null,
                each(price)));
    }

    /** A sheet for sale, its grain along the first size, at a price a piece. */
    public JobBuilder sheet(String id, String length, String width, String thickness, String price) {
        return stock(new StockItem.ForSale(
                id,
                Form.SHEET,
                null,
                length(length),
                length(width),
                length(thickness),
                material,
                Grain.LENGTH,
                null,
                null,
                each(price)));
    }

    /** A piece of stock for sale as a record. */
    public JobBuilder stock(StockItem.ForSale item) {
        forSale.add(item);
        return this;
    }

    /** A piece on hand, such as an offcut of an earlier plan. */
    public JobBuilder stock(StockItem.OnHand item) {
        onHand.add(item);
        return this;
    }

    /** A board on hand as it was measured, with its bad stretches. */
    public JobBuilder measured(String id, String length, String width, String thickness, Zone... bad) {
        return stock(new StockItem.OnHand(
                id,
                Form.BOARD,
                null,
                length(length),
                length(width),
                length(thickness),
                material,
                Grain.LENGTH,
                null,
                1,
                List.of(bad)));
    }

    /** A stretch of a board that no part may touch, over the whole width: two readings of the tape from the raw start end. */
    public Zone bad(String from, String to) {
        return new Zone(length(from), length(to), null, null, Zone.Severity.UNUSABLE, Zone.Face.BOTH, false);
    }

    /** What is known of the knots of unmeasured boards, and how sure to be. */
    public JobBuilder wood(WoodRules rules) {
        wood = rules;
        return this;
    }

    /** The job. Whether it can be planned is the business of {@link JobReview}. */
    public Job build() {
        return new Job(
                name,
                new Writing(unit, '.', null, currency),
                sets,
                shop,
                new TreeMap<>(Job.builtInAllowances()),
                parts,
                forSale,
                onHand,
                goal == null ? usualGoal() : goal,
                effort,
                TradeTerms.NONE,
                List.of(),
                wood,
                List.of());
    }

    private Goal usualGoal() {
        return forSale.stream().anyMatch(item -> item.price() != null) ? Goal.COST : Goal.WASTE;
    }

    private Price each(String price) {
        BigDecimal amount = new BigDecimal(price).stripTrailingZeros();
        return new Price(amount.setScale(Math.max(0, amount.scale())), currency, PriceUnit.PIECE);
    }

    private static NominalSize size(String nominal) {
        return NominalCatalog.standard()
                .find(nominal)
                .orElseThrow(() -> new IllegalArgumentException("no trade size " + nominal + " in the catalog"));
    }

    /** A text in the job's unit, as an exact length. */
    public Length length(String text) {
        return reader.read(text);
    }
}
