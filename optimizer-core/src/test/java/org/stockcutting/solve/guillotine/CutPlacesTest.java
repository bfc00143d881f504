package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.stockcutting.solve.instance.StockType.ZoneRect;

class CutPlacesTest {

    private static final List<ZoneRect> ZONES = List.of(new ZoneRect(20, 3, 30, 5, Racks.UNUSABLE, false));
    private static final int[] LENGTHS = {7, 11};
    private static final int LONG = 97;

    private static CutPlaces.Of axis(boolean alongX) {
        return new CutPlaces.Of(alongX, alongX ? LONG : 9, 1, ZONES, alongX ? LENGTHS : new int[] {2, 3});
    }

    @Test
    void withoutChanceThereAreEndsGoodPlacesAndForRipsTheEdgesOfZones() {
        Dice dice = new Dice(1);
        assertThat(CutPlaces.draw(axis(true), Set.of(), 0, dice)).containsExactly(0, LONG);
        assertThat(CutPlaces.draw(axis(true), Set.of(41, 40), 0, dice)).containsExactly(0, 40, 41, LONG);
        assertThat(CutPlaces.draw(axis(false), Set.of(7), 0, dice)).containsExactly(0, 4, 5, 7, 9);
    }

    /** Pieces lie before the end of a board or of what a zone leaves, behind its start or a zone; none lies on the wrong side. */
    @Test
    void placesByChanceAreAFewPiecesFromWherePiecesStartOrEnd() {
        Dice dice = new Dice(3);
        int more = 0;
        for (int n = 0; n < 100; n++) {
            int[] drawn = CutPlaces.draw(axis(true), Set.of(), 5, dice);
            assertThat(drawn).isSorted().startsWith(0).endsWith(LONG).doesNotHaveDuplicates();
            for (int place : drawn) {
                assertThat(place == 0 || place == LONG || isReached(place))
                        .as("%d", place)
                        .isTrue();
                more += place == 0 || place == LONG ? 0 : 1;
            }
        }
        assertThat(more).isGreaterThan(200);
    }

    private static boolean isReached(int place) {
        for (int a = 0; a <= 3; a++) {
            for (int b = 0; a + b <= 3; b++) {
                int away = a * LENGTHS[0] + b * LENGTHS[1];
                if (List.of(away, 30 + away, 21 - away, LONG - away).contains(place)) {
                    return true;
                }
            }
        }
        return false;
    }
}
