package org.stockcutting.bench.quality;

import org.jspecify.annotations.Nullable;
import org.stockcutting.bench.instances.SawTerms;
import picocli.CommandLine.Option;

/** Options that lay limits of the saws over every job of a run. */
final class SawOptions {

    @Option(names = "--stages", paramLabel = "N", description = "every job with at most N cutting directions in a row")
    private @Nullable Integer stages;

    @Option(
            names = "--rip-capacity",
            paramLabel = "INCHES",
            description = "every job on a saw with so much between fence and blade")
    private @Nullable String ripCapacity;

    @Option(
            names = "--crosscut-capacity",
            paramLabel = "INCHES",
            description = "every job on a saw that crosscuts nothing wider")
    private @Nullable String crosscutCapacity;

    /** @throws IllegalArgumentException naming the option that is not a limit */
    SawTerms terms() {
        if (stages != null && stages < 1) {
            throw new IllegalArgumentException("--stages is " + stages + "; wanted 1 or more");
        }
        positive("--rip-capacity", ripCapacity);
        positive("--crosscut-capacity", crosscutCapacity);
        return new SawTerms(stages, ripCapacity, crosscutCapacity);
    }

    private static void positive(String name, @Nullable String inches) {
        if (inches != null && !inches.matches("0*[1-9][0-9]{0,3}(\\.[0-9]{1,6})?")) {
            throw new IllegalArgumentException(
                    name + " is \"" + inches + "\"; wanted inches as a decimal, as 16 or 16.5");
        }
    }
}
