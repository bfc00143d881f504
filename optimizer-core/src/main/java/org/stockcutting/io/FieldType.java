package org.stockcutting.io;

/** What a field holds, and how a person is told so. */
public enum FieldType {
    OBJECT("an object {...}"),
    LIST("a list [...]"),
    /** An object for single edges, or one length for all four. */
    TRIM("an object {\"start\": ..., \"end\": ...}, or for sheets one length for all four edges"),
    TEXT("a text"),
    WORD("a word"),
    LENGTH("a length such as \"16-1/4\", \"406 mm\" or 16.25"),
    INTEGER("a whole number"),
    AMOUNT("an amount such as \"3.98\""),
    BOOLEAN("true or false"),
    WEIGHT("a weight such as \"400 lb\" or \"180 kg\""),
    DENSITY("a density such as \"28 lb/ft3\" or \"450 kg/m3\""),
    VOLUME("a volume such as \"216.5\" or \"12000 mm3\""),
    /** A leaf, or an object of cuts whose pieces are such again. */
    CUTS("a part's id, \"trim\", \"offcut\", \"sliver\", or an object {\"cut\", \"kerf\", \"pieces\"}"),
    FRACTION("a fraction such as \"199/100\""),
    SHARE("a share from 0 to 1, such as 0.9 for 90 %"),
    DECIMAL("a decimal number in a text, such as \"10.67\""),
    /** Text that stands for money, boards or a volume, as the goal says. */
    GOAL_VALUE("an amount, a number of boards or a volume, as the goal says"),
    /** A kind that is only fixed by the version that will read it. */
    LATER("a value of a later version");

    private final String wanted;

    FieldType(String wanted) {
        this.wanted = wanted;
    }

    /** What is wanted, for messages. */
    public String wanted() {
        return wanted;
    }
}
