package org.stockcutting;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.part.CutFrom;
import org.stockcutting.part.Part;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Enough;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.StockItem;

/** Plans a job from its first board on hand, from the first two, and so on; nothing is bought. */
final class EnoughYet {

    private EnoughYet() {}

    static Enough tell(Job job, Function<Job, CuttingPlan> planner) {
        List<Enough.Step> steps = new ArrayList<>();
        for (int boards = 1; boards <= job.onHand().size(); boards++) {
            List<StockItem.OnHand> picked = job.onHand().subList(0, boards);
            Set<String> there = picked.stream().map(StockItem.OnHand::id).collect(Collectors.toSet());
            List<Part> parts = job.parts().stream()
                    .map(part -> reachable(job, part, there))
                    .toList();
            CuttingPlan plan = planner.apply(job.withLists(parts, List.of(), picked));
            steps.add(step(picked, plan));
        }
        return new Enough(steps);
    }

    /** What was chosen on a board which is not there yet says nothing yet; what is to come from stock that is bought comes from no board. */
    private static Part reachable(Job job, Part part, Set<String> there) {
        CutFrom chosen = part.selection().cutFrom();
        boolean owned = chosen != null
                && job.onHand().stream().anyMatch(item -> item.id().equals(chosen.stock()));
        return chosen == null || !owned || there.contains(chosen.stock())
                ? part
                : part.withSelection(part.selection().withCutFrom(null));
    }

    private static Enough.Step step(List<StockItem.OnHand> picked, CuttingPlan plan) {
        Set<String> used = plan.layouts().stream().map(Layout::stock).collect(Collectors.toSet());
        List<String> unused = picked.stream()
                .map(StockItem.OnHand::id)
                .filter(id -> !used.contains(id))
                .toList();
        Length longest = plan.layouts().stream()
                .flatMap(layout -> layout.offcuts().stream())
                .map(Layout.LeftOver::length)
                .reduce(Length.ZERO, Length::max);
        return new Enough.Step(picked.get(picked.size() - 1).id(), plan.unplaced(), unused, longest);
    }
}
