package org.stockcutting.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.part.Edging;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Unplaced;

/**
 * Edging of one kind: how many strips and how long they are together.
 *
 * @param material material of the parts
 * @param thickness thickness of the strip
 * @param partThickness thickness of the parts it goes on; a solid strip is sawn a little wider (1/16 in is usual) and planed flush
 * @param strips how many
 * @param length length of all, each longer than its side by what the part says
 * @param longest the longest strip
 */
public record BandLine(
        String material, Length thickness, Length partThickness, int strips, Length length, Length longest) {

    private static final Comparator<BandLine> ORDER = Comparator.comparing(BandLine::material)
            .thenComparing(BandLine::thickness)
            .thenComparing(BandLine::partThickness);

    /**
     * Edging for every part of the plan that has wood; spares have none.
     *
     * @param job the job
     * @param plan a plan of this job
     */
    public static List<BandLine> of(Job job, CuttingPlan plan) {
        Map<String, Integer> missing = new HashMap<>();
        for (Unplaced unplaced : plan.unplaced()) {
            missing.merge(unplaced.part(), unplaced.quantity(), Integer::sum);
        }
        Map<BandLine, BandLine> sums = new TreeMap<>(ORDER);
        for (Part part : job.parts()) {
            int wanted = job.demand(part) - missing.getOrDefault(part.id(), 0);
            for (BandLine line : bands(part, wanted)) {
                sums.merge(line, line, BandLine::plus);
            }
        }
        return List.copyOf(sums.values());
    }

    /** Bands on the ends are as long as the finished width, those on the edges as the finished length: whichever overlaps has enough. */
    private static List<BandLine> bands(Part part, int parts) {
        List<BandLine> lines = new ArrayList<>();
        Edging edging = part.edging();
        if (parts > 0 && part.section() instanceof Section.Measured measured) {
            add(lines, part, measured.thickness(), edging.start(), measured.width(), parts);
            add(lines, part, measured.thickness(), edging.end(), measured.width(), parts);
            add(lines, part, measured.thickness(), edging.edge(), part.length(), parts);
            add(lines, part, measured.thickness(), edging.farEdge(), part.length(), parts);
        }
        return lines;
    }

    private static void add(
            List<BandLine> lines, Part part, Length partThickness, @Nullable Length band, Length side, int parts) {
        if (band != null) {
            Length strip = side.plus(part.edging().over());
            lines.add(new BandLine(part.material(), band, partThickness, parts, strip.times(parts), strip));
        }
    }

    private BandLine plus(BandLine other) {
        return new BandLine(
                material,
                thickness,
                partThickness,
                Math.addExact(strips, other.strips),
                length.plus(other.length),
                longest.max(other.longest));
    }
}
