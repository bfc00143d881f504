package org.stockcutting.http.wire;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.stockcutting.Optimizer;
import org.stockcutting.http.Planner;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.RiskWriter;
import org.stockcutting.job.Job;

/** {@code POST /v1/chances} with the real planner. */
@Timeout(120)
class ChancesRouteTest {

    private static final Planner PLANNER = Planner.of(new Optimizer());

    private static final String JOB = """
            {"name": "Rungs", "material": "pine", "wood": {"trials": 200%s},
             "parts": [{"id": "rung", "quantity": %s, "length": %s, "nominal": "2x4"}],
             "stock": [{"id": "2x4-8", "nominal": "2x4", "length": 96, "price": {"amount": "3.98", "per": "piece"}}],
             "effort": {"work": 200000%s}}
            """;

    private static String job(String trials, String quantity, String length, String effort) {
        return JOB.formatted(trials, quantity, length, effort);
    }

    @Test
    void answersWithTheLibrarysDocument() throws Exception {
        try (Service service = Service.start(ServiceSettings.on("127.0.0.1", 0), PLANNER)) {
            String body = job("", "8", "20", "");
            HttpResponse<byte[]> answer = new Client(service.port()).postJson("/v1/chances", body);
            assertThat(answer.statusCode()).as(Client.text(answer)).isEqualTo(200);
            assertThat(answer.headers().firstValue("Content-Type")).contains("application/json");

            Job job =
                    new JobReader().read(body.getBytes(StandardCharsets.UTF_8)).job();
            Optimizer optimizer = new Optimizer();
            var plan = optimizer.plan(job);
            assertThat(Client.text(answer)).isEqualTo(RiskWriter.write(job, plan, optimizer.sure(job, plan)));

            JsonNode json = Client.json(answer);
            assertThat(json.get("estimate").asBoolean()).isTrue();
            assertThat(json.at("/chance/trials").asInt()).isEqualTo(200);
            JsonNode rows = json.at("/groups/0/chances");
            for (int i = 1; i < rows.size(); i++) {
                assertThat(new BigDecimal(rows.get(i).get("share").asText()))
                        .isGreaterThanOrEqualTo(
                                new BigDecimal(rows.get(i - 1).get("share").asText()));
            }
        }
    }

    @Test
    void withoutKnotsThePlanIsEnough() throws Exception {
        String clear = ", \"models\": [{\"clearRun\": 99, \"zone\": 0, \"endCheck\": 0, \"unusableBoards\": \"0\"}]";
        try (Service service = Service.start(ServiceSettings.on("127.0.0.1", 0), PLANNER)) {
            JsonNode json = Client.json(new Client(service.port()).postJson("/v1/chances", job(clear, "8", "20", "")));
            assertThat(json.at("/groups/0/takeMore").asInt()).isZero();
            assertThat(json.at("/chance/share").asText()).isEqualTo("1.0000");
        }
    }

    @Test
    void refusesWhatCannotBeAnswered() throws Exception {
        try (Service service = Service.start(ServiceSettings.on("127.0.0.1", 0), PLANNER)) {
            Client client = new Client(service.port());
            // A rung of 120 in does not come from boards of 96 in.
            assertFault(client.postJson("/v1/chances", job("", "8", "120", "")), "/parts/0", "parts-left-out");
            assertFault(
                    client.postJson("/v1/chances", job("", "8", "20", ", \"seconds\": 11")),
                    "/effort/seconds",
                    "out-of-range");
            assertFault(client.postJson("/v1/chances", job("", "0", "20", "")), "/parts/0/quantity", "not-positive");
            assertThat(client.get("/v1/chances").statusCode()).isEqualTo(405);
            HttpResponse<byte[]> csv = client.post(
                    "/v1/chances",
                    job("", "8", "20", "").getBytes(StandardCharsets.UTF_8),
                    "Content-Type",
                    "application/json",
                    "Accept",
                    "text/csv");
            assertThat(csv.statusCode()).isEqualTo(406);
        }
    }

    /** A million purchases of forty boards take longer than a sender waits. */
    @Test
    void givesUpInTime() throws Exception {
        try (Service service = Service.start(ServiceSettings.on("127.0.0.1", 0), PLANNER)) {
            String many = job("", "160", "20", "").replace("\"trials\": 200", "\"trials\": 1000000");
            assertFault(new Client(service.port()).postJson("/v1/chances", many), "/wood/trials", "out-of-range");
        }
    }

    private static void assertFault(HttpResponse<byte[]> response, String pointer, String code) throws Exception {
        assertThat(response.statusCode()).as(Client.text(response)).isEqualTo(422);
        JsonNode fault = Client.json(response).at("/errors/0");
        assertThat(fault.get("pointer").asText()).isEqualTo(pointer);
        assertThat(fault.get("code").asText()).isEqualTo(code);
    }
}
