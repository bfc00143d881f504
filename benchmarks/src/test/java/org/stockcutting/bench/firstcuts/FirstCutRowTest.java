package org.stockcutting.bench.firstcuts;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.bench.instances.Generated;
import org.stockcutting.bench.instances.Instance;

/**
 * Freedom must not cost anything on any job, however little work there is: a free plan is the best of three searches, one of which is that
 * of the restricted plan.
 */
class FirstCutRowTest {

    private static final long WORK = 200_000;

    @Test
    void noFreePlanOfMeasuredBoardsIsDearerThanARestrictedOne() {
        List<FirstCutRow> rows = new ArrayList<>();
        for (Instance instance : Generated.of("foot:3", 5)) {
            rows.add(FirstCutRow.of(instance.file(), instance.job(), WORK, 1));
        }
        assertThat(rows).allMatch(FirstCutRow::complete);
        assertThat(rows).allMatch(row -> row.bound().compareTo(row.free()) <= 0);
        assertThat(rows).noneMatch(FirstCutRow::isDearer);
        assertThat(rows).anyMatch(FirstCutRow::isBetter);
    }
}
