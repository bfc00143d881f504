package org.stockcutting.plan;

import java.util.List;

/**
 * How many sets come out whole where a job asks for that first. Copies of a part are taken for each other.
 *
 * @param complete sets of which every part has wood
 * @param atMost more cannot be made; a claim of the search. Where it is {@code complete} there is no better plan
 * @param missing what the next set lacks, by part id; empty where all sets are complete
 */
public record WholeSets(int complete, int atMost, List<Lack> missing) {

    public WholeSets {
        missing = List.copyOf(missing);
    }

    /**
     * Finished pieces that the next set lacks.
     *
     * @param part id of the part
     * @param quantity how many, at least 1
     */
    public record Lack(String part, int quantity) {}
}
