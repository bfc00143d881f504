package org.stockcutting.wood;

import java.util.Optional;
import org.stockcutting.material.GradeTable;

/** What boards of each grade of the table are usually like. These are starting points; measured boards overrule them. */
public final class WoodGrades {

    private final GradeTable table;

    private WoodGrades(GradeTable table) {
        this.table = table;
    }

    /** The library's table. */
    public static WoodGrades standard() {
        return new WoodGrades(GradeTable.standard());
    }

    /** The model of a grade, or nothing where the table does not know it. */
    public Optional<KnotModel> find(String grade) {
        return Optional.ofNullable(table.all().get(grade))
                .map(row -> new KnotModel(
                        row.clearRun(),
                        row.zone(),
                        row.endCheck(),
                        row.unusableBoards(),
                        row.tightKnots(),
                        row.blemishes(),
                        "grade " + row.name() + " (" + row.source() + ")"));
    }
}
