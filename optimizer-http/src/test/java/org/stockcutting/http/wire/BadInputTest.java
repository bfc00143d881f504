package org.stockcutting.http.wire;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.stockcutting.http.HandMade;

/** Whatever a client sends, it gets a 4xx problem of RFC 9457: never a 5xx, an HTML page, or silence. */
class BadInputTest {

    private static final String PART = "{\"length\": \"30\", \"width\": \"3\", \"thickness\": \"1\", \"quantity\": %s}";
    private static final String STOCK =
            "\"stock\": [{\"length\": \"96\", \"width\": \"3\", \"thickness\": \"1\", \"price\": {\"amount\": \"4\", \"per\": \"piece\"}}]";

    private static Service service;
    private static Client client;

    @BeforeAll
    static void start() {
        service = Service.start(
                ServiceSettings.on("127.0.0.1", 0), (job, effort, listener, cancel) -> HandMade.plan(job));
        client = new Client(service.port());
    }

    @AfterAll
    static void stop() {
        service.close();
    }

    /** The kinds of bad bodies that the web framework by itself answers with 500, and those it takes without a word. */
    static Stream<Arguments> badBodies() {
        return Stream.of(
                Arguments.of("empty", "", 400),
                Arguments.of("null", "null", 422),
                Arguments.of("truncated", HandMade.JOB.substring(0, 100), 400),
                Arguments.of("unknown field", "{\"colour\": 1, " + parts("1") + "}", 422),
                Arguments.of("word for a whole number", "{" + parts("\"many\"") + "}", 422),
                Arguments.of("truth value for a whole number", "{" + parts("true") + "}", 422),
                Arguments.of("NaN", "{" + parts("NaN") + "}", 400),
                Arguments.of("too large for a whole number", "{" + parts("99999999999999999999") + "}", 422),
                Arguments.of("array for an object", "[" + HandMade.JOB + "]", 422),
                Arguments.of("depth 100000", "[".repeat(100_000), 400),
                Arguments.of("1e1000000000", "{" + parts("1e1000000000") + "}", 422),
                Arguments.of("huge exponent", "{" + parts("1e99999999999") + "}", 400),
                Arguments.of("2000 digits", "{" + parts("9".repeat(2_000)) + "}", 422),
                Arguments.of("trailing text", HandMade.JOB + "x", 400),
                Arguments.of("two documents", HandMade.JOB + HandMade.JOB, 400),
                Arguments.of("name twice", "{" + parts("1") + ", \"name\": \"a\", \"name\": \"b\"}", 400),
                Arguments.of("text for a whole number", "{" + parts("\"12\"") + "}", 422),
                Arguments.of("fraction for a whole number", "{" + parts("3.9") + "}", 422),
                Arguments.of("empty text for a whole number", "{" + parts("\"\"") + "}", 422),
                Arguments.of(
                        "name of 5000 characters",
                        "{" + parts("1") + ", \"name\": \"" + "n".repeat(5_000) + "\"}",
                        422),
                Arguments.of("key of 100 characters", "{\"" + "k".repeat(100) + "\": 1}", 422),
                Arguments.of("half a surrogate pair", "{" + parts("1") + ", \"name\": \"\\ud800\"}", 422),
                Arguments.of("control character", "{" + parts("1") + ", \"name\": \"\\u001b[2J\"}", 422),
                Arguments.of("no parts", "{\"parts\": [], " + STOCK + "}", 422),
                Arguments.of("length nobody can cut", "{" + parts("1").replace("\"30\"", "\"1/3\"") + "}", 422),
                Arguments.of(
                        "too long while the sender waits", "{" + parts("1") + ", \"effort\": {\"seconds\": 11}}", 422));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("badBodies")
    void isAClientErrorWithAProblem(String name, String body, int status) throws Exception {
        for (String path : new String[] {"/v1/plans", "/v1/buying-lists"}) {
            HttpResponse<byte[]> response = client.postJson(path, body);
            JsonNode problem = assertProblem(response, status);
            assertThat(problem.get("errors")).as(Client.text(response)).isNotEmpty();
            for (JsonNode error : problem.get("errors")) {
                // RFC 6901: empty, or tokens that each begin with a slash.
                assertThat(error.get("pointer").asText()).matches("(/[^/]*)*");
                assertThat(error.get("text").asText()).isNotBlank();
            }
        }
    }

    @Test
    void bytesThatAreNoUtf8AreRefused() throws Exception {
        byte[] latin = "{\"name\": \"M\u00f6bel\"}".getBytes(StandardCharsets.ISO_8859_1);

        assertProblem(client.post("/v1/plans", latin, "Content-Type", "application/json"), 400);
        assertProblem(
                client.post(
                        "/v1/plans",
                        HandMade.JOB.getBytes(Charset.forName("UTF-16")),
                        "Content-Type",
                        "application/json"),
                400);
    }

    @Test
    void contentMustBePlainJson() throws Exception {
        byte[] job = HandMade.JOB.getBytes(StandardCharsets.UTF_8);

        for (String type : new String[] {
            "text/xml", "text/plain", "application/json; charset=utf-16", "application/json; charset=bogus", "json"
        }) {
            assertProblem(client.post("/v1/plans", job, "Content-Type", type), 415);
        }
        assertProblem(client.post("/v1/plans", job), 415);
        assertProblem(
                client.post("/v1/plans", job, "Content-Type", "application/json", "Content-Encoding", "gzip"), 415);
        assertThat(client.post("/v1/plans", job, "Content-Type", "Application/JSON; Charset=\"UTF-8\"")
                        .statusCode())
                .isEqualTo(200);
    }

    @Test
    void tooMuchIsRefused() throws Exception {
        byte[] large = " ".repeat((1 << 20) + 1).getBytes(StandardCharsets.US_ASCII);

        for (String address : List.of(
                "/v1/plans",
                "/v1/buying-lists",
                "/v1/comparisons",
                "/v1/chances",
                "/v1/enough",
                "/v1/grades",
                "/v1/reviews")) {
            assertProblem(client.post(address, large, "Content-Type", "application/json"), 413);
        }
        // A check may be larger: the same body is read there, and found to be no document.
        assertProblem(client.post("/v1/checks", large, "Content-Type", "application/json"), 400);
    }

    @Test
    void theAnswersTypeMustBeWanted() throws Exception {
        byte[] job = HandMade.JOB.getBytes(StandardCharsets.UTF_8);

        for (String accept : new String[] {"text/plain", "application/xml", "application/json;q=0", "audio/*"}) {
            assertProblem(client.post("/v1/plans", job, "Content-Type", "application/json", "Accept", accept), 406);
        }
    }

    @Test
    void wrongAddressesAndMethodsAreProblemsToo() throws Exception {
        assertProblem(client.get("/"), 404);
        assertProblem(client.get("/v1/plans/7"), 404);
        assertProblem(client.get("/problems/none"), 404);
        HttpResponse<byte[]> get = client.get("/v1/plans");
        assertProblem(get, 405);
        assertThat(get.headers().firstValue("Allow")).contains("POST");
        HttpResponse<byte[]> delete = client.method("DELETE", "/v1/examples");
        assertProblem(delete, 405);
        assertThat(delete.headers().firstValue("Allow")).contains("GET, HEAD");
        assertProblem(client.method("PUT", "/problems/busy"), 405);
        assertProblem(client.method("OPTIONS", "/v1/reviews"), 405);
    }

    /** What never becomes a request is still answered in the same shape. */
    @Test
    void garbageOnTheWireIsAProblem() throws Exception {
        for (String request : new String[] {
            "GARBAGE\r\n\r\n",
            "GET / HTTP/9.9\r\nHost: x\r\n\r\n",
            "GET /\u0001 HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n",
            "GET / HTTP/1.1\r\nConnection: close\r\n\r\n",
            "GET / HTTP/1.1\r\nHost: x\r\nConnection: close\r\nBad Header\r\n\r\n",
            "POST /v1/plans HTTP/1.1\r\nHost: x\r\nContent-Length: minus\r\n\r\n",
            "GET /%zz HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n",
            "GET /a/%2e%2e/b HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n",
            "GET /" + "a".repeat(20_000) + " HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n",
            "GET / HTTP/1.1\r\nHost: x\r\nBig: " + "a".repeat(20_000) + "\r\nConnection: close\r\n\r\n",
            "FOO /v1/plans HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n",
            "TRACE /v1/plans HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n",
            "POST /v1/plans HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\nZZ\r\n"
        }) {
            String answer = client.raw(request);
            String shown = request.substring(0, Math.min(60, request.length())).replaceAll("\\s+", " ");
            assertThat(answer).as(shown).matches("(?s)HTTP/1\\.[01] (4[0-9][0-9]|505) .*");
            assertThat(answer).as(shown).containsIgnoringCase("Content-Type: application/problem+json");
            assertThat(answer).as(shown).contains("\"type\":\"/problems/").doesNotContainIgnoringCase("<html");
        }
    }

    static JsonNode assertProblem(HttpResponse<byte[]> response, int status) throws Exception {
        assertThat(response.statusCode()).as(Client.text(response)).isEqualTo(status);
        assertThat(response.headers().firstValue("Content-Type")).contains("application/problem+json");
        assertThat(response.headers().firstValue("X-Content-Type-Options")).contains("nosniff");
        JsonNode problem = Client.json(response);
        assertThat(problem.get("status").asInt()).isEqualTo(status);
        assertThat(problem.get("type").asText())
                .isEqualTo("/problems/" + problem.get("code").asText());
        assertThat(client.get(problem.get("type").asText()).statusCode()).isEqualTo(200);
        return problem;
    }

    private static String parts(String quantity) {
        return "\"parts\": [" + PART.replace("%s", quantity) + "], " + STOCK;
    }
}
