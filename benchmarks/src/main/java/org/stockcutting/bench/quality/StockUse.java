package org.stockcutting.bench.quality;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.StockItem;

/**
 * What one plan took of one stock length of one material.
 *
 * @param material of the stock
 * @param millimetres its length
 * @param boards how many boards or sheets
 * @param filled share of their area that became rough pieces, four decimals
 */
record StockUse(String material, BigDecimal millimetres, int boards, BigDecimal filled) {

    private static final String BETWEEN_FIELDS = "|";
    private static final String BETWEEN_USES = ";";
    private static final int DECIMALS = 4;

    /** What stands under the same material and length. */
    private static final class Sum {
        private int boards;
        private BigInteger filled = BigInteger.ZERO;
        private BigInteger area = BigInteger.ZERO;

        private void add(Layout layout) {
            BigInteger repeat = BigInteger.valueOf(layout.repeat());
            boards += layout.repeat();
            area = area.add(area(layout.length(), layout.width()).multiply(repeat));
            for (PlacedPiece piece : layout.pieces()) {
                filled = filled.add(area(piece.length(), piece.width()).multiply(repeat));
            }
        }
    }

    /** By material, then length. */
    static List<StockUse> of(Job job, CuttingPlan plan) {
        Map<String, String> materials = new HashMap<>();
        job.forSale().forEach(item -> materials.put(item.id(), word(item)));
        job.onHand().forEach(item -> materials.put(item.id(), word(item)));
        Map<String, Map<Length, Sum>> sums = new TreeMap<>();
        for (Layout layout : plan.layouts()) {
            sums.computeIfAbsent(materials.getOrDefault(layout.stock(), ""), m -> new TreeMap<>())
                    .computeIfAbsent(layout.length(), l -> new Sum())
                    .add(layout);
        }
        List<StockUse> uses = new ArrayList<>();
        sums.forEach((material, lengths) -> lengths.forEach((length, sum) -> uses.add(new StockUse(
                material, millimetres(length), sum.boards, Shares.quotient(sum.filled, sum.area, DECIMALS)))));
        return uses;
    }

    private static String word(StockItem item) {
        return item.material().replace(BETWEEN_FIELDS, " ").replace(BETWEEN_USES, " ");
    }

    private static BigInteger area(Length length, Length width) {
        return BigInteger.valueOf(length.nanometres()).multiply(BigInteger.valueOf(width.nanometres()));
    }

    private static BigDecimal millimetres(Length length) {
        return BigDecimal.valueOf(length.nanometres())
                .divide(BigDecimal.valueOf(LengthUnit.MILLIMETRE.nanometres()))
                .stripTrailingZeros();
    }

    static String write(List<StockUse> uses) {
        List<String> words = new ArrayList<>();
        for (StockUse use : uses) {
            words.add(String.join(
                    BETWEEN_FIELDS,
                    use.material,
                    use.millimetres.toPlainString(),
                    String.valueOf(use.boards),
                    use.filled.toPlainString()));
        }
        return String.join(BETWEEN_USES, words);
    }

    /**
     * Reads what {@link #write} wrote.
     *
     * @throws IllegalArgumentException if it is something else
     */
    static List<StockUse> read(String text) {
        List<StockUse> uses = new ArrayList<>();
        for (String word : text.isEmpty() ? new String[0] : text.split(BETWEEN_USES, -1)) {
            String[] fields = word.split("\\|", -1);
            if (fields.length != 4) {
                throw new IllegalArgumentException(
                        "got \"" + word + "\", wanted material|length|boards|filled in the column stock");
            }
            uses.add(new StockUse(
                    fields[0], new BigDecimal(fields[1]), Integer.parseInt(fields[2]), new BigDecimal(fields[3])));
        }
        return uses;
    }
}
