package org.stockcutting.material;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Volume;

/**
 * What air-dried wood weighs, by the word that a job uses for its material. Words that are not in the table have no weight: nothing is
 * guessed. Green or treated wood may weigh half as much again or double.
 *
 * <p>Densities follow the Wood Handbook's specific gravities at 12 % moisture; the source stands in each row of the table.
 */
public final class WoodDensity {

    private static final String RESOURCE = "density.csv";
    private static final String HEADER = "names;kilogramsPerCubicMetre;status;source";
    private static final int FIELDS = 4;
    /** Grams in a cubic nanometre at one kilogram a cubic metre are 10 to the power of minus this. */
    private static final int SCALE = 24;

    private final TreeMap<String, BigDecimal> byName = new TreeMap<>();

    private WoodDensity() {
        try (InputStream stream = WoodDensity.class.getResourceAsStream(RESOURCE)) {
            if (stream == null) {
                throw new IllegalStateException("the library was packed without its table " + RESOURCE);
            }
            BufferedReader reader = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8));
            if (!HEADER.equals(reader.readLine())) {
                throw new IllegalStateException(RESOURCE + " does not start with \"" + HEADER + "\"");
            }
            reader.lines().forEach(this::add);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read the table " + RESOURCE, e);
        }
    }

    /** The table that comes with the library. */
    public static WoodDensity standard() {
        return Standard.TABLE;
    }

    /** Every word that has a density, sorted. */
    public SortedSet<String> names() {
        return new TreeSet<>(byName.keySet());
    }

    /** Kilograms a cubic metre, or null where the material is not in the table. */
    public @Nullable BigDecimal of(String material) {
        return byName.get(key(material));
    }

    /** Weight in grams, rounded up, or null where the material is not in the table. */
    public @Nullable Long grams(String material, Volume volume) {
        BigDecimal density = of(material);
        return density == null
                ? null
                : new BigDecimal(volume.cubicNanometres())
                        .multiply(density)
                        .movePointLeft(SCALE)
                        .setScale(0, RoundingMode.UP)
                        .longValueExact();
    }

    private void add(String line) {
        String[] fields = line.split(";", -1);
        if (fields.length != FIELDS) {
            throw new IllegalStateException(RESOURCE + " has a broken row: " + line);
        }
        for (String name : fields[0].split("\\|", -1)) {
            if (byName.put(name, new BigDecimal(fields[1])) != null) {
                throw new IllegalStateException(RESOURCE + " has " + name + " twice");
            }
        }
    }

    private static String key(String material) {
        return material.strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
    }

    /** Read once, when first asked for; immutable after that. */
    private static final class Standard {
        static final WoodDensity TABLE = new WoodDensity();
    }
}
