package org.stockcutting.bench.peers;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class SignedRanksTest {

    /** Depression scores of nine patients at two visits: Hollander, Wolfe, Nonparametric Statistical Methods, table 3.1 (from memory). */
    private static final double[] BEFORE = {1.83, 0.50, 1.62, 2.48, 1.68, 1.88, 1.55, 3.06, 1.30};

    private static final double[] AFTER = {0.878, 0.647, 0.598, 2.05, 1.06, 1.29, 1.06, 3.14, 1.29};

    private static List<SignedRanks.Pair> pairs(double[] first, double[] second) {
        List<SignedRanks.Pair> pairs = new ArrayList<>();
        for (int i = 0; i < first.length; i++) {
            pairs.add(new SignedRanks.Pair(first[i], second[i]));
        }
        return pairs;
    }

    /** The ranks against are 3 and 2, so T = 5 of n = 9: 10 of the 512 signs go so far, on two sides 20/512. */
    @Test
    void agreesWithThePublishedExample() {
        SignedRanks ranks = SignedRanks.of(pairs(AFTER, BEFORE));

        assertThat(ranks.better()).isEqualTo(7);
        assertThat(ranks.worse()).isEqualTo(2);
        assertThat(ranks.p()).isCloseTo(20.0 / 512, within(1e-9));
    }

    @Test
    void equalPairsChangeNothingButTheirCount() {
        List<SignedRanks.Pair> more = new ArrayList<>(pairs(AFTER, BEFORE));
        for (int i = 0; i < 20; i++) {
            more.add(new SignedRanks.Pair(i, i));
        }
        SignedRanks ranks = SignedRanks.of(more);

        assertThat(ranks.equal()).isEqualTo(20);
        assertThat(ranks.p()).isCloseTo(20.0 / 512, within(1e-9));
    }

    @Test
    void sidesMayBeExchanged() {
        assertThat(SignedRanks.of(pairs(BEFORE, AFTER)).p())
                .isEqualTo(SignedRanks.of(pairs(AFTER, BEFORE)).p());
    }

    @Test
    void noDifferenceIsNoEvidence() {
        SignedRanks ranks = SignedRanks.of(pairs(BEFORE, BEFORE));
        assertThat(ranks.p()).isEqualTo(1);
        assertThat(ranks.equal()).isEqualTo(9);
        assertThat(SignedRanks.of(List.of()).p()).isEqualTo(1);
    }

    /** Beyond the exact table: 40 pairs, all one way. 2^-39 exactly; the normal law gives about 4e-8. */
    @Test
    void manyPairsAreApproximated() {
        List<SignedRanks.Pair> pairs = new ArrayList<>();
        for (int i = 1; i <= 40; i++) {
            pairs.add(new SignedRanks.Pair(0, i));
        }
        assertThat(SignedRanks.of(pairs).p()).isLessThan(1e-6);
    }
}
