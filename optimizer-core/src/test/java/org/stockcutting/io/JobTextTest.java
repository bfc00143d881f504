package org.stockcutting.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.groups.Tuple.tuple;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.stockcutting.job.Fault;
import org.stockcutting.length.Length;

/** Texts, bytes and numbers that a job document may hold, and those that it may not. */
class JobTextTest {

    private static final String PART = "{\"length\": 20, \"width\": 3, \"thickness\": 0.75}";
    private static final String STOCK =
            "{\"length\": \"8'\", \"width\": 6, \"thickness\": 0.75, \"price\": {\"amount\": \"5\"}}";

    private static JobReading read(String json) {
        return new JobReader().read(json);
    }

    private static JobReading readWith(String fields) {
        return read("{" + fields + (fields.isEmpty() ? "" : ", ") + "\"parts\": [" + PART + "], \"stock\": [" + STOCK
                + "]}");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "''|not-json",
                "{|not-json",
                "[1, 2]|wrong-type",
                "7|wrong-type",
                "null|wrong-type",
                "{} {}|not-json",
                "{} x|not-json",
                "{'name': NaN}|not-json",
                "{\"name\": NaN}|not-json",
                "{\"sets\": 01}|not-json",
                "{\"sets\": +1}|not-json",
                "{\"sets\": 1e99999999999}|not-json",
                "{\"name\": \"\\x\"}|not-json",
                "{\"sets\": 111111111111111111111111111111111}|too-large",
                "// note|not-json",
            })
    void textThatIsNoDocumentIsRefused(String text, String code) {
        assertThat(read(text.replace("\\x", "\\q")).faults())
                .extracting(Fault::code)
                .contains(code);
    }

    @Test
    void hostileSizesAreRefused() {
        assertThat(read("[".repeat(21)).faults()).extracting(Fault::code).containsExactly("too-deep");
        assertThat(read("{\"parts\":".repeat(100_000)).faults())
                .extracting(Fault::code)
                .containsExactly("too-deep");
        assertThat(read(" ".repeat((1 << 20) + 1)).faults())
                .extracting(Fault::code)
                .containsExactly("too-large");
        assertThat(readWith("\"name\": \"" + "n".repeat(5_000) + "\"").faults())
                .extracting(Fault::code)
                .containsExactly("too-large");
        assertThat(readWith("\"" + "n".repeat(65) + "\": 1").faults())
                .extracting(Fault::code)
                .containsExactly("too-large");
    }

    @Test
    void bytesMustBeUtf8() {
        byte[] latin = "{\"name\": \"T\u00fcr\"}".getBytes(StandardCharsets.ISO_8859_1);
        assertThat(new JobReader().read(latin).faults()).extracting(Fault::code).containsExactly("not-utf-8");
        byte[] utf8 = ("{\"name\": \"T\u00fcr\", \"parts\": [" + PART + "], \"stock\": [" + STOCK + "]}")
                .getBytes(StandardCharsets.UTF_8);
        assertThat(new JobReader().read(utf8).orThrow().name()).isEqualTo("T\u00fcr");
    }

    @ParameterizedTest
    @ValueSource(strings = {"a\\u0000b", "a\\tb", "\\ud800", "\\udc00 x", "a\\u2028b", "\\u009f"})
    void namesWithWhatCannotBePrintedAreRefused(String name) {
        assertThat(readWith("\"name\": \"" + name + "\"").faults())
                .extracting(Fault::pointer, Fault::code)
                .containsExactly(tuple("/name", "bad-character"));
    }

    @Test
    void anAstralLetterIsNoHalfPair() {
        assertThat(readWith("\"name\": \"\\ud83e\\udeb5\"").orThrow().name()).isEqualTo("\ud83e\udeb5");
    }

    @ParameterizedTest
    @CsvSource({
        "20, 508000000",
        "20.0, 508000000",
        "2e1, 508000000",
        "0.015625, 396875",
        "16.25, 412750000",
        "0.1, 2540000"
    })
    void numbersAreExactDecimalsInTheJobsUnit(String number, long nanometres) {
        String json = "{\"parts\": [{\"length\": " + number + ", \"width\": 3, \"thickness\": 1}], \"stock\": [" + STOCK
                + "]}";
        assertThat(read(json).orThrow().parts().get(0).length()).isEqualTo(Length.ofNanometres(nanometres));
    }

    @ParameterizedTest
    @CsvSource({
        "1e-9, not-exact",
        "1e30, out-of-range",
        "1e999999999, out-of-range",
        "-1, out-of-range",
        "0, not-positive",
        "true, wrong-type",
        "[], wrong-type"
    })
    void numbersThatAreNoLengthsAreRefused(String number, String code) {
        String json = "{\"parts\": [{\"length\": " + number + ", \"width\": 3, \"thickness\": 1}], \"stock\": [" + STOCK
                + "]}";
        assertThat(read(json).faults())
                .extracting(Fault::pointer, Fault::code)
                .containsExactly(tuple("/parts/0/length", code));
    }
}
