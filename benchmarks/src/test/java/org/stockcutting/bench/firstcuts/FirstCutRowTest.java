package org.stockcutting.bench.firstcuts;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.bench.instances.Generated;
import org.stockcutting.bench.instances.Instance;
import org.stockcutting.job.Effort;

/**
 * Single plans differ by a board either way; over a few jobs freedom must not cost anything. With much less work than a plan usually gets, a
 * rack is planned before its patterns are known, and which plan is cheaper is chance.
 */
class FirstCutRowTest {

    private static final long WORK = Effort.DEFAULT_WORK;

    @Test
    void freePlansOfMeasuredBoardsAreTogetherNoDearerThanRestrictedOnes() {
        List<FirstCutRow> rows = new ArrayList<>();
        for (Instance instance : Generated.of("measured:4", 5)) {
            rows.add(FirstCutRow.of(instance.file(), instance.job(), WORK, 1));
        }
        BigDecimal free = rows.stream().map(FirstCutRow::free).reduce(BigDecimal.ZERO, BigDecimal::add);
        BigDecimal rip = rows.stream().map(FirstCutRow::rip).reduce(BigDecimal.ZERO, BigDecimal::add);
        BigDecimal crosscut = rows.stream().map(FirstCutRow::crosscut).reduce(BigDecimal.ZERO, BigDecimal::add);
        assertThat(rows).allMatch(FirstCutRow::complete);
        assertThat(rows).allMatch(row -> row.bound().compareTo(row.free()) <= 0);
        assertThat(free).isLessThanOrEqualTo(rip.min(crosscut));
    }
}
