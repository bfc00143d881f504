package org.stockcutting.http.wire;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.Socket;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.stockcutting.http.HandMade;
import org.stockcutting.http.Planner;

@Timeout(60)
class ServiceTest {

    private static final Planner HAND = (job, effort, listener, cancel) -> HandMade.plan(job);

    @Test
    void answersPlansBuyingListsAndReviews() throws Exception {
        try (Service service = Service.start(ServiceSettings.on("127.0.0.1", 0), HAND)) {
            Client client = new Client(service.port());

            HttpResponse<byte[]> plan = client.postJson("/v1/plans", HandMade.JOB);
            assertThat(plan.statusCode()).isEqualTo(200);
            assertThat(plan.headers().firstValue("Content-Type")).contains("application/json");
            assertThat(plan.headers().firstValue("Server-Timing").orElse("")).matches("total;dur=[0-9]+");
            assertThat(plan.headers().firstValue("Server")).isEmpty();
            assertThat(Client.json(plan).get("status").asText()).isEqualTo("partial");

            HttpResponse<byte[]> list = client.postJson("/v1/buying-lists", HandMade.JOB);
            assertThat(list.statusCode()).isEqualTo(200);
            assertThat(Client.text(list)).contains("@plank");

            JsonNode good = Client.json(client.postJson("/v1/reviews", HandMade.JOB));
            assertThat(good.get("valid").asBoolean()).isTrue();
            HttpResponse<byte[]> bad = client.postJson("/v1/reviews", HandMade.JOB.replace("\"60\"", "\"sixty\""));
            assertThat(bad.statusCode()).isEqualTo(200);
            assertThat(Client.json(bad).get("valid").asBoolean()).isFalse();
            assertThat(Client.json(bad).at("/faults/0/pointer").asText()).isEqualTo("/parts/0/length");
            assertThat(client.postJson("/v1/reviews", "{").statusCode()).isEqualTo(400);
        }
    }

    @Test
    void aTableOfWhatToBuyIsHarmlessInASpreadsheet() throws Exception {
        try (Service service = Service.start(ServiceSettings.on("127.0.0.1", 0), HAND)) {
            HttpResponse<byte[]> csv = new Client(service.port())
                    .post(
                            "/v1/buying-lists",
                            HandMade.JOB.getBytes(StandardCharsets.UTF_8),
                            "Content-Type",
                            "application/json",
                            "Accept",
                            "application/json;q=0.5, text/csv");

            assertThat(csv.statusCode()).isEqualTo(200);
            assertThat(csv.headers().firstValue("Content-Type").orElse("")).startsWith("text/csv");
            assertThat(csv.headers().firstValue("Vary")).contains("Accept");
            // OWASP, CSV injection: a cell that begins with @ or = is led by an apostrophe.
            assertThat(Client.text(csv)).contains("'@plank").doesNotContainPattern("(?m)(^|,)\"?@plank");
        }
    }

    @Test
    void plansComeAsPagesPicturesAndTables() throws Exception {
        try (Service service = Service.start(ServiceSettings.on("127.0.0.1", 0), HAND)) {
            Client client = new Client(service.port());
            HttpResponse<byte[]> pdf = accepting(client, "/v1/plans", "application/pdf");
            assertThat(pdf.headers().firstValue("Content-Type")).contains("application/pdf");
            assertThat(pdf.headers().firstValue("Content-Disposition")).contains("attachment; filename=\"plan.pdf\"");
            assertThat(new String(pdf.body(), 0, 5, StandardCharsets.US_ASCII)).isEqualTo("%PDF-");
            HttpResponse<byte[]> list = accepting(client, "/v1/buying-lists", "application/pdf");
            assertThat(new String(list.body(), 0, 5, StandardCharsets.US_ASCII)).isEqualTo("%PDF-");
            assertThat(list.body().length).isLessThan(pdf.body().length);

            HttpResponse<byte[]> svg = accepting(client, "/v1/plans", "image/svg+xml");
            assertThat(svg.headers().firstValue("Content-Type")).contains("image/svg+xml");
            assertThat(Client.text(svg))
                    .contains("<svg")
                    .contains("@plank #1 to #2")
                    .doesNotContain("<script");

            HttpResponse<byte[]> csv = accepting(client, "/v1/plans", "text/csv");
            assertThat(csv.headers().firstValue("Content-Type").orElse("")).startsWith("text/csv");
            assertThat(Client.text(csv))
                    .startsWith("part,number,mark,board,x,y,")
                    .contains("\r\n'=1+1,1,B1,'@plank #1,60-5/8,0,30,3-1/2,1-1/2,no\r\n");
            assertThat(accepting(client, "/v1/plans", "image/png").statusCode()).isEqualTo(406);
        }
    }

    private static HttpResponse<byte[]> accepting(Client client, String path, String type) throws Exception {
        byte[] job = HandMade.JOB.getBytes(StandardCharsets.UTF_8);
        return client.post(path, job, "Content-Type", "application/json", "Accept", type);
    }

    @Test
    void aPlanOfItsOwnPassesTheCheck() throws Exception {
        try (Service service = Service.start(ServiceSettings.on("127.0.0.1", 0), HAND)) {
            Client client = new Client(service.port());
            String plan = Client.text(client.postJson("/v1/plans", HandMade.JOB));

            HttpResponse<byte[]> check =
                    client.postJson("/v1/checks", "{\"job\": " + HandMade.JOB + ", \"plan\": " + plan + "}");
            assertThat(check.statusCode()).as(Client.text(check)).isEqualTo(200);

            HttpResponse<byte[]> noPlan = client.postJson("/v1/checks", "{\"job\": " + HandMade.JOB + "}");
            BadInput.assertFault(noPlan, 422, "/plan", "missing");
            HttpResponse<byte[]> badJob = client.postJson(
                    "/v1/checks",
                    "{\"job\": " + HandMade.JOB.replace("\"60\"", "\"sixty\"") + ", \"plan\": " + plan + "}");
            BadInput.assertFault(badJob, 422, "/job/parts/0/length", "not-a-length");
            HttpResponse<byte[]> more = client.postJson("/v1/checks", "{\"job\": {}, \"plan\": {}, \"more\": 1}");
            BadInput.assertFault(more, 422, "/more", "unknown-field");
            assertThat(client.postJson("/v1/checks", "{\"job\": {}, \"job\": {}, \"plan\": {}}")
                            .statusCode())
                    .isEqualTo(400);
            assertThat(client.postJson("/v1/checks", "[]").statusCode()).isEqualTo(400);
        }
    }

    @Test
    void everyExampleIsAJobThatCanBePosted() throws Exception {
        try (Service service = Service.start(ServiceSettings.on("127.0.0.1", 0), HAND)) {
            Client client = new Client(service.port());
            JsonNode examples = Client.json(client.get("/v1/examples")).get("examples");

            assertThat(examples).hasSize(Examples.NAMES.size());
            for (JsonNode example : examples) {
                HttpResponse<byte[]> review =
                        client.postJson("/v1/reviews", example.get("job").toString());
                assertThat(Client.json(review).get("valid").asBoolean())
                        .as(Client.text(review))
                        .isTrue();
            }
            assertThat(Client.json(client.get("/livez")).get("live").asBoolean())
                    .isTrue();
        }
    }

    @Test
    void everyKindOfProblemIsExplained() throws Exception {
        try (Service service = Service.start(ServiceSettings.on("127.0.0.1", 0), HAND)) {
            Client client = new Client(service.port());
            for (ProblemKind kind : ProblemKind.values()) {
                JsonNode text = Client.json(client.get("/problems/" + kind.code()));
                assertThat(text.get("status").asInt()).isEqualTo(kind.status());
                assertThat(text.get("text").asText()).isNotBlank();
            }
        }
    }

    @Test
    void whoWaitsTooLongIsAskedToComeBack() throws Exception {
        CountDownLatch started = new CountDownLatch(1);
        CountDownLatch release = new CountDownLatch(1);
        Planner slow = (job, effort, listener, cancel) -> {
            started.countDown();
            await(release);
            return HandMade.plan(job);
        };
        ServiceSettings one = new ServiceSettings("127.0.0.1", 0, 1, 50, 15_000, 30_000, 512);
        try (Service service = Service.start(one, slow)) {
            Client client = new Client(service.port());
            CompletableFuture<Integer> first = CompletableFuture.supplyAsync(() -> status(client));
            assertThat(started.await(20, TimeUnit.SECONDS)).isTrue();

            HttpResponse<byte[]> second = client.postJson("/v1/plans", HandMade.JOB);
            assertThat(second.statusCode()).isEqualTo(503);
            assertThat(second.headers().firstValue("Retry-After").orElse("")).matches("[1-9][0-9]*");
            assertThat(Client.json(second).get("code").asText()).isEqualTo("busy");
            assertThat(client.get("/livez").statusCode()).isEqualTo(200);

            release.countDown();
            assertThat(first.get(20, TimeUnit.SECONDS)).isEqualTo(200);
        } finally {
            release.countDown();
        }
    }

    @Test
    void aFaultOfTheServiceSaysNothingOfItsInside() throws Exception {
        Planner broken = (job, effort, listener, cancel) -> {
            throw new IllegalStateException("secret place");
        };
        try (Service service = Service.start(ServiceSettings.on("127.0.0.1", 0), broken)) {
            HttpResponse<byte[]> response = new Client(service.port()).postJson("/v1/plans", HandMade.JOB);

            assertThat(response.statusCode()).isEqualTo(500);
            assertThat(response.headers().firstValue("Content-Type")).contains("application/problem+json");
            assertThat(Client.text(response)).doesNotContain("secret").doesNotContain("Exception");
        }
    }

    @Test
    void asksThePlannerForNoMoreThanASenderMayWait() throws Exception {
        Planner asserting = (job, effort, listener, cancel) -> {
            if (effort.seconds() == null || effort.seconds() > 10 || effort.work() == null) {
                throw new IllegalStateException("asked for " + effort);
            }
            return HandMade.plan(job);
        };
        try (Service service = Service.start(ServiceSettings.on("127.0.0.1", 0), asserting)) {
            assertThat(new Client(service.port())
                            .postJson("/v1/plans", HandMade.JOB)
                            .statusCode())
                    .isEqualTo(200);
        }
    }

    /** Bodies that stall or drip hold their connection for a bounded time, and never a thread. */
    @Test
    void slowBodiesAreGivenUp() throws Exception {
        ServiceSettings hasty = new ServiceSettings("127.0.0.1", 0, 1, 50, 600, 1_500, 512);
        try (Service service = Service.start(hasty, HAND)) {
            String head = "POST /v1/plans HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\n"
                    + "Content-Length: 1000\r\n\r\n{";
            String stalled = new Client(service.port()).raw(head);
            assertThat(stalled).matches("(?s)(HTTP/1\\.1 4[0-9][0-9] .*application/problem\\+json.*)?");

            long start = System.nanoTime();
            try (Socket socket = new Socket("127.0.0.1", service.port())) {
                socket.setSoTimeout(10_000);
                OutputStream out = socket.getOutputStream();
                out.write(head.getBytes(StandardCharsets.US_ASCII));
                assertThat(drips(out)).isLessThan(60);
                InputStream in = socket.getInputStream();
                assertThat(closed(in)).isTrue();
            }
            assertThat(TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - start)).isBetween(1_000L, 8_000L);
            assertThat(new Client(service.port()).get("/livez").statusCode()).isEqualTo(200);
        }
    }

    /** One byte every 100 ms until the other side hangs up. */
    private static int drips(OutputStream out) throws InterruptedException {
        for (int i = 0; i < 60; i++) {
            try {
                out.write(' ');
                out.flush();
            } catch (java.io.IOException e) {
                return i;
            }
            TimeUnit.MILLISECONDS.sleep(100);
        }
        return 60;
    }

    private static boolean closed(InputStream in) {
        try {
            while (in.read() >= 0) {
                // Whatever was said before the end does not matter.
            }
            return true;
        } catch (java.net.SocketTimeoutException e) {
            return false;
        } catch (java.io.IOException e) {
            return true;
        }
    }

    private static int status(Client client) {
        try {
            return client.postJson("/v1/plans", HandMade.JOB).statusCode();
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Looks for one fault in a problem. */
    private static final class BadInput {

        static void assertFault(HttpResponse<byte[]> response, int status, String pointer, String code)
                throws Exception {
            assertThat(response.statusCode()).as(Client.text(response)).isEqualTo(status);
            assertThat(Client.json(response).get("errors"))
                    .as(Client.text(response))
                    .anySatisfy(error -> {
                        assertThat(error.get("pointer").asText()).isEqualTo(pointer);
                        assertThat(error.get("code").asText()).isEqualTo(code);
                    });
        }
    }
}
