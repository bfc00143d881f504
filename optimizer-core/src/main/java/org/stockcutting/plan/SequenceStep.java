package org.stockcutting.plan;

import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.part.Shaping;
import org.stockcutting.part.Taper;
import org.stockcutting.pattern.Direction;

/**
 * One step on the way from raw board to finished part.
 *
 * @param step counted from 1
 * @param kind what is done
 * @param setUp the stop, fence or gauge position the step is made at, or null where it needs none
 * @param board {@code {stock} #k}, k counted per stock id in layout order; null once the work is no longer of one board, and for a rest
 * @param cut where the saw goes, or null where nothing is sawn
 * @param piece the piece that is whole after the cut, or that the step works on; null where there is none
 * @param behind the second piece that the same cut makes whole, or null
 * @param caution usual cautions for this step, or null
 * @param reason why a shorter piece comes before a longer one of the same stick, the stick is cut from its far end, or no stop is set; else null
 * @param shape what is marked, bored or tapered, or null
 */
public record SequenceStep(
        int step,
        StepKind kind,
        @Nullable SetUp setUp,
        @Nullable String board,
        @Nullable SawCut cut,
        @Nullable Piece piece,
        @Nullable Piece behind,
        @Nullable String caution,
        @Nullable String reason,
        @Nullable Shape shape) {

    /** A step that marks, bores and tapers nothing. */
    public SequenceStep(
            int step,
            StepKind kind,
            @Nullable SetUp setUp,
            @Nullable String board,
            @Nullable SawCut cut,
            @Nullable Piece piece,
            @Nullable Piece behind,
            @Nullable String caution,
            @Nullable String reason) {
        this(step, kind, setUp, board, cut, piece, behind, caution, reason, null);
    }

    /** The same step at another place of the sequence. */
    public SequenceStep numbered(int number) {
        return new SequenceStep(number, kind, setUp, board, cut, piece, behind, caution, reason, shape);
    }

    /**
     * One position of one stop, fence or gauge on one machine, until it is moved.
     *
     * @param machine {@code crosscut}, {@code rip}, {@code planer}, {@code gauge}, {@code drill}, or {@code mitre-} with the angle of a saw set off square
     * @param stop distance from stop or fence to blade, the thickness that the planer leaves, the distance from the gauge's fence to its
     *     pin, or the diameter of the bit
     */
    public record SetUp(String machine, Length stop) {}

    /**
     * One pass of a saw. On a board that is not cut to its pieces yet all positions are the board's raw coordinates. Where a piece that is
     * already whole is brought to size, {@code on} starts at 0 and 0, {@code reading} is the size it gets, and {@code to} is null: the end
     * or edge is squared and the rest falls.
     *
     * @param direction which way
     * @param on the wood that lies on the saw
     * @param reading running tape reading of the cut
     * @param to where the wood goes on behind the saw's slot, or null
     * @param left what is left in hand, or null if nothing is
     * @param slack how much may still be lost of what is left before the plan breaks
     */
    public record SawCut(
            Direction direction,
            Wood on,
            Length reading,
            @Nullable Length to,
            @Nullable Wood left,
            Length slack) {}

    /**
     * A rectangle of wood.
     *
     * @param x where it starts along the board
     * @param y where it starts across the board
     * @param length extent along the board
     * @param width extent across the board
     */
    public record Wood(Length x, Length y, Length length, Length width) {}

    /**
     * One copy of a part, or one stave or ply of it.
     *
     * @param part id of the part
     * @param number which copy, counted from 1; beyond the demand it is a spare
     * @param member which stave or ply, counted from 1; null for a whole part or a glued-up one
     */
    public record Piece(String part, int number, @Nullable Integer member) {}

    /**
     * What is done to a piece that has its size.
     *
     * @param purpose what a mark is for; {@link #FROM_THE_WORK} where its place is taken off the work; null for a taper
     * @param hand left or right, or null where all copies are alike
     * @param fromEnd reading from the reference end; where a taper begins
     * @param fromEdge reading from the face edge
     * @param bore diameter of a hole
     * @param depth of a hole or of what is marked; null is unsaid, and right through for a hole
     * @param foot what a taper leaves at the far end
     * @param faces which faces are tapered
     */
    public record Shape(
            @Nullable String purpose,
            Shaping.@Nullable Hand hand,
            @Nullable Length fromEnd,
            @Nullable Length fromEdge,
            @Nullable Length bore,
            @Nullable Length depth,
            @Nullable Length foot,
            Taper.@Nullable Faces faces) {

        /** Purpose of a mark whose place only the work can give. */
        public static final String FROM_THE_WORK = "from the work";
    }
}
