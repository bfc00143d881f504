package org.stockcutting.generate;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.AllowanceProfile;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.part.Edging;
import org.stockcutting.part.Ends;
import org.stockcutting.part.Making;
import org.stockcutting.part.Mark;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.part.Shaping;
import org.stockcutting.part.Taper;

/** Tapers, marks, hands and fits at random, such that the parts can have them. */
public final class RandomShapings {

    private static final String[] PURPOSES = {"shelf peg", "mortise: rail", "groove", "=1+1", "\"lap\", front"};

    private final Random random;
    private final Random mitres;

    public RandomShapings(long seed) {
        this.random = new Random(seed);
        this.mitres = new Random(seed + 45);
    }

    /** The same job, most of its parts shaped. */
    public Job shaped(Job job) {
        List<Part> parts = new ArrayList<>();
        for (Part part : job.parts()) {
            Part bare = part.withEdging(random.nextBoolean() ? part.edging() : Edging.NONE);
            parts.add(random.nextInt(4) == 0 ? part : bare.withShaping(shaping(bare, job)));
        }
        return job.withLists(parts, job.forSale(), job.onHand());
    }

    /** Something that can be done to this part. */
    public Shaping shaping(Part part, Job job) {
        boolean fitted = random.nextInt(3) == 0 && lengthToSpare(part, job);
        List<Mark> marks = new ArrayList<>();
        for (int i = random.nextInt(4); i > 0; i--) {
            marks.add(mark(part, fitted));
        }
        Taper taper = fitted ? null : taper(part, new Shaping(null, marks, Shaping.Fit.TO_SIZE, Shaping.Hand.NONE));
        Shaping.Fit fit = fitted ? Shaping.Fit.AFTER_ASSEMBLY : Shaping.Fit.TO_SIZE;
        boolean any = fitted || taper != null || !marks.isEmpty();
        Shaping.Hand hand = any ? Shaping.Hand.values()[random.nextInt(4)] : Shaping.Hand.NONE;
        boolean odd = hand == Shaping.Hand.PAIRS && part.quantity() % 2 == 1;
        Shaping square = new Shaping(taper, marks, fit, odd ? Shaping.Hand.RIGHT : hand);
        return fitted || taper != null ? square : square.withEnds(ends(part, job));
    }

    /** Mitres for some of the parts that are one straight piece with room for them. */
    private @Nullable Ends ends(Part part, Job job) {
        boolean plain = part.making() instanceof Making.AsCut
                || (part.making() instanceof Making.Milled milled && milled.gang() == 1);
        if (mitres.nextInt(3) > 0
                || !plain
                || !part.edging().isNone()
                || !(part.section() instanceof Section.Measured measured)) {
            return null;
        }
        boolean alone = part.group() != null
                || part.selection().cutFrom() != null
                || part.spares() > 0
                || part.quantity() * job.sets() % 2 != 0;
        Ends ends = new Ends(
                Ends.Angle.values()[mitres.nextInt(4)], alone ? 1 : 1 + mitres.nextInt(2), mitres.nextBoolean());
        return !ends.slope(measured.width()).times(2).isMoreThan(part.length()) ? ends : null;
    }

    private static boolean lengthToSpare(Part part, Job job) {
        String profile = part.making() instanceof Making.Milled milled
                ? milled.profile()
                : part.making() instanceof Making.GlueUp
                        ? AllowanceProfile.GLUE_UP
                        : part.making() instanceof Making.Lamination ? AllowanceProfile.LAMINATION : "";
        AllowanceProfile allowance = job.allowances().get(profile);
        return allowance != null && allowance.length().isPositive();
    }

    /** A length in sixteenths of another one. */
    private static Length part(Length whole, int sixteenths) {
        return Length.ofNanometres(whole.nanometres() / 16 * sixteenths);
    }

    private Mark mark(Part part, boolean fitted) {
        String purpose = PURPOSES[random.nextInt(PURPOSES.length)];
        boolean measured = part.coreSection() instanceof Section.Measured;
        Length width = part.coreSection() instanceof Section.Measured core
                ? core.width().min(core.thickness())
                : Length.inches("1.5");
        Length end = fitted ? null : part(part.coreLength(), 4 + random.nextInt(9));
        Length edge = part(width, 4 + random.nextInt(9));
        Length depth = random.nextBoolean() || !measured ? null : part(width, 8);
        return switch (random.nextInt(end == null ? 1 : 3)) {
            case 0 -> new Mark(purpose, null, edge, null, depth);
            case 1 -> new Mark(purpose, end, random.nextBoolean() ? null : edge, null, depth);
            default -> new Mark(purpose, end, edge, part(width.min(part.coreLength()), 2), depth);
        };
    }

    private Taper taper(Part part, Shaping marked) {
        if (!(part.section() instanceof Section.Measured measured)
                || !part.edging().isNone()
                || random.nextBoolean()) {
            return null;
        }
        Length most = measured.width().max(measured.thickness());
        Length least = measured.width().min(measured.thickness());
        boolean one = most.nanometres() / 2 + 1 >= least.nanometres();
        Length foot =
                one ? part(measured.width(), 9 + random.nextInt(5)) : Length.ofNanometres(most.nanometres() / 2 + 1);
        Taper.Faces faces = one ? Taper.Faces.ONE : Taper.Faces.values()[random.nextInt(3)];
        Length start = random.nextBoolean() ? null : marked.lowestMark().max(part(part.length(), 6));
        return new Taper(start, foot, faces);
    }
}
