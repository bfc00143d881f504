package org.stockcutting.part;

import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;

/**
 * The maker's own choice of wood for a part, kept by every plan: it lies straight at this place of this board.
 *
 * @param stock id of a single board, sheet or offcut on hand
 * @param from where the rough piece begins, along the length from the raw start end, 0 or more
 * @param edge where it begins across, from the edge where 0 is, or null for right behind the trim of that edge
 */
public record CutFrom(String stock, Length from, @Nullable Length edge) {}
