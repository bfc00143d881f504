package org.stockcutting.http.print;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Currency;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.http.HandMade;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.Writing;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Objective;
import org.stockcutting.stock.Money;

class PlanTextTest {

    private final Job job = HandMade.job();
    private final CuttingPlan plan = HandMade.plan(job);

    @Test
    void saysWhatToBuyHowGoodThatIsAndWhereToCut() {
        String text = new PlanText(job).print(plan);

        assertThat(text).contains("Hand made").contains("Buying list");
        assertThat(text).containsPattern(" 2 +@plank +3-1/2 x 1-1/2, 96 in long +\\$4\\.00 +\\$8\\.00");
        assertThat(text)
                .contains("For what could be placed: no list can cost under $7.56; this one is $0.44 over.")
                .contains("@plank #1 to #2, 2 cut alike: 96 x 3-1/2 x 1-1/2 in, ash")
                .contains("from the end: 1/2  60-1/2  90-5/8")
                .contains("1 of =1+1: no place found before the search ended. Way out: Let it search longer.")
                .contains("Worth keeping");
    }

    @Test
    void noLineIsWiderThanAHundredColumns() {
        assertThat(new PlanText(job).print(plan).lines())
                .allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(100));
    }

    @Test
    void aProvedPlanSaysSo() {
        assertThat(text(new Objective(Goal.COST, BigInteger.TEN, BigInteger.TEN, null)))
                .contains("no list can cost less: proved.");
        assertThat(text(new Objective(Goal.BOARDS, BigInteger.TWO, BigInteger.ONE, BigInteger.TWO)))
                .contains(
                        "no list can do with fewer than 1 board; this one takes 2. An exact search found nothing better.");
    }

    @Test
    void wasteIsRoundedAgainstThePlan() {
        // 1 board foot is 144 cubic inches; one cubic nanometre more must not be hidden, nor claimed as bound.
        BigInteger foot = BigInteger.valueOf(25_400_000L).pow(3).multiply(BigInteger.valueOf(144));
        Amounts amounts = new Amounts(job.writing());

        assertThat(amounts.value(Goal.WASTE, foot.add(BigInteger.ONE))).isEqualTo("1.01 board feet");
        assertThat(amounts.bound(Goal.WASTE, foot.add(BigInteger.ONE))).isEqualTo("1.00 board feet");
    }

    @Test
    void moneyIsWrittenAsItsCurrencyIs() {
        assertThat(money("1234.50", "USD", '.')).isEqualTo("$1234.50");
        assertThat(money("12.5", "EUR", ',')).isEqualTo("€12,50");
        assertThat(money("12.00", "CHF", '.')).isEqualTo("CHF 12.00");
        assertThat(money("700", "JPY", '.')).isEqualTo("¥700");
    }

    @Test
    void terminalCommandsInTextAreDefused() {
        assertThat(new TextPage().line("a\u001b[2Jb\rc\u009bd").toString()).isEqualTo("a?[2Jb?c?d\n");
    }

    @Test
    void longTextIsWrappedBetweenWords() {
        String text = new TextPage().wrapped("word ".repeat(60).strip(), "  ").toString();

        assertThat(text.lines())
                .hasSizeGreaterThan(2)
                .allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(100));
        assertThat(List.of(text.strip().split("\\s+"))).hasSize(60).containsOnly("word");
    }

    private String text(Objective objective) {
        return new PlanText(job)
                .print(new CuttingPlan(
                        plan.header(),
                        plan.cost(),
                        objective,
                        plan.layouts(),
                        plan.unplaced(),
                        plan.certificate(),
                        plan.violations(),
                        plan.derived()))
                .replaceAll("\\s+", " ");
    }

    private static String money(String amount, String currency, char decimal) {
        Currency known = Currency.getInstance(currency);
        Writing writing = new Writing(LengthUnit.INCH, decimal, null, known);
        return new Amounts(writing).money(new Money(new BigDecimal(amount), known));
    }
}
