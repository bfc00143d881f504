package org.stockcutting.http.cli;

import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.io.CsvJobReader;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.JobReading;
import org.stockcutting.job.Job;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Where a job comes from: one document, or tables of parts and stock with the rest in a shop document. */
final class JobSource {

    @Spec(Spec.Target.MIXEE)
    private @Nullable CommandSpec spec;

    @Option(names = "--parts", paramLabel = "FILE.csv", description = "Table of parts, in place of a job document.")
    private @Nullable Path parts;

    @Option(names = "--stock", paramLabel = "FILE.csv", description = "Table of stock for sale and boards on hand.")
    private @Nullable Path stock;

    @Option(names = "--shop", paramLabel = "FILE.json", description = "Rest of the job: unit, kerfs, trims, goal.")
    private @Nullable Path shop;

    /** True if tables were named. */
    boolean isTables() {
        return parts != null || stock != null || shop != null;
    }

    /** What the reader found; it may have faults. */
    JobReading read(List<Path> documents) {
        if (!isTables()) {
            if (documents.size() != 1) {
                throw usage("Name one job document, or tables with --parts and --stock.");
            }
            return new JobReader().read(InputFile.bytes(documents.get(0)));
        }
        if (!documents.isEmpty()) {
            throw usage("Give either a job document or tables, not both.");
        }
        if (parts == null || stock == null) {
            throw usage("Tables need both --parts and --stock.");
        }
        return new CsvJobReader()
                .read(InputFile.text(parts), InputFile.text(stock), shop == null ? null : InputFile.text(shop));
    }

    /** What was read, for messages. */
    String name(List<Path> documents) {
        return isTables()
                ? parts + " and " + stock
                : String.join(", ", documents.stream().map(Path::toString).toList());
    }

    /** The job of a reading without faults. */
    Job accepted(JobReading reading, List<Path> documents) {
        Job job = reading.job();
        if (job == null || !reading.faults().isEmpty()) {
            throw new RefusedException(name(documents), reading.faults());
        }
        return job;
    }

    private RuntimeException usage(String text) {
        return spec == null ? new IllegalStateException(text) : new ParameterException(spec.commandLine(), text);
    }
}
