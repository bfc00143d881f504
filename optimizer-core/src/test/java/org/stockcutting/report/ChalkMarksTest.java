package org.stockcutting.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;

class ChalkMarksTest {

    @Test
    void lettersFollowThePartsListAndLeaveOutWhatLooksLikeDigits() {
        ChalkMarks marks = new ChalkMarks(
                job(IntStream.range(0, 60).mapToObj(i -> "part " + i).toArray(String[]::new)));

        // Counted by hand: 24 letters without I and O, then pairs.
        assertThat(marks.of("part 0")).isEqualTo("A");
        assertThat(marks.of("part 8")).isEqualTo("J");
        assertThat(marks.of("part 23")).isEqualTo("Z");
        assertThat(marks.of("part 24")).isEqualTo("AA");
        assertThat(marks.of("part 48")).isEqualTo("BA");
        assertThat(marks.of("part 2", 3, 0)).isEqualTo("C3");
        assertThat(marks.of("part 2", 3, 2)).isEqualTo("C3/2");
        assertThat(IntStream.range(0, 60).mapToObj(i -> marks.of("part " + i))).doesNotHaveDuplicates();
        assertThatThrownBy(() -> marks.of("part 60")).hasMessageContaining("part 60");
    }

    @Test
    void aPartThatIsCalledLikeAMarkKeepsIt() {
        ChalkMarks marks = new ChalkMarks(job("leg", "A", "rail", "B"));

        assertThat(marks.of("A")).isEqualTo("A");
        assertThat(marks.of("B")).isEqualTo("B");
        assertThat(marks.of("leg")).isEqualTo("C");
        assertThat(marks.of("rail")).isEqualTo("D");
    }

    private static Job job(String... parts) {
        JobBuilder builder = JobBuilder.inches("marks").material("ash").board("2x4-8", "2x4", "8'", "3.98");
        for (String part : parts) {
            builder = builder.part(part, 1, "20", "2x4");
        }
        return builder.build();
    }
}
