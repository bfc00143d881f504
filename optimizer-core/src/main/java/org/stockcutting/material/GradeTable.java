package org.stockcutting.material;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthReader;
import org.stockcutting.length.LengthUnit;

/** Grades of lumber by name, with the knots that their boards usually have; a source stands in each row. */
public final class GradeTable {

    private static final String RESOURCE = "grades.csv";
    private static final String HEADER = "name;clearRun;zone;endCheck;unusableBoards;tightKnots;blemishes;source";
    private static final int FIELDS = 8;
    private static final LengthReader LENGTHS = new LengthReader(LengthUnit.INCH, '.');

    private final SortedMap<String, Row> byName;

    private GradeTable(SortedMap<String, Row> byName) {
        this.byName = byName;
    }

    /**
     * One grade.
     *
     * @param name its name
     * @param clearRun mean length between two bad zones
     * @param zone mean length of a bad zone
     * @param endCheck mean length of the checked end of a board
     * @param unusableBoards share of boards that give nothing
     * @param tightKnots share of zones that are tight knots
     * @param blemishes share of zones that are blemishes
     * @param source where the figures come from
     */
    public record Row(
            String name,
            Length clearRun,
            Length zone,
            Length endCheck,
            BigDecimal unusableBoards,
            BigDecimal tightKnots,
            BigDecimal blemishes,
            String source) {}

    /** The table that comes with the library. */
    public static GradeTable standard() {
        return Standard.TABLE;
    }

    /** Names of all grades, sorted. */
    public Set<String> names() {
        return byName.keySet();
    }

    /** All grades by name. */
    public SortedMap<String, Row> all() {
        return byName;
    }

    private static final class Standard {
        static final GradeTable TABLE = read();
    }

    private static GradeTable read() {
        try (InputStream stream = GradeTable.class.getResourceAsStream(RESOURCE)) {
            if (stream == null) {
                throw new IllegalStateException("the library was packed without its table " + RESOURCE);
            }
            BufferedReader reader = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8));
            List<String> lines = reader.lines().toList();
            if (!HEADER.equals(lines.get(0))) {
                throw new IllegalStateException(RESOURCE + " does not start with \"" + HEADER + "\"");
            }
            SortedMap<String, Row> rows = new TreeMap<>();
            lines.stream().skip(1).map(GradeTable::row).forEach(row -> rows.put(row.name(), row));
            return new GradeTable(Collections.unmodifiableSortedMap(rows));
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read the table " + RESOURCE, e);
        }
    }

    private static Row row(String line) {
        String[] f = line.split(";", FIELDS);
        return new Row(
                f[0],
                LENGTHS.read(f[1]),
                LENGTHS.read(f[2]),
                LENGTHS.read(f[3]),
                new BigDecimal(f[4]),
                new BigDecimal(f[5]),
                new BigDecimal(f[6]),
                f[7]);
    }
}
