package org.stockcutting.blank;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.blank.RoughPiece.Kind;
import org.stockcutting.blank.RoughPiece.Stage;
import org.stockcutting.job.AllowanceProfile;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.part.Ends;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;

/**
 * Finished part to blank to rough piece, by the job's allowance profiles. Milling adds to all three sizes; a part of a trade size is
 * taken as it comes, so milling adds to its length alone; a gang has one allowance in length for all its parts and the cuts between them. Edging comes off the finished size before anything is added. Panels and laminations first become a blank, then staves and plies.
 */
public final class BlankPlanner {

    static final String FINISHED = "finished";
    static final String CORE = "core";
    static final String BLANK = "blank";
    static final String ROUGH = "rough";

    private BlankPlanner() {}

    /**
     * The rough piece of every part, sorted by the part's id.
     *
     * @throws IllegalArgumentException if a part cannot be made as it says; a job that passed the review has no such part
     */
    public static List<RoughPiece> plan(Job job) {
        return job.parts().stream()
                .sorted(Comparator.comparing(Part::id))
                .map(part -> roughPiece(job, part))
                .toList();
    }

    private static RoughPiece roughPiece(Job job, Part part) {
        Making making = part.making();
        if (making instanceof Making.Milled milled) {
            return whole(job, part, profile(job, part, milled.profile()));
        }
        if (making instanceof Making.GlueUp glueUp) {
            return stave(job, part, glueUp);
        }
        if (making instanceof Making.Lamination lamination) {
            return ply(job, part, lamination);
        }
        return whole(job, part, null);
    }

    private static RoughPiece whole(Job job, Part part, @Nullable AllowanceProfile profile) {
        int behind = part.isNested() ? 1 : part.gang();
        Length all = part.coreLength().plus(pitch(job, part).times(behind - 1L));
        Length length = profile == null ? all : all.plus(profile.length());
        RoughSection section;
        Stage rough;
        if (part.coreSection() instanceof Section.Measured measured) {
            Length own = straightWidth(job, part, measured);
            Length width = profile == null ? own : own.plus(profile.width());
            Length thickness = profile == null
                    ? measured.thickness()
                    : measured.thickness().plus(profile.thickness());
            section = new RoughSection.Sized(width, thickness, thickness.isMoreThan(measured.thickness()));
            rough = new Stage(ROUGH, length, width, thickness);
        } else {
            section = new RoughSection.AsItComes(((Section.Nominal) part.section()).name());
            rough = new Stage(ROUGH, length, null, null);
        }
        return RoughPiece.uniform(part, Kind.WHOLE, 1, length, section, null, trail(part, rough));
    }

    /** From one part to the next behind it in the same piece. */
    public static Length pitch(Job job, Part part) {
        Length kerf = job.shop().kerf().crosscut();
        Ends ends = part.shaping().ends();
        return ends != null && part.coreSection() instanceof Section.Measured measured
                ? ends.pitch(
                        part.coreLength(),
                        measured.width(),
                        kerf,
                        job.writing().unit().isImperial())
                : part.coreLength().plus(kerf);
    }

    /** Width before anything is tapered: that of the part, or of the blank that it shares with another. */
    public static Length straightWidth(Job job, Part part, Section.Measured finished) {
        TaperedPair pair =
                part.isNested() ? TaperedPair.of(part, job.shop().kerf().rip()) : null;
        return pair == null ? finished.width() : pair.width();
    }

    private static RoughPiece stave(Job job, Part part, Making.GlueUp glueUp) {
        AllowanceProfile profile = profile(job, part, AllowanceProfile.GLUE_UP);
        Section.Measured finished = measured(part);
        Length length = part.coreLength().plus(profile.length());
        Length panelWidth = finished.width().plus(profile.width());
        Length panelThickness = finished.thickness().plus(profile.thickness());
        StaveWidths staves =
                StaveWidths.of(part, glueUp, panelWidth, job.writing().unit());
        Length width = staves.jointed().plus(profile.perStave());
        Length thickness = panelThickness.plus(profile.staveThickness());
        boolean planed = thickness.isMoreThan(finished.thickness());
        return RoughPiece.uniform(
                part,
                Kind.STAVE,
                staves.count(),
                length,
                new RoughSection.Sized(width, thickness, planed),
                staves.jointed(),
                trail(
                        part,
                        new Stage(BLANK, length, panelWidth, panelThickness),
                        new Stage(ROUGH, length, width, thickness)));
    }

    private static RoughPiece ply(Job job, Part part, Making.Lamination lamination) {
        AllowanceProfile profile = profile(job, part, AllowanceProfile.LAMINATION);
        Section.Measured finished = measured(part);
        Length length = part.coreLength().plus(profile.length());
        Length width = finished.width().plus(profile.width());
        Length thickness = StaveWidths.ceilingShare(finished.thickness(), lamination.plies())
                .plus(profile.perPly());
        return RoughPiece.uniform(
                part,
                Kind.PLY,
                lamination.plies(),
                length,
                new RoughSection.Sized(width, thickness, profile.perPly().isPositive()),
                null,
                trail(
                        part,
                        new Stage(BLANK, length, width, finished.thickness()),
                        new Stage(ROUGH, length, width, thickness)));
    }

    private static List<Stage> trail(Part part, Stage... worked) {
        List<Stage> trail = new ArrayList<>();
        trail.add(stage(FINISHED, part.length(), part.section()));
        if (!part.edging().isNone()) {
            trail.add(stage(CORE, part.coreLength(), part.coreSection()));
        }
        trail.addAll(List.of(worked));
        return trail;
    }

    private static Stage stage(String name, Length length, Section section) {
        return section instanceof Section.Measured measured
                ? new Stage(name, length, measured.width(), measured.thickness())
                : new Stage(name, length, null, null);
    }

    /** What the wood itself must come to, edging apart. */
    private static Section.Measured measured(Part part) {
        if (part.coreSection() instanceof Section.Measured measured) {
            return measured;
        }
        throw new IllegalArgumentException("part " + part.id()
                + " is glued up, so it needs a width and a thickness, not a trade size taken as it comes");
    }

    private static AllowanceProfile profile(Job job, Part part, String name) {
        AllowanceProfile profile = job.allowances().get(name);
        if (profile == null) {
            throw new IllegalArgumentException(
                    "part " + part.id() + " uses the allowance \"" + name + "\", which the job does not define: it has "
                            + job.allowances().keySet());
        }
        return profile;
    }
}
