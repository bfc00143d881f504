package org.stockcutting.bench.instances;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.math.BigInteger;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobReview;
import org.stockcutting.stock.Bill;
import org.stockcutting.stock.StockItem;

class InstanceFilesTest {

    private static final String CLASS = "4 CLASS\n1 N\n1 1 NO\n10 10 HBIN,WBIN\n5 5 H,W\n";

    private static final BigInteger LARGE = BigInteger.valueOf(300_000);

    @TempDir
    Path folder;

    private final List<String> remarks = new ArrayList<>();

    private void file(String name, String text) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        Files.writeString(file, text);
    }

    private List<Instance> read(boolean rotate) throws IOException {
        return new InstanceFiles(null, rotate, remarks::add).read(folder);
    }

    @Test
    void aFolderOfEverythingIsReadByName() throws Exception {
        file("1d_bpplib/csp/Few/a.txt", "1\n10\n5 2\n");
        file("1d_multistock/Few/b.txt", "1\n10 2 7\n1\n5 2\n");
        file("1d_multistock/Monaci/c.txt", "1 1 1 1\n10 7\n5\n");
        file("2d_bp_class/split/d.2bp", CLASS);
        file("2d_multistock/e/MB_1", "1 1 1\n10 10 1 7\n0 5 5 1\n");
        file("2d_cutting_stock/f/g.txt", "2 1 1 0 0 0\n10 10 7\n5 5 1 0\nname\n");
        file("best-known/1d_bin_packing.csv", "file,optimum\n1d_bpplib/csp/Few/a.txt,1\n");
        file(
                "best-known/2d_bin_packing_class.csv",
                "file,lower_bound_oriented,best_oriented_guillotine,lower_bound_rotated,best_rotated_guillotine\n"
                        + "2d_bp_class/split/d.2bp,4,5,2,3\n");
        file(
                "best-known/2d_several_sheets_free_oriented_pisinger.csv",
                "file,best_cost_free_not_guillotine,bound\n2d_multistock/e/MB_1,7,6\n");
        file("README.md", "words");

        List<Instance> instances = read(false);

        assertThat(remarks).isEmpty();
        assertThat(instances)
                .extracting(Instance::file)
                .containsExactly(
                        "1d_bpplib/csp/Few/a.txt",
                        "1d_multistock/Few/b.txt",
                        "1d_multistock/Monaci/c.txt",
                        "2d_bp_class/split/d.2bp",
                        "2d_cutting_stock/f/g.txt",
                        "2d_multistock/e/MB_1");
        assertThat(instances.get(0).known()).isEqualTo(Known.optimum(1));
        assertThat(instances.get(1).known()).isEqualTo(Known.NOTHING);
        assertThat(instances.get(3).known()).isEqualTo(known(4, 5, true));
        assertThat(instances.get(3).group()).isEqualTo("2d_bp_class/split/class 4");
        assertThat(instances.get(5).known()).isEqualTo(known(6, 7, false));

        List<Instance> turned = read(true);
        assertThat(turned.get(3).known()).isEqualTo(known(2, 3, true));
        assertThat(turned.get(3).group()).isEqualTo("2d_bp_class/split/class 4 turned");
        assertThat(turned.get(5).known()).isEqualTo(Known.NOTHING);
    }

    private static Known known(long bound, long best, boolean reachable) {
        return new Known(BigInteger.valueOf(bound), BigInteger.valueOf(best), reachable);
    }

    @Test
    void whatCannotBePlannedOrReadIsToldInALine() throws Exception {
        file("2d_defects/x.jsonl", "{}");
        file("2d_guillotine_knapsack/herz1972/H", "1\n10 10\n5 5 25\n");
        file("elsewhere/y.dat", "1 2 3");
        file("1d_bpplib/csp/Few/z.txt", "1\n10\n");
        file("jobs/broken.json", "{\"parts\": 3}");

        InstanceFiles files = new InstanceFiles(null, false, remarks::add);

        assertThat(files.read(folder)).isEmpty();
        assertThat(remarks).hasSize(5);
        assertThat(remarks.get(0)).contains("z.txt", "the file ends; wanted a size");
        assertThat(remarks.get(1)).contains("x.jsonl", "best pattern of one sheet");
        assertThat(remarks.get(2)).contains("/H", "best pattern of one sheet");
        assertThat(remarks.get(3)).contains("broken.json");
        assertThat(remarks.get(4)).contains("y.dat", "--format");
        assertThat(files.refused()).isEqualTo(2);
        assertThatThrownBy(() -> files.read(folder.resolve("nowhere"))).isInstanceOf(NoSuchFileException.class);
    }

    @Test
    void aFormatCanBeSaid() throws Exception {
        file("mine.dat", "1\n10\n5 2\n");

        List<Instance> instances =
                new InstanceFiles(Format.ofWord("one-length"), false, remarks::add).read(folder.resolve("mine.dat"));

        assertThat(instances).hasSize(1);
        assertThatThrownBy(() -> Format.ofWord("two-lengths")).hasMessageContaining("one-length, several-lengths");
    }

    @Test
    void whatLiesBesideJobsIsLeftOutInOneLine() throws Exception {
        file("notes.txt", "words");
        file("a/picture.svg", "words");
        file("a/shelf.plan.json", "{}");
        Files.copy(Path.of("..", "samples", "jobs", "rack-shelves.json"), folder.resolve("a/shelf.json"));
        InstanceFiles files = new InstanceFiles(null, false, remarks::add);

        assertThat(files.read(folder)).hasSize(1);
        assertThat(files.refused()).isZero();
        assertThat(remarks).singleElement().asString().contains("picture.svg and 1 more: left out", "--format");
    }

    @Test
    void samplesAreJobsAndATableJobIsOne() throws Exception {
        List<Instance> jobs = new InstanceFiles(null, false, remarks::add).read(Path.of("..", "samples", "jobs"));

        assertThat(remarks).isEmpty();
        assertThat(jobs)
                .extracting(Instance::file)
                .contains("../samples/jobs/csv-shelf", "../samples/jobs/typical.json");
        assertThat(jobs).extracting(Instance::group).containsOnly("../samples/jobs");
    }

    /** All of them, where they lie beside the project: each can be planned, and nearly all have best values. */
    @Test
    void everyPublicFileCanBeRead() throws Exception {
        String named = System.getProperty("stockcutting.instances", "");
        Path sets = named.isEmpty() ? Path.of("..", "..", "shared", "instances") : Path.of(named);
        boolean there = Files.isDirectory(sets);
        if ("required".equals(System.getenv("STOCKCUTTING_INSTANCES"))) {
            assertThat(there).as("published instances at %s", sets).isTrue();
        }
        assumeTrue(
                there,
                () -> "skipped: no published instances at "
                        + sets.toAbsolutePath().normalize());

        InstanceFiles files = new InstanceFiles(null, false, remarks::add);
        List<Instance> instances = files.read(sets);

        assertThat(files.refused()).isZero();
        assertThat(remarks).allMatch(line -> line.contains("best pattern of one sheet"));
        assertThat(instances).hasSizeGreaterThan(1_700);
        List<String> silent = new ArrayList<>();
        for (Instance instance : instances) {
            assertThat(JobReview.review(instance.job())).as(instance.file()).isEmpty();
            BigInteger best = instance.known().best();
            if (best == null) {
                silent.add(instance.file());
            } else if (instance.job().goal() == Goal.COST && best.compareTo(LARGE) < 0) {
                assertThat(isSumOfPrices(instance.job(), best.intValueExact()))
                        .as(instance.file() + ": " + best + " as a sum of prices, else they are not the published ones")
                        .isTrue();
            }
        }
        // The tables leave out a few files of several lengths and of sheets, none of one length.
        assertThat(silent).hasSizeLessThan(20).noneMatch(file -> file.contains("1d_bpplib"));
    }

    private static boolean isSumOfPrices(Job job, int value) {
        boolean[] reached = new boolean[value + 1];
        reached[0] = true;
        for (StockItem.ForSale item : job.forSale()) {
            int price = Math.toIntExact(Bill.price(item).minorUnits());
            for (int sum = price; price > 0 && sum <= value; sum++) {
                reached[sum] |= reached[sum - price];
            }
        }
        return reached[value];
    }
}
