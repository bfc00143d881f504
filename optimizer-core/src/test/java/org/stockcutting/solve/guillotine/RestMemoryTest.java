package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;

class RestMemoryTest {

    @Test
    void remembersWhatWasPutUnlessItStartsAnew() {
        RestMemory memory = new RestMemory();
        Map<Long, Double> expected = new HashMap<>();
        Dice dice = new Dice(7);
        int remembered = 0;
        for (int n = 0; n < 300_000; n++) {
            // Places on a board: neighbours differ in few bits.
            long key = ((long) dice.below(900) << 45) + ((long) dice.below(60) << 30) + dice.below(1_000);
            double known = memory.get(key);
            if (known >= 0) {
                assertThat(known).isEqualTo(expected.get(key));
                remembered++;
            } else {
                double value = dice.unit();
                memory.put(key, value);
                expected.put(key, value);
                assertThat(memory.get(key)).isEqualTo(value);
            }
        }
        assertThat(remembered).isPositive();
    }
}
