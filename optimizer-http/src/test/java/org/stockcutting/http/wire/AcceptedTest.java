package org.stockcutting.http.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

/** After RFC 9110, section 12.5.1. */
class AcceptedTest {

    private static final List<String> BOTH = List.of("application/json", "text/csv");

    @Test
    void withoutAWishTheFirstIsSent() {
        assertThat(Accepted.choose(null, BOTH)).isEqualTo("application/json");
        assertThat(Accepted.choose("*/*", BOTH)).isEqualTo("application/json");
    }

    @Test
    void theMostPreciseRangeCounts() {
        assertThat(Accepted.choose("text/*;q=0.3, text/csv;q=0.9, application/json;q=0.5", BOTH))
                .isEqualTo("text/csv");
        assertThat(Accepted.choose("*/*;q=1, application/json;q=0.1", BOTH)).isEqualTo("text/csv");
        assertThat(Accepted.choose("TEXT/CSV", BOTH)).isEqualTo("text/csv");
    }

    @Test
    void weightZeroMeansNo() {
        assertThatThrownBy(() -> Accepted.choose("application/json;q=0, text/csv;q=0.000", BOTH))
                .isInstanceOf(ProblemException.class);
        assertThatThrownBy(() -> Accepted.choose("image/png", BOTH)).isInstanceOf(ProblemException.class);
    }
}
