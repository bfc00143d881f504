package org.stockcutting.length;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigInteger;
import java.util.Random;
import org.junit.jupiter.api.Test;

class VolumeTextTest {

    private static final Volume BOARD_FOOT = Volume.of(Length.inches("12"), Length.inches("12"), Length.inches("1"));

    @Test
    void writesTheJobsCubicUnit() {
        VolumeWriter inches = new VolumeWriter(LengthUnit.INCH);
        assertThat(inches.exact(BOARD_FOOT)).isEqualTo("144");
        assertThat(inches.exact(Volume.of(Length.inches("0.5"), Length.inches("0.5"), Length.inches("0.5"))))
                .isEqualTo("0.125");
        assertThat(inches.exact(new Volume(BigInteger.ONE))).isEqualTo("0.000000000000000001 mm3");
        assertThat(inches.exact(Volume.ZERO)).isEqualTo("0");
        // 144 x 25.4^3 = 144 x 16387.064, the cubic inch of NIST Handbook 44, appendix C (from memory).
        assertThat(new VolumeWriter(LengthUnit.MILLIMETRE).exact(BOARD_FOOT)).isEqualTo("2359737.216");
    }

    @Test
    void readsBackWhatItWrote() {
        long seed = 7_200;
        Random random = new Random(seed);
        for (LengthUnit unit : LengthUnit.values()) {
            for (int i = 0; i < 5_000; i++) {
                long grain = i % 2 == 0 ? 396_875L : 1L;
                Volume volume = Volume.of(
                        Length.ofNanometres(grain * random.nextInt(1 << 20)),
                        Length.ofNanometres(grain * random.nextInt(1 << 16)),
                        Length.ofNanometres(grain * (random.nextInt(1 << 12) - 100)));
                String text = new VolumeWriter(unit).exact(volume);
                assertThat(new VolumeReader(unit).read(text))
                        .as("seed %d, %s", seed, text)
                        .isEqualTo(volume);
            }
        }
    }

    @Test
    void refusesWhatIsNoVolume() {
        VolumeReader inches = new VolumeReader(LengthUnit.INCH);
        for (String text : new String[] {"", "1/2", "1e9", "12 in3", "1.", "9".repeat(100), "1,5"}) {
            assertThatThrownBy(() -> inches.read(text)).as(text).isInstanceOf(LengthFormatException.class);
        }
        assertThatThrownBy(() -> inches.read("0.0000000000000000001 mm3"))
                .isInstanceOf(LengthFormatException.class)
                .hasMessageContaining("18 decimals");
    }
}
