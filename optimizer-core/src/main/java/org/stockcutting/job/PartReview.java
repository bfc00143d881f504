package org.stockcutting.job;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.stockcutting.length.Length;
import org.stockcutting.material.NominalCatalog;
import org.stockcutting.material.NominalSize;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.stock.StockItem;

/** Reviews the parts list. */
final class PartReview {

    /** Names of leaves of a cut tree that are no parts. */
    private static final Set<String> RESERVED = Set.of("trim", "offcut", "sliver");

    private static final int MOST_PLIES = 1_000;

    private final Job job;
    private final Findings findings;
    private final Set<String> ownNominals;
    private final Map<String, String> firstOfId = new HashMap<>();
    private final Map<String, Integer> firstOfGroup = new LinkedHashMap<>();

    PartReview(Job job, Findings findings) {
        this.job = job;
        this.findings = findings;
        this.ownNominals = Stream.concat(job.forSale().stream(), job.onHand().stream())
                .map(StockItem::nominal)
                .filter(n -> n != null)
                .map(NominalSize::name)
                .collect(Collectors.toSet());
    }

    void review() {
        List<Part> parts = job.parts();
        if (parts.isEmpty()) {
            findings.add(
                    "/parts",
                    FaultCode.NO_PARTS,
                    "none",
                    "at least one part",
                    "The parts list is empty; add at least one part.");
        }
        if (parts.size() > JobReview.MOST_PARTS) {
            tooMany("/parts", parts.size() + " lines", "at most " + JobReview.MOST_PARTS + " lines");
        }
        GradeReview grades = new GradeReview(job, findings);
        long pieces = 0;
        for (int i = 0; i < parts.size(); i++) {
            Part part = parts.get(i);
            String at = "/parts/" + i;
            names(at, part);
            sizes(at, part);
            new EdgingReview(findings).review(at, part);
            new ShapingReview(job, findings).review(at, part);
            new EndsReview(job, findings).review(at, part);
            making(at, part);
            group(at, i, part);
            new CutFromReview(job, findings).review(at, part);
            grades.part(at, part);
            pieces = Math.min(Long.MAX_VALUE / 2, pieces + pieces(part));
        }
        new PairReview(job, findings).review();
        if (pieces > JobReview.MOST_PIECES) {
            tooMany("/parts", pieces + " pieces", "at most " + JobReview.MOST_PIECES + " pieces");
        }
    }

    private void tooMany(String pointer, String got, String wanted) {
        findings.add(
                pointer,
                FaultCode.TOO_MANY,
                got,
                wanted,
                "The parts list comes to " + got + "; " + wanted + " are planned at once: split the job.",
                "/sets");
    }

    private void names(String at, Part part) {
        JobReview.reviewId(at, part.id(), firstOfId, findings);
        if (RESERVED.contains(part.id())) {
            findings.add(
                    at + "/id",
                    FaultCode.RESERVED_ID,
                    part.id(),
                    "any other name",
                    "\"" + part.id() + "\" names waste in a cutting plan; give the part another id.");
        }
        findings.text(at + "/material", part.material(), JobReview.LONGEST_NAME, false);
        findings.text(at + "/note", part.note(), JobReview.LONGEST_NOTE, true);
        findings.text(at + "/group/name", part.group(), JobReview.LONGEST_NAME, false);
    }

    private void sizes(String at, Part part) {
        findings.within(
                at + "/quantity",
                part.quantity(),
                1,
                JobReview.MOST_PIECES,
                got -> "Part " + part.id() + " is wanted " + got + " times; from 1 to " + JobReview.MOST_PIECES
                        + " are planned: leave the line out if there are none.");
        findings.within(
                at + "/spares",
                part.spares(),
                0,
                JobReview.MOST_PIECES,
                got -> "Part " + part.id() + " asks for " + got + " spares; give 0 or more.");
        findings.positive(at + "/length", part.length());
        tolerance(at, part);
        if (part.section() instanceof Section.Measured section) {
            findings.positive(at + "/width", section.width());
            findings.positive(at + "/thickness", section.thickness());
        } else if (part.section() instanceof Section.Nominal section) {
            nominal(at + "/nominal", section.name());
        }
    }

    private void tolerance(String at, Part part) {
        Length tolerance = part.shaping().tolerance();
        findings.notNegative(at + "/tolerance", tolerance);
        if (!tolerance.isLessThan(part.length()) && part.length().isPositive()) {
            findings.add(
                    at + "/tolerance",
                    FaultCode.CONFLICT,
                    findings.say(tolerance),
                    "less than " + findings.say(part.length()),
                    "A part of " + findings.say(part.length()) + " that may be " + findings.say(tolerance)
                            + " smaller may be nothing; give a tolerance below its length.",
                    at + "/length");
        }
    }

    private void nominal(String pointer, String name) {
        boolean known = ownNominals.contains(name)
                || NominalCatalog.standard().find(name).isPresent();
        if (!known) {
            findings.add(
                    pointer,
                    FaultCode.UNKNOWN_NOMINAL,
                    name,
                    "a trade size of the catalog, such as 2x4",
                    "The catalog has no trade size \"" + name + "\"; give width and thickness instead.");
        }
    }

    private void making(String at, Part part) {
        if (part.making() instanceof Making.Milled milled) {
            profile(at + "/allowance", milled.profile());
            new GangReview(job, findings).review(at, part, milled.gang());
        } else if (part.making() instanceof Making.GlueUp glueUp) {
            profile(at + "/make", AllowanceProfile.GLUE_UP);
            glueUp(at, part, glueUp);
        } else if (part.making() instanceof Making.Lamination lamination) {
            profile(at + "/make", AllowanceProfile.LAMINATION);
            needsSection(at, part);
            findings.within(
                    at + "/make/plies",
                    lamination.plies(),
                    2,
                    MOST_PLIES,
                    got -> "Part " + part.id() + " is laminated from " + got + " plies; give 2 to " + MOST_PLIES + ".");
        }
    }

    private void profile(String pointer, String name) {
        if (!job.allowances().containsKey(name)) {
            findings.add(
                    pointer,
                    FaultCode.UNKNOWN_ALLOWANCE,
                    name,
                    "one of " + String.join(", ", job.allowances().keySet()),
                    "The job has no allowance profile \"" + name + "\"; define it under allowances or use one of "
                            + String.join(", ", job.allowances().keySet()) + ".",
                    "/allowances/" + ShopReview.escaped(name));
        }
    }

    private void needsSection(String at, Part part) {
        if (part.section() instanceof Section.Nominal) {
            findings.add(
                    at + "/make",
                    FaultCode.CONFLICT,
                    "nominal",
                    "width and thickness",
                    "Part " + part.id()
                            + " is glued up but has a trade size; give its finished width and thickness instead.",
                    at + "/nominal",
                    at + "/width",
                    at + "/thickness");
        }
    }

    private void glueUp(String at, Part part, Making.GlueUp glueUp) {
        String staves = at + "/make/staves";
        needsSection(at, part);
        findings.positive(staves + "/min", glueUp.minStave());
        findings.positive(staves + "/max", glueUp.maxStave());
        findings.within(
                staves + "/count",
                glueUp.count(),
                1,
                JobReview.MOST_PIECES,
                got -> "Part " + part.id() + " is glued up from " + got + " staves; give at least 1 or leave it out.");
        if (glueUp.minStave().isMoreThan(glueUp.maxStave())) {
            findings.add(
                    staves,
                    FaultCode.IMPOSSIBLE_GLUE_UP,
                    findings.say(glueUp.minStave()) + " to " + findings.say(glueUp.maxStave()),
                    "min at most max",
                    "Staves of " + part.id() + " are at least " + findings.say(glueUp.minStave()) + " and at most "
                            + findings.say(glueUp.maxStave()) + " wide, which none can be; swap min and max.");
            return;
        }
        reaches(at, part, glueUp);
    }

    /** A given number of staves must reach the panel's width even when each is as wide as it may be. */
    private void reaches(String at, Part part, Making.GlueUp glueUp) {
        AllowanceProfile profile = job.allowances().get(AllowanceProfile.GLUE_UP);
        Integer count = glueUp.count();
        if (count == null
                || count < 1
                || profile == null
                || !(part.coreSection() instanceof Section.Measured section)) {
            return;
        }
        Length panel = section.width().plus(profile.width());
        if (count < stavesFor(panel, glueUp.maxStave())) {
            findings.add(
                    at + "/make/staves/count",
                    FaultCode.IMPOSSIBLE_GLUE_UP,
                    count.toString(),
                    "at least " + stavesFor(panel, glueUp.maxStave()),
                    count + " staves of at most " + findings.say(glueUp.maxStave()) + " do not reach the "
                            + findings.say(panel) + " of panel " + part.id() + "; take "
                            + stavesFor(panel, glueUp.maxStave()) + " or more, or allow wider ones.",
                    at + "/make/staves/max",
                    at + "/width",
                    "/allowances/" + AllowanceProfile.GLUE_UP);
        }
    }

    private static long stavesFor(Length panel, Length widest) {
        return widest.isPositive() ? -Math.floorDiv(-panel.nanometres(), widest.nanometres()) : 1;
    }

    private void group(String at, int index, Part part) {
        String name = part.group();
        if (name == null) {
            return;
        }
        if (part.making() instanceof Making.GlueUp glueUp && glueUp.from() == Making.StaveSource.DIFFERENT_BOARDS) {
            findings.add(
                    at + "/group",
                    FaultCode.CONFLICT,
                    Making.StaveSource.DIFFERENT_BOARDS.word(),
                    "staves from any board or one board",
                    "Part " + part.id() + " wants its staves from different boards and group " + name
                            + " wants one board; drop one of the two.",
                    at + "/make/staves/from");
        }
        Integer first = firstOfGroup.putIfAbsent(name, index);
        if (first != null && !canShare(job.parts().get(first), part)) {
            String other = "/parts/" + first;
            findings.add(
                    at + "/group",
                    FaultCode.MIXED_GROUP,
                    wood(part),
                    wood(job.parts().get(first)),
                    "Group " + name + " comes from one board, but " + part.id() + " is " + wood(part) + " and "
                            + job.parts().get(first).id() + " is "
                            + wood(job.parts().get(first)) + "; make it two groups.",
                    at + "/material",
                    at + "/nominal",
                    other + "/material",
                    other + "/nominal",
                    other + "/group");
        }
    }

    private static boolean canShare(Part one, Part other) {
        if (!one.material().equals(other.material())) {
            return false;
        }
        return !(one.section() instanceof Section.Nominal a)
                || !(other.section() instanceof Section.Nominal b)
                || a.name().equals(b.name());
    }

    private static String wood(Part part) {
        return part.section() instanceof Section.Nominal nominal
                ? nominal.name() + " of " + part.material()
                : part.material();
    }

    private long pieces(Part part) {
        long finished = (long) part.quantity() * job.sets() + part.spares();
        return finished <= 0 ? 0 : Math.min(Long.MAX_VALUE / JobReview.MOST_PARTS / 4, saturated(finished, part));
    }

    private long saturated(long finished, Part part) {
        long perPart = piecesPerPart(part);
        return perPart > Long.MAX_VALUE / finished ? Long.MAX_VALUE : finished * perPart;
    }

    private long piecesPerPart(Part part) {
        if (part.making() instanceof Making.Lamination lamination) {
            return Math.max(1, lamination.plies());
        }
        if (part.making() instanceof Making.GlueUp glueUp) {
            if (glueUp.count() != null) {
                return Math.max(1, glueUp.count());
            }
            AllowanceProfile profile = job.allowances().get(AllowanceProfile.GLUE_UP);
            if (profile != null && part.coreSection() instanceof Section.Measured section) {
                return Math.max(1, stavesFor(section.width().plus(profile.width()), glueUp.maxStave()));
            }
        }
        return 1;
    }
}
