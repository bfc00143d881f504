package org.stockcutting.blank;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.part.Part;

/**
 * What is cut from stock for one line of the parts list, with the trail back to it.
 *
 * @param part the line it becomes
 * @param kind whole part, stave of a panel, or ply of a lamination
 * @param perPart how many rough pieces one finished part takes
 * @param length rough length
 * @param section rough section
 * @param jointedWidth for a stave: its width once jointed, what it adds to the panel; else null
 * @param trail the sizes on the way, finished first, rough last
 */
public record RoughPiece(
        Part part,
        Kind kind,
        int perPart,
        Length length,
        RoughSection section,
        @Nullable Length jointedWidth,
        List<Stage> trail) {

    public RoughPiece {
        trail = List.copyOf(trail);
    }

    /** What the rough piece is of its part. */
    public enum Kind {
        WHOLE,
        STAVE,
        PLY
    }

    /**
     * One size on the way from finished to rough.
     *
     * @param name {@code finished}, {@code core} (without edging), {@code blank} (glued-up panel or lamination) or {@code rough}
     * @param length length at that stage
     * @param width width, or null where the board is taken as it comes
     * @param thickness thickness, or null where the board is taken as it comes
     */
    public record Stage(
            String name,
            Length length,
            @Nullable Length width,
            @Nullable Length thickness) {}
}
