package org.stockcutting.http.wire;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.stockcutting.Optimizer;
import org.stockcutting.http.HandMade;
import org.stockcutting.http.Planner;

/** {@code POST /v1/comparisons} with the real planner. */
@Timeout(120)
class ComparisonRouteTest {

    private static final Planner PLANNER = Planner.of(new Optimizer());

    private static HttpResponse<byte[]> post(Client client, String body, String accept) throws Exception {
        return client.post(
                "/v1/comparisons",
                body.getBytes(StandardCharsets.UTF_8),
                "Content-Type",
                "application/json",
                "Accept",
                accept);
    }

    @Test
    void comparesInEveryFormThatItOffers() throws Exception {
        try (Service service = Service.start(ServiceSettings.on("127.0.0.1", 0), PLANNER)) {
            Client client = new Client(service.port());

            HttpResponse<byte[]> document = client.postJson("/v1/comparisons", HandMade.JOB);
            assertThat(document.statusCode()).isEqualTo(200);
            JsonNode json = Client.json(document);
            assertThat(json.at("/components/0/choices/0/status").asText()).isEqualTo("optimal");
            // Three boards of $4.00: 60 and 30 on two of them, 30 on the third.
            assertThat(json.at("/choices/0/cost/amount").asText()).isEqualTo("12.00");
            assertThat(json.at("/choices/0/boards").asInt()).isEqualTo(3);
            assertThat(json.at("/best/cost").asInt()).isZero();

            HttpResponse<byte[]> csv = post(client, HandMade.JOB, "text/csv");
            assertThat(csv.headers().firstValue("Content-Type").orElse("")).startsWith("text/csv");
            assertThat(Client.text(csv)).contains("'@plank,optimal,12.00,USD");
            HttpResponse<byte[]> svg = post(client, HandMade.JOB, "image/svg+xml");
            assertThat(svg.headers().firstValue("Content-Type").orElse("")).startsWith("image/svg+xml");
            assertThat(svg.headers().firstValue("Content-Disposition").orElse(""))
                    .startsWith("attachment");
            assertThat(Client.text(svg)).contains("<svg").doesNotContain("<script");
            HttpResponse<byte[]> html = post(client, HandMade.JOB, "text/html");
            assertThat(html.headers().firstValue("Content-Disposition").orElse(""))
                    .startsWith("attachment");
            assertThat(Client.text(html)).contains("<table>").doesNotContain("<script");
            assertThat(post(client, HandMade.JOB, "application/pdf").statusCode())
                    .isEqualTo(406);
        }
    }

    @Test
    void refusesUnknownSubsetsAndLongWaits() throws Exception {
        try (Service service = Service.start(ServiceSettings.on("127.0.0.1", 0), PLANNER)) {
            Client client = new Client(service.port());
            String unknown =
                    HandMade.JOB.replace("\"goal\": \"cost\"", "\"goal\": \"cost\", \"compare\": [[\"board\"]]");
            assertFault(client.postJson("/v1/comparisons", unknown), 422, "/compare/0/0", "unknown-stock");
            String slow =
                    HandMade.JOB.replace("\"goal\": \"cost\"", "\"goal\": \"cost\", \"effort\": {\"seconds\": 11}");
            assertFault(client.postJson("/v1/comparisons", slow), 422, "/effort/seconds", "out-of-range");
            HttpResponse<byte[]> get = client.get("/v1/comparisons");
            assertThat(get.statusCode()).isEqualTo(405);
            assertThat(get.headers().firstValue("Allow")).contains("POST");
        }
    }

    private static void assertFault(HttpResponse<byte[]> response, int status, String pointer, String code)
            throws Exception {
        assertThat(response.statusCode()).as(Client.text(response)).isEqualTo(status);
        JsonNode fault = Client.json(response).at("/errors/0");
        assertThat(fault.get("pointer").asText()).isEqualTo(pointer);
        assertThat(fault.get("code").asText()).isEqualTo(code);
    }
}
