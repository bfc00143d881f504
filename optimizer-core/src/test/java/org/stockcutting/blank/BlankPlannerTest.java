package org.stockcutting.blank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Currency;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.stockcutting.blank.RoughPiece.Kind;
import org.stockcutting.blank.RoughPiece.Stage;
import org.stockcutting.job.AllowanceProfile;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.ShopRules;
import org.stockcutting.job.Writing;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthReader;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.Making;
import org.stockcutting.part.Making.StaveSource;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;

class BlankPlannerTest {

    private static final LengthReader INCHES = new LengthReader(LengthUnit.INCH, '.');

    @Test
    void cutToFinishedSize() {
        RoughPiece post = only(part("post", "60", measured("3-1/2", "1-1/2"), new Making.AsCut()));
        assertThat(post.length()).isEqualTo(in("60"));
        assertThat(post.section()).isEqualTo(new RoughSection.Sized(in("3-1/2"), in("1-1/2"), false));
        assertThat(post.kind()).isEqualTo(Kind.WHOLE);
        assertThat(post.perPart()).isEqualTo(1);
        assertThat(post.trail())
                .containsExactly(
                        new Stage("finished", in("60"), in("3-1/2"), in("1-1/2")),
                        new Stage("rough", in("60"), in("3-1/2"), in("1-1/2")));
    }

    /** Rough length + 1 in: woodworkingtips.com etip48. Planing 3/32 in a face, both faces 3/16 in: furnituremaking.us cutting lists. */
    @Test
    void millingAddsToAllThreeSizes() {
        RoughPiece slat = only(part("slat", "20", measured("3", "1-1/4"), new Making.Milled("milled")));
        assertThat(slat.length()).isEqualTo(in("21"));
        assertThat(slat.section()).isEqualTo(new RoughSection.Sized(in("3-1/8"), in("1-7/16"), true));
        assertThat(slat.trail())
                .containsExactly(
                        new Stage("finished", in("20"), in("3"), in("1-1/4")),
                        new Stage("rough", in("21"), in("3-1/8"), in("1-7/16")));
    }

    @Test
    void aTradeSizeIsTakenAsItComes() {
        RoughPiece rail = only(part("rail", "41", new Section.Nominal("2x4"), new Making.AsCut()));
        assertThat(rail.length()).isEqualTo(in("41"));
        assertThat(rail.section()).isEqualTo(new RoughSection.AsItComes("2x4"));
        RoughPiece milled = only(part("rail", "41", new Section.Nominal("2x4"), new Making.Milled("milled")));
        assertThat(milled.length()).isEqualTo(in("42"));
        assertThat(milled.section()).isEqualTo(new RoughSection.AsItComes("2x4"));
        assertThat(milled.trail())
                .containsExactly(new Stage("finished", in("41"), null, null), new Stage("rough", in("42"), null, null));
    }

    /**
     * Glue-ups 2 in over length and 1/16 in over thickness (woodcraft.com, flat panels), 1 in over width (furnituremaking.us, applying
     * the glue); 1/8 in of width a stave and 3/16 in for planing: common practice, no source.
     */
    @Test
    void panelOfEqualStaves() {
        Part top = part("top", "48", measured("14-1/2", "1-1/4"), glueUp("3", "5-1/4", null));
        RoughPiece stave = only(top);
        // Panel blank 50 x 15-1/2 x 1-5/16; 15-1/2 over 5-1/4 makes three; 15-1/2 / 3 = 5.1666..., up to 64ths 5-11/64.
        assertThat(stave.kind()).isEqualTo(Kind.STAVE);
        assertThat(stave.perPart()).isEqualTo(3);
        assertThat(stave.jointedWidth()).isEqualTo(in("5-11/64"));
        assertThat(stave.length()).isEqualTo(in("50"));
        assertThat(stave.section()).isEqualTo(new RoughSection.Sized(in("5-19/64"), in("1-1/2"), true));
        assertThat(stave.trail())
                .containsExactly(
                        new Stage("finished", in("48"), in("14-1/2"), in("1-1/4")),
                        new Stage("blank", in("50"), in("15-1/2"), in("1-5/16")),
                        new Stage("rough", in("50"), in("5-19/64"), in("1-1/2")));
    }

    @Test
    void stavesObeyCountLeastAndGreatestWidth() {
        // Five staves of 15-1/2 are 3.1 in: up to 64ths 3-7/64.
        assertThat(only(part("t", "48", measured("14-1/2", "1"), glueUp("3", "5-1/4", 5)))
                        .jointedWidth())
                .isEqualTo(in("3-7/64"));
        // Six would be 2.58 in: the least width wins, and the panel is wider than asked.
        assertThat(only(part("t", "48", measured("14-1/2", "1"), glueUp("3", "5-1/4", 6)))
                        .jointedWidth())
                .isEqualTo(in("3"));
        // Three of at most 5.167 in: the next 64th is more than that, so the exact third of 15.5 in, 131,233,333.3 nm,
        // rounded up.
        Making tight = new Making.GlueUp(in("3"), Length.inches("5.167"), null, StaveSource.ANY);
        RoughPiece exact = only(part("t", "48", measured("14-1/2", "1"), tight));
        assertThat(exact.perPart()).isEqualTo(3);
        assertThat(exact.jointedWidth()).isEqualTo(Length.ofNanometres(131_233_334L));
        assertThatThrownBy(() -> only(part("t", "48", measured("14-1/2", "1"), glueUp("3", "5-1/4", 2))))
                .hasMessageContaining("2 staves")
                .hasMessageContaining("more staves or wider ones");
    }

    @Test
    void metricStavesRoundToTenths() {
        Making glueUp = new Making.GlueUp(Length.millimetres("40"), Length.millimetres("120"), null, StaveSource.ANY);
        Section section = new Section.Measured(Length.millimetres("374.6"), Length.millimetres("30"));
        Job job = job(LengthUnit.MILLIMETRE, List.of(part("t", Length.millimetres("900"), section, glueUp)));
        // 374.6 + 25.4 = 400 mm over 120 makes four of exactly 100; without rounding anything.
        assertThat(BlankPlanner.plan(job).get(0).jointedWidth()).isEqualTo(Length.millimetres("100"));
        Section odd = new Section.Measured(Length.millimetres("374.7"), Length.millimetres("30"));
        Job oddJob = job(LengthUnit.MILLIMETRE, List.of(part("t", Length.millimetres("900"), odd, glueUp)));
        // 400.1 / 4 = 100.025
        assertThat(BlankPlanner.plan(oddJob).get(0).jointedWidth()).isEqualTo(Length.millimetres("100.1"));
    }

    /** Laminated legs: 1/4 in over width, 1 in over length, 1/16 in a ply (woodmagazine.com, laminated table legs). */
    @Test
    void laminationOfPlies() {
        RoughPiece ply = only(part("leg", "28", measured("2-1/4", "2-1/4"), new Making.Lamination(3)));
        assertThat(ply.kind()).isEqualTo(Kind.PLY);
        assertThat(ply.perPart()).isEqualTo(3);
        assertThat(ply.jointedWidth()).isNull();
        assertThat(ply.length()).isEqualTo(in("29"));
        assertThat(ply.section()).isEqualTo(new RoughSection.Sized(in("2-1/2"), in("13/16"), true));
        assertThat(ply.trail())
                .containsExactly(
                        new Stage("finished", in("28"), in("2-1/4"), in("2-1/4")),
                        new Stage("blank", in("29"), in("2-1/2"), in("2-1/4")),
                        new Stage("rough", in("29"), in("2-1/2"), in("13/16")));
        // 1 in in three plies: a third of 25,400,000 nm is 8,466,666.7, so 8,466,667.
        RoughPiece thirds = only(part("leg", "28", measured("2", "1"), new Making.Lamination(3)));
        assertThat(((RoughSection.Sized) thirds.section()).thickness())
                .isEqualTo(Length.ofNanometres(8_466_667L).plus(in("1/16")));
    }

    @Test
    void partsComeSortedById() {
        Section section = measured("3", "1");
        Job job = job(
                LengthUnit.INCH,
                List.of(
                        part("c", in("3"), section, new Making.AsCut()),
                        part("a", in("1"), section, new Making.AsCut()),
                        part("b", in("2"), section, new Making.AsCut())));
        assertThat(BlankPlanner.plan(job))
                .extracting(rough -> rough.part().id())
                .containsExactly("a", "b", "c");
    }

    @Test
    void namesWhatCannotBeMade() {
        assertThatThrownBy(() -> only(part("p", "20", measured("3", "1"), new Making.Milled("hand"))))
                .hasMessageContaining("part p")
                .hasMessageContaining("\"hand\"");
        assertThatThrownBy(() -> only(part("p", "20", new Section.Nominal("2x4"), new Making.Lamination(2))))
                .hasMessageContaining("a width and a thickness");
    }

    @Test
    void everyPanelIsReachedWithinTheStaveLimits() {
        long seed = 11_001;
        Random random = new Random(seed);
        for (int i = 0; i < 5_000; i++) {
            Length least = Length.ofNanometres(1 + random.nextInt(100_000_000));
            Length most = least.plus(Length.ofNanometres(random.nextInt(100_000_000)));
            Length width = Length.ofNanometres(1 + random.nextInt(1_000_000_000));
            Making making = new Making.GlueUp(least, most, null, StaveSource.ANY);
            Part part = part("t", in("48"), new Section.Measured(width, in("1")), making);
            LengthUnit unit = i % 2 == 0 ? LengthUnit.INCH : LengthUnit.CENTIMETRE;
            RoughPiece stave = BlankPlanner.plan(job(unit, List.of(part))).get(0);
            Length panel = width.plus(in("1"));
            assertThat(stave.jointedWidth()).as("seed %d, round %d", seed, i).isBetween(least, most);
            assertThat(stave.jointedWidth().times(stave.perPart()))
                    .as("seed %d, round %d", seed, i)
                    .isGreaterThanOrEqualTo(panel);
            assertThat(most.times(stave.perPart() - 1))
                    .as("seed %d, round %d: fewest", seed, i)
                    .isLessThan(panel);
        }
    }

    private static RoughPiece only(Part part) {
        List<RoughPiece> pieces = BlankPlanner.plan(job(LengthUnit.INCH, List.of(part)));
        assertThat(pieces).hasSize(1);
        return pieces.get(0);
    }

    private static Making glueUp(String least, String most, Integer count) {
        return new Making.GlueUp(in(least), in(most), count, StaveSource.ANY);
    }

    private static Section measured(String width, String thickness) {
        return new Section.Measured(in(width), in(thickness));
    }

    private static Part part(String id, String length, Section section, Making making) {
        return part(id, in(length), section, making);
    }

    private static Part part(String id, Length length, Section section, Making making) {
        return new Part(id, 1, length, section, "oak", null, WoodClass.CLEAR, 0, making, null, null);
    }

    private static Job job(LengthUnit unit, List<Part> parts) {
        return new Job(
                "test",
                new Writing(unit, '.', null, Currency.getInstance("USD")),
                1,
                ShopRules.defaults(),
                new TreeMap<String, AllowanceProfile>(Job.builtInAllowances()),
                parts,
                List.of(),
                List.of(),
                Goal.COST,
                Effort.defaults());
    }

    private static Length in(String text) {
        return INCHES.read(text);
    }
}
