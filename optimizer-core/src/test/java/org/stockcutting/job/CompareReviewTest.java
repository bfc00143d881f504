package org.stockcutting.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.groups.Tuple.tuple;

import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Subsets of stock that a job names for its comparison. */
class CompareReviewTest {

    private static Job job(List<List<String>> compare) {
        Job job = JobBuilder.inches("Shelf")
                .part("board", 3, "30", "2x6")
                .board("a", "2x6", "8'", "9.00")
                .board("b", "2x6", "10'", "11.00")
                .build();
        return job.withCompare(compare);
    }

    @Test
    void knownIdsAreFine() {
        assertThat(JobReview.review(job(List.of(List.of("a"), List.of("b", "a")))))
                .isEmpty();
    }

    @Test
    void unknownTwiceNamedAndEmptyOnesAreFaults() {
        assertThat(JobReview.review(job(List.of(List.of("c"), List.of("a", "a"), List.of()))))
                .extracting(Fault::pointer, Fault::code)
                .containsExactlyInAnyOrder(
                        tuple("/compare/0/0", "unknown-stock"),
                        tuple("/compare/1/1", "duplicate-id"),
                        tuple("/compare/2", "no-stock"));
    }

    @Test
    void thereIsAnEnd() {
        assertThat(JobReview.review(job(Collections.nCopies(101, List.of("a")))))
                .extracting(Fault::pointer, Fault::code)
                .containsExactly(tuple("/compare", "too-many"));
    }

    @Test
    void theOrderOfTheRequestDoesNotMatter() {
        assertThat(JobOrder.of(job(List.of(List.of("b", "a"), List.of("a"))))
                        .sorted()
                        .compare())
                .containsExactly(List.of("a"), List.of("a", "b"));
    }
}
