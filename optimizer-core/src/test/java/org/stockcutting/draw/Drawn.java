package org.stockcutting.draw;

import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.TreeMap;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.ShopRules;
import org.stockcutting.job.Writing;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.material.Grain;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.Direction;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/** A small world to draw: one job with one board of a given size, and layouts of one row. */
final class Drawn {

    static final Length KERF = Length.inches("0.125");

    private Drawn() {}

    static Job job(Form form, Length length, Length width, List<Zone> zones) {
        StockItem.OnHand board = new StockItem.OnHand(
                "plank", form, null, length, width, Length.inches("0.75"), "ash", Grain.LENGTH, null, 1, zones);
        return new Job(
                "drawing",
                new Writing(LengthUnit.INCH, '.', Length.inches("0.0625"), Currency.getInstance("USD")),
                1,
                ShopRules.defaults(),
                new TreeMap<>(),
                List.of(),
                List.of(),
                List.of(board),
                Goal.COST,
                Effort.defaults());
    }

    /** The job with the parts list of another. */
    static Job withPart(Job job, Job parts) {
        return new Job(
                job.name(),
                job.writing(),
                job.sets(),
                job.shop(),
                job.allowances(),
                parts.parts(),
                job.forSale(),
                job.onHand(),
                job.goal(),
                job.effort());
    }

    /** Pieces side by side from a trim of half an inch, a kerf apart, and the rest as an offcut. */
    static Layout row(Length length, Length width, List<Length> pieces, boolean keep) {
        List<PlacedPiece> placed = new ArrayList<>();
        List<CutNode.Slot> slots = new ArrayList<>();
        List<CutNode> nodes = new ArrayList<>();
        Length x = Length.inches("0.5");
        slots.add(new CutNode.Slot(x.minus(KERF), x));
        nodes.add(CutNode.RestLeaf.TRIM);
        for (int i = 0; i < pieces.size(); i++) {
            placed.add(
                    new PlacedPiece("stick", List.of(i + 1), List.of(), x, Length.ZERO, pieces.get(i), width, false));
            nodes.add(new CutNode.PartLeaf("stick"));
            x = x.plus(pieces.get(i));
            slots.add(new CutNode.Slot(x, x.plus(KERF)));
            x = x.plus(KERF);
        }
        nodes.add(CutNode.RestLeaf.OFFCUT);
        return new Layout(
                "plank",
                1,
                length,
                width,
                Length.inches("0.75"),
                placed,
                new CutNode.Cuts(Direction.CROSSCUT, slots, nodes),
                List.of(new Layout.LeftOver(x, Length.ZERO, length.minus(x), width, keep)));
    }
}
