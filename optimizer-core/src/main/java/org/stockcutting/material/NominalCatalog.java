package org.stockcutting.material;

import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Trade names and what they measure. Softwood from PS 20 (dry under the plain name, green under {@code 2x4 green}), 5/4 decking,
 * hardwood quarters (rough under the plain name, {@code 4/4 S2S} and {@code 4/4 S1S} surfaced), and metric sections in millimetres.
 *
 * <p>Names are found whatever their letter case and blanks, with {@code x} or a multiplication sign: {@code 2 X 4} is {@code 2x4}.
 */
public final class NominalCatalog {

    private static final List<String> RESOURCES = List.of("softwood.csv", "hardwood.csv", "metric.csv");

    private final TreeMap<String, NominalSize> byKey = new TreeMap<>();

    /**
     * A catalog of the given rows.
     *
     * @throws IllegalArgumentException if two rows have the same name
     */
    public NominalCatalog(Collection<NominalSize> sizes) {
        for (NominalSize size : sizes) {
            if (byKey.put(key(size.name()), size) != null) {
                throw new IllegalArgumentException("the catalog has two rows named " + size.name());
            }
        }
    }

    /** The catalog that comes with the library. */
    public static NominalCatalog standard() {
        return Standard.CATALOG;
    }

    /** The row of a trade name; its {@link NominalSize#name()} is the one spelling that fits are decided by. */
    public Optional<NominalSize> find(String name) {
        return Optional.ofNullable(byKey.get(key(name)));
    }

    /** Every name in its own spelling, sorted. */
    public SortedSet<String> names() {
        TreeSet<String> names = new TreeSet<>();
        byKey.values().forEach(size -> names.add(size.name()));
        return Collections.unmodifiableSortedSet(names);
    }

    private static String key(String name) {
        return name.strip()
                .toLowerCase(Locale.ROOT)
                .replace('\u00d7', 'x')
                .replaceAll("\\s+", " ")
                .replaceAll(" ?x ?", "x");
    }

    /** Read once, when first asked for; immutable after that. */
    private static final class Standard {
        static final NominalCatalog CATALOG = new NominalCatalog(RESOURCES.stream()
                .flatMap(name -> CatalogTable.read(name).stream())
                .toList());
    }
}
