package org.stockcutting.io;

import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Machines;

/** Reads {@code machines} and {@code breakdown}. */
final class MachineReader {

    private MachineReader() {}

    static Machines read(DocObject doc) {
        DocObject machines = doc.objectOrEmpty("machines");
        return new Machines(
                machine(machines.objectOrEmpty("jointer")),
                machine(machines.objectOrEmpty("planer")),
                breakdown(doc.object("breakdown")));
    }

    private static Machines.Machine machine(DocObject machine) {
        return new Machines.Machine(machine.length("width"), machine.length("shortest"));
    }

    private static Machines.@Nullable Breakdown breakdown(@Nullable DocObject saw) {
        return saw == null ? null : new Machines.Breakdown(Or.size(saw.length("kerf")), Or.zero(saw.length("over")));
    }
}
