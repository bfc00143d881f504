package org.stockcutting.part;

import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;

/**
 * One thing that is marked on a part, and bored where it is a hole. The readings are those of the part as it leaves saw and planer, before
 * strips are glued to its sides.
 *
 * @param purpose what it is for, printed
 * @param fromEnd reading from the reference end, taken off a story stick; null for a line along the whole part
 * @param fromEdge setting of the marking gauge from the face edge; null for a line across the whole part
 * @param bore diameter of the hole whose centre both readings give, or null
 * @param depth how deep it is cut or bored, or null: a hole goes through then
 */
public record Mark(
        String purpose,
        @Nullable Length fromEnd,
        @Nullable Length fromEdge,
        @Nullable Length bore,
        @Nullable Length depth) {}
