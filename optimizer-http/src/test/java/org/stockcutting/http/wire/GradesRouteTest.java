package org.stockcutting.http.wire;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.stockcutting.Optimizer;
import org.stockcutting.http.Planner;

/** {@code POST /v1/grades} with the real planner. */
@Timeout(120)
class GradesRouteTest {

    private static final String JOB = """
            {"name": "Poles and cleats", "material": "oak",
             "parts": [{"id": "pole", "quantity": 4, "length": 100, "width": 4, "thickness": 1},
                       {"id": "cleat", "quantity": 120, "length": 12, "width": 4, "thickness": 1, "class": "any"}],
             "stock": [{"id": "good", "grade": "fas", "length": 144, "width": 4, "thickness": 1, "price": {"amount": "20"}},
                       {"id": "knotty", "grade": "3a-common", "length": 144, "width": 4, "thickness": 1, "price": {"amount": "5"}}],
             "wood": {"trials": 60}, "effort": {"work": 640000}}
            """;

    @Test
    void gradesStandSideBySide() throws Exception {
        try (Service service = Service.start(ServiceSettings.on("127.0.0.1", 0), Planner.of(new Optimizer()))) {
            Client client = new Client(service.port());
            HttpResponse<byte[]> answer = client.postJson("/v1/grades", JOB);
            assertThat(answer.statusCode()).as(Client.text(answer)).isEqualTo(200);
            assertThat(answer.headers().firstValue("Content-Type")).contains("application/json");
            JsonNode json = Client.json(answer);
            assertThat(json.get("estimate").asBoolean()).isTrue();
            assertThat(json.at("/families/0/mixes")).hasSize(3);
            assertThat(json.at("/families/0/best").asInt()).isEqualTo(2);
            assertThat(json.get("together")).isEqualTo(json.at("/families/0/mixes/2"));
            assertThat(json.at("/together/grades/1/grade").asText()).isEqualTo("fas");
            assertThat(client.postJson("/v1/grades", JOB).body()).isEqualTo(answer.body());
        }
    }

    @Test
    void whatCannotBeAnsweredIsAProblem() throws Exception {
        try (Service service = Service.start(ServiceSettings.on("127.0.0.1", 0), Planner.of(new Optimizer()))) {
            Client client = new Client(service.port());
            HttpResponse<byte[]> one = client.postJson("/v1/grades", JOB.replace("3a-common", "fas"));
            assertFault(one, "/stock", "no-stock");
            assertThat(Client.text(one)).contains("No part could come from two grades");
            HttpResponse<byte[]> unknown =
                    client.postJson("/v1/grades", JOB.replace("\"class\": \"any\"", "\"grades\": [\"fas\", \"faas\"]"));
            assertFault(unknown, "/parts/1/grades", "unknown-grade");
            assertFault(
                    client.postJson("/v1/grades", JOB.replace("\"work\": 640000", "\"seconds\": 11")),
                    "/effort/seconds",
                    "out-of-range");
            assertThat(client.postJson("/v1/grades", "{").statusCode()).isEqualTo(400);
            HttpResponse<byte[]> get = client.get("/v1/grades");
            assertThat(get.statusCode()).isEqualTo(405);
            assertThat(get.headers().firstValue("Allow")).contains("POST");
            HttpResponse<byte[]> csv = client.post(
                    "/v1/grades",
                    JOB.getBytes(StandardCharsets.UTF_8),
                    "Content-Type",
                    "application/json",
                    "Accept",
                    "text/csv");
            assertThat(csv.statusCode()).isEqualTo(406);
        }
    }

    /** A million purchases take longer than a sender waits. */
    @Test
    void givesUpInTime() throws Exception {
        try (Service service = Service.start(ServiceSettings.on("127.0.0.1", 0), Planner.of(new Optimizer()))) {
            HttpResponse<byte[]> late = new Client(service.port())
                    .postJson("/v1/grades", JOB.replace("\"trials\": 60", "\"trials\": 1000000"));
            assertFault(late, "/wood/trials", "out-of-range");
        }
    }

    private static void assertFault(HttpResponse<byte[]> response, String pointer, String code) throws Exception {
        assertThat(response.statusCode()).as(Client.text(response)).isEqualTo(422);
        JsonNode fault = Client.json(response).at("/errors/0");
        assertThat(fault.get("pointer").asText()).isEqualTo(pointer);
        assertThat(fault.get("code").asText()).isEqualTo(code);
    }
}
