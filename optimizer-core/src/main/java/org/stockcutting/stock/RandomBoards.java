package org.stockcutting.stock;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.material.Grain;
import org.stockcutting.material.NominalSize;

/**
 * Boards of random length and width that are bought by volume: nobody knows before they are measured which boards they will be, so they are
 * no stock that a plan is cut from. What has to be bought of them is estimated; measured, they are boards on hand.
 *
 * @param id unique over everything for sale and on hand
 * @param nominal trade thickness such as 4/4, which the bill follows, or null
 * @param leastLength shortest board
 * @param length longest board
 * @param leastWidth narrowest board
 * @param width widest board
 * @param thickness thickness as it is sold
 * @param material what it is
 * @param ownTrim trim instead of the shop's, or null
 * @param price price by volume, or null
 * @param grade name of the grade, or null
 */
public record RandomBoards(
        String id,
        @Nullable NominalSize nominal,
        Length leastLength,
        Length length,
        Length leastWidth,
        Length width,
        Length thickness,
        String material,
        @Nullable Trim ownTrim,
        @Nullable Price price,
        @Nullable String grade) {

    /** Thickness that is billed: the trade's where there is one. */
    public Length billedThickness() {
        return nominal == null ? thickness : nominal.nominalThickness();
    }

    /** The largest board that can be among them; no longer than the car takes, where that is told. */
    public StockItem.OnHand largest(@Nullable Length carLength) {
        return board(carLength == null ? length : length.min(carLength), width, List.of());
    }

    /** One of them, measured. */
    public StockItem.OnHand board(Length boardLength, Length boardWidth, List<Zone> zones) {
        return new StockItem.OnHand(
                id,
                Form.BOARD,
                nominal,
                boardLength,
                boardWidth,
                thickness,
                material,
                Grain.LENGTH,
                ownTrim,
                1,
                zones,
                Condition.TRUE,
                grade);
    }
}
