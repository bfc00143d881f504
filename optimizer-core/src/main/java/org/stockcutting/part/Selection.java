package org.stockcutting.part;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Which wood a part may be made of, beyond its material and class.
 *
 * @param binding what the part's group asks for; says nothing where it has no group
 * @param showFaces how many of its faces are seen
 * @param cutFrom where the maker wants it cut from, or null
 * @param grades names of the grades it takes, sorted, each once; empty takes any wood, also wood that nobody graded
 */
public record Selection(
        Binding binding, ShowFaces showFaces, @Nullable CutFrom cutFrom, List<String> grades) {

    public Selection {
        grades = grades.stream().sorted().distinct().toList();
    }

    /** Any wood that fits; a group shares one board, and both faces are seen. */
    public static final Selection NONE = new Selection(Binding.SAME_BOARD, ShowFaces.BOTH, null, List.of());

    /** The same wood, its group bound otherwise. */
    public Selection withBinding(Binding other) {
        return new Selection(other, showFaces, cutFrom, grades);
    }

    /** The same wood, seen from so many sides. */
    public Selection withShowFaces(ShowFaces other) {
        return new Selection(binding, other, cutFrom, grades);
    }

    /** The same wood from this place, or null for any. */
    public Selection withCutFrom(@Nullable CutFrom other) {
        return new Selection(binding, showFaces, other, grades);
    }

    /** The same wood of these grades only; none names any wood. */
    public Selection withGrades(List<String> other) {
        return new Selection(binding, showFaces, cutFrom, other);
    }

    /** True if stock of this grade, or of none, may serve. */
    public boolean takes(@Nullable String grade) {
        return grades.isEmpty() || (grade != null && grades.contains(grade));
    }

    /** The place that was chosen, or null where none was. */
    public CutFrom.@Nullable Place place() {
        return cutFrom == null ? null : cutFrom.place();
    }

    /** True if this entry of stock is the one that was chosen, or none was; where a place was chosen it is the place that binds. */
    public boolean takesFrom(String stock) {
        return cutFrom == null || cutFrom.from() != null || cutFrom.stock().equals(stock);
    }

    /** True if only the good face is seen. */
    public boolean goodFaceOnly() {
        return showFaces == ShowFaces.ONE;
    }
}
