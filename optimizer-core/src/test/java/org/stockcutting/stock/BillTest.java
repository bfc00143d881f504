package org.stockcutting.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.Currency;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthReader;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.material.Grain;
import org.stockcutting.material.NominalCatalog;
import org.stockcutting.material.NominalSize;

class BillTest {

    private static final Currency USD = Currency.getInstance("USD");
    private static final LengthReader INCHES = new LengthReader(LengthUnit.INCH, '.');

    /**
     * Board feet: thickness x width x length in inches / 144, under 1 in counting as 1 (woodworkingtips.com etip04: 1 x 9 x 96 gives 6,
     * 1-1/2 x 9 x 96 gives 9). Nominal softwood: 2x6, 8 ft = 8.00; the per-foot figures of common softwood tables times 8 ft else.
     */
    @ParameterizedTest
    @CsvSource({
        ", 1, 9, 96, 6.00",
        ", 1-1/2, 9, 96, 9.00",
        ", 3/4, 9, 96, 6.00",
        "2x6, 1-1/2, 5-1/2, 96, 8.00",
        "2x4, 1-1/2, 3-1/2, 96, 5.33",
        "1x12, 3/4, 11-1/4, 96, 8.00",
        "5/4x6, 1, 5-1/2, 96, 5.00",
        "4x4, 3-1/2, 3-1/2, 96, 10.67",
        "1/2x6, 7/16, 5-1/2, 96, 4.00",
        "4/4, 15/16, 6, 96, 4.00",
        "8/4 S2S, 1-3/4, 6, 96, 8.00",
        "38x89, 1-1/2, 3-1/2, 96, 5.33",
    })
    void boardFeetFollowTheTradeName(String nominal, String thickness, String width, String length, String boardFeet) {
        assertThat(Bill.boardFeet(board(nominal, thickness, width, length, null)))
                .isEqualTo(new BigDecimal(boardFeet));
    }

    @Test
    void boardFeetOfManyAreRoundedOnce() {
        StockItem twoByFour = board("2x4", "1-1/2", "3-1/2", "96", null);
        // Exactly 16/3 each: rounded one by one 100 of them would come to 533.00.
        assertThat(Bill.boardFeet(twoByFour, 2)).isEqualTo(new BigDecimal("10.67"));
        assertThat(Bill.boardFeet(twoByFour, 100)).isEqualTo(new BigDecimal("533.33"));
    }

    /** Each unit by hand from its definition; a metre is 39.37 in to two decimals, a square foot 144 sq in. */
    @ParameterizedTest
    @CsvSource({
        "3.98, PIECE, 3.98",
        "0.92, FOOT, 9.20",
        // 10 ft = 3.048 m; 3.048 x 3.05 = 9.2964
        "3.05, METRE, 9.30",
        // 2x6, 10 ft = 10 board feet, whatever it measures
        "0.875, BOARD_FOOT, 8.75",
        "875, THOUSAND_BOARD_FEET, 8.75",
        // 6 in x 10 ft = 5 sq ft
        "1.70, SQUARE_FOOT, 8.50",
        // 0.1524 m x 3.048 m = 0.4645152 m2; x 20 = 9.290304
        "20, SQUARE_METRE, 9.29",
        // 0.0508 x 0.1524 x 3.048 m3 = 0.023597372; x 400 = 9.4389
        "400, CUBIC_METRE, 9.44",
    })
    void pricesForEveryUnit(String amount, PriceUnit per, String price) {
        StockItem.ForSale item = board("2x6", "1-1/2", "5-1/2", "120", new Price(new BigDecimal(amount), USD, per));
        assertThat(Bill.price(item)).isEqualTo(new Money(new BigDecimal(price), USD));
    }

    @Test
    void measuredSizesAreBilledWhereThereIsNoTradeName() {
        Price perSquareFoot = new Price(new BigDecimal("2"), USD, PriceUnit.SQUARE_FOOT);
        assertThat(Bill.price(board(null, "23/32", "48", "96", perSquareFoot)).amount())
                .isEqualTo(new BigDecimal("64.00"));
        Price perCubicMetre = new Price(new BigDecimal("1000"), USD, PriceUnit.CUBIC_METRE);
        // 25.4 x 254 x 2540 mm = 0.016387064 m3
        assertThat(Bill.price(board(null, "1", "10", "100", perCubicMetre)).amount())
                .isEqualTo(new BigDecimal("16.39"));
    }

    @Test
    void roundsHalfUpExactlyOnce() {
        // 1.005 is a half in decimals, and would be less than one in binary floating point.
        assertThat(price("1.005", USD)).isEqualTo(new BigDecimal("1.01"));
        assertThat(price("1.0049999999999999999999", USD)).isEqualTo(new BigDecimal("1.00"));
        assertThat(price("0.5", Currency.getInstance("JPY"))).isEqualTo(new BigDecimal("1"));
        assertThat(price("1.0005", Currency.getInstance("KWD"))).isEqualTo(new BigDecimal("1.001"));
        // A third of a foot at 0.015 is half a cent; rounding twice would lose it.
        Price perFoot = new Price(new BigDecimal("0.015"), USD, PriceUnit.FOOT);
        assertThat(Bill.price(board(null, "1", "4", "4", perFoot)).amount()).isEqualTo(new BigDecimal("0.01"));
    }

    @Test
    void needsAPrice() {
        assertThatThrownBy(() -> Bill.price(board("2x4", "1-1/2", "3-1/2", "96", null)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("no price");
    }

    private static BigDecimal price(String amount, Currency currency) {
        return Bill.price(board(null, "1", "4", "48", new Price(new BigDecimal(amount), currency, PriceUnit.PIECE)))
                .amount();
    }

    private static StockItem.ForSale board(String nominal, String thickness, String width, String length, Price price) {
        NominalSize size =
                nominal == null ? null : NominalCatalog.standard().find(nominal).orElseThrow();
        return new StockItem.ForSale(
                "b",
                Form.BOARD,
                size,
                inches(length),
                inches(width),
                inches(thickness),
                "pine",
                Grain.LENGTH,
                null,
                null,
                price);
    }

    private static Length inches(String text) {
        return INCHES.read(text);
    }
}
