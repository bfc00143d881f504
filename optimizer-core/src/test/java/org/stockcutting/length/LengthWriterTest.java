package org.stockcutting.length;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.stockcutting.length.LengthWriter.Rounding;

class LengthWriterTest {

    private static final Length SIXTEENTH = Length.inches("0.0625");

    private final LengthWriter inches = new LengthWriter(LengthUnit.INCH, '.');

    @Test
    void writesFractionsOnlyWhereAnInchRuleHasThem() {
        assertThat(inches.exact(Length.inches("16.25"))).isEqualTo("16-1/4");
        assertThat(inches.exact(Length.inches("0.75"))).isEqualTo("3/4");
        assertThat(inches.exact(Length.inches("16"))).isEqualTo("16");
        assertThat(inches.exact(Length.ZERO)).isEqualTo("0");
        assertThat(inches.exact(Length.inches("0.015625"))).isEqualTo("1/64");
        assertThat(inches.exact(Length.inches("5.367"))).isEqualTo("5.367");
        assertThat(inches.exact(Length.millimetres("406"))).isEqualTo("406 mm");
        assertThat(inches.exact(Length.millimetres("12.345678"))).isEqualTo("12.345678 mm");
        assertThat(inches.exact(Length.inches("-0.5"))).isEqualTo("-1/2");
        assertThat(inches.withUnit(Length.inches("16.25"))).isEqualTo("16-1/4 in");
    }

    @Test
    void writesTheOtherUnits() {
        LengthWriter feet = new LengthWriter(LengthUnit.FOOT, '.');
        assertThat(feet.exact(Length.inches("16.5"))).isEqualTo("1' 4-1/2\"");
        assertThat(feet.exact(Length.inches("96"))).isEqualTo("8'");
        assertThat(feet.exact(Length.inches("0.5"))).isEqualTo("1/2\"");
        assertThat(feet.exact(Length.inches("5.367"))).isEqualTo("5.367\"");
        assertThat(new LengthWriter(LengthUnit.MILLIMETRE, '.').exact(Length.inches("16")))
                .isEqualTo("406.4");
        assertThat(new LengthWriter(LengthUnit.CENTIMETRE, ',').exact(Length.millimetres("406")))
                .isEqualTo("40,6");
        assertThat(new LengthWriter(LengthUnit.METRE, '.').exact(Length.ofNanometres(1)))
                .isEqualTo("0.000000001");
        assertThatThrownBy(() -> new LengthWriter(LengthUnit.INCH, ';')).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void marksWhatItRounded() {
        Length justOver = Length.inches("16.0625").plus(Length.ofNanometres(1));
        assertThat(inches.rounded(justOver, SIXTEENTH, Rounding.NEAREST)).isEqualTo("~16-1/16");
        assertThat(inches.rounded(justOver, SIXTEENTH, Rounding.UP)).isEqualTo("~16-1/8");
        assertThat(inches.rounded(justOver, SIXTEENTH, Rounding.DOWN)).isEqualTo("~16-1/16");
        assertThat(inches.rounded(Length.inches("16.25"), SIXTEENTH, Rounding.UP))
                .isEqualTo("16-1/4");
        assertThat(inches.rounded(Length.inches("0.03125"), SIXTEENTH, Rounding.NEAREST))
                .isEqualTo("~1/16");
        assertThat(inches.rounded(Length.inches("-0.03"), SIXTEENTH, Rounding.DOWN))
                .isEqualTo("~-1/16");
        assertThatThrownBy(() -> inches.rounded(justOver, Length.ZERO, Rounding.UP))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest
    @EnumSource(LengthUnit.class)
    void exactTextIsReadBackAsTheSameLength(LengthUnit unit) {
        long seed = 7_001L + unit.nanometres();
        Random random = new Random(seed);
        for (char mark : new char[] {'.', ','}) {
            LengthWriter writer = new LengthWriter(unit, mark);
            LengthReader reader = new LengthReader(unit, mark);
            for (int i = 0; i < 20_000; i++) {
                Length length = randomLength(random, i);
                assertThat(reader.read(writer.exact(length)))
                        .as("seed %d, round %d, %s", seed, i, writer.exact(length))
                        .isEqualTo(length);
            }
        }
    }

    @Test
    void aRoundedLengthIsOnItsSideAndLessThanAStepAway() {
        long seed = 7_100;
        Random random = new Random(seed);
        LengthReader reader = new LengthReader(LengthUnit.INCH, '.');
        for (int i = 0; i < 5_000; i++) {
            Length length = randomLength(random, i);
            for (Rounding rounding : Rounding.values()) {
                String text = inches.rounded(length, SIXTEENTH, rounding);
                Length printed = reader.read(text.replace("~", ""));
                long off = printed.nanometres() - length.nanometres();
                assertThat(text.startsWith("~")).as("seed %d, %s", seed, length).isEqualTo(off != 0);
                long step = SIXTEENTH.nanometres();
                long least = rounding == Rounding.UP ? 0 : rounding == Rounding.DOWN ? 1 - step : -step / 2;
                long most = rounding == Rounding.DOWN ? 0 : rounding == Rounding.UP ? step - 1 : step / 2;
                assertThat(off).as("seed %d, %s %s", seed, length, rounding).isBetween(least, most);
            }
        }
    }

    private static Length randomLength(Random random, int round) {
        long most = LengthReader.LONGEST.nanometres() - LengthUnit.FOOT.nanometres();
        return switch (round % 4) {
            case 0 -> Length.ofNanometres((long) (random.nextDouble() * most));
            case 1 -> Length.ofNanometres(396_875L * random.nextInt(20_000));
            case 2 -> Length.ofNanometres(127L * random.nextInt(100_000_000));
            default -> Length.ofNanometres(1_000L * random.nextInt(5_000_000));
        };
    }
}
