package org.stockcutting.bench.instances;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.job.SawLimits;
import org.stockcutting.length.Length;

/**
 * Limits of the saws laid over jobs that were made or published without them, so that what a limit costs can be measured. Values and bounds
 * known without the limits stay true as bounds: a limit makes nothing cheaper.
 *
 * @param stages cutting directions in a row, at least 1, or null for no limit
 * @param ripCapacity fence to blade, in inches, or null for no limit
 * @param crosscutCapacity widest piece that can be crosscut, in inches, or null for no limit
 */
public record SawTerms(
        @Nullable Integer stages,
        @Nullable String ripCapacity,
        @Nullable String crosscutCapacity) {

    /** The job under these terms; its group says so, that tables do not mix it with others. */
    public Instance over(Instance instance) {
        List<String> words = new ArrayList<>();
        SawLimits own = instance.job().shop().limits();
        Length rip = own.ripCapacity();
        Length crosscut = own.crosscutCapacity();
        Integer most = own.stages();
        if (stages != null) {
            most = stages;
            words.add("stages " + stages);
        }
        if (ripCapacity != null) {
            rip = Length.inches(ripCapacity);
            words.add("rip " + ripCapacity);
        }
        if (crosscutCapacity != null) {
            crosscut = Length.inches(crosscutCapacity);
            words.add("crosscut " + crosscutCapacity);
        }
        if (words.isEmpty()) {
            return instance;
        }
        SawLimits limits = new SawLimits(rip, own.longestRip(), crosscut, most, own.firstCut(), own.minimumPiece());
        Job job = instance.job();
        return new Instance(
                instance.file(),
                instance.group() + " " + String.join(" ", words),
                job.withShop(job.shop().withLimits(limits)),
                instance.known().underNarrowerRules(),
                instance.defaults());
    }
}
