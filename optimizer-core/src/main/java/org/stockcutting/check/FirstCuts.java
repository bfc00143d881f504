package org.stockcutting.check;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.CutNode.RestLeaf;
import org.stockcutting.pattern.Direction;
import org.stockcutting.plan.SequenceStep.SawCut;
import org.stockcutting.stock.Form;

/** The cuts of a sheet that the shop makes with another saw before all else: its first row of cuts, and what is squared before it. */
final class FirstCuts {

    private record Cut(Direction direction, Length from, Length to) {}

    private final List<Cut> cuts = new ArrayList<>();

    FirstCuts(Job job, LayoutCheck.Checked layout) {
        boolean apart = job.shop().machines().breakdown() != null
                && layout.board().item().form() == Form.SHEET;
        CutNode node = layout.layout().cuts();
        while (apart && node instanceof CutNode.Cuts row) {
            row.slots().forEach(slot -> cuts.add(new Cut(row.cut(), slot.from(), slot.to())));
            List<CutNode> good = row.pieces().stream()
                    .filter(piece -> piece != RestLeaf.TRIM && piece != RestLeaf.SLIVER)
                    .toList();
            apart = good.size() == 1;
            node = apart ? good.get(0) : node;
        }
    }

    boolean contains(SawCut cut) {
        return cuts.stream()
                .anyMatch(own ->
                        own.direction == cut.direction() && own.from.equals(cut.reading()) && own.to.equals(cut.to()));
    }
}
