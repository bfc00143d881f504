package org.stockcutting.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stockcutting.io.JobReading;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.StopReason;

/** J: one small job, three goals, three answers. */
class J01_GoalsTest {

    /**
     * Four parts of 30 in, 1 in wide and thick, no kerf; 62, 92 and 125 in for sale, which hold two, three and four. All there is to
     * choose: two short (124 in), short and middle (154), two middle (184), one long (125); the rest is worse.
     */
    private static final String JOB =
            "shop: {kerf: {crosscut: 0, rip: 0}%s}, parts: [{id: a, quantity: 4, length: 30, width: 1,"
                    + " thickness: 1}], stock: [{id: s, length: 62, width: 1, thickness: 1, price: {amount: '%s'}}, {id: m, length: 92, width:"
                    + " 1, thickness: 1, price: {amount: '1.40'}}, {id: l, length: 125, width: 1, thickness: 1, price: {amount: '2.60'}}],"
                    + " goal: %s";

    /** Middle at 1.40, long at 2.60: two short cost 2.00 or 2.70; fewest boards is the long one; least waste is 124 - 120. */
    @ParameterizedTest
    @CsvSource({
        "1.00, '', cost, s x2, 2.00",
        "1.35, '', cost, l x1, 2.60",
        "1.00, '', boards, l x1, 1",
        "1.35, '', waste, s x2, 4",
        // What is kept is no waste: behind four parts on the long board 5 in are kept, on short ones 2 in are too
        // short.
        "1.35, ', keepOffcuts: [{length: 5}]', waste, l x1, 0",
    })
    void eachGoalHasItsOwnAnswer(String price, String keep, String goal, String boards, String value) {
        JobReading reading = Door.read(String.format(JOB, keep, price, goal));
        CuttingPlan plan = Door.plan(String.format(JOB, keep, price, goal));
        assertThat(Door.boards(plan)).isEqualTo(boards);
        assertThat(Door.tree(Door.document(reading)).at("/objective/value").textValue())
                .isEqualTo(value);
        if (!goal.equals("waste")) {
            // Under waste the search has no bound of its own to close with; money and boards are proved.
            assertThat(plan.header().stopReason()).isEqualTo(StopReason.PROVED);
        }
    }

    /** On hand wood is free under cost and boards, but taken wood is wood under waste: 10 in left of 40 are worse than 2 of 32. */
    @ParameterizedTest
    @CsvSource({"cost, r x1", "boards, r x1", "waste, s x1"})
    void ownedWoodIsFreeButNotWaste(String goal, String boards) {
        CuttingPlan plan =
                Door.plan("shop: {kerf: {crosscut: 0, rip: 0}}, parts: [{length: 30, width: 1, thickness: 1}],"
                        + " stock: [{id: s, length: 32, width: 1, thickness: 1, price: {amount: '1.00'}}],"
                        + " onHand: [{id: r, length: 40, width: 1, thickness: 1}], goal: " + goal);
        assertThat(Door.boards(plan)).isEqualTo(boards);
    }
}
