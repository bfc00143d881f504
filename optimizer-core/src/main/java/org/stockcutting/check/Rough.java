package org.stockcutting.check;

import java.math.BigInteger;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.AllowanceProfile;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.part.Taper;

/**
 * What has to be cut for one line of the parts list, worked out from the job alone.
 *
 * @param part the line
 * @param kind whole part, stave or ply
 * @param perPart how many pieces make one finished part
 * @param length rough length in nanometres
 * @param nominal trade size that the stock must carry, or null where sizes are given
 * @param leastWidth least rough width; 0 where the board is taken as it comes
 * @param mostWidth greatest rough width; more than the least only for staves
 * @param thickness rough thickness; 0 where the board is taken as it comes
 * @param planed true if an allowance planes the thickness
 * @param perStave what jointing takes off a stave's width
 * @param panelWidth width that the jointed staves of one panel must reach; 0 for anything but a panel
 */
record Rough(
        Part part,
        Kind kind,
        int perPart,
        long length,
        @Nullable String nominal,
        long leastWidth,
        long mostWidth,
        long thickness,
        boolean planed,
        long perStave,
        long panelWidth) {

    enum Kind {
        WHOLE,
        STAVE,
        PLY
    }

    static Rough of(Part part, Job job) {
        if (part.section() instanceof Section.Measured measured) {
            return measured(
                    part,
                    job,
                    measured.width().nanometres() - onEdges(part),
                    measured.thickness().nanometres());
        }
        String nominal = ((Section.Nominal) part.section()).name();
        long extra = part.making() instanceof Making.Milled milled
                ? nm(profile(job, milled.profile()).length())
                : 0;
        return new Rough(part, Kind.WHOLE, 1, Math.addExact(nm(part.length()), extra), nominal, 0, 0, 0, false, 0, 0);
    }

    private static Rough measured(Part part, Job job, long width, long thickness) {
        long length = nm(part.length()) - onEnds(part);
        Making making = part.making();
        if (making instanceof Making.Milled milled) {
            AllowanceProfile add = profile(job, milled.profile());
            long rough = thickness + nm(add.thickness());
            long all = behind(part, job, length, width, milled.gang());
            long straight = width + besides(part, job, width);
            return whole(part, all + nm(add.length()), straight + nm(add.width()), rough, rough > thickness);
        }
        if (making instanceof Making.GlueUp panel) {
            AllowanceProfile add = profile(job, AllowanceProfile.GLUE_UP);
            long panelWidth = width + nm(add.width());
            Integer asked = panel.count();
            int count = asked != null ? asked : Math.toIntExact(ceilDiv(panelWidth, nm(panel.maxStave())));
            return new Rough(
                    part,
                    Kind.STAVE,
                    count,
                    length + nm(add.length()),
                    null,
                    nm(panel.minStave()) + nm(add.perStave()),
                    nm(panel.maxStave()) + nm(add.perStave()),
                    thickness + nm(add.thickness()) + nm(add.staveThickness()),
                    nm(add.thickness()) + nm(add.staveThickness()) > 0,
                    nm(add.perStave()),
                    panelWidth);
        }
        if (making instanceof Making.Lamination lamination) {
            AllowanceProfile add = profile(job, AllowanceProfile.LAMINATION);
            long ply = ceilDiv(thickness, lamination.plies()) + nm(add.perPly());
            long plyWidth = width + nm(add.width());
            return new Rough(
                    part,
                    Kind.PLY,
                    lamination.plies(),
                    length + nm(add.length()),
                    null,
                    plyWidth,
                    plyWidth,
                    ply,
                    nm(add.perPly()) > 0,
                    0,
                    0);
        }
        return whole(part, behind(part, job, length, width, 1), width + besides(part, job, width), thickness, false);
    }

    /** Length of all that come one behind the other: mitred ones share a stick, others a gang. */
    private static long behind(Part part, Job job, long length, long width, int gang) {
        long next = length + nm(job.shop().kerf().crosscut());
        int parts = gang;
        if (part.shaping().ends() != null) {
            next = pitch(part, job, length, width);
            parts = part.shaping().ends().stick();
        }
        return Math.addExact(length, Math.multiplyExact(next, parts - 1L));
    }

    private static long pitch(Part part, Job job, long length, long width) {
        return Mitre.pitch(
                java.util.Objects.requireNonNull(part.shaping().ends()),
                length,
                width,
                nm(job.shop().kerf().crosscut()),
                job.writing().unit().isImperial());
    }

    /** How much wider a straight blank for two tapered parts head to foot is than one of them: the other's foot, the slope, the cut. */
    private static long besides(Part part, Job job, long width) {
        Taper taper = part.shaping().taper();
        if (taper == null || !taper.nest()) {
            return 0;
        }
        long length = nm(part.length()) - onEnds(part);
        long start = Due.start(part, length);
        BigInteger slope = BigInteger.valueOf(width - nm(taper.foot())).multiply(BigInteger.valueOf(start));
        BigInteger[] rise = slope.divideAndRemainder(BigInteger.valueOf(length - start));
        long up = rise[0].longValueExact() + Long.signum(rise[1].signum());
        return nm(taper.foot()) + up + nm(job.shop().kerf().rip());
    }

    /** True if two parts lie head to foot in it. */
    boolean isPair() {
        return part.shaping().taper() != null && part.shaping().taper().nest();
    }

    private static Rough whole(Part part, long length, long width, long thickness, boolean planed) {
        return new Rough(part, Kind.WHOLE, 1, length, null, width, width, thickness, planed, 0, 0);
    }

    /** What bands on the two ends take off the length. */
    static long onEnds(Part part) {
        return bands(part.edging().start(), part.edging().end());
    }

    /** What bands on the two edges take off the width. */
    static long onEdges(Part part) {
        return bands(part.edging().edge(), part.edging().farEdge());
    }

    private static long bands(@Nullable Length one, @Nullable Length other) {
        return (one == null ? 0 : nm(one)) + (other == null ? 0 : nm(other));
    }

    static AllowanceProfile profile(Job job, String name) {
        AllowanceProfile profile = job.allowances().get(name);
        if (profile == null) {
            profile = Job.builtInAllowances().get(name);
        }
        if (profile == null) {
            throw new IllegalArgumentException("the job has no allowance profile \"" + name
                    + "\"; define it under allowances or use one of milled, glue-up, lamination");
        }
        return profile;
    }

    private static long nm(Length length) {
        return length.nanometres();
    }

    static long ceilDiv(long a, long b) {
        return Math.floorDiv(a, b) + (Math.floorMod(a, b) == 0 ? 0 : 1);
    }

    /** How many finished parts one rough piece becomes. */
    int gang() {
        if (isPair()) {
            return 2;
        }
        if (part.shaping().ends() != null) {
            return part.shaping().ends().stick();
        }
        return part.making() instanceof Making.Milled milled ? milled.gang() : 1;
    }

    boolean isStave() {
        return kind == Kind.STAVE;
    }

    boolean asItComes() {
        return nominal != null;
    }

    /** Least width of the piece on this board: the usable width where the board is taken as it comes. */
    long leastWidthOn(Board board) {
        return asItComes() ? board.usable().width() : leastWidth;
    }
}
