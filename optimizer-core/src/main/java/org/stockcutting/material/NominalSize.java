package org.stockcutting.material;

import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;

/**
 * One row of the catalog: a trade name, the size it is billed at, and the size it measures.
 *
 * @param name the trade name, such as {@code 2x4}, {@code 5/4x6}, {@code 4/4}, {@code 38x89}
 * @param nominalThickness thickness for the bill
 * @param nominalWidth width for the bill; null where the name gives only a thickness ({@code 4/4})
 * @param thickness actual dry thickness
 * @param width actual dry width; null where the name gives only a thickness
 * @param source the table this row comes from, with its status
 */
public record NominalSize(
        String name,
        Length nominalThickness,
        @Nullable Length nominalWidth,
        Length thickness,
        @Nullable Length width,
        String source) {}
