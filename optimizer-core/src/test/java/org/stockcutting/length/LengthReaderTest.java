package org.stockcutting.length;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.math.BigDecimal;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Text forms of lengths. The inch is 25.4 mm by definition (international yard and pound agreement, 1959, from memory), the foot 12 in. */
class LengthReaderTest {

    private final LengthReader inches = new LengthReader(LengthUnit.INCH, '.');
    private final LengthReader comma = new LengthReader(LengthUnit.CENTIMETRE, ',');

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            quoteCharacter = '`',
            value = {
                "16; 406.4",
                "16 1/4; 412.75",
                "16-1/4; 412.75",
                "3/4; 19.05",
                "5/4; 31.75",
                "1' 4-1/2\"; 419.1",
                "1'4-1/2\"; 419.1",
                "1'-4 1/2\"; 419.1",
                "1' 4; 406.4",
                "8'; 2438.4",
                "5-1/2'; 1676.4",
                "16-1/4\"; 412.75",
                "16''; 406.4",
                "406 mm; 406",
                "406mm; 406",
                "40.6 cm; 406",
                "1.2 m; 1200",
                "1/2 m; 500",
                "5.367; 136.3218",
                ".5; 12.7",
                "5 ft; 1524",
                "5 ft 3 in; 1600.2",
                "3 in; 76.2",
                "3 Inches; 76.2",
                "`  16   1/4  `; 412.75",
                "0; 0",
                "0/8; 0",
                "0.000001 mm; 0.000001",
                "1/64; 0.396875",
                "16\u00bd; 419.1",
                "16-\u00bd; 419.1",
                "\u215e; 22.225",
                "1\u2032 4\u20131/2\u2033; 419.1",
                "3\u20444; 19.05",
                "16\u00a01/4; 412.75",
            })
    void readsEveryForm(String text, String millimetres) {
        assertThat(inches.read(text)).isEqualTo(Length.millimetres(millimetres));
    }

    @Test
    void readsNumbersInTheJobsUnit() {
        assertThat(comma.read("40,6")).isEqualTo(Length.millimetres("406"));
        assertThat(comma.read("40,6 cm")).isEqualTo(Length.millimetres("406"));
        assertThat(comma.read("1,000")).isEqualTo(Length.millimetres("10"));
        assertThat(comma.read("8'")).isEqualTo(Length.inches("96"));
        assertThat(comma.read(new BigDecimal("40.6"))).isEqualTo(Length.millimetres("406"));
        assertThat(inches.read(new BigDecimal("5.367"))).isEqualTo(Length.inches("5.367"));
        assertThat(inches.read(new BigDecimal("1.6E+1"))).isEqualTo(Length.inches("16"));
        assertThat(inches.read(new BigDecimal("0E-999999999"))).isEqualTo(Length.ZERO);
        assertThat(new LengthReader(LengthUnit.FOOT, '.').read("5-1/2")).isEqualTo(Length.inches("66"));
        assertThat(new LengthReader(LengthUnit.METRE, '.').read("2.4")).isEqualTo(Length.millimetres("2400"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                " ",
                "x",
                "1/0",
                "0/0",
                "16 5/4",
                "1,000",
                "1 000",
                "16 x",
                "16.",
                "1 km",
                "1' 13\"",
                "1.5' 3\"",
                "1e3",
                "+5",
                "5 5",
                "1//2",
                "1/2/3",
                "'",
                "\"",
                "mm",
                "16 mm 3",
                "16\" 3'",
                "0x10",
                "NaN",
                "\u0661",
                "16\n3",
                "--5x\u0000"
            })
    void refusesWhatIsNoLength(String text) {
        LengthFormatException fault = refusal(inches, text);
        assertThat(fault.code()).isIn(LengthFormatException.NOT_A_LENGTH, LengthFormatException.OUT_OF_RANGE);
        assertThat(fault.getMessage()).doesNotContain("\u0000");
    }

    @Test
    void saysHowAnAmbiguousNumberIsMeant() {
        assertThat(refusal(inches, "1,000").getMessage())
                .contains("two ways")
                .contains("\"1.000\"")
                .contains("\"1000\"");
        assertThat(refusal(comma, "1.000").getMessage()).contains("\"1,000\"").contains("\"1000\"");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"-5", "\u22125", "-1/4", "1001 m", "1000.000000001 m", "99999999999999999999999999999999 m"})
    void refusesOutOfRange(String text) {
        assertThat(refusal(inches, text).code()).isEqualTo(LengthFormatException.OUT_OF_RANGE);
    }

    @Test
    void namesTheNearestExactValue() {
        LengthFormatException third = refusal(inches, "1/3");
        assertThat(third.code()).isEqualTo(LengthFormatException.NOT_EXACT);
        assertThat(third.got()).isEqualTo("1/3");
        // 25.4 mm / 3 = 8.466 666 6.. mm; 21/64 in = 8.334 mm and 22/64 in = 8.731 mm.
        assertThat(third.expected()).isEqualTo("the nearest exact value is 8.466667 mm");
        assertThat(third.getMessage()).contains("8.466667 mm").contains("21/64");
        assertThat(inches.read("8.466667 mm").nanometres()).isEqualTo(8_466_667L);
        // 1/128 in is 198,437.5 nm.
        assertThat(refusal(inches, "1/128").code()).isEqualTo(LengthFormatException.NOT_EXACT);
        assertThat(refusal(comma, "1/3").expected()).isEqualTo("the nearest exact value is 0,3333333 cm");
        assertThat(refusal(inches, "0.0000000000000000000000001").expected()).endsWith("0 in");
    }

    @Test
    void boundsNumbersThatAreShortToWriteAndLongToSpell() {
        for (String number : new String[] {"1E+999999999", "1E+400", "-1E+999999999"}) {
            LengthFormatException fault =
                    catchThrowableOfType(LengthFormatException.class, () -> inches.read(new BigDecimal(number)));
            assertThat(fault.code()).as(number).isEqualTo(LengthFormatException.OUT_OF_RANGE);
        }
        LengthFormatException tiny =
                catchThrowableOfType(LengthFormatException.class, () -> inches.read(new BigDecimal("1E-999999999")));
        assertThat(tiny.code()).isEqualTo(LengthFormatException.NOT_EXACT);
        assertThat(refusal(inches, "9".repeat(100_000)).got()).hasSizeLessThan(50);
    }

    @Test
    void throwsNothingButItsOwnExceptionOnAnyText() {
        long seed = 20_260_101;
        Random random = new Random(seed);
        String[] bits = {
            "0",
            "1",
            "16",
            "999",
            "/",
            "-",
            " ",
            ".",
            ",",
            "'",
            "\"",
            "mm",
            "cm",
            "m",
            "ft",
            "in",
            "feet",
            "\u00bd",
            "\u2032",
            "\u2033",
            "\u2212",
            "\ud800",
            "\u0000",
            "e",
            "E9",
            "+",
            "x",
            "\u202e",
            "\u0130",
            "00000000000000000000000",
            "\t",
            "\n"
        };
        int read = 0;
        for (int i = 0; i < 50_000; i++) {
            StringBuilder text = new StringBuilder();
            for (int n = random.nextInt(9); n > 0; n--) {
                text.append(
                        random.nextInt(5) == 0
                                ? String.valueOf((char) random.nextInt(0x3000))
                                : bits[random.nextInt(bits.length)]);
            }
            LengthReader reader = i % 2 == 0 ? inches : comma;
            try {
                Length length = reader.read(text.toString());
                assertThat(length.nanometres())
                        .as("seed %d, text %s", seed, text)
                        .isBetween(0L, LengthReader.LONGEST.nanometres());
                read++;
            } catch (LengthFormatException expected) {
                assertThat(expected.getMessage()).isNotBlank();
            } catch (RuntimeException other) {
                throw new AssertionError("seed " + seed + ", round " + i + ", text \"" + text + "\"", other);
            }
        }
        assertThat(read).as("some of the texts are lengths").isGreaterThan(500);
    }

    private static LengthFormatException refusal(LengthReader reader, String text) {
        LengthFormatException fault = catchThrowableOfType(LengthFormatException.class, () -> reader.read(text));
        assertThat(fault).as("\"%s\" is refused", text).isNotNull();
        return fault;
    }
}
