package org.stockcutting.draw;

import java.util.List;

/**
 * A layout drawn for a printed page, whose table of pieces stands beside it.
 *
 * @param drawing the picture, in points
 * @param notes what could not be said in the picture, one sentence each
 * @param complete true if every piece carries its mark and its size
 */
public record PagePicture(LayoutDrawing drawing, List<String> notes, boolean complete) {

    public PagePicture {
        notes = List.copyOf(notes);
    }
}
