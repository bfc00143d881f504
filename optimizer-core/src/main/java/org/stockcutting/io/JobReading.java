package org.stockcutting.io;

import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Fault;
import org.stockcutting.job.Job;

/**
 * What came of reading a job.
 *
 * @param job the job, or null where there are faults
 * @param faults every fault of text, shape and meaning, at most {@link org.stockcutting.job.JobReview#MOST}
 * @param defaults every default that was filled in: by its pointer with ids in place of positions, or, where there are faults, by its
 *     plain pointer
 */
public record JobReading(@Nullable Job job, List<Fault> faults, SortedMap<String, String> defaults) {

    public JobReading {
        faults = List.copyOf(faults);
        defaults = Collections.unmodifiableSortedMap(new TreeMap<>(defaults));
    }

    /** True if the job can be planned. */
    public boolean isValid() {
        return job != null;
    }

    /**
     * The job.
     *
     * @throws IllegalArgumentException naming the first fault, where there is one
     */
    public Job orThrow() {
        if (job == null) {
            Fault first = faults.get(0);
            throw new IllegalArgumentException(
                    "the job has " + faults.size() + " faults; the first, at " + first.pointer() + ": " + first.text());
        }
        return job;
    }
}
