package org.stockcutting.io;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.material.Grain;
import org.stockcutting.part.Binding;
import org.stockcutting.part.CutFrom;
import org.stockcutting.part.Edging;
import org.stockcutting.part.Ends;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.part.Shaping;
import org.stockcutting.part.Taper;
import org.stockcutting.plan.BuyingLine;
import org.stockcutting.plan.Comparison;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.TradeOff;
import org.stockcutting.report.ChalkMarks;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Money;
import org.stockcutting.stock.Offer;
import org.stockcutting.stock.Price;
import org.stockcutting.stock.RandomBoards;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Tally;
import org.stockcutting.stock.Trim;

/**
 * Writes tables (RFC 4180, commas, CRLF) with exact lengths: parts and stock so that {@link CsvJobReader} reads the same, offcuts as a
 * table of boards for the next job, the buying list and the cut sequence. Columns that no row fills are left out. Text that a spreadsheet could take for
 * a formula gets an apostrophe in front, which the reader takes off.
 */
public final class CsvTables {

    private CsvTables() {}

    /** The parts list. */
    public static String parts(Job job) {
        LengthWriter lengths = lengths(job);
        return new Columns<Part>()
                .text("id", Part::id)
                .plain("quantity", p -> p.quantity())
                .plain("length", p -> lengths.exact(p.length()))
                .plain("width", p -> measured(p, lengths, Section.Measured::width))
                .plain("thickness", p -> measured(p, lengths, Section.Measured::thickness))
                .text("nominal", p -> p.section() instanceof Section.Nominal n ? n.name() : null)
                .text("material", Part::material)
                .plain("grain", p -> p.grain() == null ? null : p.grain().word())
                .plain("class", p -> p.woodClass().word())
                .text("cutFrom.stock", p -> chosen(p, CutFrom::stock))
                .plain("cutFrom.from", p -> chosen(p, place -> length(place.from(), lengths)))
                .plain("cutFrom.edge", p -> chosen(p, place -> length(place.edge(), lengths)))
                .plain(
                        "showFaces",
                        p -> p.selection().goodFaceOnly()
                                ? p.selection().showFaces().word()
                                : null)
                .text(
                        "grades",
                        p -> p.selection().grades().isEmpty()
                                ? null
                                : String.join("; ", p.selection().grades()))
                .plain("spares", p -> p.spares() == 0 ? null : p.spares())
                .text("allowance", p -> p.making() instanceof Making.Milled m ? m.profile() : null)
                .plain("gang", p -> PartNodes.gang(job, p))
                .plain("make", CsvTables::make)
                .plain("make.plies", p -> p.making() instanceof Making.Lamination l ? l.plies() : null)
                .plain("make.staves.min", p -> glueUp(p, g -> lengths.exact(g.minStave())))
                .plain("make.staves.max", p -> glueUp(p, g -> lengths.exact(g.maxStave())))
                .plain("make.staves.count", p -> glueUp(p, Making.GlueUp::count))
                .plain("make.staves.from", p -> glueUp(p, g -> g.from().word()))
                .text("group", Part::group)
                .plain("group.rule", CsvTables::binding)
                .text("note", Part::note)
                .plain("tolerance", p -> tolerance(p, lengths))
                .plain("edging.start", p -> band(p, Edging::start, lengths))
                .plain("edging.end", p -> band(p, Edging::end, lengths))
                .plain("edging.edge", p -> band(p, Edging::edge, lengths))
                .plain("edging.farEdge", p -> band(p, Edging::farEdge, lengths))
                .plain(
                        "edging.over",
                        p -> p.edging().isNone()
                                ? null
                                : lengths.exact(p.edging().over()))
                .plain("taper.start", p -> taper(p, t -> t.start() == null ? null : lengths.exact(t.start())))
                .plain("taper.foot", p -> taper(p, t -> lengths.exact(t.foot())))
                .plain("taper.faces", p -> taper(p, t -> t.faces().word()))
                .plain("taper.nest", p -> p.isNested() ? "yes" : null)
                .plain("ends.angle", p -> ends(p, e -> e.angle().word()))
                .plain("ends.stick", p -> ends(p, e -> e.stick() == 1 ? null : Integer.valueOf(e.stick())))
                .plain("ends.flip", p -> ends(p, e -> e.flip() ? "yes" : null))
                .plain(
                        "fit",
                        p -> p.shaping().fit() == Shaping.Fit.TO_SIZE
                                ? null
                                : p.shaping().fit().word())
                .plain(
                        "hand",
                        p -> p.shaping().hand() == Shaping.Hand.NONE
                                ? null
                                : p.shaping().hand().word())
                .text(
                        "marks",
                        p -> p.shaping().marks().isEmpty()
                                ? null
                                : MarkText.write(p.shaping().marks(), lengths))
                .write(job.parts());
    }

    private static @Nullable String chosen(Part part, Function<CutFrom, @Nullable String> field) {
        CutFrom place = part.selection().cutFrom();
        return place == null ? null : field.apply(place);
    }

    private static @Nullable String binding(Part part) {
        Binding binding = part.selection().binding();
        return part.group() == null || binding == Binding.SAME_BOARD ? null : binding.word();
    }

    private static @Nullable Object ends(Part part, Function<Ends, @Nullable Object> value) {
        return part.shaping().ends() == null ? null : value.apply(part.shaping().ends());
    }

    private static @Nullable Object taper(Part part, Function<Taper, @Nullable Object> value) {
        return part.shaping().taper() == null
                ? null
                : value.apply(part.shaping().taper());
    }

    private static @Nullable String tolerance(Part part, LengthWriter lengths) {
        Length tolerance = part.shaping().tolerance();
        return tolerance.isZero() ? null : lengths.exact(tolerance);
    }

    private static @Nullable String band(Part part, Function<Edging, @Nullable Length> side, LengthWriter lengths) {
        Length thickness = side.apply(part.edging());
        return thickness == null ? null : lengths.exact(thickness);
    }

    /** Everything for sale, then everything on hand, told apart by the column {@code onHand}. */
    public static String stock(Job job) {
        char decimal = job.writing().decimal();
        LengthWriter lengths = lengths(job);
        Map<String, RandomBoards> random =
                job.random().stream().collect(Collectors.toMap(RandomBoards::id, boards -> boards));
        List<? extends StockItem> all = Stream.concat(
                        Stream.concat(
                                job.forSale().stream(), job.random().stream().map(CsvTables::greatest)),
                        job.onHand().stream())
                .toList();
        Columns<StockItem> columns = new Columns<StockItem>()
                .text("id", StockItem::id)
                .plain("onHand", CsvTables::yesOrNo)
                .plain(
                        "form",
                        s -> random.containsKey(s.id())
                                ? Fields.RANDOM
                                : s.form().word());
        return items(columns, s -> random.containsKey(s.id()) ? null : s.grain().word(), job)
                .plain("leastLength", s -> of(random.get(s.id()), b -> lengths.exact(b.leastLength())))
                .plain("leastWidth", s -> of(random.get(s.id()), b -> lengths.exact(b.leastWidth())))
                .plain("price", s -> price(s, p -> Amounts.text(p.amount(), decimal)))
                .plain("per", s -> price(s, p -> p.per().word()))
                .plain("currency", s -> price(s, p -> p.currency().getCurrencyCode()))
                .plain("available", s -> s instanceof StockItem.ForSale sale ? sale.available() : null)
                .plain("pack", s -> offer(s, o -> o.pack() == 1 ? null : Integer.valueOf(o.pack())))
                .plain(
                        "priceBreaks",
                        s -> offer(s, o -> o.breaks().isEmpty() ? null : StepText.writeBreaks(o.breaks(), decimal)))
                .plain(
                        "widthPremiums",
                        s -> offer(
                                s,
                                o -> o.premiums().isEmpty()
                                        ? null
                                        : StepText.writePremiums(o.premiums(), lengths(job), decimal)))
                .plain(
                        "tally",
                        s -> offer(
                                s,
                                o -> o.tally() == Tally.EXACT ? null : o.tally().word()))
                .write(all);
    }

    /** Boards of random size by their greatest sizes, so that they go into the same columns. */
    private static StockItem.ForSale greatest(RandomBoards boards) {
        return new StockItem.ForSale(
                boards.id(),
                Form.BOARD,
                boards.nominal(),
                boards.length(),
                boards.width(),
                boards.thickness(),
                boards.material(),
                Grain.LENGTH,
                boards.ownTrim(),
                null,
                boards.price(),
                boards.grade(),
                Offer.PLAIN);
    }

    private static @Nullable String of(@Nullable RandomBoards boards, Function<RandomBoards, String> value) {
        return boards == null ? null : value.apply(boards);
    }

    /** Kept offcuts as a table of boards, ready to be on hand in the next job. */
    public static String offcuts(Job job, CuttingPlan plan) {
        Columns<StockItem> columns = new Columns<StockItem>()
                .text("id", StockItem::id)
                .plain("form", s -> s.form().word());
        return items(columns, s -> s.grain().word(), job).write(plan.derived().offcuts());
    }

    /** The buying list with its prices. */
    public static String buyingList(Job job, CuttingPlan plan) {
        String currency = job.writing().currency().getCurrencyCode();
        return new Columns<BuyingLine>()
                .text("stock", BuyingLine::stock)
                .plain("quantity", b -> b.quantity())
                .plain(
                        "price",
                        b -> b.price() == null ? null : b.price().amount().toPlainString())
                .plain(
                        "total",
                        b -> b.total() == null ? null : b.total().amount().toPlainString())
                .plain("currency", b -> b.price() == null ? null : currency)
                .plain(
                        "boardFeet",
                        b -> b.boardFeet() == null ? null : b.boardFeet().toPlainString())
                .plain(
                        "used",
                        b -> b.lot().used() == b.quantity() ? null : b.lot().used())
                .plain("pack", b -> b.lot().pack() == 1 ? null : b.lot().pack())
                .plain(
                        "breakFrom",
                        b -> b.lot().breakFrom() == 0 ? null : b.lot().breakFrom())
                .plain("more", b -> b.lot().more() == 0 ? null : b.lot().more())
                .write(plan.derived().buyingList());
    }

    /**
     * Every rough piece with its board and its place: {@code gang} says how many parts it becomes, numbered on from its own, {@code mark} is what is chalked on it, {@code member} the stave or ply, x and y are
     * raw positions from the origin end and edge.
     */
    public static String pieces(Job job, CuttingPlan plan) {
        LengthWriter lengths = lengths(job);
        ChalkMarks marks = new ChalkMarks(job);
        return new Columns<PieceRow>()
                .text("part", PieceRow::part)
                .plain("number", p -> p.number())
                .plain("member", p -> p.member() == 0 ? null : p.member())
                .plain("gang", p -> p.gang() == 1 ? null : p.gang())
                .plain("mark", p -> marks.of(p.part(), p.number(), p.member()))
                .text("board", PieceRow::board)
                .plain("x", p -> lengths.exact(p.piece().x()))
                .plain("y", p -> lengths.exact(p.piece().y()))
                .plain("length", p -> lengths.exact(p.piece().length()))
                .plain("width", p -> lengths.exact(p.piece().width()))
                .plain("thickness", p -> lengths.exact(p.thickness()))
                .plain("turned", p -> p.piece().turned() ? "yes" : "no")
                .write(PieceRow.of(job, plan));
    }

    /** What fewer set-ups cost; {@code together} counts each at the job's price. */
    public static String tradeOff(Job job, CuttingPlan plan) {
        Money price = job.shop().setUpPrice();
        return new Columns<TradeOff.Row>()
                .plain("cost", row -> row.cost().amount().toPlainString())
                .plain("currency", row -> job.writing().currency().getCurrencyCode())
                .plain("setUps", row -> row.setUps())
                .plain(
                        "together",
                        row -> price == null
                                ? null
                                : row.withSetUps(price).amount().toPlainString())
                .plain("chosen", row -> row.chosen() ? "yes" : "no")
                .write(plan.derived().tradeOff().rows());
    }

    /** The choices of a comparison: those of each component, numbered from 1, then those over the whole job, in {@code component} 0. */
    public static String comparison(Job job, Comparison comparison) {
        return ComparisonTable.write(job, comparison);
    }

    /** The cut sequence, step by step; {@code setUp} names the machine and {@code stop} the position that a step is made at. */
    public static String cutSequence(Job job, CuttingPlan plan) {
        LengthWriter lengths = lengths(job);
        return new Columns<SequenceStep>()
                .plain("step", SequenceStep::step)
                .plain("kind", s -> s.kind().word())
                .plain("setUp", s -> s.setUp() == null ? null : s.setUp().machine())
                .plain(
                        "stop",
                        s -> s.setUp() == null ? null : lengths.exact(s.setUp().stop()))
                .text("board", SequenceStep::board)
                .plain("cut", s -> s.cut() == null ? null : s.cut().direction().word())
                .plain(
                        "reading",
                        s -> s.cut() == null ? null : lengths.exact(s.cut().reading()))
                .text("part", s -> s.piece() == null ? null : s.piece().part())
                .plain("number", s -> s.piece() == null ? null : s.piece().number())
                .plain("member", s -> s.piece() == null ? null : s.piece().member())
                .text("alsoPart", s -> s.behind() == null ? null : s.behind().part())
                .plain("alsoNumber", s -> s.behind() == null ? null : s.behind().number())
                .plain("alsoMember", s -> s.behind() == null ? null : s.behind().member())
                .text("purpose", shape(SequenceStep.Shape::purpose))
                .plain("hand", shape(h -> h.hand() == null ? null : h.hand().word()))
                .plain("fromEnd", shape(h -> h.fromEnd() == null ? null : lengths.exact(h.fromEnd())))
                .plain("fromEdge", shape(h -> h.fromEdge() == null ? null : lengths.exact(h.fromEdge())))
                .plain("bore", shape(h -> h.bore() == null ? null : lengths.exact(h.bore())))
                .plain("depth", shape(h -> h.depth() == null ? null : lengths.exact(h.depth())))
                .plain("foot", shape(h -> h.foot() == null ? null : lengths.exact(h.foot())))
                .plain("faces", shape(h -> h.faces() == null ? null : h.faces().word()))
                .plain("leftLength", s -> left(s, SequenceStep.Wood::length, lengths))
                .plain("leftWidth", s -> left(s, SequenceStep.Wood::width, lengths))
                .plain(
                        "slack",
                        s -> s.cut() == null ? null : lengths.exact(s.cut().slack()))
                .text("caution", SequenceStep::caution)
                .text("reason", SequenceStep::reason)
                .write(plan.derived().cutSequence());
    }

    private static <V> Function<SequenceStep, @Nullable V> shape(Function<SequenceStep.Shape, @Nullable V> value) {
        return step -> step.shape() == null ? null : value.apply(step.shape());
    }

    private static @Nullable String left(
            SequenceStep step, Function<SequenceStep.Wood, Length> side, LengthWriter lengths) {
        SequenceStep.Wood left = step.cut() == null ? null : step.cut().left();
        return left == null ? null : lengths.exact(side.apply(left));
    }

    private static Columns<StockItem> items(
            Columns<StockItem> columns, Function<StockItem, @Nullable Object> grain, Job job) {
        LengthWriter lengths = lengths(job);
        return columns.text(
                        "nominal", s -> s.nominal() == null ? null : s.nominal().name())
                .plain("length", s -> lengths.exact(s.length()))
                .plain("width", s -> lengths.exact(s.width()))
                .plain("thickness", s -> lengths.exact(s.thickness()))
                .text("material", StockItem::material)
                .plain("grain", grain)
                .text("grade", StockItem::grade)
                .plain("quantity", s -> s instanceof StockItem.OnHand hand ? hand.quantity() : null)
                .plain("trim.start", s -> start(s, lengths))
                .plain("trim.end", s -> trim(s, lengths, Trim::end))
                .plain("trim.edge", s -> trim(s, lengths, Trim::edge))
                .plain("trim.farEdge", s -> trim(s, lengths, Trim::farEdge))
                .plain("widthEnd", s -> length(s.condition().widthEnd(), lengths))
                .plain("bow", s -> positive(s.condition().bow(), lengths))
                .plain("crook", s -> positive(s.condition().crook(), lengths))
                .plain("straightEdge", s -> s.condition().straightEdge())
                .plain("zones", s -> s.zones().isEmpty() ? null : ZoneText.write(s.zones(), lengths));
    }

    private static @Nullable String length(@Nullable Length length, LengthWriter lengths) {
        return length == null ? null : lengths.exact(length);
    }

    private static @Nullable String positive(Length length, LengthWriter lengths) {
        return length.isZero() ? null : lengths.exact(length);
    }

    private static LengthWriter lengths(Job job) {
        return new LengthWriter(job.writing().unit(), job.writing().decimal());
    }

    private static String yesOrNo(StockItem item) {
        return item instanceof StockItem.OnHand ? "yes" : "no";
    }

    private static @Nullable String measured(Part part, LengthWriter lengths, Function<Section.Measured, Length> side) {
        return part.section() instanceof Section.Measured m ? lengths.exact(side.apply(m)) : null;
    }

    private static @Nullable String make(Part part) {
        if (part.making() instanceof Making.GlueUp) {
            return Fields.GLUE_UP;
        }
        return part.making() instanceof Making.Lamination ? Fields.LAMINATION : null;
    }

    private static @Nullable Object glueUp(Part part, Function<Making.GlueUp, @Nullable Object> value) {
        return part.making() instanceof Making.GlueUp glueUp ? value.apply(glueUp) : null;
    }

    private static @Nullable Object offer(StockItem item, Function<Offer, @Nullable Object> value) {
        return item instanceof StockItem.ForSale sale ? value.apply(sale.offer()) : null;
    }

    private static @Nullable String price(StockItem item, Function<Price, String> value) {
        return item instanceof StockItem.ForSale sale && sale.price() != null ? value.apply(sale.price()) : null;
    }

    /** An own trim of which nothing is said is still not the shop's: a zero keeps the two apart. */
    private static @Nullable String start(StockItem item, LengthWriter lengths) {
        return Trim.NONE.equals(item.ownTrim()) ? "0" : trim(item, lengths, Trim::start);
    }

    private static @Nullable String trim(StockItem item, LengthWriter lengths, Function<Trim, @Nullable Length> edge) {
        Trim trim = item.ownTrim();
        Length length = trim == null ? null : edge.apply(trim);
        return length == null ? null : lengths.exact(length);
    }

    /** Columns of a table, in order. */
    private static final class Columns<T> {
        /** Written even where empty: a table without them would not be one. */
        private static final Set<String> ALWAYS = Set.of("id", "stock", "quantity", "length", "step", "part");

        private final Map<String, Function<T, @Nullable Object>> columns = new LinkedHashMap<>();

        /** A column of text that someone wrote: guarded against being taken for a formula. */
        Columns<T> text(String name, Function<T, @Nullable String> value) {
            columns.put(name, item -> {
                String text = value.apply(item);
                return text == null ? null : CsvText.guarded(text);
            });
            return this;
        }

        /** A column of numbers, lengths or words of our own. */
        Columns<T> plain(String name, Function<T, @Nullable Object> value) {
            columns.put(name, value);
            return this;
        }

        String write(List<? extends T> items) {
            List<String> header = new ArrayList<>();
            columns.forEach((name, value) -> {
                if (ALWAYS.contains(name) || items.stream().anyMatch(item -> value.apply(item) != null)) {
                    header.add(name);
                }
            });
            List<List<String>> rows = new ArrayList<>();
            for (T item : items) {
                List<String> row = new ArrayList<>();
                for (String name : header) {
                    Function<T, @Nullable Object> value = columns.get(name);
                    Object cell = value == null ? null : value.apply(item);
                    row.add(cell == null ? "" : cell.toString());
                }
                rows.add(row);
            }
            return CsvText.write(header, rows);
        }
    }
}
