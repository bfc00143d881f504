package org.stockcutting.io;

import java.util.SortedMap;
import java.util.TreeMap;
import org.stockcutting.length.LengthReader;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.length.VolumeReader;

/** What the objects of one document share while it is read: its field table, its unit, faults and filled-in defaults. */
final class Reading {

    private final FieldTable table;
    private final Faults faults;
    private final SortedMap<String, String> defaults = new TreeMap<>();
    private LengthUnit unit = LengthUnit.INCH;
    private char decimal = '.';
    private LengthReader lengths = new LengthReader(unit, decimal);
    private LengthWriter writer = new LengthWriter(unit, decimal);

    Reading(FieldTable table, Faults faults) {
        this.table = table;
        this.faults = faults;
    }

    /** Says how plain numbers and decimals are meant from here on. */
    void write(LengthUnit ownUnit, char mark) {
        unit = ownUnit;
        decimal = mark;
        lengths = new LengthReader(ownUnit, mark);
        writer = new LengthWriter(ownUnit, mark);
    }

    FieldTable table() {
        return table;
    }

    Faults faults() {
        return faults;
    }

    SortedMap<String, String> defaults() {
        return defaults;
    }

    LengthUnit unit() {
        return unit;
    }

    char decimal() {
        return decimal;
    }

    LengthReader lengths() {
        return lengths;
    }

    LengthWriter writer() {
        return writer;
    }

    VolumeReader volumes() {
        return new VolumeReader(unit);
    }

    /** Notes a value that the document did not give. */
    void filledIn(String pointer, String value) {
        defaults.put(pointer, value);
    }
}
