package org.stockcutting.length;

/** The units a job may be written in. The international inch is exactly 25.4 mm. */
public enum LengthUnit {
    INCH("in", 25_400_000L),
    FOOT("ft", 304_800_000L),
    MILLIMETRE("mm", 1_000_000L),
    CENTIMETRE("cm", 10_000_000L),
    METRE("m", 1_000_000_000L);

    private final String symbol;
    private final long nanometres;

    LengthUnit(String symbol, long nanometres) {
        this.symbol = symbol;
        this.nanometres = nanometres;
    }

    /** The word used in documents: {@code in}, {@code ft}, {@code mm}, {@code cm}, {@code m}. */
    public String symbol() {
        return symbol;
    }

    public long nanometres() {
        return nanometres;
    }

    /** True for inch and foot, whose readings are fractions. */
    public boolean isImperial() {
        return this == INCH || this == FOOT;
    }
}
