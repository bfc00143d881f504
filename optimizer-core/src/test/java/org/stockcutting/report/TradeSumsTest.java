package org.stockcutting.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stockcutting.Optimizer;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.job.OwnWood;
import org.stockcutting.job.Seasons;
import org.stockcutting.job.TradeTerms;
import org.stockcutting.length.Length;
import org.stockcutting.material.Density;
import org.stockcutting.material.Weight;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Warning;

class TradeSumsTest {

    private static Job with(Job job, TradeTerms terms) {
        return job.withTerms(terms);
    }

    private static TradeTerms terms(Weight car, Map<String, OwnWood> woods) {
        return new TradeTerms(car, new TreeMap<>(woods), Seasons.HEATED_ROOM, null, null, null);
    }

    private static TradeSums sums(Job job) {
        CuttingPlan plan = new Optimizer().plan(job);
        return TradeSums.of(job, plan);
    }

    /**
     * White fir, 9.15 in, flat grain, 8 to 11 %: 0.067 in (FPL-GTR-190, chapter 13, worked example; its 8 % and coefficient from memory).
     * Red alder, 8 in, 0.0026, six points: 0.1248 in (as printed in a woodworking magazine of September 2021). Douglas-fir, 16 in, 6 to
     * 11 %: 0.214 in (own arithmetic).
     */
    @ParameterizedTest
    @CsvSource({
        "9.15, 0.00245, 8, 11, 0.067",
        "8, 0.0026, 6, 12, 0.125",
        "16, 0.00267, 6, 11, 0.214",
    })
    void movementAgreesWithTheHandbook(String width, String coefficient, String from, String to, String inches) {
        Length change = WoodMovement.change(
                Length.inches(width),
                new BigDecimal(coefficient),
                new Seasons(new BigDecimal(from), new BigDecimal(to)));
        assertThat(BigDecimal.valueOf(change.nanometres())
                        .divide(new BigDecimal("25400000"), 3, java.math.RoundingMode.HALF_UP))
                .isEqualByComparingTo(inches);
    }

    @Test
    void wideSolidPartsMoveAcrossTheirGrainAndOthersAreNotListed() {
        JobBuilder builder = JobBuilder.inches("table")
                .material("walnut")
                .part("top", 1, "40", "16", "1")
                .part("rail", 2, "30", "3", "1")
                .board("2x4", "2x4", "8'", "10");
        builder.material("plywood").part("panel", 1, "40", "16", "1");
        TradeSums sums = sums(builder.build());
        assertThat(sums.movements()).singleElement().satisfies(movement -> {
            assertThat(movement.part()).isEqualTo("top");
            assertThat(movement.across()).isEqualTo(Length.inches("16"));
            assertThat(movement.change()).isEqualTo(Length.inches("0.2192"));
            assertThat(movement.reckonedAs()).isEqualTo("walnut, black");
        });
    }

    /** 8 ft of 2x6 in SPF weigh 13.5 lb (G 0.42, 1-1/2 x 5-1/2 x 96 in): handbook rule, arithmetic by hand. */
    @Test
    void theLoadIsTheSumOfWhatIsBought() {
        Job job = JobBuilder.inches("shelf")
                .material("spruce")
                .part("shelf", 3, "90", "2x6")
                .board("2x6-8", "2x6", "8'", "6.00")
                .build();
        TradeSums sums = sums(job);
        assertThat(sums.weights()).singleElement().satisfies(line -> {
            assertThat(line.each()).isNotNull();
            assertThat(line.each().inPounds(1)).isEqualByComparingTo("13.5");
            assertThat(line.reckonedAs()).isEqualTo("SPF");
        });
        assertThat(sums.load().inPounds(1)).isEqualByComparingTo("40.4");
        assertThat(sums.longest()).isEqualTo(Length.inches("96"));
        assertThat(sums.notes()).isEmpty();
    }

    @Test
    void theMakersOwnFiguresWinAndAHeavyLoadIsTold() {
        Job job = JobBuilder.inches("shelf")
                .material("wet stuff")
                .part("shelf", 3, "90", "2x6")
                .board("2x6-8", "2x6", "8'", "6.00")
                .build();
        assertThat(sums(job).notes()).extracting(Warning::code).containsExactly("unknown-weight");
        OwnWood wet = new OwnWood(null, new Density(new BigDecimal("900")), null);
        TradeSums sums = sums(with(job, terms(new Weight(new BigDecimal("30")), Map.of("wet stuff", wet))));
        // 3 x 0.0381 m x 0.1397 m x 2.4384 m x 900 kg/m3
        assertThat(sums.load().inKilograms(1)).isEqualByComparingTo("35.0");
        assertThat(sums.notes()).singleElement().satisfies(note -> {
            assertThat(note.code()).isEqualTo("heavy-load");
            assertThat(note.text()).contains("2 trips");
        });
        OwnWood like = new OwnWood("white oak", null, null);
        assertThat(sums(with(job, terms(null, Map.of("wet stuff", like)))).weights())
                .extracting(TradeSums.Weighed::reckonedAs)
                .containsExactly("oak, white");
    }

    @Test
    void constructionLumberForMeasuredPartsIsToldToDryFirst() {
        JobBuilder builder = JobBuilder.inches("bench").material("spruce").board("2x6-8", "2x6", "8'", "6.00");
        assertThat(sums(builder.part("seat", 1, "48", "5", "1-1/2").build()).notes())
                .extracting(Warning::code)
                .containsExactly("dry-first");
        Job oak = JobBuilder.inches("bench")
                .material("white oak")
                .board("2x6-8", "2x6", "8'", "6.00")
                .part("seat", 1, "48", "5", "1-1/2")
                .build();
        assertThat(sums(oak).notes()).isEmpty();
    }
}
