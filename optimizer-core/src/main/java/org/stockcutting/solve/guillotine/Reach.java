package org.stockcutting.solve.guillotine;

import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.StockType;

/**
 * What the saws reach on one board, in padded extents: a rip must leave a side no wider than this at the fence and be no longer than
 * that, a crosscut no wider than that. Trims are left out: with them a side is no smaller.
 *
 * @param fence widest smaller side of a rip
 * @param rip longest rip
 * @param crosscut widest crosscut
 */
record Reach(int fence, int rip, int crosscut) {

    /** Saws that reach everything. */
    static final Reach FREE = new Reach(Integer.MAX_VALUE, Integer.MAX_VALUE, Integer.MAX_VALUE);

    static Reach of(Model model, int stock) {
        Instance.Limits limits = model.instance.limits();
        StockType type = model.stock(stock);
        return new Reach(
                padded(limits.ripCapacity(), model.kerfY, type.width() / 2),
                padded(limits.longestRip(), model.kerfX, type.length()),
                padded(limits.crosscutCapacity(), model.kerfY, type.width()));
    }

    private static int padded(long limit, long kerf, long most) {
        return limit >= most ? Integer.MAX_VALUE : Math.toIntExact(limit + kerf);
    }

    boolean isFree() {
        return equals(FREE);
    }
}
