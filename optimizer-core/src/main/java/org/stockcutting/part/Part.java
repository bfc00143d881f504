package org.stockcutting.part;

import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.material.Grain;
import org.stockcutting.material.WoodClass;

/**
 * One line of the parts list.
 *
 * @param id unique name of the line
 * @param quantity how many in one set, at least 1
 * @param length finished length, along the part's own long direction as the maker means it
 * @param section finished section
 * @param material must equal the stock's material
 * @param grain the grain axis asked for, or null for the default of the stock it is cut from
 * @param woodClass how clear the wood must be
 * @param spares extra pieces per job wanted from waste only; never demand, never cost
 * @param making how it is made
 * @param group name of the group it belongs to, or null; what that asks for is in {@code selection}
 * @param note free text, printed only
 * @param edging strips glued to its sides
 * @param shaping what is done to it after it has its size
 * @param selection which wood it may be made of, beyond material and class
 */
public record Part(
        String id,
        int quantity,
        Length length,
        Section section,
        String material,
        @Nullable Grain grain,
        WoodClass woodClass,
        int spares,
        Making making,
        @Nullable String group,
        @Nullable String note,
        Edging edging,
        Shaping shaping,
        Selection selection) {

    /** A part with bare sides that is done when it has its size, of any wood that fits. */
    public Part(
            String id,
            int quantity,
            Length length,
            Section section,
            String material,
            @Nullable Grain grain,
            WoodClass woodClass,
            int spares,
            Making making,
            @Nullable String group,
            @Nullable String note) {
        this(
                id,
                quantity,
                length,
                section,
                material,
                grain,
                woodClass,
                spares,
                making,
                group,
                note,
                Edging.NONE,
                Shaping.NONE,
                Selection.NONE);
    }

    /** The same line under another name, for another number of pieces and spares, in another group. */
    public Part line(String otherId, int otherQuantity, int otherSpares, @Nullable String otherGroup) {
        return new Part(
                otherId,
                otherQuantity,
                length,
                section,
                material,
                grain,
                woodClass,
                otherSpares,
                making,
                otherGroup,
                note,
                edging,
                shaping,
                selection);
    }

    /** So many of it, and so many extra ones from waste. */
    public Part withCounts(int pieces, int extra) {
        return new Part(
                id, pieces, length, section, material, grain, woodClass, extra, making, group, note, edging, shaping,
                selection);
    }

    /** The same line with other strips glued to its sides. */
    public Part withEdging(Edging other) {
        return new Part(
                id, quantity, length, section, material, grain, woodClass, spares, making, group, note, other, shaping,
                selection);
    }

    /** The same line, shaped otherwise. */
    public Part withShaping(Shaping other) {
        return new Part(
                id, quantity, length, section, material, grain, woodClass, spares, making, group, note, edging, other,
                selection);
    }

    /** The same line with another finished section. */
    public Part withSection(Section other) {
        return new Part(
                id, quantity, length, other, material, grain, woodClass, spares, making, group, note, edging, shaping,
                selection);
    }

    /** The same line, so many of it to one blank until they are planed; a nested pair with 1 has a blank for each. */
    public Part withGang(int gang) {
        Taper taper = shaping.taper();
        if (taper != null && taper.nest()) {
            return gang == 2 ? this : withShaping(shaping.withTaper(taper.withNest(false)));
        }
        Ends ends = shaping.ends();
        if (ends != null) {
            return withShaping(shaping.withEnds(ends.withStick(gang)));
        }
        return making instanceof Making.Milled milled ? withMaking(new Making.Milled(milled.profile(), gang)) : this;
    }

    private Part withMaking(Making other) {
        return new Part(
                id, quantity, length, section, material, grain, woodClass, spares, other, group, note, edging, shaping,
                selection);
    }

    /** The same line of other wood. */
    public Part withSelection(Selection other) {
        return new Part(
                id, quantity, length, section, material, grain, woodClass, spares, making, group, note, edging, shaping,
                other);
    }

    /** The same line with this side smaller; a trade size has no width to make smaller. */
    public Part smaller(Side side, Length by) {
        Length otherLength = side == Side.LENGTH ? length.minus(by) : length;
        Section otherSection = side == Side.WIDTH && section instanceof Section.Measured measured
                ? new Section.Measured(measured.width().minus(by), measured.thickness())
                : section;
        return new Part(
                id,
                quantity,
                otherLength,
                otherSection,
                material,
                grain,
                woodClass,
                spares,
                making,
                group,
                note,
                edging,
                shaping,
                selection);
    }

    /** True if two copies lie head to foot in one straight blank. */
    public boolean isNested() {
        Taper taper = shaping.taper();
        return taper != null && taper.nest();
    }

    /** How many copies of it come out of one rough piece: short or mitred parts one behind the other, nested ones in pairs; else 1. */
    public int gang() {
        if (isNested()) {
            return 2;
        }
        if (shaping.ends() != null) {
            return shaping.ends().stick();
        }
        return making instanceof Making.Milled milled ? milled.gang() : 1;
    }

    /** Numbers of the copies in the gang that begins with this one. */
    public List<Integer> gangFrom(int first) {
        return IntStream.range(first, first + gang()).boxed().toList();
    }

    /** Finished length without its edging. */
    public Length coreLength() {
        return length.minus(edging.fromLength());
    }

    /** Finished section without its edging. */
    public Section coreSection() {
        return section instanceof Section.Measured measured
                ? new Section.Measured(measured.width().minus(edging.fromWidth()), measured.thickness())
                : section;
    }
}
