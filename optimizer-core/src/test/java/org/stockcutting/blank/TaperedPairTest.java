package org.stockcutting.blank;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.length.Length;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.part.Shaping;
import org.stockcutting.part.Taper;

/** Figures of workshop teaching: common practice, no source. */
class TaperedPairTest {

    private static Length in(String inches) {
        return Length.inches(inches);
    }

    private static Part leg(String start, Taper.Faces faces) {
        Taper taper = new Taper(in(start), in("1.75"), faces);
        return new Part(
                        "leg",
                        4,
                        in("17"),
                        new Section.Measured(in("3.5"), in("3.5")),
                        "oak",
                        null,
                        WoodClass.CLEAR,
                        0,
                        new Making.AsCut(),
                        null,
                        null)
                .withShaping(new Shaping(taper, List.of(), Shaping.Fit.TO_SIZE, Shaping.Hand.NONE));
    }

    /** Top 3-1/2, foot 1-3/4, length 17, start 4-1/4: 5.83 and the kerf. */
    @Test
    void theUsualExample() {
        Length width = TaperedPair.width(in("17"), in("3.5"), in("4.25"), in("1.75"), in("0.125"));
        // 3.5 + 1.75 + 1.75 x 4.25 / 12.75 is five and five sixths.
        assertThat(width.minus(in("0.125")).nanometres()).isEqualTo(148_166_667L);
        TaperedPair pair = TaperedPair.of(leg("4.25", Taper.Faces.INSIDE_TWO), in("0.125"));
        assertThat(pair.width()).isEqualTo(width);
        assertThat(pair.saved().nanometres()).as("7 less 5.83").isEqualTo(177_800_000L - 148_166_667L);
    }

    @Test
    void nothingIsGainedFromHalfOfTheLengthOnNorWhereAllFacesTaper() {
        assertThat(TaperedPair.of(leg("8.5", Taper.Faces.ONE), in("0.125"))).isNull();
        assertThat(TaperedPair.of(leg("9", Taper.Faces.ONE), in("0.125"))).isNull();
        assertThat(TaperedPair.of(leg("8.4", Taper.Faces.ONE), in("0.125"))).isNotNull();
        assertThat(TaperedPair.of(leg("4.25", Taper.Faces.FOUR), in("0.125"))).isNull();
    }

    /** The upper leg lies head first: at every place along the blank the two and the kerf fit side by side. */
    @Test
    void theTwoFitSideBySideAllAlong() {
        long blank = TaperedPair.width(in("17"), in("3.5"), in("4.25"), in("1.75"), Length.ZERO)
                .nanometres();
        for (int sixteenth = 0; sixteenth <= 17 * 16; sixteenth++) {
            double x = sixteenth / 16.0;
            double both = (width(x) + width(17 - x)) * 25_400_000;
            assertThat(both).as("at %s", x).isLessThanOrEqualTo(blank);
        }
    }

    private static double width(double x) {
        return x <= 4.25 ? 3.5 : 3.5 - 1.75 * (x - 4.25) / 12.75;
    }
}
