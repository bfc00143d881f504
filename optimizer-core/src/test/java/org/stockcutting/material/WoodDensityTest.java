package org.stockcutting.material;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.stockcutting.length.Length;
import org.stockcutting.length.Volume;

class WoodDensityTest {

    private static final Volume CUBIC_METRE = Volume.of(
            Length.ofNanometres(1_000_000_000), Length.ofNanometres(1_000_000_000), Length.ofNanometres(1_000_000_000));

    /** Wood Handbook, chapter 4 (worked example, as read at a secondary source): G = 0.40 at 12 % is 448 kg a cubic metre. */
    @Test
    void aSpecificGravityOfTwoFifthsIsTheWorkedExample() {
        assertThat(WoodDensity.standard().of("Ponderosa  Pine")).isEqualByComparingTo("448");
        assertThat(WoodDensity.standard().grams("ponderosa pine", CUBIC_METRE)).isEqualTo(448_000);
    }

    @Test
    void anythingBegunIsAWholeGramAndNothingIsGuessed() {
        Volume drop = Volume.of(Length.ofNanometres(1), Length.ofNanometres(1), Length.ofNanometres(1));
        assertThat(WoodDensity.standard().grams("red oak", drop)).isEqualTo(1);
        assertThat(WoodDensity.standard().grams("purple heartwood", CUBIC_METRE))
                .isNull();
    }

    @Test
    void densitiesAreThoseOfWood() {
        assertThat(WoodDensity.standard().names())
                .hasSizeGreaterThan(30)
                .allSatisfy(name -> assertThat(WoodDensity.standard().of(name).intValueExact())
                        .as(name)
                        .isBetween(300, 900));
    }
}
