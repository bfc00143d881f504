package org.stockcutting.job;

import org.stockcutting.length.Length;
import org.stockcutting.part.Edging;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;

/** Reviews the edging of a part: it must leave something to be cut. */
final class EdgingReview {

    private final Findings findings;

    EdgingReview(Findings findings) {
        this.findings = findings;
    }

    void review(String part, Part of) {
        Edging edging = of.edging();
        String at = part + "/edging";
        findings.notNegative(at + "/start", edging.start());
        findings.notNegative(at + "/end", edging.end());
        findings.notNegative(at + "/edge", edging.edge());
        findings.notNegative(at + "/farEdge", edging.farEdge());
        findings.notNegative(at + "/over", edging.over());
        if (edging.isNone()) {
            return;
        }
        if (of.section() instanceof Section.Measured measured) {
            leaves(at, part + "/length", of.length(), edging.fromLength());
            leaves(at, part + "/width", measured.width(), edging.fromWidth());
        } else {
            findings.add(
                    at,
                    FaultCode.CONFLICT,
                    "edging",
                    "a width and a thickness, or no edging",
                    "This part takes a trade size as it comes, so no strip can be taken off its width; give it a width "
                            + "and a thickness.");
        }
    }

    private void leaves(String at, String side, Length finished, Length bands) {
        if (!finished.isMoreThan(bands)) {
            findings.add(
                    at,
                    FaultCode.CONFLICT,
                    findings.say(bands),
                    "less than " + findings.say(finished),
                    "Strips of " + findings.say(bands) + " leave nothing of a side of " + findings.say(finished)
                            + "; give thinner strips.",
                    side);
        }
    }
}
