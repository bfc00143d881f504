package org.stockcutting.io;

import static org.stockcutting.io.FieldType.BOOLEAN;
import static org.stockcutting.io.FieldType.INTEGER;
import static org.stockcutting.io.FieldType.LENGTH;
import static org.stockcutting.io.FieldType.LIST;
import static org.stockcutting.io.FieldType.TEXT;

/** Every field of the document that says whether the boards on hand are enough yet, in the order it is written. */
public final class EnoughFields {

    /** Fields of the document. */
    public static final FieldTable ENOUGH = PlanFields.unplaced(
                    FieldTable.of()
                            .in("")
                            .or("format", INTEGER, "1", "version of the document's form")
                            .needs("job", TEXT, "name of the job")
                            .needs("jobHash", TEXT, "hash of the job")
                            .needs("enough", BOOLEAN, "true if all boards together suffice")
                            .may("firstEnough", TEXT, "id of the board with which there was enough")
                            .needs("steps", LIST, "one for each entry on hand, in the order of the job")
                            .in("/steps/*")
                            .needs("board", TEXT, "id of the entry that was added last")
                            .needs("enough", BOOLEAN, "true if every part has its board now")
                            .needs("unplaced", LIST, "parts that still have no board, and why")
                            .needs("unused", LIST, "ids of entries of which nothing is needed")
                            .needs("longestLeft", LENGTH, "longest rest of a board that is cut"),
                    "/steps/*")
            .build();

    private EnoughFields() {}
}
