package org.stockcutting.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.job.Seasons;
import org.stockcutting.length.Length;
import org.stockcutting.material.Grain;
import org.stockcutting.material.NominalCatalog;
import org.stockcutting.material.NominalSize;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;

/** How much wide parts of solid wood move across their grain over a year. */
final class WoodMovement {

    /** Narrower parts move less than a joint has play (common practice, no source). */
    private static final Length WIDE = Length.inches("6");

    private WoodMovement() {}

    static List<TradeSums.Movement> of(Job job) {
        KnownWoods woods = new KnownWoods(job);
        List<TradeSums.Movement> found = new ArrayList<>();
        for (Part part : job.parts()) {
            Length across = across(part);
            BigDecimal coefficient = woods.movement(part.material());
            if (across != null && coefficient != null && !across.isLessThan(WIDE)) {
                found.add(new TradeSums.Movement(
                        part.id(),
                        across,
                        change(across, coefficient, job.terms().seasons()),
                        coefficient,
                        woods.movedAs(part.material())));
            }
        }
        found.sort(Comparator.comparing(TradeSums.Movement::part));
        return found;
    }

    /** Width times coefficient times points of moisture (FPL-GTR-190, chapter 13), up to the next nanometre. */
    static Length change(Length across, BigDecimal coefficient, Seasons seasons) {
        BigDecimal points = seasons.dampest().subtract(seasons.driest());
        return Length.ofNanometres(BigDecimal.valueOf(across.nanometres())
                .multiply(coefficient)
                .multiply(points)
                .setScale(0, RoundingMode.CEILING)
                .longValueExact());
    }

    /** Across the grain: the width, or the length of a part whose grain runs across it; unknown where it may lie either way. */
    private static @Nullable Length across(Part part) {
        Grain grain = part.grain();
        if (grain == Grain.WIDTH) {
            return part.length();
        }
        if (part.section() instanceof Section.Measured measured) {
            return grain == Grain.ANY ? null : measured.width();
        }
        String name = ((Section.Nominal) part.section()).name();
        return NominalCatalog.standard().find(name).map(NominalSize::width).orElse(null);
    }
}
