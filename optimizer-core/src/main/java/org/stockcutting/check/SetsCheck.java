package org.stockcutting.check;

import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Shortage;
import org.stockcutting.part.Part;
import org.stockcutting.plan.WholeSets;

/** How many sets come out whole, and what the next one lacks, counted again; that no more can be made is a claim. */
final class SetsCheck {

    private SetsCheck() {}

    /** A plan may say nothing of it. */
    static void check(Facts facts, Census census, @Nullable WholeSets said, Inspection inspection) {
        if (said == null) {
            return;
        }
        String at = "/wholeSets";
        inspection.require(
                facts.job().shortage() == Shortage.WHOLE_SETS,
                Cause.UNPLACED,
                at,
                "the job does not ask for whole sets first");
        int sets = facts.job().sets();
        int complete = sets;
        for (Rough rough : facts.roughs().values()) {
            int placed = census.placed(rough, facts.demand(rough.part()));
            complete = Math.min(complete, placed / rough.part().quantity());
        }
        inspection.require(
                said.complete() == complete,
                Cause.UNPLACED,
                at + "/complete",
                "says " + said.complete() + ", the layouts make " + complete);
        inspection.require(
                said.atMost() >= complete && said.atMost() <= sets,
                Cause.UNPLACED,
                at + "/atMost",
                said.atMost() + " is not between the " + complete + " made and the " + sets + " asked for");
        SortedMap<String, Integer> lacks = new TreeMap<>();
        for (Rough rough : facts.roughs().values()) {
            Part part = rough.part();
            int lack = (complete + 1) * part.quantity() - census.placed(rough, facts.demand(part));
            if (complete < sets && lack > 0) {
                lacks.put(part.id(), lack);
            }
        }
        SortedMap<String, Integer> given = new TreeMap<>();
        said.missing().forEach(lack -> given.merge(lack.part(), lack.quantity(), Integer::sum));
        inspection.require(
                given.equals(lacks),
                Cause.UNPLACED,
                at + "/missing",
                "says " + given + ", the next set lacks " + lacks);
    }
}
