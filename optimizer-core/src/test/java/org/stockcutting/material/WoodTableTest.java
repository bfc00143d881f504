package org.stockcutting.material;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stockcutting.length.Length;
import org.stockcutting.length.Volume;

class WoodTableTest {

    private static final WoodTable WOODS = WoodTable.standard();

    private static Wood wood(String name) {
        return WOODS.find(name).orElseThrow();
    }

    /** The worked figure of the Wood Handbook's density rule: G 0.40 at 12 % moisture is 27.968 lb/ft3 and 448 kg/m3. */
    @Test
    void densityFollowsTheHandbooksRule() {
        Density ponderosa = wood("ponderosa pine").density();
        assertThat(ponderosa).isNotNull();
        assertThat(ponderosa.kilogramsPerCubicMetre()).isEqualByComparingTo("448");
        Weight cubicFoot = ponderosa.of(Volume.of(Length.inches("12"), Length.inches("12"), Length.inches("12")));
        assertThat(cubicFoot.inPounds(2)).isEqualByComparingTo("27.97");
    }

    /** Weights of sheets as sellers print them: 3/4 in plywood 60.8 lb, 1/2 in 40.6 lb; MDF of 49 x 97 in 96 to 100 lb. */
    @ParameterizedTest
    @CsvSource({"plywood, 96, 48, 0.75, 60.5, 61.1", "plywood, 96, 48, 0.5, 40.3, 40.9", "MDF, 97, 49, 0.75, 96, 100"})
    void sheetsWeighWhatSellersPrint(
            String name, String length, String width, String thick, String least, String most) {
        Density density = wood(name).density();
        assertThat(density).isNotNull();
        Volume sheet = Volume.of(Length.inches(length), Length.inches(width), Length.inches(thick));
        assertThat(density.of(sheet).inPounds(1)).isBetween(new BigDecimal(least), new BigDecimal(most));
    }

    /** engineeringtoolbox.com, weight of lumber at 35 lb/ft3: 2x4 1.28, 2x6 2.00, 1x6 1.00 lb a foot. */
    @ParameterizedTest
    @CsvSource({"2x4, 1.28", "2x6, 2.01", "1x6, 1.00"})
    void lumberAtThirtyFivePoundsWeighsWhatIsPublished(String nominal, String pounds) {
        NominalSize size = NominalCatalog.standard().find(nominal).orElseThrow();
        assertThat(size.width()).isNotNull();
        Volume foot = Volume.of(Length.inches("12"), size.width(), size.thickness());
        assertThat(Density.poundsPerCubicFoot(new BigDecimal("35")).of(foot).inPounds(2))
                .isEqualByComparingTo(pounds);
    }

    /** Coefficients of FPL-GTR-190, Table 13-5, read in its printed form. */
    @ParameterizedTest
    @CsvSource({
        "walnut, 0.00274, 0.0019",
        "red oak, 0.00369, 0.00158",
        "Hard Maple, 0.00353, 0.00165",
        "'ash,  white', 0.00274, 0.00169",
        "basswood, 0.0033, 0.0023"
    })
    void coefficientsAreTheHandbooks(String name, String tangential, String radial) {
        assertThat(wood(name).tangential()).isEqualByComparingTo(tangential);
        assertThat(wood(name).radial()).isEqualByComparingTo(radial);
    }

    @Test
    void everyFigureNamesItsSourceAndFlatSawnMovesMore() {
        WOODS.all().values().forEach(wood -> {
            assertThat(wood.densitySource().isEmpty()).as(wood.name()).isEqualTo(wood.density() == null);
            assertThat(wood.movementSource().isEmpty()).as(wood.name()).isEqualTo(wood.tangential() == null);
            assertThat(wood.tangential() == null).as(wood.name()).isEqualTo(wood.radial() == null);
            if (wood.tangential() != null && wood.radial() != null) {
                assertThat(wood.tangential()).as(wood.name()).isGreaterThan(wood.radial());
            }
            assertThat(wood.kind() == Wood.Kind.SHEET).as(wood.name()).isEqualTo(wood.tangential() == null);
        });
        assertThat(WOODS.find("unobtainium")).isEmpty();
    }
}
