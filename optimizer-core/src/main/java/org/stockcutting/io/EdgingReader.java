package org.stockcutting.io;

import org.stockcutting.part.Edging;

/** Reads the object {@code edging} of a part. */
final class EdgingReader {

    private EdgingReader() {}

    static Edging read(DocObject part) {
        DocObject edging = part.object("edging");
        if (edging == null) {
            return Edging.NONE;
        }
        Edging read = new Edging(
                edging.length("start"),
                edging.length("end"),
                edging.length("edge"),
                edging.length("farEdge"),
                Or.of(edging.length("over"), Edging.USUAL_OVER));
        if (!edging.has("start") && !edging.has("end") && !edging.has("edge") && !edging.has("farEdge")) {
            edging.missing("edge", "a thickness on at least one side", "thickness of the strip");
        }
        return read;
    }
}
