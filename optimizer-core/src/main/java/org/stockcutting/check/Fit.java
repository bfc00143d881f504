package org.stockcutting.check;

import org.stockcutting.job.ShopRules;
import org.stockcutting.material.Grain;
import org.stockcutting.part.CutFrom;
import org.stockcutting.stock.StockItem;

/** The inspector's own answer to whether a rough piece can come from a board at all; zones and saws aside. */
final class Fit {

    private Fit() {}

    /** The wood that the part asks for: its material, a grade that it takes, and the entry that was chosen for it. */
    static boolean material(Rough rough, Board board) {
        return rough.part().material().equals(board.item().material()) && grade(rough, board) && source(rough, board);
    }

    /** A part that names grades takes no others, and no wood that nobody graded. */
    static boolean grade(Rough rough, Board board) {
        String graded = board.item().grade();
        boolean any = rough.part().selection().grades().isEmpty();
        return any || rough.part().selection().grades().stream().anyMatch(named -> named.equals(graded));
    }

    /** A part for which an entry of stock was chosen, without a place on it, comes from there only. */
    static boolean source(Rough rough, Board board) {
        CutFrom chosen = rough.part().selection().cutFrom();
        return chosen == null || chosen.from() != null || chosen.stock().equals(board.id());
    }

    /** Trade size, or thickness; a width that is too great shows when the piece is placed. */
    static boolean section(Rough rough, Board board, ShopRules shop) {
        if (rough.asItComes()) {
            StockItem item = board.item();
            return item.nominal() != null && item.nominal().name().equals(rough.nominal());
        }
        long over = board.thickness() - rough.thickness();
        if (rough.planed()) {
            return board.evenness().flattens(over, rough.length())
                    && over <= shop.maxPlaning().nanometres();
        }
        return Math.abs(over) <= shop.thicknessTolerance().nanometres();
    }

    /** A piece lies turned exactly when its own axis and the stock's differ; where either has none it may lie both ways. */
    static boolean lie(Rough rough, Board board, boolean turned) {
        if (rough.asItComes()) {
            return !turned;
        }
        Grain stock = board.grain();
        Grain asked = rough.part().grain();
        Grain own = asked != null ? asked : stock == Grain.ANY ? Grain.ANY : Grain.LENGTH;
        if (own == Grain.ANY || stock == Grain.ANY) {
            return true;
        }
        return turned == (own != stock);
    }

    static boolean straight(Rough rough, Board board) {
        Rect usable = board.usable();
        return lie(rough, board, false)
                && rough.length() <= usable.length()
                && isWideEnough(rough, board, rough.leastWidthOn(board), rough.length())
                && !usable.isEmpty();
    }

    static boolean turned(Rough rough, Board board) {
        Rect usable = board.usable();
        return lie(rough, board, true)
                && isWideEnough(rough, board, rough.length(), rough.leastWidth())
                && rough.leastWidth() <= usable.length();
    }

    /** True if the usable width is enough for so much across, and for the crook of what is ripped; a whole board is not ripped. */
    static boolean isWideEnough(Rough rough, Board board, long across, long along) {
        long free = board.usable().width() - across;
        return rough.asItComes() ? free >= 0 : board.evenness().straightens(free, along);
    }

    /** True if one piece alone can come from the board. */
    static boolean anyhow(Rough rough, Board board, ShopRules shop) {
        return !board.barred()
                && material(rough, board)
                && section(rough, board, shop)
                && (straight(rough, board) || turned(rough, board));
    }
}
