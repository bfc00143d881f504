package org.stockcutting.http.wire;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.Optimizer;
import org.stockcutting.http.Planner;

/** Prints over HTTP have an end. */
class PrintedPagesTest {

    /** A board for each of 501 parts is a page for each: as a table it is an answer, as a print a problem that says so. */
    @Test
    void tooManyPagesAreRefused() throws Exception {
        StringBuilder parts = new StringBuilder();
        for (int i = 0; i <= ServiceSettings.PRINTED_LAYOUTS; i++) {
            parts.append(i == 0 ? "" : ", ")
                    .append("{\"length\": ")
                    .append(50 + i / 64.0)
                    .append(", \"width\": \"3\", \"thickness\": \"1\"}");
        }
        byte[] job = ("{\"parts\": [" + parts
                        + "], \"stock\": [{\"id\": \"b\", \"length\": \"80\", \"width\": \"3\", \"thickness\": \"1\", \"price\": {\"amount\": \"1\"}}],"
                        + " \"effort\": {\"work\": 1000}}")
                .getBytes(StandardCharsets.UTF_8);
        try (Service service = Service.start(ServiceSettings.on("127.0.0.1", 0), Planner.of(new Optimizer()))) {
            Client client = new Client(service.port());
            for (String accept : List.of("application/pdf", "image/svg+xml")) {
                var refused = client.post("/v1/plans", job, "Content-Type", "application/json", "Accept", accept);
                assertThat(refused.statusCode()).isEqualTo(422);
                assertThat(refused.headers().firstValue("Content-Type")).hasValue("application/problem+json");
                assertThat(new String(refused.body(), StandardCharsets.UTF_8))
                        .contains("/problems/too-many-pages")
                        .contains("501 different layouts")
                        .contains("at most 500");
            }
            var table = client.post("/v1/plans", job, "Content-Type", "application/json", "Accept", "text/csv");
            assertThat(table.statusCode()).isEqualTo(200);
        }
    }
}
