package org.stockcutting.bench.instances;

import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;
import org.stockcutting.job.Job;

/**
 * One job to be solved.
 *
 * @param file what it is called in tables; unique in one run
 * @param group what it is summed up with
 * @param job the job
 * @param known what is known about it
 * @param defaults defaults that were filled in when a job document was read
 */
public record Instance(String file, String group, Job job, Known known, SortedMap<String, String> defaults) {

    public Instance {
        defaults = Collections.unmodifiableSortedMap(new TreeMap<>(defaults));
    }

    Instance(String file, String group, Job job, Known known) {
        this(file, group, job, known, new TreeMap<>());
    }
}
