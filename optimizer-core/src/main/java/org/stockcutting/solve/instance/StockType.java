package org.stockcutting.solve.instance;

import java.util.List;

/**
 * One kind of board. Coordinates are those of the usable rectangle: 0 is where the start trim and edge trim end.
 *
 * @param length usable length, trims taken off
 * @param width usable width, trims taken off
 * @param rawEnd how far beyond the usable length the raw end lies (the end trim), at least 0
 * @param rawFarEdge how far beyond the usable width the raw far edge lies, at least 0
 * @param cost what one board costs under the goal, at least 0
 * @param copies how many there are, or {@link #UNLIMITED}
 * @param offcutValue goal value of one square unit of kept offcut (goal waste), 0 under the other goals
 * @param zones bad rectangles, by x
 * @param places for each item type of the instance: may it lie straight, turned, or not at all on this stock, and which zones it must
 *     keep clear of
 */
public record StockType(
        long length,
        long width,
        long rawEnd,
        long rawFarEdge,
        long cost,
        int copies,
        double offcutValue,
        List<ZoneRect> zones,
        List<Placing> places) {

    public static final int UNLIMITED = -1;

    /** Added to the severity of what shows on the back, and to the class of what shows no back. */
    public static final int FACES = 3;

    public StockType {
        zones = List.copyOf(zones);
        places = List.copyOf(places);
    }

    /**
     * A bad rectangle in usable coordinates, clipped to the usable rectangle; ends are exclusive.
     *
     * @param severity 0 tight knot, 1 blemish, 2 unusable; {@link #FACES} more if it shows on the back only
     * @param metal true if no cut may pass through it
     */
    public record ZoneRect(long x0, long y0, long x1, long y1, int severity, boolean metal) {

        /** True if what has this class of {@link Placing} must keep clear of it. */
        public boolean blocks(int woodClass) {
            boolean unseen = severity >= FACES && woodClass >= FACES;
            return metal || (!unseen && severity % FACES >= woodClass % FACES);
        }
    }

    /**
     * How one item type may lie on this stock.
     *
     * @param straight its length along x
     * @param turned its length along y
     * @param woodClass 0 takes no zone, 1 takes severity 0, 2 takes severities 0 and 1; {@link #FACES} more if the back is not seen;
     *     metal is never taken
     */
    public record Placing(boolean straight, boolean turned, int woodClass) {
        public static final Placing NOWHERE = new Placing(false, false, 0);

        public boolean somewhere() {
            return straight || turned;
        }
    }
}
