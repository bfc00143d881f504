package org.stockcutting.http;

import org.stockcutting.io.PlanReader;
import org.stockcutting.job.Job;
import org.stockcutting.report.Derivation;
import org.stockcutting.sequence.CutSequencer;

/** How plans that come in are read: one made by hand may leave out what follows from its layouts. */
public final class PlanDocuments {

    private PlanDocuments() {}

    /** A reader of plans for this job. */
    public static PlanReader reader(Job job) {
        return new PlanReader(job, (of, layouts) -> {
            CutSequencer.Sequence sequence = CutSequencer.sequence(of, layouts);
            return Derivation.derive(of, layouts, sequence.steps(), sequence.setUps());
        });
    }
}
