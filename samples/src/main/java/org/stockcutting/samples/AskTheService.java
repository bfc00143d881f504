package org.stockcutting.samples;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;

/** How does a program in another language get a plan? It posts the job document to a running service. */
public final class AskTheService {

    private AskTheService() {}

    /**
     * Posts a job document.
     *
     * @param service address of a running service, such as {@code http://127.0.0.1:8080}
     * @param job the document
     * @return the plan document, or the problem document where the job was refused
     */
    static String answer(URI service, Path job) throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(service.resolve("/v1/plans"))
                .header("Content-Type", "application/json")
                .POST(HttpRequest.BodyPublishers.ofFile(job))
                .build();
        HttpResponse<String> response = HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofString());
        return response.statusCode() + "\n" + response.body();
    }

    public static void main(String[] args) throws IOException, InterruptedException {
        System.out.print(answer(URI.create(args[0]), Path.of(args[1])));
    }
}
