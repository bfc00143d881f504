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
import java.util.Locale;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Weight and movement of woods by the names makers use; a source stands beside every figure. A name is found whatever its letter case
 * and blanks. Short names stand for the usual wood of the trade ({@code oak} is red oak), so what was found should be told to the maker.
 */
public final class WoodTable {

    static final String RESOURCE = "woods.csv";

    private static final String HEADER = "name;aliases;kind;density;densitySource;tangential;radial;movementSource";
    private static final int FIELDS = 8;

    private final SortedMap<String, Wood> byKey = new TreeMap<>();

    private WoodTable(List<String> lines) {
        if (!HEADER.equals(lines.get(0))) {
            throw new IllegalStateException(RESOURCE + " starts with \"" + lines.get(0) + "\", not \"" + HEADER + "\"");
        }
        lines.stream().skip(1).forEach(this::add);
    }

    /** The table that comes with the library. */
    public static WoodTable standard() {
        return Standard.TABLE;
    }

    /** The wood of this name, or nothing where the table does not know it. */
    public Optional<Wood> find(String name) {
        return Optional.ofNullable(byKey.get(key(name)));
    }

    /** Every name and what it stands for, sorted. */
    public SortedMap<String, Wood> all() {
        return Collections.unmodifiableSortedMap(byKey);
    }

    private void add(String line) {
        String[] f = line.split(";", -1);
        if (f.length != FIELDS) {
            throw new IllegalStateException(RESOURCE + " has a broken row: " + line);
        }
        BigDecimal density = decimal(f[3]);
        Wood wood = new Wood(
                f[0],
                Wood.Kind.valueOf(f[2].toUpperCase(Locale.ROOT)),
                density == null ? null : new Density(density),
                decimal(f[5]),
                decimal(f[6]),
                f[4],
                f[7]);
        put(f[0], wood);
        if (!f[1].isEmpty()) {
            List.of(f[1].split("\\|")).forEach(alias -> put(alias, wood));
        }
    }

    private void put(String name, Wood wood) {
        Wood other = byKey.put(key(name), wood);
        if (other != null) {
            throw new IllegalStateException(RESOURCE + " has two woods named " + name);
        }
    }

    private static @Nullable BigDecimal decimal(String text) {
        return text.isEmpty() ? null : new BigDecimal(text);
    }

    private static String key(String name) {
        return name.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s,-]+", " ");
    }

    private static List<String> lines() {
        try (InputStream stream = WoodTable.class.getResourceAsStream(RESOURCE)) {
            if (stream == null) {
                throw new IllegalStateException("the library was packed without its table " + RESOURCE);
            }
            return new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8))
                    .lines()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read the table " + RESOURCE, e);
        }
    }

    /** Read once, when first asked for; immutable after that. */
    private static final class Standard {
        static final WoodTable TABLE = new WoodTable(lines());
    }
}
