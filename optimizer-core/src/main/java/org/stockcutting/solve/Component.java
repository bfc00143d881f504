package org.stockcutting.solve;

import java.util.List;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.stock.StockItem;

/**
 * Parts and stock that have nothing to do with the rest of the job: a connected component of the graph that joins a rough piece and a
 * stock item where the one can come from the other.
 *
 * @param pieces rough pieces, by part id
 * @param stock stock items that at least one of them fits, by id
 */
public record Component(List<RoughPiece> pieces, List<StockItem> stock) {
    public Component {
        pieces = List.copyOf(pieces);
        stock = List.copyOf(stock);
    }
}
