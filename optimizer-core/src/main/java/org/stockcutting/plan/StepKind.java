package org.stockcutting.plan;

/** What a step of the cut sequence does. */
public enum StepKind {
    /** Squares a raw end or edge: what falls off is not used. */
    TRIM("trim"),
    /** A crosscut with an allowance behind it, to a drawn line. */
    ROUGH_CROSSCUT("rough-crosscut"),
    /** One face and one edge made straight and square to each other. */
    JOINT("joint"),
    /** Planed to an even thickness, over size or to size. */
    PLANE("plane"),
    /** The wood lies until it moves no more. */
    REST("rest"),
    /** Sawn along, at a fence, or along a drawn line. */
    RIP("rip"),
    /** Sawn across, at a stop, or along a drawn line where it only takes waste away. */
    CROSSCUT("crosscut"),
    /** Staves or plies become one part. */
    GLUE("glue"),
    /** A glued-up part is sawn to its finished size. */
    FINAL_TRIM("final-trim"),
    /** Both ends of a part sawn at an angle, from long point to long point; the next of its stick comes after it. */
    MITRE("mitre"),
    /** A line across or along a piece, from its reference end, its face edge or the work it goes into. */
    MARK("mark"),
    /** A hole is bored where it is marked. */
    BORE("bore"),
    /** Sawn or planed smaller towards the foot. */
    TAPER("taper");

    private final String word;

    StepKind(String word) {
        this.word = word;
    }

    /** The word used in documents. */
    public String word() {
        return word;
    }
}
