package org.stockcutting.io;

import static org.stockcutting.io.FieldType.INTEGER;
import static org.stockcutting.io.FieldType.LENGTH;
import static org.stockcutting.io.FieldType.LIST;
import static org.stockcutting.io.FieldType.TEXT;

import java.util.List;
import org.stockcutting.plan.Worklog;
import org.stockcutting.stock.Zone;

/** Every field of a worklog document. Lengths are read as the job's lengths are. */
public final class WorklogFields {

    /** Fields of a worklog document. */
    public static final FieldTable WORKLOG = FieldTable.of()
            .in("")
            .or("format", INTEGER, "1", "version of the document's form")
            .needs("plan", TEXT, "jobHash of the plan that was followed")
            .may("done", LIST, "numbers of the steps that are done")
            .may("spoiled", LIST, "pieces that were cut and are no good")
            .may("zones", LIST, "bad stretches found since")
            .may("missing", LIST, "boards that are not there, or no good at all")
            .in("/spoiled/*")
            .needs("part", TEXT, "id of the part")
            .needs("number", INTEGER, "its number in the plan")
            .may("member", INTEGER, "which stave or ply; all that are cut where absent")
            .in("/zones/*")
            .needs("board", TEXT, "board as the cut sequence names it")
            .needs("from", LENGTH, "start along the length")
            .needs("to", LENGTH, "end along the length")
            .may("fromEdge", LENGTH, "start across; the whole width where both are absent")
            .may("toEdge", LENGTH, "end across")
            .orWord("severity", "unusable", Words.of(Zone.Severity.values(), Zone.Severity::word), "how bad it is")
            .orWord("face", "both", Words.of(Zone.Face.values(), Zone.Face::word), "which face shows it")
            .mayWord("kind", List.of(Fields.METAL), "metal: no cut may pass through it")
            .orWord(
                    "measuredFrom",
                    "original-zero",
                    Words.of(Worklog.MeasuredFrom.values(), Worklog.MeasuredFrom::word),
                    "where the tape was hooked: the board's raw start end, or the end that is the start now")
            .build();

    private WorklogFields() {}
}
