package org.stockcutting.draw;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Currency;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.ShopRules;
import org.stockcutting.job.Writing;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.pattern.PlacedPiece;

class PrintedLengthsTest {

    private static final Currency USD = Currency.getInstance("USD");

    @Test
    void aPartIsNeverPrintedSmallerNorAGapLarger() {
        PrintedLengths print = new PrintedLengths(new Writing(LengthUnit.INCH, '.', Length.inches("0.0625"), USD));
        Length odd = Length.inches("10.04");

        // 10.04 in lies between 10 and 10-1/16 in.
        assertThat(print.part(odd)).isEqualTo("~10-1/16");
        assertThat(print.gap(odd)).isEqualTo("~10");
        assertThat(print.position(Length.inches("10.5"))).isEqualTo("10-1/2");
    }

    @Test
    void withoutAPrecisionEverythingIsExact() {
        PrintedLengths print = new PrintedLengths(new Writing(LengthUnit.MILLIMETRE, ',', null, USD));

        assertThat(print.part(Length.millimetres("406.4"))).isEqualTo("406,4");
    }

    @Test
    void namesOfEqualBoardsJoinTheirNumbers() {
        PieceNames names = new PieceNames(emptyJob());

        assertThat(names.name(piece(List.of(1), List.of()))).isEqualTo("leg #1");
        assertThat(names.name(piece(List.of(1, 2, 3), List.of()))).isEqualTo("leg #1-3");
        assertThat(names.name(piece(List.of(1, 3, 5, 7, 9), List.of()))).isEqualTo("leg #1, 3 .. 9");
        assertThat(names.isShortened(piece(List.of(1, 3, 5, 7, 9), List.of()))).isTrue();
        assertThat(names.name(piece(List.of(1, 2), List.of(4, 4)))).isEqualTo("leg #1, 2 stave 4");
        assertThat(names.fullNumbers(piece(List.of(1, 2), List.of(4, 5)))).isEqualTo("1 (stave 4), 2 (stave 5)");
    }

    private static PlacedPiece piece(List<Integer> numbers, List<Integer> members) {
        return new PlacedPiece(
                "leg", numbers, members, Length.ZERO, Length.ZERO, Length.inches("28"), Length.inches("2"), false);
    }

    private static Job emptyJob() {
        return new Job(
                "names",
                new Writing(LengthUnit.INCH, '.', null, USD),
                1,
                ShopRules.defaults(),
                new TreeMap<>(),
                List.of(),
                List.of(),
                List.of(),
                Goal.COST,
                Effort.defaults());
    }
}
