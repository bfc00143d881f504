package org.stockcutting.io;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.FaultCode;
import org.stockcutting.length.Length;
import org.stockcutting.material.Grain;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.Binding;
import org.stockcutting.part.CutFrom;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.part.Selection;
import org.stockcutting.part.ShowFaces;

/** Reads the parts list. */
final class PartReader {

    private static final int LETTERS = 26;

    private final Reading reading;
    private final String jobMaterial;
    private final Set<String> taken = new HashSet<>();
    private int lettered;

    PartReader(Reading reading, String jobMaterial) {
        this.reading = reading;
        this.jobMaterial = jobMaterial;
    }

    List<Part> read(DocObject doc) {
        List<@Nullable DocObject> lines = doc.objects("parts");
        List<@Nullable String> ids = new ArrayList<>();
        for (DocObject line : lines) {
            String id = line == null ? null : line.text("id");
            ids.add(id);
            if (id != null) {
                taken.add(id);
            }
        }
        List<Part> parts = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            DocObject line = lines.get(i);
            String id = ids.get(i);
            parts.add(line == null ? standIn(i) : part(line, id == null ? letterFor(line) : id));
        }
        return parts;
    }

    /** Keeps the place of a line that is no object at all. */
    private static Part standIn(int index) {
        return new Part(
                "line " + index,
                1,
                Or.SIZE,
                new Section.Measured(Or.SIZE, Or.SIZE),
                Or.NAME,
                null,
                WoodClass.CLEAR,
                0,
                new Making.AsCut(),
                null,
                null);
    }

    private String letterFor(DocObject line) {
        String id = letters(lettered++);
        while (!taken.add(id)) {
            id = letters(lettered++);
        }
        reading.filledIn(line.pointer("id"), id);
        return id;
    }

    /** A to Z, AA to AZ, BA and so on. */
    static String letters(int index) {
        StringBuilder id = new StringBuilder();
        for (int rest = index; rest >= 0; rest = rest / LETTERS - 1) {
            id.insert(0, (char) ('A' + rest % LETTERS));
        }
        return id.toString();
    }

    private Part part(DocObject line, String id) {
        Integer quantity = line.integer("quantity");
        Length length = Or.size(line.length("length"));
        Section section = section(line);
        String material = line.text("material");
        if (!line.has("material")) {
            reading.filledIn(line.pointer("material"), jobMaterial);
        }
        return new Part(
                id,
                Or.of(quantity, 1),
                length,
                section,
                Or.of(material, jobMaterial),
                line.word("grain", Grain.values(), Grain::word),
                Or.of(line.word("class", WoodClass.values(), WoodClass::word), WoodClass.CLEAR),
                Or.of(line.integer("spares"), 0),
                making(line),
                group(line),
                line.text("note"),
                EdgingReader.read(line),
                ShapingReader.read(line),
                new Selection(
                        binding(line),
                        Or.of(line.word("showFaces", ShowFaces.values(), ShowFaces::word), ShowFaces.BOTH),
                        cutFrom(line),
                        line.texts("grades")));
    }

    private Section section(DocObject line) {
        Length width = line.length("width");
        Length thickness = line.length("thickness");
        String nominal = line.text("nominal");
        if (!line.has("nominal")) {
            if (!line.has("width")) {
                line.missing("width", "a width and a thickness, or a nominal", "finished width");
            }
            if (!line.has("thickness")) {
                line.missing("thickness", "a width and a thickness, or a nominal", "finished thickness");
            }
            return new Section.Measured(Or.size(width), Or.size(thickness));
        }
        if (line.has("width") || line.has("thickness")) {
            reading.faults()
                    .add(
                            line.pointer("nominal"),
                            FaultCode.CONFLICT,
                            Or.of(nominal, "nominal"),
                            "nominal alone, or width and thickness",
                            "This part has a trade size and measured sizes; keep nominal to take the board as it comes,"
                                    + " or width and thickness to have it ripped and planed.");
        }
        return nominal == null ? new Section.Measured(Or.SIZE, Or.SIZE) : new Section.Nominal(nominal);
    }

    private Making making(DocObject line) {
        String allowance = line.text("allowance");
        DocObject make = line.object("make");
        Integer gang = line.integer("gang");
        if (gang != null && allowance == null) {
            reading.faults()
                    .add(
                            line.pointer("gang"),
                            FaultCode.CONFLICT,
                            gang.toString(),
                            "a part with an allowance",
                            "Only what is milled stays together in one blank; give this part an allowance, or take gang"
                                    + " out.");
        }
        if (make == null) {
            return allowance == null ? new Making.AsCut() : new Making.Milled(allowance, Or.of(gang, 1));
        }
        if (line.has("allowance")) {
            reading.faults()
                    .add(
                            line.pointer("allowance"),
                            FaultCode.CONFLICT,
                            Or.of(allowance, "allowance"),
                            "allowance or make",
                            "This part has an allowance and a make; a make uses the profile of its own name, so take the"
                                    + " allowance out.");
        }
        String as = make.word("as");
        if (Fields.GLUE_UP.equals(as)) {
            exclude(make, "plies", Fields.GLUE_UP);
            return glueUp(make);
        }
        if (Fields.LAMINATION.equals(as)) {
            exclude(make, "staves", Fields.LAMINATION);
            return lamination(make);
        }
        return new Making.AsCut();
    }

    private void exclude(DocObject make, String name, String as) {
        if (make.has(name)) {
            reading.faults()
                    .add(
                            make.pointer(name),
                            FaultCode.CONFLICT,
                            name,
                            "nothing",
                            "A " + as + " has no " + name + "; take the field out or make it something else.");
        }
    }

    private static Making glueUp(DocObject make) {
        DocObject staves = make.object("staves");
        if (staves == null) {
            if (!make.has("staves")) {
                make.missing("staves", "an object with min and max", "widths of the staves");
            }
            return new Making.AsCut();
        }
        return new Making.GlueUp(
                Or.size(staves.length("min")),
                Or.size(staves.length("max")),
                staves.integer("count"),
                Or.of(
                        staves.word("from", Making.StaveSource.values(), Making.StaveSource::word),
                        Making.StaveSource.ANY));
    }

    private static Making lamination(DocObject make) {
        Integer plies = make.integer("plies");
        if (plies == null && !make.has("plies")) {
            make.missing("plies", "a whole number from 2", "number of plies");
        }
        return new Making.Lamination(Or.of(plies, 2));
    }

    private static @Nullable String group(DocObject line) {
        DocObject group = line.object("group");
        if (group == null) {
            return null;
        }
        return group.text("name");
    }

    private static @Nullable CutFrom cutFrom(DocObject line) {
        DocObject place = line.object("cutFrom");
        return place == null
                ? null
                : new CutFrom(Or.of(place.text("stock"), Or.NAME), place.length("from"), place.length("edge"));
    }

    private static Binding binding(DocObject line) {
        DocObject group = line.object("group");
        Binding told = group == null ? null : group.word("rule", Binding.values(), Binding::word);
        return Or.of(told, Binding.SAME_BOARD);
    }
}
