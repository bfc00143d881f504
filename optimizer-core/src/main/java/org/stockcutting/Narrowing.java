package org.stockcutting;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.job.SawLimits;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.fit.UsableArea;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.StockItem;

/** Jobs of which every plan is a plan of the job itself, each made narrower in one respect that may save set-ups. */
final class Narrowing {

    private Narrowing() {}

    /**
     * @param job the job
     * @param plan a plan of it: what that does not use need not be taken away
     */
    static List<Job> all(Job job, CuttingPlan plan) {
        Set<Job> narrower = new LinkedHashSet<>();
        Job asSold = asSold(job);
        if (asSold != null) {
            narrower.add(asSold);
        }
        int stages = plan.layouts().stream()
                .mapToInt(layout -> stages(layout.cuts()))
                .max()
                .orElse(0);
        for (int fewer = stages - 1; fewer >= 1; fewer--) {
            narrower.add(saws(job, fewer, job.shop().limits().firstCut()));
        }
        if (stages > 1 && job.shop().limits().firstCut() == SawLimits.FirstCut.ANY) {
            narrower.add(saws(job, job.shop().limits().stages(), SawLimits.FirstCut.RIP));
            narrower.add(saws(job, job.shop().limits().stages(), SawLimits.FirstCut.CROSSCUT));
        }
        Set<String> used = plan.layouts().stream().map(Layout::stock).collect(Collectors.toSet());
        for (StockItem.ForSale item : job.forSale()) {
            if (used.contains(item.id()) && job.forSale().size() > 1) {
                List<StockItem.ForSale> rest =
                        job.forSale().stream().filter(other -> other != item).toList();
                narrower.add(job.withLists(job.parts(), rest, job.onHand()));
            }
        }
        return new ArrayList<>(narrower);
    }

    /** Changes of cut direction on the longest path, cuts that only trim included: at most one more than the limit counts. */
    private static int stages(CutNode node) {
        if (!(node instanceof CutNode.Cuts cuts)) {
            return 0;
        }
        return 1 + cuts.pieces().stream().mapToInt(Narrowing::stages).max().orElse(0);
    }

    private static Job saws(Job job, @Nullable Integer stages, SawLimits.FirstCut firstCut) {
        SawLimits old = job.shop().limits();
        return job.withShop(job.shop()
                .withLimits(new SawLimits(
                        old.ripCapacity(),
                        old.longestRip(),
                        old.crosscutCapacity(),
                        stages,
                        firstCut,
                        old.minimumPiece())));
    }

    /** The job in which no part is ripped to a width that it could be bought in; null where none can. */
    private static @Nullable Job asSold(Job job) {
        boolean[] any = new boolean[1];
        List<Part> parts = job.parts().stream()
                .map(part -> {
                    String name = soldAs(job, part);
                    any[0] |= name != null;
                    return name == null ? part : part.withSection(new Section.Nominal(name));
                })
                .toList();
        return any[0] ? job.withLists(parts, job.forSale(), job.onHand()) : null;
    }

    /** Trade size of which all boards have just this section and no trim of their edges, or null. */
    private static @Nullable String soldAs(Job job, Part part) {
        if (!(part.section() instanceof Section.Measured section)
                || !(part.making() instanceof Making.AsCut)
                || !part.edging().isNone()) {
            return null;
        }
        Set<String> names = new LinkedHashSet<>();
        for (StockItem.ForSale item : job.forSale()) {
            if (item.nominal() != null && item.material().equals(part.material())) {
                names.add(item.nominal().name());
            }
        }
        for (String name : names) {
            boolean all = Stream.<StockItem>concat(job.forSale().stream(), job.onHand().stream())
                    .filter(item ->
                            item.nominal() != null && item.nominal().name().equals(name))
                    .allMatch(item -> UsableArea.of(item, job.shop()).width().equals(section.width())
                            && item.width().equals(section.width())
                            && item.thickness().equals(section.thickness()));
            if (all) {
                return name;
            }
        }
        return null;
    }
}
