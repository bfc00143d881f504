package org.stockcutting.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Currency;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.stockcutting.Optimizer;
import org.stockcutting.io.BuyingListWriter;
import org.stockcutting.job.Delivery;
import org.stockcutting.job.Fault;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.job.JobReview;
import org.stockcutting.job.Seasons;
import org.stockcutting.job.TradeTerms;
import org.stockcutting.job.YardCuts;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Money;

/** Bills reckoned by hand. */
class ReckoningTest {

    private static final Currency USD = Currency.getInstance("USD");

    private static Money usd(String amount) {
        return new Money(new BigDecimal(amount), USD);
    }

    private static Job job(@Nullable String tax, @Nullable Delivery delivery, @Nullable YardCuts cuts) {
        Job plain = JobBuilder.inches("panels")
                .material("plywood")
                .sheet("ply", "96", "48", "0.75", "64.00")
                .part("panel", 4, "47", "48", "0.75")
                .build();
        TradeTerms terms = new TradeTerms(
                null, new TreeMap<>(), Seasons.HEATED_ROOM, tax == null ? null : new BigDecimal(tax), delivery, cuts);
        return plain.withTerms(terms);
    }

    private static Reckoning bill(Job job) {
        Reckoning bill = Reckoning.of(job, new Optimizer().plan(job));
        assertThat(bill).isNotNull();
        return bill;
    }

    /** Two sheets, two cuts across each: 128.00 + 3 x 1.50 + 45.00 = 177.50; 8.25 % of it are 14.64375. */
    @Test
    void cutsDeliveryAndTaxComeOnTopAndTaxIsRoundedOnce() {
        YardCuts cuts = new YardCuts(Form.SHEET, usd("1.50"), 1);
        Job job = job("8.25", new Delivery(usd("45.00"), usd("128.01")), cuts);
        assertThat(bill(job))
                .isEqualTo(new Reckoning(usd("128.00"), 4, usd("4.50"), usd("45.00"), usd("14.64"), usd("192.14")));
        CuttingPlan plan = new Optimizer().plan(job);
        assertThat(plan.cost()).as("the plan is for material alone").isEqualTo(usd("128.00"));
        assertThat(BuyingListWriter.write(job, plan))
                .contains("\"material\": \"128.00\"")
                .contains("\"delivery\": \"45.00\"")
                .contains("\"tax\": \"14.64\"")
                .contains("\"total\": \"192.14\"");
    }

    /** From the amount on, delivery is free: 128.00 + 4.50 = 132.50; 8.25 % are 10.93125. */
    @Test
    void deliveryIsFreeFromItsAmountOn() {
        YardCuts cuts = new YardCuts(Form.SHEET, usd("1.50"), 1);
        Job job = job("8.25", new Delivery(usd("45.00"), usd("128.00")), cuts);
        assertThat(bill(job))
                .isEqualTo(new Reckoning(usd("128.00"), 4, usd("4.50"), usd("0.00"), usd("10.93"), usd("143.43")));
    }

    @Test
    void boardsAreNoSheetsFreeCutsAreFreeAndHalfACentGoesUp() {
        Job job = job("0.00390625", null, new YardCuts(Form.BOARD, usd("9.00"), 0));
        // 128 x 0.00390625 % = 0.005
        assertThat(bill(job)).isEqualTo(new Reckoning(usd("128.00"), 0, usd("0.00"), null, usd("0.01"), usd("128.01")));
        assertThat(bill(job(null, null, new YardCuts(Form.SHEET, usd("9.00"), 9)))
                        .total())
                .isEqualTo(usd("128.00"));
        assertThat(bill(job(null, null, null)).hasExtras()).isFalse();
    }

    @Test
    void amountsBelowZeroAreRefused() {
        Job job = job("-1", new Delivery(usd("-45.00"), usd("-1.00")), new YardCuts(Form.SHEET, usd("-1.00"), -1));
        assertThat(JobReview.review(job))
                .extracting(Fault::pointer)
                .containsExactly(
                        "/tax/percent", "/delivery/price", "/delivery/freeFrom", "/yardCuts/price", "/yardCuts/free");
        assertThat(JobReview.review(job("101", null, null)))
                .extracting(Fault::code)
                .containsExactly("out-of-range");
    }
}
