package org.stockcutting.io;

import com.fasterxml.jackson.databind.JsonNode;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.FaultCode;
import org.stockcutting.length.Length;
import org.stockcutting.stock.Trim;

/** Reads trims: four edges by name, or one length for all four edges of a sheet. */
final class TrimReader {

    private TrimReader() {}

    /** The trim in this field, or null if it is absent or faulty. */
    static @Nullable Trim read(DocObject doc, String name, boolean oneForAll) {
        JsonNode single = doc.single(name);
        if (single == null) {
            DocObject edges = doc.object(name);
            return edges == null
                    ? null
                    : new Trim(
                            edges.length("start"), edges.length("end"), edges.length("edge"), edges.length("farEdge"));
        }
        if (oneForAll && (single.isTextual() || single.isNumber())) {
            Length all = doc.lengthOf(name, single);
            return all == null ? null : new Trim(all, all, all, all);
        }
        String wanted = oneForAll ? FieldType.TRIM.wanted() : "an object {\"start\": ..., \"end\": ...}";
        doc.fault(name, FaultCode.WRONG_TYPE, single, wanted);
        return null;
    }
}
