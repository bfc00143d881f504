package org.stockcutting.check;

/** The closed set of rules a plan can break. */
public enum Cause {
    /** A layout names stock that the job does not have. */
    UNKNOWN_STOCK("unknown-stock"),
    /** A piece, an unplaced line or a step names a part that the job does not have. */
    UNKNOWN_PART("unknown-part"),
    /** A layout's raw sizes are not those of its stock. */
    STOCK_SIZE("stock-size"),
    /** A repeat below one, number lists of another length than the repeat, or more copies than were asked for. */
    COUNT("count"),
    /** A number outside 1 to demand plus spares. */
    NUMBER("number"),
    /** The same copy of a part is cut twice. */
    DUPLICATE_NUMBER("duplicate-number"),
    /** Staves or plies of a part are missing, too many, or named where there are none. */
    MEMBERS("members"),
    /** The jointed staves of a panel do not reach its width. */
    STAVE_SUM("stave-sum"),
    /** A stave's jointed width lies outside the limits. */
    STAVE_WIDTH("stave-width"),
    /** Staves of a panel come from other boards than the part allows. */
    STAVE_SOURCE("stave-source"),
    /** A piece is not as large as its rough size. */
    ROUGH_SIZE("rough-size"),
    /** The stock has the wrong trade size, width or thickness. */
    SECTION("section"),
    /** The stock is of another material. */
    MATERIAL("material"),
    /** The stock is of a grade that the part does not take. */
    GRADE("grade"),
    /** A piece lies across the grain it asks for, or along it where it must not. */
    GRAIN("grain"),
    /** A piece reaches into the trim or beyond the board. */
    OUTSIDE("outside"),
    /** Two pieces share wood. */
    OVERLAP("overlap"),
    /** Two pieces are nearer than a saw cut, or a slot is not one kerf wide. */
    KERF("kerf"),
    /** The cut tree does not yield the listed pieces. */
    TREE("tree"),
    /** More changes of cutting direction than the shop allows. */
    STAGES("stages"),
    /** The first cut has the wrong direction. */
    FIRST_CUT("first-cut"),
    /** Fence to blade is more than the saw has. */
    RIP_CAPACITY("rip-capacity"),
    /** A rip is longer than the shop can make. */
    LONGEST_RIP("longest-rip"),
    /** A crosscut is wider than the saw can make. */
    CROSSCUT_CAPACITY("crosscut-capacity"),
    /** A cut is made on too short a piece. */
    MINIMUM_PIECE("minimum-piece"),
    /** A piece contains a bad zone that its class does not take. */
    ZONE("zone"),
    /** A piece asks for wood that bow, crook or taper of its board take away. */
    OUT_OF_TRUE("out-of-true"),
    /** A cut passes through metal. */
    METAL_CUT("metal-cut"),
    /** More boards are used than there are. */
    AVAILABILITY("availability"),
    /** Stock is bought that is longer than the car takes. */
    CAR_LENGTH("car-length"),
    /** Pieces that belong on one board lie on several. */
    GROUP("group"),
    /** A piece lies elsewhere than the maker chose. */
    CUT_FROM("cut-from"),
    /** Quantities left out do not add up, or the reason given is not true. */
    UNPLACED("unplaced"),
    /** The cost is not the sum of the prices. */
    MONEY("money"),
    /** The objective's value or goal is not what the layouts give. */
    VALUE("value"),
    /** The bound is above what the certificate proves. */
    BOUND("bound"),
    /** The certificate proves nothing: negative or unknown duals, stock worth more than it costs, or too much claimed. */
    CERTIFICATE("certificate"),
    /** The status claims more than the plan shows. */
    STATUS("status"),
    /** The buying list is not what the layouts need. */
    BUYING_LIST("buying-list"),
    /** Left-over rectangles, their keep flags or the racked offcuts are wrong. */
    OFFCUT("offcut"),
    /** The yield figures do not follow from the layouts. */
    YIELD("yield"),
    /** The cut sequence names boards or parts that are not there. */
    SEQUENCE("sequence"),
    /** The number of set-ups is not the number of changes. */
    SET_UPS("set-ups"),
    /** Two layouts are equal and should be one. */
    LAYOUTS_NOT_MERGED("layouts-not-merged"),
    /** The table of what fewer set-ups cost is not one, or the plan is not its best row. */
    TRADE_OFF("trade-off"),
    /** A warning that is due is missing. */
    WARNING("warning"),
    /** A near miss makes a part smaller than it may be, or gains nothing. */
    NEAR_MISS("near-miss"),
    /** What is estimated does not follow from the job, or claims more than it can. */
    ESTIMATE("estimate");

    private final String word;

    Cause(String word) {
        this.word = word;
    }

    /** The word used in documents. */
    public String word() {
        return word;
    }
}
