package org.stockcutting.http.print.paper;

import java.util.HashMap;
import java.util.Map;
import org.stockcutting.draw.PrintedLengths;
import org.stockcutting.job.Job;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;

/** What is still to be done with pieces that do not leave the saw at their finished size. */
final class FinishedSizes {

    private final Job job;
    private final PrintedLengths lengths;

    FinishedSizes(Job job, PrintedLengths lengths) {
        this.job = job;
        this.lengths = lengths;
    }

    /** A few words for each part that needs them: {@code plane to 20 x 3 x 1-1/4}. */
    Map<String, String> byPart() {
        Map<String, String> texts = new HashMap<>();
        for (Part part : job.parts()) {
            String size = size(part);
            if (part.shaping().ends() != null) {
                String count = part.gang() == 1 ? "" : part.gang() + " of ";
                texts.put(part.id(), "mitre to " + count + size);
            } else if (part.isNested()) {
                texts.put(part.id(), "taper to 2 of " + size);
            } else if (part.making() instanceof Making.Milled) {
                texts.put(
                        part.id(),
                        part.gang() == 1 ? "mill to " + size : "mill as one: " + part.gang() + " of " + size);
            } else if (part.making() instanceof Making.GlueUp) {
                texts.put(part.id(), "glue up, then " + size);
            } else if (part.making() instanceof Making.Lamination) {
                texts.put(part.id(), "laminate, then " + size);
            }
        }
        return texts;
    }

    String size(Part part) {
        String length = lengths.part(part.length());
        return part.section() instanceof Section.Measured measured
                ? length + " x " + lengths.part(measured.width()) + " x " + lengths.part(measured.thickness())
                : length + " x " + ((Section.Nominal) part.section()).name();
    }
}
