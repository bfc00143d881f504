package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.solve.instance.StockType.ZoneRect;

class CutPlacesTest {

    private static final List<ZoneRect> ZONES = List.of(new ZoneRect(20, 3, 30, 5, Racks.UNUSABLE, false));
    private static final int[] LENGTHS = {7, 11};

    private static CutPlaces.Of axis(boolean alongX) {
        return new CutPlaces.Of(alongX, alongX ? 97 : 9, 1, ZONES, alongX ? LENGTHS : new int[] {2, 3});
    }

    @Test
    void withoutChanceThereAreEndsAndForRipsTheEdgesOfZones() {
        CutPlaces places = new CutPlaces(new Dice(1));
        places.keep(axis(true), List.of(40));
        assertThat(places.draw(axis(true), 0)).containsExactly(0, 97);
        assertThat(places.draw(axis(false), 0)).containsExactly(0, 4, 5, 9);
    }

    @Test
    void placesOfPatternsStayUntilOthersAreUsed() {
        CutPlaces places = new CutPlaces(new Dice(1));
        places.keep(axis(true), List.of(41, 42));
        places.keep(axis(true), List.of(43, 44));
        assertThat(places.draw(axis(true), 1)).contains(0, 41, 42, 43, 44, 97);
        places.keep(axis(true), List.of(41, 45));
        assertThat(places.draw(axis(true), 0)).containsExactly(0, 97);
        // Of 41 to 45 the one that was not used for longest has gone, and chance alone could bring it back.
        int kept = 0;
        for (int place : places.draw(axis(true), 1)) {
            kept += place > 40 && place < 46 ? 1 : 0;
        }
        assertThat(kept).isBetween(4, 5);
        assertThat(places.draw(axis(true), 1)).contains(41, 43, 44, 45);
    }

    @Test
    void edgesOfZonesTakeNoRoomFromOtherRips() {
        CutPlaces places = new CutPlaces(new Dice(1));
        places.keep(axis(false), List.of(1, 2, 3, 6));
        places.keep(axis(false), List.of(4, 5));
        assertThat(places.draw(axis(false), 1)).contains(0, 1, 2, 3, 4, 5, 6, 9);
    }

    @Test
    void placesByChanceAreAFewPiecesAwayAndOnTheBoard() {
        CutPlaces places = new CutPlaces(new Dice(3));
        for (int n = 0; n < 50; n++) {
            int[] drawn = places.draw(axis(true), 5);
            assertThat(drawn).isSorted().startsWith(0).endsWith(97).doesNotHaveDuplicates();
            for (int place : drawn) {
                assertThat(isReached(place)).as("%d", place).isTrue();
            }
        }
    }

    private static boolean isReached(int place) {
        for (int from : new int[] {0, 21, 30, 97}) {
            for (int a = 0; a <= 3; a++) {
                for (int b = 0; a + b <= 3; b++) {
                    if (Math.abs(place - from) == a * LENGTHS[0] + b * LENGTHS[1]) {
                        return true;
                    }
                }
            }
        }
        return false;
    }
}
