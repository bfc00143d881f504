package org.stockcutting.io;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.length.Length;
import org.stockcutting.stock.Zone;

/** Reads the bad zones of an entry on hand. */
final class ZoneReader {

    private ZoneReader() {}

    static List<Zone> read(DocObject entry, Length boardWidth, Reading reading) {
        List<Zone> zones = new ArrayList<>();
        for (DocObject zone : entry.objects("zones")) {
            zones.add(
                    zone == null
                            ? new Zone(Length.ZERO, Or.SIZE, null, null, Zone.Severity.UNUSABLE, Zone.Face.BOTH, false)
                            : zone(zone, boardWidth, reading));
        }
        return zones;
    }

    /** A rectangle of which only one side was measured reaches to the edge of the board on the other. */
    static Zone zone(DocObject zone, Length boardWidth, Reading reading) {
        Length fromEdge = zone.length("fromEdge");
        Length toEdge = zone.length("toEdge");
        if (zone.has("toEdge") && !zone.has("fromEdge")) {
            fromEdge = Length.ZERO;
            reading.filledIn(zone.pointer("fromEdge"), reading.writer().exact(fromEdge));
        } else if (zone.has("fromEdge") && !zone.has("toEdge")) {
            toEdge = boardWidth;
            reading.filledIn(zone.pointer("toEdge"), reading.writer().exact(toEdge));
        }
        return new Zone(
                Or.zero(zone.length("from")),
                Or.size(zone.length("to")),
                fromEdge,
                toEdge,
                Or.of(zone.word("severity", Zone.Severity.values(), Zone.Severity::word), Zone.Severity.UNUSABLE),
                Or.of(zone.word("face", Zone.Face.values(), Zone.Face::word), Zone.Face.BOTH),
                zone.word("kind") != null);
    }
}
