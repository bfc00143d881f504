package org.stockcutting.job;

import java.util.Map;
import org.stockcutting.length.Length;

/**
 * Profiles of a job that defines none of its own. Common practice: rough length + 1 in (trade articles), glue-ups 2 in over length,
 * 1 in over width and 1/16 in over thickness, laminations 1/4 in over width and 1 in over length.
 */
final class BuiltInAllowances {

    static final Map<String, AllowanceProfile> PROFILES = Map.of(
            AllowanceProfile.MILLED, profile("1", "0.125", "0.1875", "0", "0", "0"),
            AllowanceProfile.GLUE_UP, profile("2", "1", "0.0625", "0.125", "0.1875", "0"),
            AllowanceProfile.LAMINATION, profile("1", "0.25", "0", "0", "0", "0.0625"));

    private BuiltInAllowances() {}

    private static AllowanceProfile profile(
            String length, String width, String thickness, String perStave, String staveThickness, String perPly) {
        return new AllowanceProfile(
                Length.inches(length),
                Length.inches(width),
                Length.inches(thickness),
                Length.inches(perStave),
                Length.inches(staveThickness),
                Length.inches(perPly));
    }
}
