package org.stockcutting.check;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.material.Grain;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/**
 * The least value of a tiny job by trying everything: every way to share the pieces out over boards, every edge-to-edge arrangement of
 * each share. Unturned pieces where the stock has grain, both ways where it has none; zones only on boards cut along one line.
 */
final class TinyOracle {

    private record Piece(long length, long width) {}

    private record Size(long x, long y) {}

    private final Job job;
    private final long kerf;
    private final List<Piece> pieces = new ArrayList<>();
    private final List<StockItem> stock = new ArrayList<>();
    private final List<List<Size>> straightSizes = new ArrayList<>();
    private final List<List<Size>> freeSizes = new ArrayList<>();
    private BigInteger finished = BigInteger.ZERO;

    TinyOracle(Job job) {
        this.job = job;
        this.kerf = job.shop().kerf().crosscut().nanometres();
        stock.addAll(job.forSale());
        stock.addAll(job.onHand());
        for (Part part : job.parts()) {
            long width = ((Section.Measured) part.section()).width().nanometres();
            for (int i = 0; i < part.quantity(); i++) {
                pieces.add(new Piece(part.length().nanometres(), width));
            }
        }
        for (int mask = 0; mask < 1 << pieces.size(); mask++) {
            straightSizes.add(sizes(mask, straightSizes, false));
            freeSizes.add(sizes(mask, freeSizes, true));
        }
        for (Piece piece : pieces) {
            finished = finished.add(volume(piece.length, piece.width, stock.get(0)));
        }
    }

    private static BigInteger volume(long length, long width, StockItem item) {
        return BigInteger.valueOf(length)
                .multiply(BigInteger.valueOf(width))
                .multiply(BigInteger.valueOf(item.thickness().nanometres()));
    }

    /** Extents of every edge-to-edge arrangement of the pieces in the mask. */
    private List<Size> sizes(int mask, List<List<Size>> smaller, boolean free) {
        List<Size> sizes = new ArrayList<>();
        if (Integer.bitCount(mask) == 1) {
            Piece piece = pieces.get(Integer.numberOfTrailingZeros(mask));
            sizes.add(new Size(piece.length, piece.width));
            if (free) {
                sizes.add(new Size(piece.width, piece.length));
            }
        }
        for (int part = (mask - 1) & mask; part > (mask ^ part); part = (part - 1) & mask) {
            for (Size a : smaller.get(part)) {
                for (Size b : smaller.get(mask ^ part)) {
                    add(sizes, new Size(a.x + kerf + b.x, Math.max(a.y, b.y)));
                    add(sizes, new Size(Math.max(a.x, b.x), a.y + kerf + b.y));
                }
            }
        }
        return sizes;
    }

    private static void add(List<Size> sizes, Size size) {
        if (sizes.stream().noneMatch(s -> s.x <= size.x && s.y <= size.y)) {
            sizes.removeIf(s -> s.x >= size.x && s.y >= size.y);
            sizes.add(size);
        }
    }

    private boolean fits(int mask, StockItem item) {
        if (!item.zones().isEmpty()) {
            return fitsInLine(mask, item, 0);
        }
        boolean free = item.grain() == Grain.ANY;
        return (free ? freeSizes : straightSizes)
                .get(mask).stream()
                        .anyMatch(s -> s.x <= item.length().nanometres()
                                && s.y <= item.width().nanometres());
    }

    private boolean fitsInLine(int mask, StockItem item, long from) {
        if (mask == 0) {
            return true;
        }
        for (int i = 0; i < pieces.size(); i++) {
            if ((mask & 1 << i) == 0) {
                continue;
            }
            long length = pieces.get(i).length;
            List<Long> starts = new ArrayList<>(List.of(from));
            item.zones().forEach(z -> starts.add(Math.max(from, z.to().nanometres())));
            for (long at : starts) {
                boolean clear = at + length <= item.length().nanometres();
                for (Zone zone : item.zones()) {
                    clear &= at + length <= zone.from().nanometres()
                            || at >= zone.to().nanometres();
                }
                if (clear && fitsInLine(mask ^ 1 << i, item, at + length + kerf)) {
                    return true;
                }
            }
        }
        return false;
    }

    private BigInteger cost(int mask, StockItem item) {
        switch (job.goal()) {
            case BOARDS:
                return item instanceof StockItem.ForSale ? BigInteger.ONE : BigInteger.ZERO;
            case COST:
                return item instanceof StockItem.ForSale sale
                        ? sale.price().amount().movePointRight(2).toBigIntegerExact()
                        : BigInteger.ZERO;
            default:
        }
        long left = item.length().nanometres();
        for (int i = 0; i < pieces.size(); i++) {
            left -= (mask & 1 << i) == 0 ? 0 : pieces.get(i).length + kerf;
        }
        BigInteger raw = volume(item.length().nanometres(), item.width().nanometres(), item);
        long rest = left;
        boolean kept = rest > 0
                && job.shop().keepOffcuts().stream()
                        .anyMatch(k -> k.keeps(Form.BOARD, PlanSketch.nm(rest), item.width()));
        return kept ? raw.subtract(volume(rest, item.width().nanometres(), item)) : raw;
    }

    /** The least value with everything placed, or null where not everything can be. */
    BigInteger least() {
        int[] left = new int[stock.size()];
        for (int s = 0; s < left.length; s++) {
            left[s] = stock.get(s).copies().orElse(Integer.MAX_VALUE);
        }
        BigInteger least = least((1 << pieces.size()) - 1, left);
        boolean waste = job.goal() == Goal.WASTE;
        return least == null || !waste ? least : least.subtract(finished);
    }

    private BigInteger least(int open, int[] left) {
        if (open == 0) {
            return BigInteger.ZERO;
        }
        BigInteger best = null;
        int first = Integer.lowestOneBit(open);
        for (int mask = open; mask > 0; mask = (mask - 1) & open) {
            for (int s = 0; s < left.length && (mask & first) != 0; s++) {
                if (left[s] > 0 && fits(mask, stock.get(s))) {
                    left[s]--;
                    BigInteger rest = least(open ^ mask, left);
                    left[s]++;
                    if (rest != null) {
                        BigInteger all = rest.add(cost(mask, stock.get(s)));
                        best = best == null ? all : best.min(all);
                    }
                }
            }
        }
        return best;
    }
}
