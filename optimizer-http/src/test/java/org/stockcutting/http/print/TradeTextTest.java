package org.stockcutting.http.print;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.stockcutting.Optimizer;
import org.stockcutting.io.JobReader;
import org.stockcutting.job.Job;

class TradeTextTest {

    private static String text(String more, String partMore) {
        Job job = new JobReader()
                .read("{\"name\": \"shelf\", \"material\": \"walnut\", " + more
                        + "\"parts\": [{\"length\": \"40\", \"width\": \"11\", \"thickness\": \"1\"" + partMore + "}],"
                        + "\"stock\": [{\"id\": \"wide\", \"length\": \"48\", \"width\": \"12\", \"thickness\": \"1\","
                        + "\"price\": {\"amount\": \"50.00\"}}]}")
                .orThrow();
        return new PlanText(job).print(new Optimizer().plan(job));
    }

    /** 48 x 12 x 1 in of walnut at G 0.55 (616 kg/m3, handbook rule) weigh 12.8 lb; 11 in move 11 x 0.00274 x 5 = 0.151 in. */
    @Test
    void theLoadAndTheMovementArePrinted() {
        assertThat(text("", ""))
                .contains("Load: about 13 lb (as walnut, black), longest piece 48 in.")
                .contains("Let it move: width gained from 6% to 11% moisture, flat-sawn")
                .containsPattern("A +11 +~5/32 +walnut, black");
    }

    /** Two of 24-1/4 in and a kerf of 1/8 in are 5/8 in longer than 48 in: 5/16 in each, and one board does. */
    @Test
    void nearMissesArePrinted() {
        String text = text(
                "\"precision\": \"1/16\", ",
                ", \"id\": \"side\"}, {\"id\": \"shelf\", \"quantity\": 2,"
                        + "\"length\": \"24-1/4\", \"width\": \"11\", \"thickness\": \"1\", \"tolerance\": \"1/2\"");
        assertThat(text).contains("If shelf may be 5/16 in shorter: 1 board less, $50.00 saved. Less would not do.");
    }

    /** Four rails from one wide board with fence and stop for $6.00, or from two narrow ones with the stop alone for $8.00. */
    @Test
    void whatFewerSetUpsCostIsPrinted() {
        Job job = new JobReader().read("""
                {"material": "spruce", "goal": "cost", "setUpPrice": "3.00",
                 "parts": [{"id": "rail", "quantity": 4, "length": "40", "width": "3-1/2", "thickness": "1-1/2"}],
                 "stock": [{"id": "narrow", "nominal": "2x4", "length": "96", "price": {"amount": "4.00"}},
                           {"id": "wide", "nominal": "2x8", "length": "96", "price": {"amount": "6.00"}}],
                 "effort": {"work": 100000}}
                """).orThrow();
        String text = new PlanText(job).print(new Optimizer().plan(job));
        assertThat(text)
                .contains("Fewer set-ups for more money", "set-ups counted at $3.00")
                .containsPattern("\\$6\\.00 +2 +\\$12\\.00\\R")
                .containsPattern("\\$8\\.00 +1 +\\$11\\.00 +<- this plan");
    }

    /** Nine at 2.00 are 18.00, ten at 1.75 are 17.50; three sets of three come to 5.83 each. */
    @Test
    void howItIsSoldAndWhatASetComesToIsPrinted() {
        String job =
                "{\"sets\": 3, \"parts\": [{\"quantity\": 3, \"length\": \"40\", \"width\": \"4\", \"thickness\": \"1\"}],"
                        + "\"stock\": [{\"id\": \"slat\", \"length\": \"60\", \"width\": \"4\", \"thickness\": \"1\","
                        + "\"price\": {\"amount\": \"2.00\"}, %s}]}";
        assertThat(printed(String.format(job, "\"priceBreaks\": [{\"from\": 10, \"amount\": \"1.75\"}]")))
                .contains("slat: the price from 10 on; 9 are cut, 1 left whole.")
                .contains("One of 3 sets comes to $5.83.");
        assertThat(printed(String.format(job, "\"pack\": 6")))
                .contains("slat: 2 packs of 6 at $12.00 a pack; 9 are cut, 3 left whole.");
        assertThat(printed(String.format(job, "\"priceBreaks\": [{\"from\": 10, \"amount\": \"1.80\"}]")))
                .contains("slat: 1 more would cost nothing more.");
    }

    /** Three boards of 70 in hold one long and one short part each, or two whole sets of one long and two short ones. */
    @Test
    void wholeSetsArePrinted() {
        String job =
                "{\"sets\": 3, \"whenShort\": \"whole-sets\", \"shop\": {\"kerf\": {\"crosscut\": \"0\", \"rip\": \"0\"}},"
                        + "\"parts\": [{\"id\": \"long\", \"length\": \"40\", \"width\": \"2\", \"thickness\": \"1\"},"
                        + "{\"id\": \"short\", \"quantity\": 2, \"length\": \"30\", \"width\": \"2\", \"thickness\": \"1\"}],"
                        + "\"onHand\": [{\"id\": \"b\", \"quantity\": 3, \"length\": \"70\", \"width\": \"2\", \"thickness\": \"1\"}]}";
        assertThat(printed(job))
                .contains("2 of 3 sets whole; no plan makes more of them whole.")
                .contains("The next one lacks 1 long, 2 short.");
    }

    private static String printed(String document) {
        Job job = new JobReader().read(document).orThrow();
        return new PlanText(job).print(new Optimizer().plan(job));
    }

    @Test
    void theBillAndTheStripsArePrinted() {
        String text = text(
                "\"tax\": {\"percent\": \"10\"}, \"delivery\": {\"price\": \"5.00\"},"
                        + "\"yardCuts\": {\"form\": \"board\", \"price\": \"1.00\"}, ",
                ", \"edging\": {\"edge\": \"1/4\"}");
        assertThat(text)
                .containsPattern("material +\\$50\\.00")
                .containsPattern("cuts? by the yard +\\$[12]\\.00")
                .containsPattern("delivery +\\$5\\.00")
                .containsPattern("tax, 10% +\\$5\\.[67]0")
                .containsPattern("to pay +\\$6[12]\\.[67]0")
                .contains("Edging: 1 strip 1/4 x 1, 41 in in all, the longest 41 in");
        assertThat(text.lines()).allMatch(line -> line.length() <= 100);
    }
}
