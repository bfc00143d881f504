package org.stockcutting.io;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobReview;

class JobWriterTest {

    @Test
    void whatIsWrittenIsReadBackEqual() {
        for (long seed = 1; seed <= 400; seed++) {
            Job job = new RandomJobs(seed).next();
            assertThat(JobReview.review(job)).as("seed %d", seed).isEmpty();
            String text = JobWriter.write(job);
            JobReading reading = new JobReader().read(text);
            assertThat(reading.faults()).as("seed %d: %s", seed, text).isEmpty();
            assertThat(reading.job()).as("seed %d: %s", seed, text).isEqualTo(job);
            assertThat(JobWriter.write(reading.orThrow())).isEqualTo(text);
            assertThat(text).endsWith("}\n").doesNotContain("\r");
        }
    }

    @Test
    void theHashIsOfTheContentNotOfTheOrderOrTheEffort() {
        ObjectNode doc = Documents.tree("garden-job.json");
        String hash = JobHash.of(new JobReader().read(doc.toString()).orThrow());
        List<com.fasterxml.jackson.databind.JsonNode> parts = new ArrayList<>();
        doc.get("parts").forEach(parts::add);
        Collections.reverse(parts);
        ((ArrayNode) doc.get("parts")).removeAll().addAll(parts);
        ((ObjectNode) doc.get("effort")).put("seed", 99).put("threads", 2);
        ((ObjectNode) doc.get("parts").get(0)).put("quantity", 1);
        assertThat(JobHash.of(new JobReader().read(doc.toString()).orThrow())).isEqualTo(hash);
        ((ObjectNode) doc.get("parts").get(0)).put("quantity", 2);
        assertThat(JobHash.of(new JobReader().read(doc.toString()).orThrow())).isNotEqualTo(hash);
    }

    /** The canonical text is written out by hand here, so that a change of it cannot go unseen: hashes are kept by users. */
    @Test
    void theHashIsSha256OfTheCanonicalText() throws Exception {
        Job job = new JobReader()
                .read(
                        "{\"unit\": \"mm\", \"name\": \"n\", \"parts\": [{\"length\": 100, \"width\": 10, \"thickness\": 5}],"
                                + " \"onHand\": [{\"id\": \"b\", \"length\": 300, \"width\": 10, \"thickness\": 5}]}")
                .orThrow();
        String profiles =
                "\"glue-up\":{\"length\":\"50.8\",\"width\":\"25.4\",\"thickness\":\"1.5875\",\"perStave\":\"3.175\","
                        + "\"staveThickness\":\"4.7625\",\"perPly\":\"0\"},\"lamination\":{\"length\":\"25.4\",\"width\":\"6.35\","
                        + "\"thickness\":\"0\",\"perStave\":\"0\",\"staveThickness\":\"0\",\"perPly\":\"1.5875\"},"
                        + "\"milled\":{\"length\":\"25.4\",\"width\":\"3.175\",\"thickness\":\"4.7625\",\"perStave\":\"0\","
                        + "\"staveThickness\":\"0\",\"perPly\":\"0\"}";
        String canonical =
                "{\"format\":1,\"name\":\"n\",\"unit\":\"mm\",\"decimal\":\".\",\"currency\":\"EUR\",\"sets\":1,"
                        + "\"shop\":{\"kerf\":{\"crosscut\":\"3.175\",\"rip\":\"3.175\"},\"boardTrim\":{},\"sheetTrim\":{},"
                        + "\"limits\":{\"firstCut\":\"any\"},\"keepOffcuts\":[],\"thicknessTolerance\":\"1.5875\","
                        + "\"maxPlaning\":\"12.7\"},\"allowances\":{" + profiles + "},"
                        + "\"parts\":[{\"id\":\"A\",\"quantity\":1,\"length\":\"100\",\"width\":\"10\",\"thickness\":\"5\","
                        + "\"material\":\"wood\",\"class\":\"clear\",\"spares\":0}],\"stock\":[],"
                        + "\"onHand\":[{\"id\":\"b\",\"form\":\"board\",\"length\":\"300\",\"width\":\"10\",\"thickness\":\"5\","
                        + "\"material\":\"wood\",\"grain\":\"length\",\"quantity\":1}],\"goal\":\"waste\"}";
        byte[] digest = MessageDigest.getInstance("SHA-256").digest(canonical.getBytes(StandardCharsets.UTF_8));
        assertThat(JobHash.of(job)).isEqualTo("sha-256:" + HexFormat.of().formatHex(digest));
    }
}
