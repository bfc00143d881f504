package org.stockcutting.samples;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.PlanReader;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;

/**
 * How does a program get a plan from a running service? It posts the job document and reads the plan document; it need not believe
 * the service, for the checker is in the library.
 */
public final class AskTheService {

    private static final int OK = 200;

    private AskTheService() {}

    /**
     * Posts a job document and says what came back.
     *
     * @param service address of a running service, such as {@code http://127.0.0.1:8080}
     * @param document file with the job
     * @return what to buy, or the problem document where the job was refused
     * @throws IOException if the file cannot be read or the service cannot be reached
     * @throws InterruptedException if the thread was interrupted while it waited
     */
    static String answer(URI service, Path document) throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(service.resolve("/v1/plans"))
                .header("Content-Type", "application/json")
                .header("Accept", "application/json")
                .POST(HttpRequest.BodyPublishers.ofFile(document))
                .build();
        HttpResponse<String> response = HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofString());
        if (response.statusCode() != OK) {
            return "refused with " + response.statusCode() + "\n" + response.body() + "\n";
        }
        Job job = new JobReader().read(Files.readAllBytes(document)).orThrow();
        CuttingPlan plan = new PlanReader(job).read(response.body()).orThrow();
        StringBuilder out = new StringBuilder(plan.header().status().word());
        out.append(", ").append(plan.cost()).append('\n');
        plan.derived()
                .buyingList()
                .forEach(line -> out.append(line.quantity())
                        .append(" x ")
                        .append(line.stock())
                        .append('\n'));
        out.append(PlanChecker.check(job, plan).size()).append(" violations found\n");
        return out.toString();
    }

    public static void main(String[] args) throws IOException, InterruptedException {
        if (args.length != 2) {
            System.err.println("two arguments, please: the address of the service and a job document");
            return;
        }
        System.out.print(answer(URI.create(args[0]), Path.of(args[1])));
    }
}
