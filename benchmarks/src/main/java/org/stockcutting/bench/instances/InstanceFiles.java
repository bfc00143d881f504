package org.stockcutting.bench.instances;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitOption;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.stockcutting.io.CsvJobReader;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.JobReading;
import org.stockcutting.job.Job;

/**
 * Finds and reads jobs: documents, folders with {@code parts.csv} and {@code stock.csv}, files of public sets. What cannot be planned or
 * read is told in a line and left out.
 */
public final class InstanceFiles {

    private static final String PARTS = "parts.csv";
    private static final String STOCK = "stock.csv";
    private static final String SHOP = "shop.json";
    /** Plans, as the yield command names them, lie beside their jobs. */
    private static final String PLAN = ".plan.json";

    private final @Nullable Format format;
    private final boolean rotate;
    private final Consumer<String> remarks;
    private final JobReader jobs = new JobReader();
    private final Map<Path, BestKnown> tables = new HashMap<>();
    private final List<String> untold = new ArrayList<>();
    private int refused;

    /**
     * @param format how every file is written, or null to tell it by name
     * @param rotate true if rectangles of public sets may be turned
     * @param remarks hears of every file that is left out
     */
    public InstanceFiles(@Nullable Format format, boolean rotate, Consumer<String> remarks) {
        this.format = format;
        this.rotate = rotate;
        this.remarks = remarks;
    }

    /** How many files could not be read though they should have been. */
    public int refused() {
        return refused;
    }

    /**
     * Every job at a path, folders with all that is in them, by name.
     *
     * @param path a file or a folder
     * @throws NoSuchFileException if there is neither
     */
    public List<Instance> read(Path path) throws IOException {
        if (!Files.exists(path)) {
            throw new NoSuchFileException(path.toString(), null, "there is no such file or folder");
        }
        List<Instance> found = new ArrayList<>();
        untold.clear();
        try (Stream<Path> walk = Files.walk(path, FileVisitOption.FOLLOW_LINKS)) {
            for (Path file : walk.filter(Files::isRegularFile).sorted().toList()) {
                readOne(file, found);
            }
        }
        if (!untold.isEmpty()) {
            String others = untold.size() == 1 ? "" : " and " + (untold.size() - 1) + " more";
            remarks.accept(untold.get(0) + others + ": left out: the format is not told by the folder; say --format");
        }
        return found;
    }

    private void readOne(Path file, List<Instance> found) throws IOException {
        try {
            if (isCsvJob(file)) {
                if (nameOf(file).equals(PARTS)) {
                    found.add(csvJob(file));
                }
                return;
            }
            Optional<Format> told = format == null ? told(file) : Optional.of(format);
            if (told.isPresent()) {
                found.addAll(read(file, told.get()));
            }
        } catch (IllegalArgumentException e) {
            refused++;
            remarks.accept(label(file) + ": left out: " + e.getMessage());
        }
    }

    private Optional<Format> told(Path file) {
        Path folder = file.toAbsolutePath().normalize().getParent();
        boolean beside = folder != null && folder.endsWith(BestKnown.FOLDER);
        if (beside || nameOf(file).endsWith(".md") || nameOf(file).endsWith(PLAN)) {
            return Optional.empty();
        }
        Optional<Format> told = Format.ofPath(file);
        if (told.isEmpty()) {
            untold.add(label(file));
        }
        return told;
    }

    private List<Instance> read(Path file, Format as) throws IOException {
        if (as == Format.ONE_PATTERN) {
            remarks.accept(label(file) + ": left out: it asks for the best pattern of one sheet, not for a plan");
            return List.of();
        }
        String text = Files.readString(file, StandardCharsets.UTF_8);
        String label = label(file);
        String group = group(label);
        TextReaders.Reader reader = as.reader();
        if (reader != null) {
            String within = as == Format.CLASS_SHEETS ? "/class " + new Numbers(text).count("the class") : "";
            Job job = reader.read(shortName(label), text, rotate);
            String turned = rotate && as.isOfSheets() ? " turned" : "";
            return List.of(new Instance(label, group + within + turned, job, known(file, label)));
        }
        if (as == Format.WORKED_EXAMPLES) {
            return WorkedExamples.read(label, "worked examples", text);
        }
        return List.of(document(label, group, jobs.read(text)));
    }

    private static Instance document(String label, String group, JobReading reading) {
        return new Instance(label, group, reading.orThrow(), Known.NOTHING, reading.defaults());
    }

    private Instance csvJob(Path parts) throws IOException {
        Path shop = parts.resolveSibling(SHOP);
        JobReading reading = new CsvJobReader()
                .read(
                        Files.readString(parts, StandardCharsets.UTF_8),
                        Files.readString(parts.resolveSibling(STOCK), StandardCharsets.UTF_8),
                        Files.exists(shop) ? Files.readString(shop, StandardCharsets.UTF_8) : null);
        String folder = group(label(parts));
        return document(folder, group(folder), reading);
    }

    private static boolean isCsvJob(Path file) {
        String name = nameOf(file);
        return (name.equals(PARTS) || name.equals(STOCK) || name.equals(SHOP))
                && Files.exists(file.resolveSibling(PARTS))
                && Files.exists(file.resolveSibling(STOCK));
    }

    private Known known(Path file, String label) throws IOException {
        Path root = root(file);
        if (root == null) {
            return Known.NOTHING;
        }
        BestKnown table = tables.get(root);
        if (table == null) {
            table = new BestKnown(root.resolve(BestKnown.FOLDER), rotate);
            tables.put(root, table);
        }
        return table.of(label);
    }

    /** The folder that holds the sets and the tables of best values, or null. */
    private static @Nullable Path root(Path file) {
        Path folder = file.toAbsolutePath().normalize().getParent();
        while (folder != null && !Files.isDirectory(folder.resolve(BestKnown.FOLDER))) {
            folder = folder.getParent();
        }
        return folder;
    }

    /** The path from the folder of the sets, so that tables of different machines agree; else the path as it was given. */
    private static String label(Path file) {
        Path root = root(file);
        Path shown = root == null
                ? file.normalize()
                : root.relativize(file.toAbsolutePath().normalize());
        return shown.toString().replace('\\', '/');
    }

    private static String group(String label) {
        int slash = label.lastIndexOf('/');
        return slash < 0 ? "jobs" : label.substring(0, slash);
    }

    private static String shortName(String label) {
        return label.substring(label.lastIndexOf('/') + 1);
    }

    private static String nameOf(Path file) {
        return String.valueOf(file.getFileName());
    }
}
