package org.stockcutting.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.stockcutting.length.Length;
import org.stockcutting.part.Ends;

/** Decimal roots of the planner and integer roots of the checker give the same nanometres, and those of the JDK's tangent and cosine. */
class MitreTest {

    @ParameterizedTest
    @EnumSource(Ends.Angle.class)
    void bothReckonAlike(Ends.Angle angle) {
        Random random = new Random(45);
        double radians = Math.toRadians(Double.parseDouble(angle.word()));
        for (int i = 0; i < 2_000; i++) {
            long width = 1 + random.nextInt(600_000_000);
            long kerf = random.nextInt(10_000_000);
            long length = 2_000_000_000L + random.nextInt(1_000_000_000);
            Ends turned = new Ends(angle, 4, true);
            Ends straight = new Ends(angle, 4, false);
            long slope = turned.slope(Length.ofNanometres(width)).nanometres();
            assertThat(slope).isEqualTo(Mitre.slope(turned, width));
            assertThat((double) slope).isEqualTo(Math.floor(width * Math.tan(radians)), within(1.0));
            long slot = Mitre.slot(straight, kerf);
            assertThat((double) slot).isEqualTo(Math.ceil(kerf / Math.cos(radians)), within(1.0));
            for (Ends ends : new Ends[] {turned, straight}) {
                boolean imperial = random.nextBoolean();
                Length pitch = ends.pitch(
                        Length.ofNanometres(length), Length.ofNanometres(width), Length.ofNanometres(kerf), imperial);
                assertThat(pitch.nanometres()).isEqualTo(Mitre.pitch(ends, length, width, kerf, imperial));
            }
        }
    }
}
