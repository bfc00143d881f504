package org.stockcutting.bench.peers;

import java.io.IOException;
import java.nio.file.Path;

/** A table of results as the paragraph and the tables of a document. */
public final class PeersReport {

    private PeersReport() {}

    /**
     * Text in Markdown.
     *
     * @param csv what {@code peers --csv} wrote
     * @param date when it was measured
     */
    public static String markdown(Path csv, String date) throws IOException {
        PeersTable table = PeersTable.read(csv);
        Standings standings = new Standings(table.results(), table.methods());
        return "Beside other methods: measured on " + date + ", " + table.jobs() + " jobs of our own, "
                + table.seconds() + " s each, seed " + table.seed() + ", one thread, CP-SAT with " + CpSat.WORKERS
                + " workers\n(`java -jar benchmarks/target/benchmarks.jar peers --seconds " + table.seconds()
                + " --seed " + table.seed() + "`; results in `benchmarks/results/" + csv.getFileName() + "`).\n"
                + "Mean gap over the best bound known; in brackets plans found where not all were. First-fit and best-fit decreasing choose the\n"
                + "best stock for each board; OptaPlanner starts from the latter.\n\n"
                + standings.markdown();
    }
}
