package org.stockcutting.plan;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.stock.Zone;

/**
 * What has happened since a plan was made: cuts done, parts spoiled, bad stretches that only showed at the saw, boards that are gone.
 * Boards are named as in the cut sequence, {@code {stock} #k}.
 *
 * @param plan the hash of the job that the plan was made for, as the plan's header says it
 * @param done numbers of the steps that are done, in any order
 * @param spoiled pieces that were cut and are no good
 * @param zones bad stretches found since
 * @param missing boards that are not there, or no good at all
 */
public record Worklog(
        String plan, List<Integer> done, List<Spoiled> spoiled, List<FoundZone> zones, List<String> missing) {

    public Worklog {
        done = List.copyOf(done);
        spoiled = List.copyOf(spoiled);
        zones = List.copyOf(zones);
        missing = List.copyOf(missing);
    }

    /**
     * A piece that was cut and is no good.
     *
     * @param part id of the part
     * @param number its number in the plan
     * @param member which stave or ply of it, or null for all that are cut
     */
    public record Spoiled(String part, int number, @Nullable Integer member) {}

    /**
     * A bad stretch.
     *
     * @param board the board it is on
     * @param zone where it is and how bad
     * @param measuredFrom where the tape was hooked
     */
    public record FoundZone(String board, Zone zone, MeasuredFrom measuredFrom) {}

    /** Where the tape was hooked. */
    public enum MeasuredFrom {
        /** At the raw start end of the board as it was bought, and its raw edge: readings stay what they were. */
        ORIGINAL_ZERO("original-zero"),
        /** At the end that is now the start of what is still to be cut from the board, and at its present edge. */
        FRESH_END("fresh-end");

        private final String word;

        MeasuredFrom(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }
}
