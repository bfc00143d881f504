package org.stockcutting.io;

import static org.stockcutting.io.FieldType.BOOLEAN;
import static org.stockcutting.io.FieldType.CUTS;
import static org.stockcutting.io.FieldType.DECIMAL;
import static org.stockcutting.io.FieldType.GOAL_VALUE;
import static org.stockcutting.io.FieldType.INTEGER;
import static org.stockcutting.io.FieldType.LENGTH;
import static org.stockcutting.io.FieldType.LIST;
import static org.stockcutting.io.FieldType.OBJECT;
import static org.stockcutting.io.FieldType.TEXT;
import static org.stockcutting.io.FieldType.VOLUME;

import java.util.List;
import java.util.stream.Stream;
import org.stockcutting.job.Goal;
import org.stockcutting.part.Ends;
import org.stockcutting.part.Shaping;
import org.stockcutting.part.Side;
import org.stockcutting.part.Taper;
import org.stockcutting.pattern.Direction;
import org.stockcutting.plan.Status;
import org.stockcutting.plan.StepKind;
import org.stockcutting.plan.StopReason;
import org.stockcutting.plan.Unplaced;

/**
 * Every field of a plan document, in the order it is written. Amounts of money, volumes and other decimals always have a decimal point;
 * lengths are written as the job's lengths are.
 */
public final class PlanFields {

    /** The object that cuts stand in, at whatever depth of the tree. */
    static final String CUT_NODE = "/layouts/*/cuts";

    /** What follows from the layouts: read from the document, or derived again where the document has none of it. */
    static final List<String> DERIVED = List.of("buyingList", "offcuts", "cutSequence", "setUps", "yield", "warnings");

    private static final List<String> KINDS = Words.of(StepKind.values(), StepKind::word);
    private static final List<String> MACHINES = Stream.concat(
                    Stream.of("crosscut", "rip", "planer", "gauge", "drill"),
                    Stream.of(Ends.Angle.values()).map(angle -> "mitre-" + angle.word()))
            .toList();

    /** Fields of a plan document. */
    public static final FieldTable PLAN = FieldTable.of()
            .with(PlanFields::header)
            .with(PlanFields::values)
            .with(PlanFields::layouts)
            .with(PlanFields::proof)
            .with(PlanFields::derived)
            .with(b -> Fields.onHand(b, "/offcuts/*"))
            .build();

    private PlanFields() {}

    private static FieldTable.Builder header(FieldTable.Builder t) {
        return t.in("")
                .or("format", INTEGER, "1", "version of the document's form")
                .may("job", TEXT, "name of the job; the job's where absent")
                .may("jobHash", TEXT, "hash of the job; the job's where absent")
                .orWord("status", "feasible", Words.of(Status.values(), Status::word), "how good the plan is")
                .orWord(
                        "stopReason",
                        "work-limit",
                        Words.of(StopReason.values(), StopReason::word),
                        "why the search ended")
                .may("reproducible", BOOLEAN, "false if the clock or a cancel cut the search short; true where absent")
                .or("seed", INTEGER, "1", "seed used")
                .or("work", INTEGER, "0", "weighted steps used")
                .or("workVersion", INTEGER, "1", "version of the weights")
                .or("engine", TEXT, "by hand", "version of the engine")
                .may("cost", OBJECT, "money paid for stock")
                .needs("objective", OBJECT, "value and bound under the job's goal")
                .needs("layouts", LIST, "ways of cutting")
                .may("unplaced", LIST, "parts without wood, and why")
                .may("certificate", OBJECT, "proof of the bound")
                .may("check", OBJECT, "what the checker found")
                .may("buyingList", LIST, "what to buy")
                .may("offcuts", LIST, "kept offcuts, as stock on hand")
                .may("cutSequence", LIST, "steps at the saw")
                .may("setUps", INTEGER, "how often a stop or fence is moved")
                .may("yield", OBJECT, "where the wood goes")
                .may("warnings", LIST, "what a maker should know")
                .may("longestOffcut", OBJECT, "longest leftover of a bought board that is only crosscut")
                .may("wholeSets", OBJECT, "how many sets come out whole, where the job asks for that first")
                .may("nearMisses", LIST, "what a slightly smaller part would save; a claim of the planner")
                .may(
                        "tradeOff",
                        LIST,
                        "what fewer set-ups cost, where the job has a setUpPrice; a claim of the planner")
                .may(
                        "estimates",
                        LIST,
                        "what to buy of boards of random size; an estimate of the planner, no part of cost and bound")
                .may("defaults", OBJECT, "defaults that were filled in, by their pointers");
    }

    private static FieldTable.Builder values(FieldTable.Builder t) {
        return costAndObjective(t, "").in("/defaults").may("*", TEXT, "a default under its pointer into the job");
    }

    static FieldTable.Builder costAndObjective(FieldTable.Builder t, String at) {
        return t.in(at + "/cost")
                .needs("amount", DECIMAL, "money paid")
                .needs("currency", TEXT, "ISO 4217 code, the job's")
                .may("bound", DECIMAL, "certified: no list can cost less")
                .may("searchedBound", DECIMAL, "closed by search without a certificate")
                .may("gap", DECIMAL, "(amount - bound) / amount, rounded up")
                .in(at + "/objective")
                .needsWord("goal", Words.of(Goal.values(), Goal::word), "the job's goal")
                .needs("value", GOAL_VALUE, "what the plan reaches")
                .needs("bound", GOAL_VALUE, "certified: no plan can be below")
                .may("searchedBound", GOAL_VALUE, "closed by search without a certificate")
                .may("gap", DECIMAL, "(value - bound) / value, rounded up");
    }

    private static FieldTable.Builder layouts(FieldTable.Builder t) {
        return t.in("/layouts/*")
                .needs("stock", TEXT, "id of the stock")
                .or("repeat", INTEGER, "1", "how many boards are cut this way")
                .needs("length", LENGTH, "raw length of the board")
                .needs("width", LENGTH, "raw width")
                .needs("thickness", LENGTH, "raw thickness")
                .needs("pieces", LIST, "placed pieces")
                .needs("cuts", CUTS, "the cut tree")
                .may("offcuts", LIST, "what is left")
                .in("/layouts/*/pieces/*")
                .needs("part", TEXT, "id of the part")
                .needs("numbers", LIST, "which copy it becomes on each board")
                .may("gang", INTEGER, "how many copies it becomes, numbered on from the one listed; 1 where absent")
                .may("staves", LIST, "which stave of the panel it is on each board")
                .may("plies", LIST, "which ply of the lamination it is on each board")
                .needs("x", LENGTH, "start along the board")
                .needs("y", LENGTH, "start across the board")
                .needs("length", LENGTH, "the rough piece's own length")
                .needs("width", LENGTH, "the rough piece's own width")
                .may("turned", BOOLEAN, "true if its length lies across; false where absent")
                .in(CUT_NODE)
                .needsWord("cut", Words.of(Direction.values(), Direction::word), "direction")
                .needs("kerf", LIST, "from and to of each cut")
                .needs("pieces", LIST, "what lies between the cuts, one more than cuts")
                .in("/layouts/*/offcuts/*")
                .needs("x", LENGTH, "start along the board")
                .needs("y", LENGTH, "start across the board")
                .needs("length", LENGTH, "extent along the board")
                .needs("width", LENGTH, "extent across the board")
                .may("keep", BOOLEAN, "worth keeping; false where absent");
    }

    private static FieldTable.Builder proof(FieldTable.Builder t) {
        return unplaced(t, "")
                .in("/certificate")
                .needs("components", LIST, "one proof for each independent part of the job")
                .in("/certificate/components/*")
                .needs("stock", LIST, "ids of the stock")
                .needs("duals", LIST, "pairs of part and value, in the unit of the goal for a piece or a unit of width")
                .may(
                        "rows",
                        LIST,
                        "further lists like duals, each of which rules out numbers of boards that hold too little")
                .needs("bound", GOAL_VALUE, "what they prove")
                .in("/check")
                .may("valid", BOOLEAN, "true if there are no violations")
                .needs("violations", LIST, "rules that the plan breaks")
                .in("/check/violations/*")
                .needs("cause", TEXT, "which rule")
                .needs("pointer", TEXT, "where")
                .needs("text", TEXT, "what was found");
    }

    static FieldTable.Builder unplaced(FieldTable.Builder t, String at) {
        return t.in(at + "/unplaced/*")
                .needs("part", TEXT, "id of the part")
                .needs("quantity", INTEGER, "how many are missing")
                .needsWord("reason", Words.of(Unplaced.Reason.values(), Unplaced.Reason::word), "why")
                .may("needs", TEXT, "what it needs")
                .may("limit", TEXT, "the most there is")
                .needs("remedy", TEXT, "what would help");
    }

    static FieldTable.Builder yields(FieldTable.Builder t, String at) {
        return t.in(at + "/yield")
                .needs("used", VOLUME, "raw volume of every board")
                .needs("parts", VOLUME, "finished volume of the parts")
                .needs("allowance", VOLUME, "what milling removes")
                .needs("kerf", VOLUME, "saw dust")
                .needs("trim", VOLUME, "trims")
                .needs("zones", VOLUME, "bad zones in what is thrown away")
                .needs("offcutsKept", VOLUME, "kept offcuts")
                .needs("waste", VOLUME, "the rest")
                .needs("ratio", DECIMAL, "parts / used, rounded down");
    }

    private static FieldTable.Builder derived(FieldTable.Builder t) {
        return t.in("/buyingList/*")
                .needs("stock", TEXT, "id of the stock")
                .needs("quantity", INTEGER, "how many to buy")
                .may("price", DECIMAL, "price of one, or of one pack where there is a pack")
                .may("total", DECIMAL, "price of all")
                .may("boardFeet", DECIMAL, "board feet of all")
                .may("used", INTEGER, "how many are cut; all where absent")
                .may("pack", INTEGER, "how many are in one pack; sold singly where absent")
                .may("breakFrom", INTEGER, "quantity from which this price holds; the entry's own price where absent")
                .may("more", INTEGER, "how many more cost nothing more; none where absent")
                .in("/cutSequence/*")
                .needs("step", INTEGER, "counted from 1")
                .needsWord("kind", KINDS, "what is done")
                .may("setUp", OBJECT, "stop, fence or planer")
                .may("board", TEXT, "which board; absent once several boards are in the piece")
                .may("cut", OBJECT, "where the saw goes; absent where nothing is sawn")
                .with(b -> piece(b, "part that is whole then, or that is worked on"))
                .may("behind", OBJECT, "second part that the same cut makes whole")
                .may("caution", TEXT, "usual cautions")
                .may("reason", TEXT, "why it is done in another order than usual")
                .may("shape", OBJECT, "what is marked, bored or tapered")
                .in("/cutSequence/*/setUp")
                .needsWord("machine", MACHINES, "which machine")
                .needs(
                        "stop",
                        LENGTH,
                        "distance from stop, fence or gauge, thickness that the planer leaves, or size of the bit")
                .in("/cutSequence/*/shape")
                .may("purpose", TEXT, "what a mark is for; absent for a taper")
                .mayWord("hand", Words.of(Shaping.Hand.values(), Shaping.Hand::word), "left or right")
                .may("fromEnd", LENGTH, "reading from the reference end; where a taper begins")
                .may("fromEdge", LENGTH, "reading from the face edge")
                .may("bore", LENGTH, "diameter of the hole")
                .may("depth", LENGTH, "how deep; a hole goes through where absent")
                .may("foot", LENGTH, "what a taper leaves at the far end")
                .mayWord("faces", Words.of(Taper.Faces.values(), Taper.Faces::word), "which faces are tapered")
                .in("/cutSequence/*/cut")
                .needsWord("direction", Words.of(Direction.values(), Direction::word), "which way")
                .needs("on", OBJECT, "wood that lies on the saw, in raw coordinates of its board")
                .needs("reading", LENGTH, "running tape reading of the cut")
                .may("to", LENGTH, "where the wood goes on behind the slot; absent where a piece is brought to size")
                .may("left", OBJECT, "what is left in hand; absent where nothing is")
                .needs("slack", LENGTH, "how much of it may still be lost before the plan breaks")
                .with(b -> wood(b, "/cutSequence/*/cut/on"))
                .with(b -> wood(b, "/cutSequence/*/cut/left"))
                .in("/cutSequence/*/behind")
                .with(b -> piece(b, "the part"))
                .with(b -> yields(b, ""))
                .in("/warnings/*")
                .needs("code", TEXT, "kind of warning")
                .needs("pointer", TEXT, "where")
                .needs("text", TEXT, "one sentence")
                .in("/longestOffcut")
                .needs("length", LENGTH, "behind the last cut, up to the far raw end")
                .needs("atMost", LENGTH, "no plan of this value or below leaves a longer one")
                .needs("certified", BOOLEAN, "true if the two are equal: then there is no longer one")
                .in("/wholeSets")
                .needs("complete", INTEGER, "sets of which every part has wood")
                .needs("atMost", INTEGER, "more cannot be made; a claim of the search")
                .may("missing", LIST, "what the next set lacks")
                .in("/wholeSets/missing/*")
                .needs("part", TEXT, "id of the part")
                .needs("quantity", INTEGER, "how many")
                .in("/nearMisses/*")
                .needs("part", TEXT, "id of the part")
                .needsWord("side", Words.of(Side.values(), Side::word), "which side is smaller")
                .needs("by", LENGTH, "how much")
                .or("places", INTEGER, "0", "how many parts more can be made")
                .or("boards", INTEGER, "0", "how many boards less are bought")
                .or("sheets", INTEGER, "0", "how many sheets less are bought")
                .may("saves", DECIMAL, "money saved")
                .or("smallest", BOOLEAN, "false", "true if it is proved that one step less would not do")
                .in("/tradeOff/*")
                .needs("cost", DECIMAL, "money paid for stock")
                .needs("setUps", INTEGER, "how often a stop or fence is moved")
                .or("chosen", BOOLEAN, "false", "true for this plan: the least cost and set-ups together")
                .with(b -> estimates(b, ""));
    }

    static FieldTable.Builder estimates(FieldTable.Builder t, String at) {
        return t.in(at + "/estimates/*")
                .needs("stock", TEXT, "id of the boards")
                .needs("parts", LIST, "what they are for")
                .needs("net", VOLUME, "volume of the rough pieces at the billed thickness")
                .needs("yield", DECIMAL, "share of bought wood that becomes rough pieces, on average")
                .needs("volume", VOLUME, "volume to buy: net over yield")
                .needs("boardFeet", DECIMAL, "the same in board feet, rounded up")
                .needs("boards", INTEGER, "about how many boards that is")
                .may("cost", DECIMAL, "its price")
                .needs("sure", OBJECT, "what is enough with the wanted chance")
                .may("atLeast", LIST, "boards of some size that there must be among them")
                .needs("trials", INTEGER, "drawn purchases")
                .needs("wood", TEXT, "what the boards are taken to be like")
                .in(at + "/estimates/*/parts/*")
                .needs("part", TEXT, "id of the part")
                .needs("quantity", INTEGER, "finished pieces")
                .in(at + "/estimates/*/sure")
                .needs("chance", DECIMAL, "wanted share of the trials")
                .needs("boardFeet", DECIMAL, "board feet, rounded up")
                .needs("boards", INTEGER, "boards")
                .may("cost", DECIMAL, "its price")
                .in(at + "/estimates/*/atLeast/*")
                .needs("boards", INTEGER, "how many boards")
                .needs("width", LENGTH, "at least so wide, trims included")
                .needs("length", LENGTH, "at least so long, trims included");
    }

    private static FieldTable.Builder piece(FieldTable.Builder t, String part) {
        return t.may("part", TEXT, part)
                .may("number", INTEGER, "its number")
                .may("stave", INTEGER, "which stave of it")
                .may("ply", INTEGER, "which ply of it");
    }

    private static FieldTable.Builder wood(FieldTable.Builder t, String at) {
        return t.in(at)
                .needs("x", LENGTH, "start along the board")
                .needs("y", LENGTH, "start across the board")
                .needs("length", LENGTH, "extent along the board")
                .needs("width", LENGTH, "extent across the board");
    }
}
