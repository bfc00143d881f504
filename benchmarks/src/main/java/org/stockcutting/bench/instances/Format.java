package org.stockcutting.bench.instances;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** How a file is written; told by the folder it lies in, or by its word. */
public enum Format {
    /** A job document of this library. */
    JOB("job", null),
    ONE_LENGTH("one-length", TextReaders::oneLength, "1d_bpplib"),
    SEVERAL_LENGTHS("several-lengths", TextReaders::severalLengths, "1d_multistock"),
    PRICED_LENGTHS("priced-lengths", TextReaders::pricedLengths, "haouari_serairi", "monaci"),
    CLASS_SHEETS("class-sheets", TextReaders::classSheets, "2d_bp_class"),
    DEMAND_SHEETS("demand-sheets", TextReaders::demandSheets, "2d_cutting_stock"),
    VARIED_SHEETS("varied-sheets", TextReaders::variedSheets, "2d_multistock"),
    /** Many small examples in one document. */
    WORKED_EXAMPLES("worked-examples", null),
    /** Best pattern of one sheet: there is no job to plan, since nothing has to be placed. */
    ONE_PATTERN("one-pattern", null, "2d_guillotine_knapsack", "2d_defects");

    private final String word;
    private final TextReaders.@Nullable Reader reader;
    private final String[] folders;

    Format(String word, TextReaders.@Nullable Reader reader, String... folders) {
        this.word = word;
        this.reader = reader;
        this.folders = folders;
    }

    /** The word for {@code --format}. */
    public String word() {
        return word;
    }

    TextReaders.@Nullable Reader reader() {
        return reader;
    }

    /** True where pieces may be turned or not, as the user says. */
    boolean isOfSheets() {
        return this == CLASS_SHEETS || this == DEMAND_SHEETS || this == VARIED_SHEETS;
    }

    /**
     * The format with this word.
     *
     * @throws IllegalArgumentException naming all words
     */
    public static Format ofWord(String word) {
        return Arrays.stream(values())
                .filter(format -> format.word.equals(word))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("\"" + word + "\" is no format; there are "
                        + Arrays.stream(values()).map(Format::word).collect(Collectors.joining(", "))));
    }

    /** Told by name: the nearest folder that a set is known by, else what a JSON document is called. */
    static Optional<Format> ofPath(Path file) {
        Path absolute = file.toAbsolutePath().normalize();
        String name = absolute.getFileName().toString().toLowerCase(Locale.ROOT);
        if (name.equals("worked-examples.json")) {
            return Optional.of(WORKED_EXAMPLES);
        }
        for (Path folder = absolute.getParent(); folder != null; folder = folder.getParent()) {
            Optional<Format> found = ofFolder(folder);
            if (found.isPresent()) {
                return found;
            }
        }
        return name.endsWith(".json") ? Optional.of(JOB) : Optional.empty();
    }

    private static Optional<Format> ofFolder(Path folder) {
        if (folder.getFileName() == null) {
            return Optional.empty();
        }
        String name = folder.getFileName().toString().toLowerCase(Locale.ROOT);
        return Arrays.stream(values())
                .filter(format -> Arrays.asList(format.folders).contains(name))
                .findFirst();
    }
}
