package org.stockcutting.solve.layout;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.blank.FinishedVolume;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobOrder;
import org.stockcutting.length.Length;
import org.stockcutting.length.Volume;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.Bill;
import org.stockcutting.stock.Money;
import org.stockcutting.stock.Purchase;
import org.stockcutting.stock.StockItem;

/** What layouts are worth under the job's goal, exactly. */
public final class Valuation {

    private final Job job;
    private final Map<String, StockItem> stock = new HashMap<>();
    private final Map<String, Part> parts = new HashMap<>();

    public Valuation(Job job) {
        this.job = job;
        JobOrder.stock(job).forEach(item -> stock.put(item.id(), item));
        job.parts().forEach(part -> parts.put(part.id(), part));
    }

    /** Atomic units of the goal. */
    public BigInteger value(List<Layout> layouts) {
        if (job.goal() == Goal.WASTE) {
            BigInteger volume = BigInteger.ZERO;
            for (Layout layout : layouts) {
                volume = volume.add(wood(layout).multiply(BigInteger.valueOf(layout.repeat())));
            }
            return volume.subtract(placedVolume(layouts).cubicNanometres());
        }
        BigInteger value = BigInteger.ZERO;
        for (Purchase purchase : purchases(layouts)) {
            Money total = purchase.total();
            boolean boards = job.goal() == Goal.BOARDS;
            value = value.add(BigInteger.valueOf(boards ? purchase.pieces() : total == null ? 0 : total.minorUnits()));
        }
        return value;
    }

    /** What is bought of each entry, whole packs and all. */
    private List<Purchase> purchases(List<Layout> layouts) {
        Map<String, Integer> used = new TreeMap<>();
        layouts.forEach(layout -> used.merge(layout.stock(), layout.repeat(), Math::addExact));
        List<Purchase> purchases = new ArrayList<>();
        used.forEach((id, boards) -> {
            if (stock.get(id) instanceof StockItem.ForSale item) {
                purchases.add(Bill.purchase(item, boards, job.goal() == Goal.BOARDS));
            }
        });
        return purchases;
    }

    /** Money paid for stock, or null where something bought has no price. */
    public @Nullable Money cost(List<Layout> layouts) {
        Money sum = Money.ofMinor(0, job.writing().currency());
        for (Purchase purchase : purchases(layouts)) {
            if (purchase.total() == null) {
                return null;
            }
            sum = sum.plus(purchase.total());
        }
        return sum;
    }

    /** Wood of one board that does not come back as an offcut. */
    private static BigInteger wood(Layout layout) {
        Volume volume = Volume.of(layout.length(), layout.width(), layout.thickness());
        for (Layout.LeftOver leftOver : layout.offcuts()) {
            if (leftOver.keep()) {
                volume = volume.minus(Volume.of(leftOver.length(), leftOver.width(), layout.thickness()));
            }
        }
        return volume.cubicNanometres();
    }

    /** Finished volume, edging apart, of what was asked for and placed; spares are filled from waste and count as such. */
    private Volume placedVolume(List<Layout> layouts) {
        Map<String, Integer> rough = new HashMap<>();
        Volume volume = Volume.ZERO;
        for (Layout layout : layouts) {
            for (PlacedPiece piece : layout.pieces()) {
                Part part = part(piece.part());
                for (int number : piece.numbers()) {
                    if (number > job.demand(part)) {
                        continue;
                    }
                    if (piece.members().isEmpty()) {
                        volume = volume.plus(finished(part, layout).times(part.gang()));
                    } else if (rough.merge(part.id() + "#" + number, 1, Integer::sum) == 1) {
                        volume = volume.plus(finished(part, layout));
                    }
                }
            }
        }
        return volume;
    }

    private static Volume finished(Part part, Layout layout) {
        if (part.coreSection() instanceof Section.Measured measured) {
            return FinishedVolume.of(part, measured);
        }
        Length width = layout.width();
        return Volume.of(part.length(), width, layout.thickness());
    }

    private Part part(String id) {
        Part part = parts.get(id);
        if (part == null) {
            throw new IllegalStateException("piece of unknown part " + id);
        }
        return part;
    }
}
