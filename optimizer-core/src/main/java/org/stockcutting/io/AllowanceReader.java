package org.stockcutting.io;

import java.util.SortedMap;
import java.util.TreeMap;
import org.stockcutting.job.AllowanceProfile;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;

/** Reads the object {@code allowances}, and adds the built-in profiles that it does not define. */
final class AllowanceReader {

    private AllowanceReader() {}

    static SortedMap<String, AllowanceProfile> read(DocObject allowances) {
        SortedMap<String, AllowanceProfile> profiles = new TreeMap<>(Job.builtInAllowances());
        for (String name : allowances.names()) {
            DocObject profile = allowances.named(name);
            if (profile != null) {
                profiles.put(name, profile(profile));
            }
        }
        return profiles;
    }

    private static AllowanceProfile profile(DocObject doc) {
        return new AllowanceProfile(
                Or.zero(doc.length("length")),
                Or.zero(doc.length("width")),
                Or.zero(doc.length("thickness")),
                Or.zero(doc.length("perStave")),
                Or.zero(doc.length("staveThickness")),
                Or.zero(doc.length("perPly")));
    }

    /** Notes a built-in profile as filled in. */
    static void note(String pointer, AllowanceProfile profile, Reading reading) {
        note(pointer + "/length", profile.length(), reading);
        note(pointer + "/width", profile.width(), reading);
        note(pointer + "/thickness", profile.thickness(), reading);
        note(pointer + "/perStave", profile.perStave(), reading);
        note(pointer + "/staveThickness", profile.staveThickness(), reading);
        note(pointer + "/perPly", profile.perPly(), reading);
    }

    private static void note(String pointer, Length length, Reading reading) {
        reading.filledIn(pointer, reading.writer().exact(length));
    }
}
