package org.stockcutting.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.stockcutting.Optimizer;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Status;
import org.stockcutting.stock.Offer;
import org.stockcutting.stock.StockItem;

/** The least that is paid for enough worth, beside every purchase there is; and what that proves of packs and price breaks. */
class LeastPurchaseTest {

    private static LeastPurchase.Quantity quantity(long paid, long worth) {
        return new LeastPurchase.Quantity(BigInteger.valueOf(paid), BigInteger.valueOf(worth));
    }

    private static LeastPurchase.Line line(Random random) {
        List<LeastPurchase.Quantity> quantities = new ArrayList<>();
        long paid = 0;
        long worth = 0;
        for (int n = random.nextInt(6); n >= 0; n--) {
            paid += random.nextInt(9);
            worth += 1 + random.nextInt(12);
            quantities.add(quantity(paid, worth));
        }
        return new LeastPurchase.Line(quantities);
    }

    /** The least over every choice, or null. */
    private static Long naive(long wanted, List<LeastPurchase.Line> lines, int next) {
        if (wanted <= 0) {
            return 0L;
        }
        if (next == lines.size()) {
            return null;
        }
        Long best = naive(wanted, lines, next + 1);
        for (LeastPurchase.Quantity quantity : lines.get(next).quantities()) {
            Long rest = naive(wanted - quantity.worth().longValueExact(), lines, next + 1);
            long paid = rest == null ? 0 : quantity.paid().longValueExact() + rest;
            best = rest == null || (best != null && best <= paid) ? best : Long.valueOf(paid);
        }
        return best;
    }

    @Test
    void equalsEveryPurchaseThereIs() {
        int none = 0;
        for (long seed = 1; seed <= 3_000; seed++) {
            Random random = new Random(seed);
            List<LeastPurchase.Line> lines = new ArrayList<>();
            for (int s = random.nextInt(4); s >= 0; s--) {
                lines.add(line(random));
            }
            long wanted = 1 + random.nextInt(90);
            Long right = naive(wanted, lines, 0);
            BigInteger found = LeastPurchase.of(BigInteger.valueOf(wanted), lines);
            assertThat(found).as("seed %d", seed).isEqualTo(right == null ? null : BigInteger.valueOf(right));
            none += right == null ? 1 : 0;
        }
        assertThat(none).isBetween(100, 2_000);
    }

    private static CuttingPlan plan(int pieces, Offer offer) {
        Job job = JobBuilder.inches("shelf")
                .material("pine")
                .part("slat", pieces, "40", "2x4")
                .board("2x4-8", "2x4", "8'", "4.00")
                .effort(new Effort(200_000L, null, 1, 1))
                .build();
        StockItem.ForSale board = job.forSale().get(0).withOffer(offer);
        return new Optimizer().plan(job.withLists(job.parts(), List.of(board), List.of()));
    }

    /**
     * By hand: 14 slats, two to a board, take 7 boards; in packs of 5 that is two packs of 5 x $4.00. At the least price a board that is
     * 7 x $4.00 only.
     */
    @Test
    void wholePacksAreCertified() {
        CuttingPlan plan = plan(14, new Offer(5, List.of(), List.of()));
        assertThat(plan.cost().amount()).isEqualByComparingTo("40.00");
        assertThat(plan.header().status()).isEqualTo(Status.OPTIMAL);
    }

    /** By hand: 7 boards at $4.00 are $28.00; $3.00 from 9 on are $27.00 for 9. The least price of one of at most 14 boards is $3.00. */
    @Test
    void aPriceBreakIsCertified() {
        CuttingPlan plan =
                plan(14, new Offer(1, List.of(new Offer.Break(9, new java.math.BigDecimal("3.00"))), List.of()));
        assertThat(plan.cost().amount()).isEqualByComparingTo("27.00");
        assertThat(plan.header().status()).isEqualTo(Status.OPTIMAL);
        assertThat(plan.objective().bound()).isEqualTo(BigInteger.valueOf(2_700));
    }
}
