package org.stockcutting;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.io.JobReader;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Unplaced;

/** A rule that cannot be kept is named with what the plan comes to without it. Sums by hand, kerf 1/8 in. */
class RulePricesTest {

    private static CuttingPlan plan(String shop, String part, String stock) {
        Job job = new JobReader()
                .read("{\"material\": \"oak\", \"shop\": {\"kerf\": {\"crosscut\": \"1/8\", \"rip\": \"1/8\"}"
                        + shop + "}, \"parts\": [{\"id\": \"rail\", " + part
                        + "}, {\"id\": \"block\", \"length\": \"10\","
                        + " \"width\": \"4\", \"thickness\": \"1\"}], " + stock + ", \"effort\": {\"work\": 100000}}")
                .orThrow();
        CuttingPlan plan = new Optimizer().plan(job);
        assertThat(PlanChecker.check(job, plan)).isEmpty();
        return plan;
    }

    private static final String BOARDS =
            "\"stock\": [{\"id\": \"b\", \"length\": \"96\", \"width\": \"4\", \"thickness\": \"1\", \"price\": {\"amount\": \"7.00\"}}]";

    /** Three rails of 40 in and two cuts are 120-1/4 in; apart they come from two boards, with the block. */
    @Test
    void aGroupThatNoBoardHolds() {
        CuttingPlan plan = plan(
                "",
                "\"quantity\": 3, \"length\": \"40\", \"width\": \"4\", \"thickness\": \"1\","
                        + " \"group\": {\"name\": \"frame\", \"rule\": \"same-board\"}",
                BOARDS);
        assertThat(plan.unplaced()).singleElement().satisfies(line -> {
            assertThat(line.reason()).isEqualTo(Unplaced.Reason.EXCLUDED_BY_RULE);
            assertThat(line.remedy())
                    .endsWith("; without group frame all parts have wood and the list costs 14.00 USD, not 7.00 USD");
        });
    }

    /** 40 in of a car: the rail is longer; with a longer car one board gives both. */
    @Test
    void aCarThatIsTooShort() {
        CuttingPlan plan = plan(
                ", \"carLength\": \"40\"",
                "\"length\": \"60\", \"width\": \"4\", \"thickness\": \"1\"",
                BOARDS.replace(
                        "[{",
                        "[{\"id\": \"short\", \"length\": \"36\", \"width\": \"4\", \"thickness\": \"1\","
                                + " \"price\": {\"amount\": \"3.00\"}}, {"));
        assertThat(plan.unplaced())
                .singleElement()
                .satisfies(
                        line -> assertThat(line.remedy())
                                .endsWith(
                                        "; without the limit of the car all parts have wood and the list costs 7.00 USD, not 3.00 USD"));
    }

    @Test
    void nothingIsAddedWhereNoRuleIsToBlame() {
        CuttingPlan plan = plan("", "\"length\": \"100\", \"width\": \"4\", \"thickness\": \"1\"", BOARDS);
        assertThat(plan.unplaced())
                .singleElement()
                .satisfies(line -> assertThat(line.remedy()).doesNotContain("without"));
    }
}
