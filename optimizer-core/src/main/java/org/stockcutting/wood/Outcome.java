package org.stockcutting.wood;

import java.util.Arrays;
import java.util.List;

/**
 * What the trials of one group gave.
 *
 * @param group the group
 * @param models what its stock was drawn from
 * @param least for each trial: the least number of boards beyond the plan that finishes it, or a number beyond all
 */
record Outcome(Group group, List<KnotModel> models, int[] least) {

    long finished(int more) {
        return Arrays.stream(least).filter(needed -> needed <= more).count();
    }

    int most() {
        return Arrays.stream(least)
                .filter(more -> more < Integer.MAX_VALUE)
                .max()
                .orElse(0);
    }
}
