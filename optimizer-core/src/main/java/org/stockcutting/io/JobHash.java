package org.stockcutting.io;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import org.stockcutting.job.Job;

/**
 * Names a job by its content: SHA-256 (FIPS 180-4) of its document without white space, every default filled in, lists sorted by id.
 *
 * <p>Effort is left out: a plan belongs to the same job however long or on however many threads it was searched for. So is what is known
 * of the wood: it changes no plan.
 */
public final class JobHash {

    private JobHash() {}

    /** {@code sha-256:} and 64 hexadecimal digits. */
    public static String of(Job job) {
        ObjectNode doc = JobWriter.tree(job, true);
        doc.remove("effort");
        doc.remove("wood");
        for (String list : List.of("parts", "stock", "onHand")) {
            doc.set(list, sorted(doc.withArray(list)));
        }
        byte[] bytes = JsonOutput.compact(doc).getBytes(StandardCharsets.UTF_8);
        return "sha-256:" + HexFormat.of().formatHex(sha256(bytes));
    }

    private static ArrayNode sorted(ArrayNode list) {
        List<JsonNode> entries = new ArrayList<>();
        list.forEach(entries::add);
        entries.sort(Comparator.comparing(entry -> entry.get("id").textValue()));
        return JsonOutput.list().addAll(entries);
    }

    private static byte[] sha256(byte[] bytes) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(bytes);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
