package org.stockcutting.solve.columns;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.stockcutting.solve.instance.Instance;

/**
 * Some of E. Falkenauer's bin packing instances (Journal of Heuristics 2, 1996), read from beside the project where they are there; their
 * optima are the published ones.
 */
class PublishedInstancesTest {

    private static Path instances() {
        String named = System.getProperty("stockcutting.instances", "");
        Path folder = named.isEmpty() ? Path.of("..", "..", "shared", "instances") : Path.of(named);
        boolean there = Files.isDirectory(folder.resolve("1d_bpplib"));
        if ("required".equals(System.getenv("STOCKCUTTING_INSTANCES"))) {
            assertThat(there).as("published instances at %s", folder).isTrue();
        }
        Assumptions.assumeTrue(
                there,
                () -> "skipped: no published instances at "
                        + folder.toAbsolutePath().normalize());
        return folder;
    }

    /** Number of sizes, capacity, then size and demand a line. */
    static Instance read(Path file) {
        try {
            long[] numbers = Stream.of(Files.readString(file).trim().split("\\s+"))
                    .mapToLong(Long::parseLong)
                    .toArray();
            Map<Long, Long> demand = new TreeMap<>();
            for (int i = 2; i < numbers.length; i += 2) {
                demand.merge(numbers[i], numbers[i + 1], Long::sum);
            }
            List<long[]> parts = new ArrayList<>();
            demand.forEach((size, count) -> parts.add(new long[] {size, count}));
            return WorkedExamplesTest.instance(0, new long[][] {{numbers[1], 1}}, parts.toArray(long[][]::new));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Map<String, Long> optima(Path folder) throws IOException {
        Map<String, Long> optima = new TreeMap<>();
        for (String line : Files.readAllLines(folder.resolve("best-known").resolve("1d_bin_packing.csv"))) {
            String[] cells = line.split(",");
            if (cells.length > 5 && cells[5].matches("\\d+")) {
                optima.put(cells[0].substring(cells[0].lastIndexOf('/') + 1), Long.valueOf(cells[5]));
            }
        }
        return optima;
    }

    private static void assertFirstReachBestKnown(String family, String prefix, int count) throws IOException {
        Path folder = instances();
        Map<String, Long> optima = optima(folder);
        try (Stream<Path> files =
                Files.list(folder.resolve("1d_bpplib").resolve("csp").resolve(family))) {
            List<Path> chosen = files.filter(f -> f.getFileName().toString().contains(prefix))
                    .sorted()
                    .limit(count)
                    .toList();
            assertThat(chosen).hasSize(count);
            for (Path file : chosen) {
                String name = file.getFileName().toString();
                long best = optima.get(name);
                assertThat(WorkedExamplesTest.solve(read(file))).as(name).containsExactly(best, best);
            }
        }
    }

    @Test
    void uniform() throws IOException {
        assertFirstReachBestKnown("Falkenauer_U", "u120", 5);
    }

    @Test
    void triplets() throws IOException {
        assertFirstReachBestKnown("Falkenauer_T", "t60", 5);
    }
}
