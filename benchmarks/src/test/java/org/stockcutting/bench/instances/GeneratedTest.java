package org.stockcutting.bench.instances;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobReview;
import org.stockcutting.length.Length;
import org.stockcutting.material.Grain;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;

/** The ranges of the papers: Falkenauer (1996), Berkey and Wang (1987), Martello and Vigo (1998). */
class GeneratedTest {

    private static final long MILLIMETRE = 1_000_000;

    private static long number(Length length) {
        return length.nanometres() / MILLIMETRE;
    }

    private static List<Long> lengths(Job job) {
        List<Long> lengths = new ArrayList<>();
        for (Part part : job.parts()) {
            for (int i = 0; i < part.quantity(); i++) {
                lengths.add(number(part.length()));
            }
        }
        return lengths;
    }

    private static long width(Part part) {
        return part.section() instanceof Section.Measured measured ? number(measured.width()) : -1;
    }

    private static long capacity(Job job) {
        return number(job.forSale().get(0).length());
    }

    @Test
    void uniformSizesReachBothEndsOfTheirRange() {
        List<Long> all = new ArrayList<>();
        for (Instance instance : Generated.of("U-250:20", 3)) {
            assertThat(capacity(instance.job())).isEqualTo(150);
            assertThat(lengths(instance.job())).hasSize(250);
            all.addAll(lengths(instance.job()));
        }
        assertThat(all).allMatch(size -> size >= 20 && size <= 100).contains(20L, 100L);
        assertThat(all.stream().mapToLong(x -> x).average().orElse(0)).isBetween(59.0, 61.0);
    }

    /** A rack of 40 boards with up to six bad rectangles each, and fifteen sizes of parts that nearly make its area. */
    @Test
    void measuredBoardsAreFortyWithUpToSixZones() {
        for (Instance instance : Generated.of("measured:20", 2)) {
            Job job = instance.job();
            assertThat(JobReview.review(job)).isEmpty();
            assertThat(job.parts()).hasSize(15);
            assertThat(job.onHand()).hasSize(40);
            assertThat(job.onHand()).allMatch(board -> board.zones().size() <= 6);
            assertThat(job.onHand()).anyMatch(board -> board.zones().size() == 6);
        }
    }

    @Test
    void tripletsFillTheirBoards() {
        for (Instance instance : Generated.of("T:10", 3)) {
            List<Long> sizes = lengths(instance.job());
            assertThat(capacity(instance.job())).isEqualTo(1000);
            assertThat(sizes).hasSize(60).allMatch(size -> size >= 250 && size <= 500);
            assertThat(sizes.stream().mapToLong(x -> x).sum()).isEqualTo(20 * 1000);
            assertThat(instance.known().bound()).isEqualTo(BigInteger.valueOf(20));
        }
    }

    @ParameterizedTest
    @CsvSource({"1,10,10", "2,30,10", "3,40,35", "4,100,35", "5,100,100", "6,300,100"})
    void sidesOfThePlainClasses(int number, long sheet, long most) {
        List<Long> sides = new ArrayList<>();
        for (Instance instance : Generated.of("CLASS" + number + "-100:10", 3)) {
            assertThat(capacity(instance.job())).isEqualTo(sheet);
            assertThat(number(instance.job().forSale().get(0).width())).isEqualTo(sheet);
            assertThat(instance.job().parts()).hasSize(100);
            instance.job().parts().forEach(part -> {
                sides.add(number(part.length()));
                sides.add(width(part));
            });
        }
        assertThat(sides).allMatch(side -> side >= 1 && side <= most).contains(1L, most);
    }

    @Test
    void piecesOfClassesMayBeTurnedOthersStayWhatTheyAre() {
        List<Part> straight = Generated.of("CLASS7-20:1", 3).get(0).job().parts();
        List<Part> turned = Generated.of("CLASS7-20:1", 3, true).get(0).job().parts();
        assertThat(straight).extracting(Part::grain).containsOnly(Grain.LENGTH);
        assertThat(turned).extracting(Part::grain).containsOnly(Grain.ANY);
        assertThat(turned)
                .extracting(Part::length)
                .isEqualTo(straight.stream().map(Part::length).toList());
        assertThat(Generated.of("sheets:2", 3, true)).isEqualTo(Generated.of("sheets:2", 3));
    }

    @ParameterizedTest
    @ValueSource(ints = {7, 8, 9, 10})
    void theUsualTypeOfAVariedClassComesSevenTimesInTen(int number) {
        int usual = 0;
        int all = 0;
        for (Instance instance : Generated.of("CLASS" + number + "-100:20", 3)) {
            for (Part part : instance.job().parts()) {
                long h = number(part.length());
                long w = width(part);
                assertThat(h).isBetween(1L, 100L);
                assertThat(w).isBetween(1L, 100L);
                boolean[] type = {w >= 66 && h <= 50, w <= 50 && h >= 66, w >= 50 && h >= 50, w <= 50 && h <= 50};
                assertThat(type).contains(true);
                usual += type[number - 7] ? 1 : 0;
                all++;
            }
        }
        assertThat(all).isEqualTo(2000);
        assertThat(usual / (double) all).isBetween(0.66, 0.74);
    }

    @Test
    void boardsByTheFootGoWithTheSameRacksAndParts() {
        List<Instance> measured = Generated.of("measured:3", 3);
        List<Instance> foot = Generated.of("foot:3", 3);
        for (int i = 0; i < foot.size(); i++) {
            Job job = foot.get(i).job();
            assertThat(job.parts()).isEqualTo(measured.get(i).job().parts());
            assertThat(job.onHand()).isEqualTo(measured.get(i).job().onHand());
            assertThat(job.forSale()).hasSize(8);
        }
    }

    @Test
    void scarceSheetsAndSmallSawsAreTheSameJobsUnderOtherTerms() {
        List<Instance> plenty = Generated.of("sheets-20:5", 3);
        List<Instance> scarce = Generated.of("scarce-20:5", 3);
        List<Instance> saws = Generated.of("saws-20:5", 3);
        for (int i = 0; i < plenty.size(); i++) {
            Job job = plenty.get(i).job();
            assertThat(scarce.get(i).job().parts()).isEqualTo(job.parts());
            assertThat(saws.get(i).job().parts()).isEqualTo(job.parts());
            assertThat(saws.get(i).job().forSale()).isEqualTo(job.forSale());
            assertThat(saws.get(i).job().shop().limits().ripCapacity()).isEqualTo(Length.inches("16"));
            assertThat(saws.get(i).job().shop().limits().crosscutCapacity()).isEqualTo(Length.inches("40"));
            assertThat(scarce.get(i).job().forSale().stream().filter(offer -> offer.available() != null))
                    .singleElement()
                    .satisfies(offer -> assertThat(offer.available()).isBetween(1, 4));
        }
    }

    /** 96 x 48 in sheets, some trimmed and some not, about four lines in ten held to the grain, five pieces a line. */
    @Test
    void plywoodJobsAreOneSizeOfSheetWithGrainOnFourLinesInTen() {
        List<Job> jobs =
                Generated.of("plywood-20:40", 3).stream().map(Instance::job).toList();

        assertThat(jobs).allSatisfy(job -> {
            assertThat(job.forSale()).singleElement().satisfies(sheet -> {
                assertThat(sheet.length()).isEqualTo(Length.inches("96"));
                assertThat(sheet.width()).isEqualTo(Length.inches("48"));
            });
            assertThat(job.parts()).hasSize(20);
            assertThat(job.parts().stream().mapToInt(Part::quantity).sum()).isEqualTo(100);
        });
        assertThat(jobs.stream()
                        .filter(job -> job.forSale().get(0).ownTrim() != null)
                        .count())
                .isBetween(10L, 30L);
        long held = jobs.stream()
                .flatMap(job -> job.parts().stream())
                .filter(part -> part.grain() == Grain.LENGTH)
                .count();
        assertThat(held / 800.0).isBetween(0.35, 0.45);
    }

    @Test
    void limitsOfTheSawsAreLaidOverJobsAndToldInTheGroup() {
        Instance plain = Generated.of("T:1", 3).get(0);
        Instance limited = new SawTerms(3, "16", "40").over(plain);

        assertThat(limited.group()).isEqualTo(plain.group() + " stages 3 rip 16 crosscut 40");
        assertThat(limited.job().shop().limits().stages()).isEqualTo(3);
        assertThat(limited.job().shop().limits().ripCapacity()).isEqualTo(Length.inches("16"));
        assertThat(limited.job().shop().limits().crosscutCapacity()).isEqualTo(Length.inches("40"));
        assertThat(limited.known()).isEqualTo(plain.known().underNarrowerRules());
        assertThat(new SawTerms(null, null, null).over(plain)).isSameAs(plain);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "boards:6",
                "sheets:6",
                "foot:2",
                "scarce:6",
                "saws:6",
                "plywood:6",
                "mixed:6",
                "mixed-1:2",
                "U:2",
                "T:2",
                "CLASS9:2"
            })
    void sameSeedSameJobsAndEveryJobCanBePlanned(String words) {
        List<Instance> once = Generated.of(words, 11);

        assertThat(Generated.of(words, 11)).isEqualTo(once);
        assertThat(Generated.of(words, 12)).isNotEqualTo(once);
        assertThat(once).extracting(Instance::file).doesNotHaveDuplicates();
        once.forEach(instance -> assertThat(JobReview.review(instance.job())).isEmpty());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "U", "U:0", "U3:1", "CLASS:1", "CLASS0:1", "CLASS11:1", "T-61:1", "oak:3", "U:9999999999"})
    void otherWordsAreRefusedWithTheKindsThereAre(String words) {
        assertThatThrownBy(() -> Generated.of(words, 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("CLASS10")
                .hasMessageContaining("\"" + words + "\"");
    }
}
