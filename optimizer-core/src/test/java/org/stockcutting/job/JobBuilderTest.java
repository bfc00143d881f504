package org.stockcutting.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.stockcutting.io.JobReader;
import org.stockcutting.length.LengthFormatException;
import org.stockcutting.part.Making;
import org.stockcutting.part.Section;
import org.stockcutting.stock.Form;

/** A job built in a program is the job that the document beside it says, defaults and all. */
class JobBuilderTest {

    private static Job read(String json) {
        return new JobReader().read(json).orThrow();
    }

    @Test
    void boardsInInches() {
        Job built = JobBuilder.inches("Shelf")
                .material("spruce")
                .boardTrim("1/2", "1/4")
                .keep(Form.BOARD, "18", "1-1/2")
                .sets(2)
                .part("upright", 2, "72", "2x4")
                .part("strip", 3, "1' 3-1/4\"", "1-1/2", "3/4")
                .board("2x4-8", "2x4", "8'", "3.98")
                .build();
        assertThat(built).isEqualTo(read("""
                {"name": "Shelf", "unit": "in", "currency": "USD", "material": "spruce", "sets": 2,
                 "shop": {"boardTrim": {"start": "1/2", "end": "1/4"},
                          "keepOffcuts": [{"form": "board", "length": 18, "width": "1-1/2"}]},
                 "parts": [{"id": "upright", "quantity": 2, "length": 72, "nominal": "2x4"},
                           {"id": "strip", "quantity": 3, "length": "15-1/4", "width": "1-1/2", "thickness": "3/4"}],
                 "stock": [{"id": "2x4-8", "nominal": "2x4", "length": "8'", "price": {"amount": "3.98", "per": "piece"}}]}
                """));
    }

    @Test
    void aSheetInMillimetres() {
        Job built = JobBuilder.millimetres("Box")
                .material("birch plywood")
                .part("side", 2, "450", "300.5", "18")
                .sheet("sheet", "1250", "610", "18", "28.50")
                .goal(Goal.BOARDS)
                .effort(new Effort(1000L, null, 7, 1))
                .build();
        assertThat(built).isEqualTo(read("""
                {"name": "Box", "unit": "mm", "currency": "EUR", "material": "birch plywood",
                 "shop": {"kerf": {"crosscut": "3.175", "rip": "3.175"}},
                 "parts": [{"id": "side", "quantity": 2, "length": 450, "width": 300.5, "thickness": 18}],
                 "stock": [{"id": "sheet", "form": "sheet", "length": 1250, "width": 610, "thickness": 18, "grain": "length",
                            "price": {"amount": "28.50", "per": "piece"}}],
                 "goal": "boards", "effort": {"work": 1000, "seed": 7}}
                """));
    }

    /** With nothing to buy there is nothing to pay: the usual goal is waste, as in a document. */
    @Test
    void aMeasuredBoard() {
        JobBuilder builder = JobBuilder.inches("Rail").material("white oak").part("rail", 1, "28", "3-1/2", "13/16");
        Job built = builder.measured("oak-1", "74", "3-1/2", "13/16", builder.bad("31", "33-1/2"))
                .build();
        assertThat(built.goal()).isEqualTo(Goal.WASTE);
        assertThat(built).isEqualTo(read("""
                {"name": "Rail", "material": "white oak", "currency": "USD",
                 "parts": [{"id": "rail", "length": 28, "width": "3-1/2", "thickness": "13/16"}],
                 "onHand": [{"id": "oak-1", "length": 74, "width": "3-1/2", "thickness": "13/16",
                             "zones": [{"from": 31, "to": "33-1/2"}]}]}
                """));
    }

    @Test
    void materialAndCurrencyHoldForWhatFollows() {
        JobBuilder builder = JobBuilder.inches("Two woods").currency("CAD").material("pine");
        Job built = builder.part("a", 1, "20", "1x6")
                .board("1x6-8", "1x6", "8'", "9.80")
                .material("ash")
                .part("b", 1, "20", new Section.Nominal("1x4"), new Making.AsCut())
                .build();
        assertThat(built.parts()).extracting("material").containsExactly("pine", "ash");
        assertThat(built.forSale()).extracting("material").containsExactly("pine");
        assertThat(built.writing().currency().getCurrencyCode()).isEqualTo("CAD");
        assertThat(built.forSale().get(0).price()).extracting("currency").hasToString("CAD");
    }

    @Test
    void whatIsNoLengthAndNoTradeSizeIsRefused() {
        JobBuilder builder = JobBuilder.inches("Wrong");
        assertThatThrownBy(() -> builder.part("a", 1, "1/3", "2x4")).isInstanceOf(LengthFormatException.class);
        assertThatThrownBy(() -> builder.bad("3", "long")).isInstanceOf(LengthFormatException.class);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> builder.board("b", "3x99", "8'", "1.00"))
                .withMessageContaining("3x99");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> builder.board("b", "4/4", "8'", "1.00"))
                .withMessageContaining("only a thickness");
        assertThatThrownBy(() -> builder.board("b", "2x4", "8'", "cheap")).isInstanceOf(NumberFormatException.class);
    }
}
