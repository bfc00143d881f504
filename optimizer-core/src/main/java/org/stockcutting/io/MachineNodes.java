package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ObjectNode;
import org.stockcutting.job.Machines;
import org.stockcutting.length.LengthWriter;

/** Machines and the saw for first cuts, as they stand in documents. */
final class MachineNodes {

    private MachineNodes() {}

    static void put(ObjectNode doc, Machines machines, LengthWriter lengths) {
        Machines.Breakdown saw = machines.breakdown();
        if (saw != null) {
            ObjectNode node = doc.putObject("breakdown");
            JobWriter.put(node, "kerf", saw.kerf(), lengths);
            JobWriter.put(node, "over", saw.over(), lengths);
        }
        boolean known = !machines.jointer().equals(Machines.Machine.UNKNOWN)
                || !machines.planer().equals(Machines.Machine.UNKNOWN);
        if (known) {
            ObjectNode node = doc.putObject("machines");
            put(node.putObject("jointer"), machines.jointer(), lengths);
            put(node.putObject("planer"), machines.planer(), lengths);
        }
    }

    private static void put(ObjectNode node, Machines.Machine machine, LengthWriter lengths) {
        JobWriter.put(node, "width", machine.width(), lengths);
        JobWriter.put(node, "shortest", machine.shortest(), lengths);
    }
}
