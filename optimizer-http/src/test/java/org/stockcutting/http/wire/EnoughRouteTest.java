package org.stockcutting.http.wire;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.stockcutting.Optimizer;
import org.stockcutting.http.Planner;

/** {@code POST /v1/enough} with the real planner. */
@Timeout(60)
class EnoughRouteTest {

    private static final String JOB = """
            {"material": "ash", "goal": "boards",
             "parts": [{"id": "rail", "length": "40", "width": "5", "thickness": "1"}],
             "onHand": [{"id": "short", "length": "39", "width": "5", "thickness": "1"},
                        {"id": "long", "length": "60", "width": "5", "thickness": "1"}]}
            """;

    @Test
    void everyBoardIsTold() throws Exception {
        try (Service service = Service.start(ServiceSettings.on("127.0.0.1", 0), Planner.of(new Optimizer()))) {
            Client client = new Client(service.port());
            HttpResponse<byte[]> answer = client.postJson("/v1/enough", JOB);
            assertThat(answer.statusCode()).as(Client.text(answer)).isEqualTo(200);
            JsonNode json = Client.json(answer);
            assertThat(json.at("/enough").asBoolean()).isTrue();
            assertThat(json.at("/firstEnough").asText()).isEqualTo("long");
            assertThat(json.at("/steps/0/unplaced/0/reason").asText()).isEqualTo("longer-than-any-stock");

            StringBuilder rack = new StringBuilder();
            for (int i = 0; i <= ServiceSettings.SYNC_BOARDS; i++) {
                rack.append("{\"id\": \"m")
                        .append(i)
                        .append("\", \"length\": \"39\", \"width\": \"5\", \"thickness\": \"1\"},");
            }
            HttpResponse<byte[]> many =
                    client.postJson("/v1/enough", JOB.replace("\"onHand\": [", "\"onHand\": [" + rack));
            assertThat(many.statusCode()).isEqualTo(422);
            assertThat(Client.json(many).at("/errors/0/pointer").asText()).isEqualTo("/onHand");
            HttpResponse<byte[]> none = client.postJson(
                    "/v1/enough",
                    JOB.replaceAll(
                            "(?s)\"onHand\".*",
                            "\"stock\": [{\"length\": \"60\"," + " \"width\": \"5\", \"thickness\": \"1\"}]}"));
            assertThat(none.statusCode()).isEqualTo(422);
            assertThat(Client.text(none)).contains("Nothing is on hand yet");
            assertThat(client.get("/v1/enough").statusCode()).isEqualTo(405);
        }
    }
}
