package org.stockcutting.job;

import java.util.Currency;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthUnit;

/**
 * How the job is written and how its answer is printed.
 *
 * @param unit unit of plain numbers
 * @param decimal decimal mark of text, {@code '.'} or {@code ','}
 * @param precision step that printed lengths are rounded to, or null to print them exactly; documents are always exact
 * @param currency currency of plain amounts
 */
public record Writing(
        LengthUnit unit, char decimal, @Nullable Length precision, Currency currency) {}
