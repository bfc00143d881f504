package org.stockcutting.job;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import org.stockcutting.material.Density;

/**
 * What the maker knows better than the table about a material of the job.
 *
 * @param like name of a wood of the table that the material counts as, or null where its own name does
 * @param density measured or told by the yard, or null for the table's
 * @param movement change of width for each per cent of moisture as a share of the width, or null for the table's (flat-sawn)
 */
public record OwnWood(
        @Nullable String like,
        @Nullable Density density,
        @Nullable BigDecimal movement) {}
