package org.stockcutting.job;

import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.part.Shaping;

/** Reviews short parts that stay together in one blank: gangs come out even, and nothing is asked that only single pieces can give. */
final class GangReview {

    /** A blank of more would be longer than any board. */
    static final int MOST = 100;

    private final Job job;
    private final Findings findings;

    GangReview(Job job, Findings findings) {
        this.job = job;
        this.findings = findings;
    }

    void review(String at, Part part, int gang) {
        findings.within(
                at + "/gang",
                gang,
                1,
                MOST,
                got -> "Part " + part.id() + " comes " + got + " to a blank; give 1 to " + MOST + ".");
        if (gang < 2 || gang > MOST) {
            return;
        }
        long wanted = (long) part.quantity() * job.sets();
        if (wanted % gang != 0) {
            conflict(
                    at,
                    gang,
                    "a number that divides " + wanted,
                    wanted + " of " + part.id() + " do not come out in gangs of " + gang
                            + "; take another number, or split the line.");
        }
        if (part.section() instanceof Section.Nominal) {
            conflict(at, gang, "a width and a thickness", "A gang is planed, but a trade size is taken as it comes.");
        }
        if (part.group() != null || part.selection().place() != null || part.spares() > 0) {
            conflict(
                    at,
                    gang,
                    "no group, cutFrom or spares",
                    "What stays in one blank is chosen and grouped as one: take group, cutFrom and spares off "
                            + part.id() + ", or the gang.");
        }
        if (part.shaping().fit() == Shaping.Fit.AFTER_ASSEMBLY) {
            conflict(
                    at,
                    gang,
                    Shaping.Fit.TO_SIZE.word(),
                    "A part that is fitted after assembly keeps its allowance, so it cannot be cut out of a gang.");
        }
        if (part.shaping().hand() == Shaping.Hand.PAIRS && gang % 2 != 0) {
            conflict(at, gang, "an even number", "Left and right ones come in pairs, so a gang of them is even.");
        }
    }

    private void conflict(String at, int gang, String wanted, String text) {
        findings.add(at + "/gang", FaultCode.CONFLICT, Integer.toString(gang), wanted, text);
    }
}
