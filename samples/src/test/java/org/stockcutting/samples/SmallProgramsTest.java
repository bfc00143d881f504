package org.stockcutting.samples;

import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** The small programs print what is committed beside the plans. {@link AskTheService} needs a service: see {@link SamplesTest}. */
class SmallProgramsTest {

    static Stream<Arguments> programs() {
        return Stream.of(
                program("HelloPlan", HelloPlan::answer),
                program("AreTenFootersWorthIt", AreTenFootersWorthIt::answer),
                program("UseTheLeftovers", UseTheLeftovers::answer),
                program("OneRackThreeJobs", OneRackThreeJobs::answer),
                program("CutAroundKnots", CutAroundKnots::answer),
                program("GlueUpTabletop", GlueUpTabletop::answer),
                program("OneSheetOfPlywood", OneSheetOfPlywood::answer),
                program("HowManyToBeSure", HowManyToBeSure::answer),
                program("WatchAndCancel", WatchAndCancel::answer),
                program("CheckAHandMadePlan", CheckAHandMadePlan::answer));
    }

    private static Arguments program(String name, Supplier<String> answer) {
        return Arguments.of(name, answer);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("programs")
    void printsWhatIsCommitted(String name, Supplier<String> answer) {
        Expected.check(name + ".txt", answer.get());
    }
}
