package org.stockcutting.wood;

import java.util.List;
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
        if (stock.form() == Form.SHEET) {
            return KnotModel.flawless();
        }
        WoodModel said = said(stock.material());
        KnotModel usual = grade(said, stock);
        KnotModel fitted = KnotFit.fit(usual, measured(stock.material()));
        return said == null ? fitted : withSaid(fitted, said);
    }

    private @Nullable WoodModel said(String material) {
        return job.wood().models().stream()
                .filter(model -> model.material().equals(material))
                .findFirst()
                .orElse(null);
    }

    private KnotModel grade(@Nullable WoodModel said, StockItem stock) {
        String name = said == null || said.grade() == null ? usualGrade(stock) : said.grade();
        return grades.find(name)
                .orElseThrow(() -> new IllegalArgumentException(
                        "no grade " + name + " in the table; there are " + String.join(", ", grades.names())));
    }

    /** Trade sizes such as 2x4 are softwood from the yard; everything else is taken for hardwood. Common practice, no source. */
    private static String usualGrade(StockItem stock) {
        NominalSize nominal = stock.nominal();
        return nominal != null && nominal.name().contains("x") ? USUAL_SOFTWOOD : USUAL_HARDWOOD;
    }

    /** Boards of this material on hand, if any of them was measured: a list without a single zone says nothing about knots. */
    private List<StockItem.OnHand> measured(String material) {
        List<StockItem.OnHand> boards = job.onHand().stream()
                .filter(board -> board.form() == Form.BOARD && board.material().equals(material))
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
