package org.stockcutting.io;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.stockcutting.job.Fault;
import org.stockcutting.job.FaultCode;

/** Damaged documents never throw; every fault has a known code and says something. */
class JobFuzzTest {

    private static final Set<String> CODES =
            Arrays.stream(FaultCode.values()).map(FaultCode::word).collect(Collectors.toSet());

    private static final String[] VALUES = {
        "null",
        "true",
        "-1",
        "0",
        "1e400",
        "1e-400",
        "999999999999999999999",
        "2147483648",
        "\"\"",
        "\" \"",
        "\"1/0\"",
        "\"1e9\"",
        "[]",
        "{}",
        "[[]]",
        "[null]",
        "[{}]",
        "\"board\"",
        "\"2x4\"",
        "\"\\u0000\"",
        "\"..\"",
        "0.1",
        "\"1 km\"",
        "\"99999999999999999999\"",
        "\"-3\"",
        "{\"from\": 1}",
        "\"\\ud800\""
    };

    private static void check(JobReading reading, long seed) {
        boolean sound = reading.isValid() == reading.faults().isEmpty();
        for (Fault fault : reading.faults()) {
            sound &= CODES.contains(fault.code())
                    && !fault.text().isBlank()
                    && !fault.expected().isBlank()
                    && fault.got().length() <= 200;
        }
        // One assertion a document: thousands are tried.
        assertThat(sound).as("seed %s: %s", seed, reading.faults()).isTrue();
    }

    @Test
    void damagedTextNeverThrows() {
        String sound = Documents.text("every-field.json");
        for (long seed = 1; seed <= 5_000; seed++) {
            Random random = new Random(seed);
            StringBuilder text = new StringBuilder(sound);
            for (int i = 0, n = 1 + random.nextInt(4); i < n; i++) {
                int at = random.nextInt(text.length());
                switch (random.nextInt(4)) {
                    case 0 -> text.deleteCharAt(at);
                    case 1 -> text.insert(at, "{}[],:\"0e9-\\\u0000\ud800x".charAt(random.nextInt(15)));
                    case 2 -> text.setCharAt(at, (char) random.nextInt(0x10000));
                    default -> text.insert(at, sound, at / 2, at / 2 + random.nextInt(60));
                }
            }
            check(new JobReader().read(text.toString()), seed);
        }
    }

    @Test
    void damagedValuesNeverThrow() throws Exception {
        List<String> pointers = new ArrayList<>(
                Documents.patterns(Documents.tree("every-field.json")).values());
        for (long seed = 1; seed <= 5_000; seed++) {
            Random random = new Random(seed);
            ObjectNode doc = Documents.tree("every-field.json");
            for (int i = 0, n = 1 + random.nextInt(3); i < n; i++) {
                String pointer = pointers.get(random.nextInt(pointers.size()));
                JsonNode value = Documents.MAPPER.readTree(VALUES[random.nextInt(VALUES.length)]);
                if (!doc.at(pointer).isMissingNode()) {
                    Documents.set(doc, pointer, value);
                }
            }
            check(new JobReader().read(doc.toString()), seed);
        }
    }

    @Test
    void damagedTablesNeverThrow() {
        String sound = "id,quantity,length,width,thickness,make,make.staves.min,make.staves.max,note\n"
                + "top,1,48,14,1,glue-up,3,5,\"wide, flat\"\nleg,4,16-1/4,2,2,,,,\n";
        String stock =
                "id;nominal;length;width;material;zones;price\nb1;2x6;96-1/8;5-1/2;oak;0..3; \nb2;2x6;96;;oak;;4,5\n";
        for (long seed = 1; seed <= 3_000; seed++) {
            Random random = new Random(seed);
            check(new CsvJobReader().read(damaged(sound, random), damaged(stock, random), null), seed);
        }
    }

    private static String damaged(String sound, Random random) {
        StringBuilder text = new StringBuilder(sound);
        for (int i = 0, n = random.nextInt(4); i < n; i++) {
            int at = random.nextInt(text.length());
            switch (random.nextInt(3)) {
                case 0 -> text.deleteCharAt(at);
                case 1 -> text.insert(at, ",;\t\"'\n\r=@.x0\u0000\ud800 ".charAt(random.nextInt(15)));
                default -> text.setCharAt(at, (char) random.nextInt(0x10000));
            }
        }
        return text.toString();
    }
}
