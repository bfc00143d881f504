package org.stockcutting.check;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class ZoneGridTest {

    private static final long WORK = 300_000_000L;
    private static final long CELLS = 6_000_000L;

    /** One piece along takes all but a little of the board, so hardly any pair of places is a cell, however many places there are. */
    @Test
    void aBoardForOnePieceHasFewPlacesAllTheSame() {
        long[] thin = {700, 1_100, 1_301};
        ZoneGrid.Axis along =
                new ZoneGrid.Axis(100_000_000, new long[] {99_999_000}, new long[] {17}, new long[] {5_000});
        ZoneGrid.Axis across = new ZoneGrid.Axis(10_000, thin, new long[] {1_000}, new long[] {2_000});
        ZoneGrid grid = ZoneGrid.of(along, across, WORK, CELLS);
        assertThat(grid).isNotNull();
        assertThat(grid.across().count()).isLessThanOrEqualTo(ZoneGrid.MOST_PLACES);
        assertThat(grid.along().count()).isLessThanOrEqualTo(ZoneGrid.MOST_PLACES);
    }

    @Test
    void aSmallBoardHasAllItsSumsAsPlaces() {
        ZoneGrid.Axis axis = new ZoneGrid.Axis(40, new long[] {7, 11}, new long[] {9}, new long[] {20});
        ZoneGrid grid = ZoneGrid.of(axis, axis, WORK, CELLS);
        assertThat(grid).isNotNull();
        assertThat(grid.along().isExact()).isTrue();
        assertThat(grid.along().at()).contains(0, 7, 11, 14, 18, 9, 16, 40);
    }
}
