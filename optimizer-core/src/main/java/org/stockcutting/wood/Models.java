package org.stockcutting.wood;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.job.WoodModel;
import org.stockcutting.material.NominalSize;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;

/** Which model a kind of board is drawn from: the maker's own figures, else measured boards, else the grade. */
final class Models {

    private static final String USUAL_SOFTWOOD = "no2";
    private static final String USUAL_HARDWOOD = "1-common";

    private final Job job;
    private final WoodGrades grades = WoodGrades.standard();

    Models(Job job) {
        this.job = job;
    }

    /** The model of what can be bought; sheets have no knots. */
    KnotModel of(StockItem stock) {
        return stock.form() == Form.SHEET
                ? KnotModel.flawless()
                : of(stock.material(), stock.grade(), usualGrade(stock.nominal()));
    }

    /**
     * The model of boards of this material.
     *
     * @param grade their grade, or null where nobody graded them
     * @param usual name of the grade that ungraded boards are taken for
     */
    KnotModel of(String material, @Nullable String grade, String usual) {
        WoodModel said = said(material, grade);
        KnotModel fitted = KnotFit.fit(usualFigures(said, grade, usual), measured(material, grade));
        return said == null ? fitted : withSaid(fitted, said);
    }

    /** What the job says of this grade; else of the material; boards that nobody graded are what the job's only model says. */
    private @Nullable WoodModel said(String material, @Nullable String grade) {
        List<WoodModel> all = job.wood().models().stream()
                .filter(model -> model.material().equals(material))
                .toList();
        if (grade == null && all.size() == 1) {
            return all.get(0);
        }
        return all.stream()
                .filter(model -> grade != null && grade.equals(model.grade()))
                .findFirst()
                .orElse(all.stream()
                        .filter(model -> model.grade() == null)
                        .findFirst()
                        .orElse(null));
    }

    /** A name of the yard's own has no figures in the table: such boards start from what is usual. */
    private KnotModel usualFigures(@Nullable WoodModel said, @Nullable String grade, String usual) {
        String name = grade != null ? grade : said == null || said.grade() == null ? usual : said.grade();
        return grades.find(name).orElseGet(() -> {
            KnotModel other = grades.find(usual).orElseThrow();
            return new KnotModel(
                    other.clearRun(),
                    other.zone(),
                    other.endCheck(),
                    other.unusableBoards(),
                    other.tightKnots(),
                    other.blemishes(),
                    "the table has no figures for " + name + ", so " + other.origin());
        });
    }

    /** Trade sizes such as 2x4 are softwood from the yard; everything else is taken for hardwood. Common practice, no source. */
    static String usualGrade(@Nullable NominalSize nominal) {
        return nominal != null && nominal.name().contains("x") ? USUAL_SOFTWOOD : USUAL_HARDWOOD;
    }

    /** Boards of this wood on hand, if any of them was measured: a list without a single zone says nothing about knots. */
    private List<StockItem.OnHand> measured(String material, @Nullable String grade) {
        List<StockItem.OnHand> boards = job.onHand().stream()
                .filter(board -> board.form() == Form.BOARD
                        && board.material().equals(material)
                        && Objects.equals(board.grade(), grade))
                .toList();
        return boards.stream().anyMatch(board -> !board.zones().isEmpty()) ? boards : List.of();
    }

    private static KnotModel withSaid(KnotModel model, WoodModel said) {
        boolean any = said.clearRun() != null
                || said.zone() != null
                || said.endCheck() != null
                || said.unusableBoards() != null
                || said.tightKnots() != null
                || said.blemishes() != null;
        return new KnotModel(
                or(said.clearRun(), model.clearRun()),
                or(said.zone(), model.zone()),
                or(said.endCheck(), model.endCheck()),
                or(said.unusableBoards(), model.unusableBoards()),
                or(said.tightKnots(), model.tightKnots()),
                or(said.blemishes(), model.blemishes()),
                any ? "the job's own figures, and " + model.origin() : model.origin());
    }

    private static <T> T or(@Nullable T said, T other) {
        return said == null ? other : said;
    }
}
