package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.FaultCode;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.stock.Zone;

/**
 * Bad zones in one cell, as they are called out from the tape: {@code 0..3; 41..43-1/2 tight-knot; 58..61 @0..1-1/2 up}. Zones are
 * separated by semicolons; behind {@code from..to} stand, in any order, a severity, a face, {@code metal}, and behind {@code @} the
 * stretch across the board.
 */
final class ZoneText {

    private static final List<String> SEVERITIES = Words.of(Zone.Severity.values(), Zone.Severity::word);
    private static final List<String> FACES = Words.of(Zone.Face.values(), Zone.Face::word);
    private static final String TO = "..";

    private ZoneText() {}

    /** The zones of a cell as a job document has them; a faulty one is reported at this place and left out. */
    static ArrayNode read(String cell, String place, Faults faults) {
        ArrayNode zones = JsonOutput.list();
        for (String text : cell.split(";")) {
            if (!text.isBlank()) {
                ObjectNode zone = zone(text.strip());
                if (zone == null) {
                    faults.add(
                            place,
                            FaultCode.NOT_A_ZONE,
                            text.strip(),
                            "from..to, such as 41..43-1/2 tight-knot @0..1-1/2",
                            "\"" + Faults.shown(text.strip())
                                    + "\" is no bad zone; write where it begins and ends, such as 41..43-1/2, then"
                                    + " a word such as tight-knot, then @0..1-1/2 for a part of the width.");
                } else {
                    zones.add(zone);
                }
            }
        }
        return zones;
    }

    private static @Nullable ObjectNode zone(String text) {
        ObjectNode zone = JsonOutput.object();
        int at = text.indexOf('@');
        String along = words(at < 0 ? text : text.substring(0, at), zone);
        boolean whole = range(along, "from", "to", zone);
        if (whole && at >= 0) {
            whole = range(words(text.substring(at + 1), zone), "fromEdge", "toEdge", zone);
        }
        return whole ? zone : null;
    }

    /** Takes known words off the end; returns what stands before them. */
    private static String words(String text, ObjectNode zone) {
        String rest = text.strip();
        while (true) {
            int space = rest.lastIndexOf(' ');
            String word = rest.substring(space + 1);
            String name = SEVERITIES.contains(word)
                    ? "severity"
                    : FACES.contains(word) ? "face" : word.equals(Fields.METAL) ? "kind" : null;
            if (name == null || space < 0 || zone.has(name)) {
                return rest;
            }
            zone.put(name, word);
            rest = rest.substring(0, space).strip();
        }
    }

    private static boolean range(String text, String from, String to, ObjectNode zone) {
        int dots = text.indexOf(TO);
        if (dots <= 0 || dots + TO.length() >= text.length()) {
            return false;
        }
        zone.put(from, text.substring(0, dots).strip());
        zone.put(to, text.substring(dots + TO.length()).strip());
        return true;
    }

    static String write(List<Zone> zones, LengthWriter lengths) {
        return zones.stream().map(zone -> write(zone, lengths)).collect(Collectors.joining("; "));
    }

    private static String write(Zone zone, LengthWriter lengths) {
        StringBuilder text = new StringBuilder(lengths.exact(zone.from()) + TO + lengths.exact(zone.to()));
        if (zone.fromEdge() != null && zone.toEdge() != null) {
            text.append(" @").append(lengths.exact(zone.fromEdge()));
            text.append(TO).append(lengths.exact(zone.toEdge()));
        }
        if (zone.severity() != Zone.Severity.UNUSABLE) {
            text.append(' ').append(zone.severity().word());
        }
        if (zone.face() != Zone.Face.BOTH) {
            text.append(' ').append(zone.face().word());
        }
        return zone.metal() ? text + " " + Fields.METAL : text.toString();
    }
}
