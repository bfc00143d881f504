package org.stockcutting.pattern.fit;

import org.stockcutting.job.ShopRules;
import org.stockcutting.length.Length;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Trim;

/**
 * The rectangle of a piece of stock that parts may use: what is left inside the trims. Raw coordinates.
 *
 * @param x0 where the start trim ends
 * @param y0 where the edge trim ends
 * @param x1 where the end trim begins
 * @param y1 where the far-edge trim begins
 */
public record UsableArea(Length x0, Length y0, Length x1, Length y1) {

    /** The area of this stock in this shop: the stock's own trim where it has one, else the shop's for its form. */
    public static UsableArea of(StockItem stock, ShopRules shop) {
        Trim trim = trimOf(stock, shop);
        return new UsableArea(
                trim.startOrZero(),
                trim.edgeOrZero(),
                stock.length().minus(trim.endOrZero()),
                stock.width().minus(trim.farEdgeOrZero()));
    }

    /** The trim that applies to this stock. */
    public static Trim trimOf(StockItem stock, ShopRules shop) {
        return stock.trimIn(stock.form() == Form.BOARD ? shop.boardTrim() : shop.sheetTrim());
    }

    public Length length() {
        return x1.minus(x0);
    }

    public Length width() {
        return y1.minus(y0);
    }
}
