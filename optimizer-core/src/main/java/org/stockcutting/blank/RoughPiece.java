package org.stockcutting.blank;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.part.Part;

/**
 * What is cut from stock for one line of the parts list, with the trail back to it. A panel whose staves have several widths has a rough
 * piece for each width.
 *
 * @param part the line it becomes
 * @param kind whole part, stave of a panel, or ply of a lamination
 * @param perPart how many rough pieces of this size one finished part takes
 * @param members which of all its rough pieces these are
 * @param length rough length
 * @param section rough section
 * @param jointedWidth for a stave: its width once jointed, what it adds to the panel; else null
 * @param trail the sizes on the way, finished first, rough last
 */
public record RoughPiece(
        Part part,
        Kind kind,
        int perPart,
        Members members,
        Length length,
        RoughSection section,
        @Nullable Length jointedWidth,
        List<Stage> trail) {

    public RoughPiece {
        trail = List.copyOf(trail);
    }

    /**
     * Place among all rough pieces of one finished part.
     *
     * @param before how many come before the first of these: 0 where all have one size
     * @param of how many there are of all sizes together
     */
    public record Members(int before, int of) {}

    /** A stave, ply or whole part where all rough pieces of one part have the same size. */
    public static RoughPiece uniform(
            Part part,
            Kind kind,
            int perPart,
            Length length,
            RoughSection section,
            @Nullable Length jointedWidth,
            List<Stage> trail) {
        return new RoughPiece(part, kind, perPart, new Members(0, perPart), length, section, jointedWidth, trail);
    }

    /**
     * Some staves of the same panel, jointed to another width.
     *
     * @param count how many there are of this width
     * @param before how many staves of the panel come before them
     * @throws IllegalStateException if this is no stave
     */
    public RoughPiece staves(int count, int before, Length jointed) {
        if (jointedWidth == null || !(section instanceof RoughSection.Sized sized)) {
            throw new IllegalStateException(part.id() + " is not glued up from staves");
        }
        Length width = sized.width().minus(jointedWidth).plus(jointed);
        List<Stage> sizes = new ArrayList<>(trail);
        Stage last = sizes.remove(sizes.size() - 1);
        sizes.add(new Stage(last.name(), last.length(), width, last.thickness()));
        return new RoughPiece(
                part,
                kind,
                count,
                new Members(before, members.of()),
                length,
                new RoughSection.Sized(width, sized.thickness(), sized.planed()),
                jointed,
                sizes);
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
