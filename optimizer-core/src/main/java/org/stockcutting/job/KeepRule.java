package org.stockcutting.job;

import org.stockcutting.length.Length;
import org.stockcutting.stock.Form;

/**
 * An offcut of this form at least this long and this wide is worth keeping. Length is measured along x of the stock it comes from.
 *
 * @param form form of the stock it comes from
 * @param length least length
 * @param width least width
 */
public record KeepRule(Form form, Length length, Length width) {

    /** True if an offcut of the given form and extent is worth keeping under this rule. */
    public boolean keeps(Form offcutForm, Length offcutLength, Length offcutWidth) {
        return form == offcutForm && !offcutLength.isLessThan(length) && !offcutWidth.isLessThan(width);
    }
}
