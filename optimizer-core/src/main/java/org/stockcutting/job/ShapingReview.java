package org.stockcutting.job;

import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.part.Making;
import org.stockcutting.part.Mark;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.part.Shaping;
import org.stockcutting.part.Taper;

/** Reviews what is done to a part once it has its size: its taper, its marks, its fit and its hand. */
final class ShapingReview {

    private final Job job;
    private final Findings findings;

    ShapingReview(Job job, Findings findings) {
        this.job = job;
        this.findings = findings;
    }

    void review(String at, Part part) {
        Shaping shaping = part.shaping();
        if (shaping.taper() != null) {
            taper(at, part, shaping.taper());
        }
        for (int i = 0; i < shaping.marks().size(); i++) {
            mark(at, at + "/marks/" + i, part, shaping.marks().get(i));
        }
        if (shaping.fit() == Shaping.Fit.AFTER_ASSEMBLY) {
            fitted(at, part);
        }
        hand(at, part);
    }

    private void taper(String part, Part of, Taper taper) {
        String at = part + "/taper";
        findings.positive(at + "/foot", taper.foot());
        findings.notNegative(at + "/start", taper.start());
        if (of.section() instanceof Section.Measured measured) {
            foot(at, part + "/width", taper.foot(), measured.width());
            if (taper.faces() != Taper.Faces.ONE && !measured.thickness().equals(measured.width())) {
                foot(at, part + "/thickness", taper.foot(), measured.thickness());
            }
        } else {
            conflict(
                    at,
                    "taper",
                    "a width and a thickness, or no taper",
                    "This part takes a trade size as it comes, so nobody knows what its taper leaves; give it a width and a"
                            + " thickness.",
                    part + "/nominal");
        }
        if (!of.edging().isNone()) {
            conflict(
                    at,
                    "taper",
                    "a taper or edging",
                    "This part is tapered and has edging; strips are not glued to what is tapered later, so take one of them out.",
                    part + "/edging");
        }
        begins(at, part, of, taper);
        if (taper.nest()) {
            nested(at + "/nest", of, taper);
        }
    }

    /** Two equal parts, one turned round: only straight blanks of the parts themselves, in pairs, where something is gained. */
    private void nested(String at, Part of, Taper taper) {
        long wanted = (long) of.quantity() * job.sets();
        boolean plain = of.making() instanceof Making.AsCut
                || (of.making() instanceof Making.Milled milled && milled.gang() == 1);
        if (wanted % 2 != 0) {
            conflict(at, "true", "an even quantity", wanted + " of " + of.id() + " do not come out in pairs.");
        }
        if (!plain || of.group() != null || of.selection().place() != null || of.spares() > 0) {
            conflict(
                    at,
                    "true",
                    "no gang, make, group, cutFrom or spares",
                    "Two of " + of.id()
                            + " share one blank, so they are neither glued up, ganged, grouped, chosen nor spare.");
        }
        if (of.shaping().hand() == Shaping.Hand.PAIRS) {
            conflict(
                    at,
                    "true",
                    "one hand",
                    "Two that lie head to foot are of one hand; make left and right two lines.");
        }
        Length start = of.shaping().taperStart(of.coreLength());
        boolean late = start == null || !start.times(2).isLessThan(of.coreLength());
        if (taper.faces() == Taper.Faces.FOUR || late) {
            conflict(
                    at,
                    "true",
                    "a taper on one face or two that begins above half of the length",
                    "Nothing is gained by laying two of " + of.id() + " head to foot; leave nest out.");
        }
    }

    private void begins(String at, String part, Part of, Taper taper) {
        Length lowest = of.shaping().lowestMark();
        Length start = taper.start();
        if (start != null && start.isLessThan(lowest)) {
            conflict(
                    at + "/start",
                    findings.say(start),
                    "at least " + findings.say(lowest),
                    "The taper begins " + findings.say(start)
                            + " from the reference end, above the lowest mark, which reaches to "
                            + findings.say(lowest)
                            + "; begin it below, or leave start out and it begins there by itself.",
                    part + "/marks");
        }
        if (start != null && !start.isLessThan(of.length())) {
            conflict(
                    at + "/start",
                    findings.say(start),
                    "less than " + findings.say(of.length()),
                    "The taper begins " + findings.say(start) + " from the reference end, where a part of "
                            + findings.say(of.length()) + " has ended already; begin it nearer the reference end.",
                    part + "/length");
        }
        if (start == null && !lowest.isLessThan(of.length())) {
            conflict(
                    at,
                    findings.say(lowest),
                    "marks above " + findings.say(of.length()),
                    "The lowest mark reaches to " + findings.say(lowest) + " of a part of " + findings.say(of.length())
                            + ", so there is no room for a taper below it; move the mark or take the taper out.",
                    part + "/marks",
                    part + "/length");
        }
    }

    /** Half of each tapered side stays at the foot; common practice, no source. */
    private void foot(String at, String side, Length foot, Length size) {
        Length half = Length.ofNanometres((size.nanometres() + 1) / 2);
        if (!foot.isLessThan(size) || foot.isLessThan(half)) {
            conflict(
                    at + "/foot",
                    findings.say(foot),
                    "at least " + findings.say(half) + " and less than " + findings.say(size),
                    "A foot of " + findings.say(foot) + " on a side of " + findings.say(size)
                            + (foot.isLessThan(half)
                                    ? " leaves less than half of it, which is weak; leave " + findings.say(half)
                                            + " or more."
                                    : " tapers nothing; make it smaller, or taper one face only."),
                    side);
        }
    }

    private void mark(String part, String at, Part of, Mark mark) {
        findings.text(at + "/purpose", mark.purpose(), JobReview.LONGEST_NAME, false);
        if (mark.purpose().contains(";")) {
            findings.add(
                    at + "/purpose",
                    FaultCode.BAD_CHARACTER,
                    mark.purpose(),
                    "no semicolon",
                    "The purpose of this mark has a semicolon, which separates marks in tables; write a comma instead.");
        }
        findings.positive(at + "/fromEnd", mark.fromEnd());
        findings.positive(at + "/fromEdge", mark.fromEdge());
        findings.positive(at + "/bore", mark.bore());
        findings.positive(at + "/depth", mark.depth());
        Length bore = mark.bore();
        if (bore != null && (mark.fromEnd() == null || mark.fromEdge() == null)) {
            conflict(
                    at + "/bore",
                    findings.say(bore),
                    "readings from the end and from the edge",
                    "A hole needs its centre: give its readings from the end and from the edge, or take the bore out.",
                    at);
        }
        Length radius = bore == null ? Length.ZERO : Length.ofNanometres((bore.nanometres() + 1) / 2);
        inside(at + "/fromEnd", mark.fromEnd(), radius, of.coreLength(), part + "/length", part + "/edging");
        if (of.coreSection() instanceof Section.Measured core) {
            inside(at + "/fromEdge", mark.fromEdge(), radius, core.width(), part + "/width", part + "/edging");
            // A hole is bored into the face that its two readings lie on; other marks may be cut across the width.
            Length deepest = bore == null ? core.width().max(core.thickness()) : core.thickness();
            if (mark.depth() != null && mark.depth().isMoreThan(deepest)) {
                conflict(
                        at + "/depth",
                        findings.say(mark.depth()),
                        "at most " + findings.say(deepest),
                        "A depth of " + findings.say(mark.depth()) + " goes right through a part of "
                                + findings.say(deepest) + "; leave it out for what goes through.",
                        part + "/width",
                        part + "/thickness");
            }
        }
        if (mark.fromEnd() != null && of.shaping().fit() == Shaping.Fit.AFTER_ASSEMBLY) {
            conflict(
                    at + "/fromEnd",
                    findings.say(mark.fromEnd()),
                    "a reading from the edge, or fit to-size",
                    "This part gets its ends when it is fitted, so nothing can be measured from them before; mark it from the edge,"
                            + " or give it its size.",
                    part + "/fit");
        }
    }

    private void inside(String at, @Nullable Length reading, Length radius, Length size, String... uses) {
        if (reading == null || !size.isPositive()) {
            return;
        }
        boolean outside =
                reading.minus(radius).isNegative() || reading.plus(radius).isMoreThan(size) || reading.equals(size);
        if (outside) {
            conflict(
                    at,
                    findings.say(reading),
                    "within " + findings.say(size),
                    "A mark at " + findings.say(reading) + (radius.isPositive() ? " with its hole" : "")
                            + " does not lie inside a side of " + findings.say(size)
                            + " as it leaves the saw; move it.",
                    uses);
        }
    }

    private void fitted(String at, Part part) {
        if (part.shaping().taper() != null) {
            conflict(
                    at + "/fit",
                    Shaping.Fit.AFTER_ASSEMBLY.word(),
                    "a taper or fit",
                    "This part is tapered, and gets its length only when it is fitted: the taper has no end to be measured from."
                            + " Take one of them out.",
                    at + "/taper");
        }
        AllowanceProfile profile = part.making() instanceof Making.Milled milled
                ? job.allowances().get(milled.profile())
                : part.making() instanceof Making.GlueUp
                        ? job.allowances().get(AllowanceProfile.GLUE_UP)
                        : part.making() instanceof Making.Lamination
                                ? job.allowances().get(AllowanceProfile.LAMINATION)
                                : null;
        boolean unknown = profile == null && !(part.making() instanceof Making.AsCut);
        if (!unknown && (profile == null || !profile.length().isPositive())) {
            conflict(
                    at + "/fit",
                    Shaping.Fit.AFTER_ASSEMBLY.word(),
                    "an allowance with some length",
                    "This part is to be cut to length when it is fitted, but has no length to spare; give it an allowance that adds"
                            + " to the length, or leave fit out.",
                    at + "/allowance",
                    at + "/make",
                    "/allowances");
        }
    }

    private void hand(String at, Part part) {
        Shaping shaping = part.shaping();
        if (shaping.hand() == Shaping.Hand.NONE) {
            return;
        }
        if (shaping.marks().isEmpty() && shaping.taper() == null && shaping.fit() == Shaping.Fit.TO_SIZE) {
            conflict(
                    at + "/hand",
                    shaping.hand().word(),
                    "marks, a taper, or no hand",
                    "Nothing is marked or tapered on this part, so left and right ones are alike; take the hand out.",
                    at);
        } else if (shaping.hand() == Shaping.Hand.PAIRS && part.quantity() % 2 != 0) {
            conflict(
                    at + "/hand",
                    shaping.hand().word(),
                    "an even quantity",
                    "Part " + part.id() + " comes in pairs but is wanted " + part.quantity()
                            + " times; give an even quantity, or left or right.",
                    at + "/quantity");
        }
    }

    private void conflict(String at, String got, String expected, String text, String... uses) {
        findings.add(at, FaultCode.CONFLICT, got, expected, text, uses);
    }
}
