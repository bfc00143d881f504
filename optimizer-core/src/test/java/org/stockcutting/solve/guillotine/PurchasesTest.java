package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;

class PurchasesTest {

    private static StockType board(long length, long cost, int copies) {
        return new StockType(
                length, 8, 0, 0, cost, copies, 0, List.of(), List.of(new StockType.Placing(true, false, 0)));
    }

    private static Model model(StockType... stocks) {
        List<ItemType> items = List.of(new ItemType(10, 2, 20, 40, 40));
        return new Model(new Instance(items, List.of(stocks), 0, 0, Instance.Limits.NONE, List.of(), List.of()));
    }

    @Test
    void everyPurchaseToWhichNothingCanBeAdded() {
        Model model = model(board(50, 0, 3), board(96, 385, StockType.UNLIMITED), board(90, 379, StockType.UNLIMITED));
        List<int[]> within = Purchases.within(model, 1_148);
        // 2 * 385 + 379 = 1,149 is one too much.
        assertThat(within).containsExactly(new int[] {3, 1, 2}, new int[] {3, 0, 3}, new int[] {3, 2, 0});
    }

    @Test
    void noMoreThanAreForSale() {
        Model model = model(board(96, 385, 1), board(90, 379, 1));
        assertThat(Purchases.within(model, 10_000)).containsExactly(new int[] {1, 1});
    }

    @Test
    void nothingWhereThereAreTooManyWays() {
        List<StockType> stocks = new ArrayList<>();
        for (int s = 0; s < 6; s++) {
            stocks.add(board(40 + s, 100 + s, StockType.UNLIMITED));
        }
        assertThat(Purchases.within(model(stocks.toArray(StockType[]::new)), 3_000))
                .isEmpty();
        assertThat(Purchases.within(model(stocks.toArray(StockType[]::new)), 99))
                .containsExactly(new int[6]);
    }
}
