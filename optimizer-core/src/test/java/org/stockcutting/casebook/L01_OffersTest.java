package org.stockcutting.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.io.JobReading;
import org.stockcutting.io.PlanReader;
import org.stockcutting.job.Fault;
import org.stockcutting.job.Job;
import org.stockcutting.plan.BuyingLine;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.StopReason;
import org.stockcutting.stock.StockItem;

/** L: packs, price breaks and width premiums, by hand (common practice of yards, no source). */
class L01_OffersTest {

    /** One part a board: 40 in of 60, no kerf, so that the number of parts is the number of boards. */
    private static String job(int boards, String stock, String rest) {
        return "shop: {kerf: {crosscut: 0, rip: 0}}, parts: [{id: a, quantity: " + boards
                + ", length: 40, width: 8, thickness: 1}], stock: [" + stock + "]" + rest;
    }

    private static String entry(String id, String price, String rest) {
        return "{id: " + id + ", length: 60, width: 8, thickness: 1, price: {amount: '" + price + "'" + rest + "}";
    }

    private static String bought(CuttingPlan plan) {
        StringBuilder text = new StringBuilder();
        for (BuyingLine line : plan.derived().buyingList()) {
            BuyingLine.Lot lot = line.lot();
            text.append(text.length() == 0 ? "" : ", ").append(line.stock());
            text.append(" ").append(lot.used()).append(" of ").append(line.quantity());
            text.append(" at ").append(line.price().amount());
            text.append(lot.pack() == 1 ? "" : " a pack of " + lot.pack());
            text.append(lot.breakFrom() == 0 ? "" : " from " + lot.breakFrom());
            text.append(lot.more() == 0 ? "" : ", " + lot.more() + " more for nothing");
        }
        return text.toString();
    }

    /** Singles at 4.00, packs of 4 at 3.00 a piece: 12.00 a pack. */
    @ParameterizedTest
    @CsvSource({
        // One pack and one single are 16.00; two packs 24.00, five singles 20.00.
        "5, 'p 4 of 4 at 12.00 a pack of 4, s 1 of 1 at 4.00', 16.00",
        // Two singles 8.00.
        "2, s 2 of 2 at 4.00, 8.00",
        // One pack and two singles 20.00, two packs 24.00.
        "6, 'p 4 of 4 at 12.00 a pack of 4, s 2 of 2 at 4.00', 20.00",
    })
    void packsAreBoughtWhole(int boards, String bought, String cost) {
        String job = job(boards, entry("s", "4.00", "}") + ", " + entry("p", "3.00", "}, pack: 4"), "");
        CuttingPlan plan = Door.plan(job);
        assertThat(bought(plan)).isEqualTo(bought);
        assertThat(plan.cost().amount()).isEqualByComparingTo(cost);
        assertThat(plan.header().stopReason()).isEqualTo(StopReason.PROVED);
    }

    /** Four are there, packs have ten: none can be bought, and the way out says why. */
    @Test
    void whatIsInNoWholePackIsSaid() {
        CuttingPlan plan = Door.plan(job(2, entry("p", "3.00", "}, pack: 10, available: 4"), ""));
        assertThat(plan.unplaced()).hasSize(1);
        assertThat(plan.unplaced().get(0).remedy()).contains("p is only sold in whole packs of 10");
    }

    /** Three of a pack of four at 12.00 are cheaper than three singles at 12.30: the fourth goes to the rack as it is. */
    @Test
    void whatIsLeftOfAPackGoesToTheRack() {
        CuttingPlan plan = Door.plan(job(3, entry("s", "4.10", "}") + ", " + entry("p", "3.00", "}, pack: 4"), ""));
        assertThat(bought(plan)).isEqualTo("p 3 of 4 at 12.00 a pack of 4");
        List<StockItem.OnHand> whole = plan.derived().offcuts();
        assertThat(whole).extracting(StockItem.OnHand::id).containsExactly("p-a");
        assertThat(whole.get(0).length()).isEqualTo(Door.length("60"));
        assertThat(whole.get(0).quantity()).isEqualTo(1);
    }

    /** A pack at 24.99 of six is no multiple of a cent each; one at 10.00 of three need not be said in thirds. */
    @ParameterizedTest
    @CsvSource({"6, 24.99, 24.99", "7, 24.99, 49.98", "3, 10.00, 10.00"})
    void aPackMayHaveItsOwnPrice(int boards, String price, String cost) {
        int pack = price.equals("10.00") ? 3 : 6;
        CuttingPlan plan = Door.plan(job(boards, entry("p", price, ", per: pack}, pack: " + pack), ""));
        assertThat(plan.cost().amount()).isEqualByComparingTo(cost);
    }

    /** 2.00 each, 1.75 each from 8 or 10 on, 1.50 each from 20 on. */
    @ParameterizedTest
    @CsvSource({
        // 9 x 2.00 = 18.00, 10 x 1.75 = 17.50.
        "9, 10, b 9 of 10 at 1.75 from 10, 17.50",
        // 8 x 2.00 = 16.00, 10 x 1.75 = 17.50.
        "8, 10, b 8 of 8 at 2.00, 16.00",
        // 7 x 2.00 = 14.00 = 8 x 1.75.
        "7, 8, 'b 7 of 7 at 2.00, 1 more for nothing', 14.00",
        "11, 10, b 11 of 11 at 1.75 from 10, 19.25",
        // 18 x 1.75 = 31.50, 20 x 1.50 = 30.00.
        "18, 10, b 18 of 20 at 1.50 from 20, 30.00",
    })
    void aBreakHoldsForEveryPiece(int boards, int from, String bought, String cost) {
        String breaks = "}, priceBreaks: [{from: " + from + ", amount: '1.75'}, {from: 20, amount: '1.50'}]";
        CuttingPlan plan = Door.plan(job(boards, entry("b", "2.00", breaks), ""));
        assertThat(bought(plan)).isEqualTo(bought);
        assertThat(plan.cost().amount()).isEqualByComparingTo(cost);
        assertThat(plan.header().stopReason()).isEqualTo(StopReason.PROVED);
    }

    /** Packs of 4 at 8.00, from 8 pieces at 6.00: one pack for four, two for five (12.00 beside 16.00). */
    @Test
    void aBreakCountsThePiecesOfPacks() {
        String offer = "}, pack: 4, priceBreaks: [{from: 8, amount: '1.50'}]";
        assertThat(bought(Door.plan(job(4, entry("b", "2.00", offer), "")))).isEqualTo("b 4 of 4 at 8.00 a pack of 4");
        assertThat(bought(Door.plan(job(5, entry("b", "2.00", offer), ""))))
                .isEqualTo("b 5 of 8 at 6.00 a pack of 4 from 8");
    }

    /** Of ten that can be had in packs of four, eight can be bought; a break that they do not reach is none. */
    @Test
    void whatCanBeHadIsWholePacks() {
        String offer = "}, available: 10, pack: 4, priceBreaks: [{from: 9, amount: '0.10'}]";
        CuttingPlan plan = Door.plan(job(9, entry("b", "2.00", offer), ""));
        assertThat(bought(plan)).isEqualTo("b 8 of 8 at 8.00 a pack of 4");
        assertThat(Door.missing(plan)).isEqualTo("1 a: stock-exhausted, needs 1, limit null");
    }

    /** Fewest boards are bought, even where more would be cheaper; a pack counts as what is in it. */
    @Test
    void theGoalBoardsBuysNoMoreThanItNeeds() {
        String breaks = "}, priceBreaks: [{from: 10, amount: '1.75'}]";
        CuttingPlan nine = Door.plan(job(9, entry("b", "2.00", breaks), ", goal: boards"));
        assertThat(bought(nine)).isEqualTo("b 9 of 9 at 2.00");
        String both = entry("s", "9.00", "}") + ", " + entry("p", "1.00", "}, pack: 4");
        CuttingPlan five = Door.plan(job(5, both, ", goal: boards"));
        assertThat(five.objective().value()).isEqualTo(5);
        assertThat(five.header().stopReason()).isEqualTo(StopReason.PROVED);
    }

    /**
     * 8 in wide, 60 in long: 3-1/3 board feet at 3.00 are 10.00; 10 % more over 7 in, which is rounded once: 11.00. At 8 in itself
     * nothing is added, and over the widest width its own percentage holds alone.
     */
    @ParameterizedTest
    @CsvSource({
        "'{over: 7, percent: 10}', 11.00",
        "'{over: 8, percent: 10}', 10.00",
        "'{over: 6, percent: 10}, {over: 7-1/2, percent: 12.5}', 11.25",
    })
    void wideBoardsCostMore(String premiums, String cost) {
        String offer = ", per: board-foot}, widthPremiums: [" + premiums.replace("7-1/2", "'7-1/2'") + "]";
        CuttingPlan plan = Door.plan(job(1, entry("b", "3.00", offer), ""));
        assertThat(plan.cost().amount()).isEqualByComparingTo(cost);
    }

    /** Delivery is free from 17.50 on, which the break just reaches; 10 % tax on it are 1.75. */
    @Test
    void taxAndDeliveryComeOnTopOfWhatIsBought() {
        String breaks = "}, priceBreaks: [{from: 10, amount: '1.75'}]";
        String rest = ", tax: {percent: 10}, delivery: {price: 9, freeFrom: '17.50'}";
        JobReading reading = Door.read(job(9, entry("b", "2.00", breaks), rest));
        Job job = reading.orThrow();
        var bill = org.stockcutting.report.Reckoning.of(job, Door.plan(job(9, entry("b", "2.00", breaks), rest)));
        assertThat(bill.total().amount()).isEqualByComparingTo("19.25");
    }

    /** The checker works all of it out again: one figure changed in the document, and it says so. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "/cost/amount 18.00 money",
                "/objective/value 18.00 value",
                "/buyingList/0/quantity 9 buying-list",
                "/buyingList/0/used 8 buying-list",
                "/buyingList/0/price 2.00 buying-list",
                "/buyingList/0/total 18.00 buying-list",
                "/buyingList/0/breakFrom 9 buying-list",
                "/buyingList/0/pack 2 buying-list",
                "/buyingList/0/more 1 buying-list",
                "/offcuts/0/quantity 2 offcut",
            })
    void everyFigureIsChecked(String change) {
        String[] words = change.split(" ");
        JobReading reading = Door.read(job(9, entry("b", "2.00", "}, priceBreaks: [{from: 10, amount: '1.75'}]"), ""));
        ObjectNode doc = (ObjectNode) Door.tree(Door.document(reading));
        Job job = reading.orThrow();
        assertThat(PlanChecker.check(
                        job, new PlanReader(job).read(doc.toString()).orThrow()))
                .isEmpty();
        int slash = words[0].lastIndexOf('/');
        ObjectNode at = (ObjectNode) doc.at(words[0].substring(0, slash));
        String name = words[0].substring(slash + 1);
        ((ObjectNode) doc.at("/cost")).remove("gap");
        ((ObjectNode) doc.at("/objective")).remove("gap");
        boolean number = name.equals("total") || name.equals("price") || name.equals("amount") || name.equals("value");
        if (number) {
            at.put(name, words[1]);
        } else {
            at.put(name, Integer.parseInt(words[1]));
        }
        JsonNode changed = doc;
        assertThat(PlanChecker.check(
                        job, new PlanReader(job).read(changed.toString()).orThrow()))
                .extracting(v -> v.cause())
                .contains(words[2]);
    }

    @ParameterizedTest
    @CsvSource({
        "'}, available: 5, pack: 0', /stock/0/pack, not-positive",
        "', per: pack}', /stock/0/price/per, conflict",
        "'}, priceBreaks: [{from: 1, amount: 1}]', /stock/0/priceBreaks/0/from, out-of-range",
        "'}, priceBreaks: [{from: 5, amount: 3}]', /stock/0/priceBreaks/0/amount, conflict",
        "'}, priceBreaks: [{from: 5, amount: 1}, {from: 5, amount: 1}]', /stock/0/priceBreaks/1/from, out-of-range",
        "'}, priceBreaks: [{from: 5, amount: -1}]', /stock/0/priceBreaks/0/amount, negative",
        "'}, widthPremiums: [{over: 0, percent: 5}]', /stock/0/widthPremiums/0/over, not-positive",
        "'}, widthPremiums: [{over: 5, percent: -5}]', /stock/0/widthPremiums/0/percent, negative",
        "'}, widthPremiums: [{over: 5, percent: 1001}]', /stock/0/widthPremiums/0/percent, out-of-range",
        "'}, widthPremiums: [{over: 5, percent: 5}, {over: 4, percent: 9}]', /stock/0/widthPremiums/1/over, conflict",
    })
    void slipsOfThePenAreFound(String offer, String pointer, String code) {
        List<Fault> faults = Door.read(job(1, entry("b", "2.00", offer), "")).faults();
        assertThat(faults).extracting(Fault::pointer).containsExactly(pointer);
        assertThat(faults).extracting(Fault::code).containsExactly(code);
    }
}
