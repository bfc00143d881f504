package org.stockcutting.http.wire;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;

/** Speaks to a service on this machine. */
final class Client {

    private static final JsonMapper JSON = JsonMapper.builder().build();

    private final HttpClient http =
            HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
    private final int port;

    Client(int port) {
        this.port = port;
    }

    HttpResponse<byte[]> post(String path, byte[] body, String... headers) throws Exception {
        HttpRequest.Builder request = request(path).POST(BodyPublishers.ofByteArray(body));
        if (headers.length > 0) {
            request.headers(headers);
        }
        return send(request);
    }

    HttpResponse<byte[]> postJson(String path, String body) throws Exception {
        return post(path, body.getBytes(StandardCharsets.UTF_8), "Content-Type", "application/json");
    }

    HttpResponse<byte[]> get(String path, String... headers) throws Exception {
        HttpRequest.Builder request = request(path).GET();
        if (headers.length > 0) {
            request.headers(headers);
        }
        return send(request);
    }

    HttpResponse<byte[]> method(String method, String path) throws Exception {
        return send(request(path).method(method, BodyPublishers.noBody()));
    }

    /** Sends bytes as they are and returns all that comes back until the server closes. */
    String raw(String bytes) throws IOException {
        try (Socket socket = new Socket("127.0.0.1", port)) {
            socket.setSoTimeout(20_000);
            socket.getOutputStream().write(bytes.getBytes(StandardCharsets.ISO_8859_1));
            socket.getOutputStream().flush();
            ByteArrayOutputStream all = new ByteArrayOutputStream();
            byte[] buffer = new byte[8_192];
            int read;
            while ((read = socket.getInputStream().read(buffer)) >= 0) {
                all.write(buffer, 0, read);
            }
            return all.toString(StandardCharsets.UTF_8);
        }
    }

    static JsonNode json(HttpResponse<byte[]> response) throws IOException {
        return JSON.readTree(response.body());
    }

    static String text(HttpResponse<byte[]> response) {
        return new String(response.body(), StandardCharsets.UTF_8);
    }

    private HttpRequest.Builder request(String path) {
        return HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
                .timeout(Duration.ofSeconds(30));
    }

    private HttpResponse<byte[]> send(HttpRequest.Builder request) throws IOException, InterruptedException {
        return http.send(request.build(), BodyHandlers.ofByteArray());
    }
}
