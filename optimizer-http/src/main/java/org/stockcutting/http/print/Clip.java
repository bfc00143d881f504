package org.stockcutting.http.print;

/** Shortens a name to the room there is, and shows that it did. */
final class Clip {

    private Clip() {}

    static String to(String text, int room) {
        if (text.length() <= room) {
            return text;
        }
        return room <= 2 ? text.substring(0, Math.max(0, room)) : text.substring(0, room - 2) + "..";
    }
}
