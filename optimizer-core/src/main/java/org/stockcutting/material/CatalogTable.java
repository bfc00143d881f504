package org.stockcutting.material;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthReader;
import org.stockcutting.length.LengthUnit;

/** Reads the catalog's own tables: one row a line, {@code ;} between fields, no quotes, lengths in inches or with their unit. */
final class CatalogTable {

    static final String HEADER = "name;nominalThickness;nominalWidth;thickness;width;status;source";

    private static final int FIELDS = 7;
    private static final LengthReader LENGTHS = new LengthReader(LengthUnit.INCH, '.');

    private CatalogTable() {}

    static List<NominalSize> read(String resource) {
        try (InputStream stream = CatalogTable.class.getResourceAsStream(resource)) {
            if (stream == null) {
                throw new IllegalStateException("the library was packed without its table " + resource);
            }
            BufferedReader reader = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8));
            String header = reader.readLine();
            if (!HEADER.equals(header)) {
                throw new IllegalStateException(resource + " starts with \"" + header + "\", not \"" + HEADER + "\"");
            }
            return reader.lines().map(line -> row(resource, line)).toList();
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read the table " + resource, e);
        }
    }

    private static NominalSize row(String resource, String line) {
        String[] fields = line.split(";", -1);
        if (fields.length != FIELDS || fields[2].isEmpty() != fields[4].isEmpty()) {
            throw new IllegalStateException(resource + " has a broken row: " + line);
        }
        boolean thicknessOnly = fields[2].isEmpty();
        Length nominalWidth = thicknessOnly ? null : LENGTHS.read(fields[2]);
        Length width = thicknessOnly ? null : LENGTHS.read(fields[4]);
        String source = fields[6] + " (" + fields[5] + ")";
        return new NominalSize(
                fields[0], LENGTHS.read(fields[1]), nominalWidth, LENGTHS.read(fields[3]), width, source);
    }
}
