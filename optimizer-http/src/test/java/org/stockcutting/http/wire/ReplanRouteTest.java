package org.stockcutting.http.wire;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.stockcutting.Optimizer;

/** A mishap told to the service: job, plan and worklog in, what is left out. */
@Timeout(60)
class ReplanRouteTest {

    private static final String JOB =
            "{\"material\": \"pine\", \"parts\": [{\"id\": \"leg\", \"quantity\": 3, \"length\": 20, "
                    + "\"nominal\": \"2x4\"}], \"stock\": [{\"id\": \"2x4-8\", \"nominal\": \"2x4\", \"length\": 96, "
                    + "\"price\": {\"amount\": \"3.98\", \"per\": \"piece\"}}]}";

    @Test
    void answersWithTheJobThatIsLeftAndItsPlan() throws Exception {
        try (Service service = Service.start(ServiceSettings.on("127.0.0.1", 0), new Optimizer()::plan)) {
            Client client = new Client(service.port());
            HttpResponse<byte[]> planned = client.postJson("/v1/plans", JOB);
            String hash = Client.json(planned).get("jobHash").asText();
            String body = "{\"job\": " + JOB + ", \"plan\": " + Client.text(planned) + ", \"worklog\": {\"plan\": \""
                    + hash + "\", \"done\": [1], \"spoiled\": [{\"part\": \"leg\", \"number\": 1}]}}";

            HttpResponse<byte[]> answer = client.postJson("/v1/replans", body);
            assertThat(answer.statusCode()).as(Client.text(answer)).isEqualTo(200);
            JsonNode replan = Client.json(answer);
            assertThat(replan.at("/plan/cost/amount").asText()).isEqualTo("0.00");
            assertThat(replan.at("/job/onHand/0/length").asText()).isEqualTo("75-7/8");
            assertThat(Client.text(answer)).contains("Nothing has to be bought.");

            HttpResponse<byte[]> wrong = client.postJson("/v1/replans", body.replace("\"done\": [1]", "\"done\": [9]"));
            assertThat(wrong.statusCode()).isEqualTo(422);
            assertThat(Client.text(wrong)).contains("/worklog/done/0").contains("/worklog/spoiled/0/number");
            assertThat(client.postJson("/v1/replans", "{\"job\": " + JOB + "}").statusCode())
                    .isEqualTo(422);
        }
    }
}
