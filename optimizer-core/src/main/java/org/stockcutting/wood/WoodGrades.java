package org.stockcutting.wood;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.stockcutting.length.LengthReader;
import org.stockcutting.length.LengthUnit;

/** The usual figures of each grade: a table with its source in each row. They are starting points; measured boards overrule them. */
public final class WoodGrades {

    private static final String TABLE = "grades.csv";
    private static final String HEADER = "name;clearRun;zone;endCheck;unusableBoards;tightKnots;blemishes;source";
    private static final LengthReader LENGTHS = new LengthReader(LengthUnit.INCH, '.');

    private final SortedMap<String, KnotModel> byName;

    private WoodGrades(SortedMap<String, KnotModel> byName) {
        this.byName = byName;
    }

    /** The library's table. */
    public static WoodGrades standard() {
        SortedMap<String, KnotModel> models = new TreeMap<>();
        for (String line : lines()) {
            List<String> fields = List.of(line.split(";", 8));
            models.put(fields.get(0), model(fields));
        }
        return new WoodGrades(models);
    }

    /** The model of a grade. */
    public Optional<KnotModel> find(String grade) {
        return Optional.ofNullable(byName.get(grade));
    }

    /** Names of all grades, sorted. */
    public Set<String> names() {
        return java.util.Collections.unmodifiableSet(byName.keySet());
    }

    private static KnotModel model(List<String> fields) {
        return new KnotModel(
                LENGTHS.read(fields.get(1)),
                LENGTHS.read(fields.get(2)),
                LENGTHS.read(fields.get(3)),
                new BigDecimal(fields.get(4)),
                new BigDecimal(fields.get(5)),
                new BigDecimal(fields.get(6)),
                "grade " + fields.get(0) + " (" + fields.get(7) + ")");
    }

    private static List<String> lines() {
        try (InputStream stream = WoodGrades.class.getResourceAsStream(TABLE)) {
            if (stream == null) {
                throw new IllegalStateException("the library was packed without its table " + TABLE);
            }
            BufferedReader reader = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8));
            List<String> lines = new ArrayList<>(reader.lines().toList());
            if (!HEADER.equals(lines.remove(0))) {
                throw new IllegalStateException(TABLE + " does not start with \"" + HEADER + "\"");
            }
            return lines;
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read the table " + TABLE, e);
        }
    }
}
