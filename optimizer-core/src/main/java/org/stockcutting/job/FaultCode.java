package org.stockcutting.job;

/**
 * Every code a {@link Fault} can carry, in one place. The set is closed: codes are added, never renamed, because programs branch on them.
 */
public enum FaultCode {
    // The text of a document.
    NOT_UTF_8("not-utf-8", "the bytes are no UTF-8 text"),
    NOT_JSON("not-json", "the text is no JSON document, or there is text behind its end"),
    NOT_CSV("not-csv", "the text is no comma, semicolon or tab separated table"),
    TOO_LARGE("too-large", "the document, or a text or number in it, is longer than the reader takes"),
    TOO_DEEP("too-deep", "lists and objects are nested deeper than the reader takes"),
    DUPLICATE_FIELD("duplicate-field", "one object says the same field twice"),

    // The shape of a document.
    UNSUPPORTED_FORMAT("unsupported-format", "the document is of a later format"),
    UNKNOWN_FIELD("unknown-field", "no such field or column exists here"),
    NOT_YET_SUPPORTED("not-yet-supported", "the field or word is known, but this version cannot honour it"),
    MISSING("missing", "a field that is needed is absent"),
    WRONG_TYPE("wrong-type", "the value is of another kind than the field takes"),
    UNKNOWN_WORD("unknown-word", "the field takes one of a few words, and this is none of them"),
    NOT_A_LENGTH("not-a-length", "the text cannot be read as a length"),
    NOT_EXACT("not-exact", "the length is no whole number of nanometres"),
    NOT_AN_AMOUNT("not-an-amount", "the text cannot be read as an amount of money"),
    NOT_A_VOLUME("not-a-volume", "the text cannot be read as a volume"),
    NOT_A_FRACTION("not-a-fraction", "the text is neither a whole number nor a fraction of two"),
    NOT_A_WEIGHT("not-a-weight", "the text cannot be read as a weight or a density"),
    NOT_A_ZONE("not-a-zone", "the text cannot be read as a bad zone"),
    NOT_A_MARK("not-a-mark", "the text cannot be read as a mark on a part"),
    NOT_A_PRICE_STEP("not-a-price-step", "the text cannot be read as a price break or a width premium"),
    UNKNOWN_CURRENCY("unknown-currency", "no ISO 4217 code with minor units"),
    UNKNOWN_NOMINAL("unknown-nominal", "the trade size is not in the catalog"),
    INCONSISTENT("inconsistent", "a figure does not follow from the figures it is made of"),

    // The meaning of a job.
    NO_PARTS("no-parts", "there is nothing to make"),
    NO_STOCK("no-stock", "there is nothing to cut from"),
    BLANK("blank", "a name is empty or only spaces"),
    BAD_CHARACTER("bad-character", "a text holds a control character or half of a surrogate pair"),
    TOO_LONG("too-long", "a text is longer than its field takes"),
    DUPLICATE_ID("duplicate-id", "two entries have the same id"),
    RESERVED_ID("reserved-id", "the id means something else in a plan"),
    NOT_POSITIVE("not-positive", "a size or a number is zero or less"),
    NEGATIVE("negative", "a size or an amount is less than zero"),
    OUT_OF_RANGE("out-of-range", "a number or a size is beyond what is accepted"),
    TOO_MANY("too-many", "the job has more entries or pieces than the planner takes"),
    CONFLICT("conflict", "two things are said that exclude each other"),
    UNKNOWN_WOOD("unknown-wood", "the table of woods has no such name"),
    UNKNOWN_GRADE("unknown-grade", "neither the table of grades nor any stock of the job has this grade"),
    UNKNOWN_STOCK("unknown-stock", "nothing for sale, or on hand where owned wood is asked for, has this id"),
    UNKNOWN_ALLOWANCE("unknown-allowance", "the job has no allowance profile of this name"),
    IMPOSSIBLE_GLUE_UP("impossible-glue-up", "no number of staves as asked for makes the panel"),
    NOTHING_LEFT("nothing-left", "the trims leave nothing of the stock"),
    EMPTY_ZONE("empty-zone", "a bad zone ends where it begins, or before"),
    ZONE_OUTSIDE("zone-outside", "a bad zone reaches beyond its board"),
    MISSING_PRICE("missing-price", "the goal is money and an entry has no price"),
    MIXED_CURRENCIES("mixed-currencies", "prices are in different currencies"),
    NOMINAL_ON_SHEET("nominal-on-sheet", "sheets are measured, they have no trade size of boards"),
    MIXED_GROUP("mixed-group", "parts that must come from one board cannot be cut from the same board"),
    UNEVEN_PAIRS("uneven-pairs", "parts that are paired do not come out in pairs"),
    PARTS_LEFT_OUT("parts-left-out", "the question is about finishing, and the plan leaves parts out"),

    // The meaning of a worklog.
    OTHER_PLAN("other-plan", "the worklog or the plan belongs to another job"),
    PLAN_DOES_NOT_HOLD("plan-does-not-hold", "the plan breaks rules of its job, so it cannot be gone on with"),
    UNKNOWN_STEP("unknown-step", "the cut sequence has no such step"),
    EARLIER_STEP_OPEN("earlier-step-open", "a step is done though an earlier one of its board is not"),
    UNKNOWN_PART("unknown-part", "the job has no such part"),
    UNKNOWN_BOARD("unknown-board", "the plan has no such board"),
    NOT_CUT("not-cut", "a piece is said to be spoiled that is not cut yet");

    private final String word;
    private final String meaning;

    FaultCode(String word, String meaning) {
        this.word = word;
        this.meaning = meaning;
    }

    /** The code as it stands in a document. */
    public String word() {
        return word;
    }

    /** What went wrong, in general. */
    public String meaning() {
        return meaning;
    }
}
