package org.stockcutting.job;

import org.stockcutting.part.Ends;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.part.Shaping;

/** Reviews mitred ends: of parts that are one piece, whose sizes are known, and that come out of their sticks even. */
final class EndsReview {

    private final Job job;
    private final Findings findings;

    EndsReview(Job job, Findings findings) {
        this.job = job;
        this.findings = findings;
    }

    void review(String part, Part of) {
        Ends ends = of.shaping().ends();
        if (ends == null) {
            return;
        }
        String at = part + "/ends";
        if (of.section() instanceof Section.Measured measured) {
            if (measured.width().isPositive()
                    && ends.slope(measured.width()).times(2).isMoreThan(of.length())) {
                conflict(
                        at,
                        ends.angle().word(),
                        "a length of at least "
                                + findings.say(ends.slope(measured.width()).times(2)),
                        "The mitres of " + of.id()
                                + " meet before its short edge begins; lengths are from long point to long point.",
                        part + "/length");
            }
        } else {
            conflict(
                    at,
                    ends.angle().word(),
                    "a width and a thickness",
                    "A part in a trade size is as wide as its board, so nobody knows where its short points are; give it a width and a"
                            + " thickness.",
                    part + "/nominal");
        }
        boolean plain = of.making() instanceof Making.AsCut
                || (of.making() instanceof Making.Milled milled && milled.gang() == 1);
        boolean fitted = of.shaping().fit() == Shaping.Fit.AFTER_ASSEMBLY;
        if (!plain || fitted || of.shaping().taper() != null || !of.edging().isNone()) {
            conflict(
                    at,
                    ends.angle().word(),
                    "no gang, make, edging, taper or fit after-assembly",
                    "Mitred ends are planned for parts of one straight piece that get their length from the list; take gang, make, edging,"
                            + " taper and fit off " + of.id() + ", or ends.");
        }
        findings.within(
                at + "/stick",
                ends.stick(),
                1,
                GangReview.MOST,
                got -> "Part " + of.id() + " comes " + got + " to a stick; give 1 to " + GangReview.MOST + ".");
        if (ends.stick() > 1 && ends.stick() <= GangReview.MOST) {
            stick(at + "/stick", of, ends);
        }
    }

    private void stick(String at, Part of, Ends ends) {
        long wanted = (long) of.quantity() * job.sets();
        String stick = Integer.toString(ends.stick());
        if (wanted % ends.stick() != 0) {
            conflict(
                    at,
                    stick,
                    "a number that divides " + wanted,
                    wanted + " of " + of.id() + " do not come out in sticks of " + stick
                            + "; take another number, or split the line.");
        }
        if (of.group() != null || of.selection().place() != null || of.spares() > 0) {
            conflict(
                    at,
                    stick,
                    "no group, cutFrom or spares",
                    "What comes out of one stick is chosen and grouped as one: take group, cutFrom and spares off "
                            + of.id() + ", or stick.");
        }
        if (of.shaping().hand() == Shaping.Hand.PAIRS && ends.stick() % 2 != 0) {
            conflict(at, stick, "an even number", "Left and right ones come in pairs, so a stick of them is even.");
        }
    }

    private void conflict(String at, String got, String wanted, String text, String... others) {
        findings.add(at, FaultCode.CONFLICT, got, wanted, text, others);
    }
}
