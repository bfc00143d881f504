package org.stockcutting.io;

import static org.stockcutting.io.FieldType.AMOUNT;
import static org.stockcutting.io.FieldType.BOOLEAN;
import static org.stockcutting.io.FieldType.DENSITY;
import static org.stockcutting.io.FieldType.INTEGER;
import static org.stockcutting.io.FieldType.LENGTH;
import static org.stockcutting.io.FieldType.LIST;
import static org.stockcutting.io.FieldType.OBJECT;
import static org.stockcutting.io.FieldType.SHARE;
import static org.stockcutting.io.FieldType.TEXT;
import static org.stockcutting.io.FieldType.TRIM;
import static org.stockcutting.io.FieldType.WEIGHT;

import java.util.List;
import java.util.stream.Stream;
import org.stockcutting.job.Goal;
import org.stockcutting.job.SawLimits;
import org.stockcutting.job.Shortage;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.material.Grain;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.Binding;
import org.stockcutting.part.Ends;
import org.stockcutting.part.Making;
import org.stockcutting.part.Shaping;
import org.stockcutting.part.ShowFaces;
import org.stockcutting.part.Taper;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.PriceUnit;
import org.stockcutting.stock.Tally;
import org.stockcutting.stock.Zone;

/**
 * Every field of a job document, once. The reader knows exactly these; the schema, the service's description and the CSV headers are held
 * against this table.
 */
public final class Fields {

    /** The word for glue-ups in {@code make.as}. */
    static final String GLUE_UP = "glue-up";
    /** The word for laminations in {@code make.as}. */
    static final String LAMINATION = "lamination";
    /** The only kind of zone that is treated apart. */
    static final String METAL = "metal";

    /** The form of boards of random size: they are for sale only, and no board of a plan. */
    static final String RANDOM = "random";

    private static final List<String> FORMS = Words.of(Form.values(), Form::word);
    private static final List<String> TALLIES = Words.of(Tally.values(), Tally::word);
    private static final List<String> FORMS_FOR_SALE =
            Stream.concat(FORMS.stream(), Stream.of(RANDOM)).toList();
    private static final List<String> GRAINS = Words.of(Grain.values(), Grain::word);

    /** Fields of a job document. */
    public static final FieldTable JOB = FieldTable.of()
            .with(Fields::job)
            .with(Fields::shop)
            .with(Fields::machines)
            .with(Fields::allowances)
            .with(Fields::parts)
            .with(Fields::forSale)
            .with(Fields::onHand)
            .with(Fields::effort)
            .with(Fields::terms)
            .with(Fields::wood)
            .build();

    private Fields() {}

    private static FieldTable.Builder job(FieldTable.Builder t) {
        return t.in("")
                .or("format", INTEGER, "1", "version of the document's form")
                .or("name", TEXT, "job", "name of the job, printed")
                .orWord("unit", "in", Words.of(LengthUnit.values(), LengthUnit::symbol), "unit of plain numbers")
                .orWord("decimal", ".", List.of(".", ","), "decimal mark of lengths and amounts in text")
                .may("precision", LENGTH, "step that printed lengths are rounded to; absent prints them exactly")
                .may("currency", TEXT, "ISO 4217 code of all prices; USD for inches and feet, else EUR")
                .or("material", TEXT, "wood", "material of parts and stock that name none")
                .or("sets", INTEGER, "1", "how many times the parts list is made")
                .mayWord(
                        "whenShort",
                        Words.of(Shortage.values(), Shortage::word),
                        "what comes first where the wood does not suffice for all sets; most wood where absent")
                .may("shop", OBJECT, "saws, trims, what is kept")
                .may("allowances", OBJECT, "allowance profiles by name")
                .needs("parts", LIST, "parts list")
                .may("stock", LIST, "what can be bought")
                .may("onHand", LIST, "what is owned")
                .mayWord(
                        "goal",
                        Words.of(Goal.values(), Goal::word),
                        "what is least; cost where anything has a price, else waste")
                .may("effort", OBJECT, "how hard to search")
                .may("woods", OBJECT, "what is known about materials, by their name")
                .may("seasons", OBJECT, "moisture of the wood where the work will stand; 6 and 11 % where absent")
                .may("tax", OBJECT, "tax on everything that is paid")
                .may("delivery", OBJECT, "price of delivery")
                .may("yardCuts", OBJECT, "first cuts made by the yard")
                .may("compare", LIST, "subsets of stock to compare, each a list of ids")
                .may("zoneMargin", LENGTH, "how far clear parts keep away from bad zones")
                .may("breakdown", OBJECT, "the saw that the first cuts of sheets are made with, on the floor")
                .may("machines", OBJECT, "what jointer and planer take")
                .mayWord(
                        "tally",
                        TALLIES,
                        "how board feet are counted where no trade size names the width; exact where absent")
                .may(
                        "setUpPrice",
                        AMOUNT,
                        "what one set-up is worth: the plan with the least cost and set-ups together is returned")
                .may("wood", OBJECT, "knots to be expected, and how sure to be; changes no plan");
    }

    private static FieldTable.Builder shop(FieldTable.Builder t) {
        return t.in("/shop")
                .may("kerf", OBJECT, "what each saw removes")
                .may("boardTrim", TRIM, "what is removed from raw ends and edges of boards")
                .may("sheetTrim", TRIM, "what is removed from the edges of sheets")
                .may("limits", OBJECT, "what the saws can do")
                .may("keepOffcuts", LIST, "least sizes of offcuts worth keeping")
                .or("thicknessTolerance", LENGTH, "1/16 in", "greatest difference of thickness where nothing is planed")
                .or("maxPlaning", LENGTH, "1/2 in", "most that is planed off beyond the rough thickness")
                .may("carLength", LENGTH, "longest stock that may be bought")
                .may(
                        "stopReach",
                        LENGTH,
                        "longest piece that the stop of the crosscut saw reaches; longer ones are measured")
                .may("carLoad", WEIGHT, "what may be loaded at once; a heavier load is told")
                .in("/shop/kerf")
                .or("crosscut", LENGTH, "1/8 in", "kerf of cuts across")
                .or("rip", LENGTH, "1/8 in", "kerf of cuts along")
                .with(b -> trim(b, "/shop/boardTrim"))
                .with(b -> trim(b, "/shop/sheetTrim"))
                .in("/shop/limits")
                .may("ripCapacity", LENGTH, "greatest distance from fence to blade")
                .may("longestRip", LENGTH, "longest piece that can be ripped")
                .may("crosscutCapacity", LENGTH, "widest piece that can be crosscut")
                .may("stages", INTEGER, "most changes of direction on a path of cuts")
                .orWord(
                        "firstCut",
                        "any",
                        Words.of(SawLimits.FirstCut.values(), SawLimits.FirstCut::word),
                        "direction of the first cut")
                .may("minimumPiece", LENGTH, "every cut is made on a piece at least this long")
                .in("/shop/keepOffcuts/*")
                .orWord("form", "board", FORMS, "form of the stock it comes from")
                .needs("length", LENGTH, "least length")
                .or("width", LENGTH, "0", "least width");
    }

    private static FieldTable.Builder machines(FieldTable.Builder t) {
        return t.in("/breakdown")
                .needs("kerf", LENGTH, "what that saw removes")
                .or("over", LENGTH, "0", "left on beside its cut, inside the kerf that layouts leave")
                .in("/machines")
                .may("jointer", OBJECT, "the jointer")
                .may("planer", OBJECT, "the planer")
                .with(b -> machine(b, "/machines/jointer"))
                .with(b -> machine(b, "/machines/planer"));
    }

    private static FieldTable.Builder machine(FieldTable.Builder t, String pattern) {
        return t.in(pattern)
                .may("width", LENGTH, "widest piece that it takes")
                .may("shortest", LENGTH, "shortest piece that it takes");
    }

    private static FieldTable.Builder allowances(FieldTable.Builder t) {
        return t.in("/allowances")
                .may("*", OBJECT, "one profile under its name")
                .in("/allowances/*")
                .or("length", LENGTH, "0", "added to the length")
                .or("width", LENGTH, "0", "added to the width")
                .or("thickness", LENGTH, "0", "added to the thickness")
                .or("perStave", LENGTH, "0", "added to the width of each stave of a glue-up")
                .or("staveThickness", LENGTH, "0", "added to the thickness of the staves of a glue-up")
                .or("perPly", LENGTH, "0", "added to the thickness of each ply of a lamination");
    }

    private static FieldTable.Builder parts(FieldTable.Builder t) {
        return t.in("/parts/*")
                .may("id", TEXT, "unique name; A, B, C... where absent")
                .or("quantity", INTEGER, "1", "how many in one set")
                .needs("length", LENGTH, "finished length")
                .may("width", LENGTH, "finished width; needs thickness too")
                .may("thickness", LENGTH, "finished thickness; needs width too")
                .may("nominal", TEXT, "trade size taken as it comes, instead of width and thickness")
                .may("material", TEXT, "material; the job's where absent")
                .mayWord("grain", GRAINS, "grain axis; the length where the stock has an axis")
                .may("allowance", TEXT, "allowance profile; absent cuts to finished size")
                .may(
                        "gang",
                        INTEGER,
                        "how many copies stay in one blank until they are planed; where absent 1, or as many as machines need")
                .may("make", OBJECT, "glued up or laminated")
                .may("group", OBJECT, "group with a rule")
                .orWord("class", "clear", Words.of(WoodClass.values(), WoodClass::word), "how clear the wood must be")
                .orWord(
                        "showFaces",
                        "both",
                        Words.of(ShowFaces.values(), ShowFaces::word),
                        "one: what shows on the back of the board does not matter")
                .or("spares", INTEGER, "0", "extra pieces from waste, for the whole job")
                .may("note", TEXT, "printed only")
                .may("edging", OBJECT, "strips glued to its sides; the part is cut smaller by their thickness")
                .may(
                        "tolerance",
                        LENGTH,
                        "how much shorter or narrower is acceptable, for near misses; nothing where absent")
                .may("grades", LIST, "names of the grades it takes; absent takes any wood, graded or not")
                .may("ends", OBJECT, "both ends are mitred; the length is from long point to long point")
                .may("taper", OBJECT, "it gets smaller towards its far end")
                .may("marks", LIST, "what is marked on it, and bored")
                .may("cutFrom", OBJECT, "the maker's own choice of wood, kept by every plan")
                .orWord(
                        "fit",
                        Shaping.Fit.TO_SIZE.word(),
                        Words.of(Shaping.Fit.values(), Shaping.Fit::word),
                        "after-assembly: no final cut to length, but marked from the work")
                .orWord(
                        "hand",
                        Shaping.Hand.NONE.word(),
                        Words.of(Shaping.Hand.values(), Shaping.Hand::word),
                        "left and right ones are marked apart; in pairs odd numbers are left")
                .in("/parts/*/taper")
                .may(
                        "start",
                        LENGTH,
                        "where it begins, from the reference end; a quarter of the length or below the lowest mark")
                .needs("foot", LENGTH, "what is left at the far end")
                .orWord(
                        "faces",
                        Taper.Faces.INSIDE_TWO.word(),
                        Words.of(Taper.Faces.values(), Taper.Faces::word),
                        "which faces are tapered")
                .may(
                        "nest",
                        BOOLEAN,
                        "true: two lie head to foot in one straight blank, which the first taper cut parts")
                .in("/parts/*/ends")
                .needsWord(
                        "angle",
                        Words.of(Ends.Angle.values(), Ends.Angle::word),
                        "degrees off square, the same at both ends")
                .later("angles", "another angle at each end")
                .or("stick", INTEGER, "1", "how many come one behind the other out of one straight piece")
                .may(
                        "flip",
                        BOOLEAN,
                        "true: every second one of a stick may be turned over, so that neighbours share a cut")
                .in("/parts/*/marks/*")
                .needs("purpose", TEXT, "what it is for")
                .may("fromEnd", LENGTH, "reading from the reference end; a line along the part where absent")
                .may("fromEdge", LENGTH, "gauge setting from the face edge; a line across the part where absent")
                .may("bore", LENGTH, "diameter of a hole; needs both readings")
                .may("depth", LENGTH, "how deep; a hole goes through where absent")
                .in("/parts/*/make")
                .needsWord("as", List.of(GLUE_UP, LAMINATION), "how it is made")
                .may("staves", OBJECT, "staves of a glue-up")
                .may("plies", INTEGER, "number of plies of a lamination, at least 2")
                .in("/parts/*/make/staves")
                .needs("min", LENGTH, "least jointed width")
                .needs("max", LENGTH, "greatest jointed width")
                .may("count", INTEGER, "number of staves; the fewest where absent")
                .orWord(
                        "from",
                        "any",
                        Words.of(Making.StaveSource.values(), Making.StaveSource::word),
                        "where the staves of one panel come from")
                .in("/parts/*/edging")
                .may("start", LENGTH, "thickness on the start end; bare where absent")
                .may("end", LENGTH, "thickness on the far end")
                .may("edge", LENGTH, "thickness on the near edge")
                .may("farEdge", LENGTH, "thickness on the far edge")
                .or("over", LENGTH, "1 in", "how much longer than its side each strip is cut")
                .in("/parts/*/cutFrom")
                .needs("stock", TEXT, "id of an entry for sale or on hand; with from, of a single piece on hand")
                .may(
                        "from",
                        LENGTH,
                        "where the rough piece begins, from the raw start end; anywhere on the entry where absent")
                .may("edge", LENGTH, "where it begins across; right behind the trim where absent")
                .in("/parts/*/group")
                .needs("name", TEXT, "name of the group")
                .orWord("rule", "same-board", Words.of(Binding.values(), Binding::word), "what the group asks for");
    }

    private static FieldTable.Builder forSale(FieldTable.Builder t) {
        return stock(
                        t,
                        "/stock/*",
                        FORMS_FOR_SALE,
                        "board, sheet, or random: boards of random length and width, bought by volume")
                .may("leastLength", LENGTH, "random boards: the shortest; length is the longest")
                .may("leastWidth", LENGTH, "random boards: the narrowest; width is the widest")
                .may("price", OBJECT, "what it costs")
                .may("available", INTEGER, "how many can be had; absent is as many as wanted")
                .may("pack", INTEGER, "only whole packs of so many pieces are sold; by the piece where absent")
                .may("priceBreaks", LIST, "lower prices for more pieces")
                .may("widthPremiums", LIST, "what wide boards cost more")
                .mayWord(
                        "tally",
                        TALLIES,
                        "how its board feet are counted where no trade size names the width; the job's where absent")
                .in("/stock/*/price")
                .needs("amount", AMOUNT, "the asking price")
                .orWord("per", "piece", Words.of(PriceUnit.values(), PriceUnit::word), "what the amount is for")
                .may("currency", TEXT, "the job's where absent")
                .in("/stock/*/priceBreaks/*")
                .needs("from", INTEGER, "pieces bought from which on every piece has this price")
                .needs("amount", AMOUNT, "instead of the price's amount, for the same unit")
                .in("/stock/*/widthPremiums/*")
                .needs("over", LENGTH, "billed width beyond which it holds")
                .needs("percent", AMOUNT, "added to the price, in per cent")
                .with(b -> trim(b, "/stock/*/trim"));
    }

    private static FieldTable.Builder onHand(FieldTable.Builder t) {
        return onHand(t, "/onHand/*");
    }

    /** An entry on hand, wherever a document has one: the offcuts of a plan are such entries too. */
    static FieldTable.Builder onHand(FieldTable.Builder t, String pattern) {
        return stock(t, pattern, FORMS, "board or sheet")
                .or("quantity", INTEGER, "1", "how many truly equal pieces")
                .may("zones", LIST, "bad zones")
                .may("widthEnd", LENGTH, "width at the far end of a board that tapers from a straight edge at 0")
                .may("bow", LENGTH, "how far the face is hollow along the board; what is planed loses its share")
                .may("crook", LENGTH, "how far the edge is hollow along the board; what is ripped loses its share")
                .may("straightEdge", BOOLEAN, "true: the edge at 0 is good, the shop's trim there is left out")
                .with(b -> trim(b, pattern + "/trim"))
                .in(pattern + "/zones/*")
                .needs("from", LENGTH, "start along the length, from the raw start end")
                .needs("to", LENGTH, "end along the length")
                .may("fromEdge", LENGTH, "start across; the whole width where both are absent")
                .may("toEdge", LENGTH, "end across")
                .orWord("severity", "unusable", Words.of(Zone.Severity.values(), Zone.Severity::word), "how bad it is")
                .orWord("face", "both", Words.of(Zone.Face.values(), Zone.Face::word), "which face shows it")
                .mayWord("kind", List.of(METAL), "metal: no cut may pass through it");
    }

    /** What an entry for sale and one on hand have in common. */
    private static FieldTable.Builder stock(FieldTable.Builder t, String pattern, List<String> forms, String meaning) {
        return t.in(pattern)
                .may("id", TEXT, "unique over stock and on hand; made from section and length where absent")
                .orWord("form", "board", forms, meaning)
                .may("nominal", TEXT, "trade size, looked up in the catalog")
                .needs("length", LENGTH, "raw length")
                .may("width", LENGTH, "measured width; wins over the catalog's")
                .may("thickness", LENGTH, "measured thickness; wins over the catalog's")
                .may("material", TEXT, "material; the job's where absent")
                .mayWord("grain", GRAINS, "grain axis; boards length, sheets any where absent")
                .may("trim", TRIM, "its own trim instead of the shop's")
                .may("grade", TEXT, "name of its grade: one of the table's, or a name of the yard's own");
    }

    private static FieldTable.Builder effort(FieldTable.Builder t) {
        return t.in("/effort")
                .may(
                        "work",
                        INTEGER,
                        "limit in weighted steps; thrice as many on boards with bad zones that may be cut either way first")
                .may("seconds", INTEGER, "wall clock guard")
                .or("seed", INTEGER, "1", "seed of every random choice")
                .or("threads", INTEGER, "1", "how many threads may be used");
    }

    private static FieldTable.Builder terms(FieldTable.Builder t) {
        return t.in("/woods")
                .may("*", OBJECT, "one material under its name")
                .in("/woods/*")
                .may("like", TEXT, "wood of the table that it counts as; its own name where absent")
                .may("density", DENSITY, "instead of the table's")
                .may("movement", AMOUNT, "change of width for one per cent of moisture, as a share of the width")
                .in("/tax")
                .needs("percent", AMOUNT, "rate in per cent; the sum is rounded half up once")
                .in("/delivery")
                .needs("price", AMOUNT, "what delivery costs")
                .may("freeFrom", AMOUNT, "free when the material costs at least so much")
                .in("/yardCuts")
                .orWord("form", "sheet", FORMS, "what the yard cuts")
                .needs("price", AMOUNT, "price of one cut right through a bought piece")
                .or("free", INTEGER, "0", "how many cuts in all cost nothing")
                .in("/seasons")
                .needs("driest", AMOUNT, "per cent of moisture, at least 6")
                .needs("dampest", AMOUNT, "per cent of moisture, at most 14");
    }

    private static FieldTable.Builder wood(FieldTable.Builder t) {
        return t.in("/wood")
                .may("confidence", SHARE, "wanted chance to finish; 0.9 where absent")
                .may("trials", INTEGER, "simulated purchases; 1000 where absent")
                .may("models", LIST, "what is known of each material")
                .in("/wood/models/*")
                .may("material", TEXT, "material of the stock; the job's where absent")
                .may(
                        "grade",
                        TEXT,
                        "grade that it speaks of, and whose usual figures apply; where absent, the stock's own, else no2 for trade"
                                + " sizes of softwood and 1-common for the rest")
                .may("clearRun", LENGTH, "mean length between two bad zones")
                .may("zone", LENGTH, "mean length of a bad zone; 0 for wood without any")
                .may("endCheck", LENGTH, "mean length of the checked end of a board")
                .may("unusableBoards", SHARE, "share of boards that give nothing, 0 to 1")
                .may("tightKnots", SHARE, "share of bad zones that are tight knots, 0 to 1")
                .may("blemishes", SHARE, "share of bad zones that are blemishes, 0 to 1");
    }

    private static FieldTable.Builder trim(FieldTable.Builder t, String pattern) {
        return t.in(pattern)
                .may("start", LENGTH, "at the start end")
                .may("end", LENGTH, "at the far end")
                .may("edge", LENGTH, "at the edge where 0 is")
                .may("farEdge", LENGTH, "at the far edge");
    }
}
