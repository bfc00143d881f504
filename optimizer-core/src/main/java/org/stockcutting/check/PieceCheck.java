package org.stockcutting.check;

import org.stockcutting.job.ShopRules;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.CutFrom;
import org.stockcutting.part.ShowFaces;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.stock.Zone;

/** One piece on one board: its size, the wood it gets, how it lies, and that the wood there is good enough. */
final class PieceCheck {

    private final Facts facts;
    private final Board board;
    private final Inspection inspection;

    PieceCheck(Facts facts, Board board, Inspection inspection) {
        this.facts = facts;
        this.board = board;
        this.inspection = inspection;
    }

    void check(PlacedPiece piece, String pointer) {
        Rough rough = facts.roughs().get(piece.part());
        if (rough == null) {
            inspection.report(Cause.UNKNOWN_PART, pointer, "the job has no part \"" + piece.part() + "\"");
            return;
        }
        inspection.require(
                Fit.material(rough, board) || !Fit.grade(rough, board) || !Fit.source(rough, board),
                Cause.MATERIAL,
                pointer,
                "wants " + rough.part().material() + ", lies on " + board.item().material());
        inspection.require(
                Fit.grade(rough, board),
                Cause.GRADE,
                pointer,
                "takes " + String.join(", ", rough.part().selection().grades()) + "; " + board.id() + " is "
                        + (board.item().grade() == null
                                ? "not graded"
                                : board.item().grade()));
        CutFrom chosen = rough.part().selection().cutFrom();
        inspection.require(
                Fit.source(rough, board),
                Cause.CUT_FROM,
                pointer,
                "is to be cut from " + (chosen == null ? "any stock" : chosen.stock()) + ", lies on " + board.id());
        section(rough, pointer);
        size(rough, piece, pointer);
        inspection.require(
                Fit.lie(rough, board, piece.turned()),
                Cause.GRAIN,
                pointer,
                piece.turned() ? "may not lie turned on " + board.id() : "must lie turned on " + board.id());
        place(rough, Rect.of(piece), pointer);
    }

    private void section(Rough rough, String pointer) {
        String wanted = rough.asItComes()
                ? "a " + rough.nominal()
                : "thickness " + Inspection.mm(rough.thickness()) + (rough.planed() ? " to be planed" : "");
        inspection.require(
                Fit.section(rough, board, facts.job().shop()),
                Cause.SECTION,
                pointer,
                "wants " + wanted + ", " + board.id() + " is " + Inspection.mm(board.thickness()) + " thick");
        long across = Math.max(
                Fit.lie(rough, board, false) ? board.raw().width() : 0,
                Fit.lie(rough, board, true) ? board.raw().length() : 0);
        inspection.require(
                rough.asItComes() || rough.leastWidth() <= across,
                Cause.SECTION,
                pointer,
                "wants a width of " + Inspection.mm(rough.leastWidth()) + ", " + board.id() + " has "
                        + Inspection.mm(across));
    }

    private void size(Rough rough, PlacedPiece piece, String pointer) {
        long length = piece.length().nanometres();
        long width = piece.width().nanometres();
        inspection.require(
                length == rough.length(),
                Cause.ROUGH_SIZE,
                pointer,
                "is " + Inspection.mm(length) + " long, its rough length is " + Inspection.mm(rough.length()));
        if (rough.isStave()) {
            inspection.require(
                    rough.leastWidth() <= width && width <= rough.mostWidth(),
                    Cause.STAVE_WIDTH,
                    pointer,
                    "a stave " + Inspection.mm(width) + " wide; rough staves are " + Inspection.mm(rough.leastWidth())
                            + " to " + Inspection.mm(rough.mostWidth()));
            return;
        }
        long wanted = rough.leastWidthOn(board);
        inspection.require(
                width == wanted,
                Cause.ROUGH_SIZE,
                pointer,
                "is " + Inspection.mm(width) + " wide, its rough width is " + Inspection.mm(wanted));
    }

    private void place(Rough rough, Rect rect, String pointer) {
        inspection.require(
                board.usable().contains(rect) && !rect.isEmpty(),
                Cause.OUTSIDE,
                pointer,
                "lies at " + rect.text() + ", usable is " + board.usable().text());
        inspection.require(
                isOnWood(rough, rect, board),
                Cause.OUT_OF_TRUE,
                pointer,
                "lies at " + rect.text() + ", where taper and crook of " + board.id() + " leave less than that");
        for (Board.Bad bad : board.zones()) {
            if (avoided(rough, bad).overlaps(rect)) {
                inspection.report(
                        Cause.ZONE,
                        pointer,
                        "contains the bad zone " + bad.rect().text());
            }
        }
    }

    /** True if the slanting edge lies beyond the piece, with its own share of the crook between where it is ripped. */
    static boolean isOnWood(Rough rough, Rect rect, Board board) {
        Evenness evenness = board.evenness();
        long farTrim = board.raw().y1() - board.usable().y1();
        long ripped = rough.asItComes() ? 0 : rect.length();
        return evenness.isEven() || evenness.reaches(rect.y1() + farTrim, rect.x1(), ripped);
    }

    /** The wood that a piece keeps away from because of a bad zone, empty where it takes it; clear wood keeps the shop's margin too. */
    private Rect avoided(Rough rough, Board.Bad bad) {
        return avoided(rough, bad, board, facts.job().shop());
    }

    static Rect avoided(Rough rough, Board.Bad bad, Board board, ShopRules shop) {
        if (takes(rough, bad)) {
            // The margin of a nail, say, still holds for clear parts only; whoever takes the zone takes its margin.
            return new Rect(0, 0, 0, 0);
        }
        long margin = rough.part().woodClass() == WoodClass.CLEAR
                        && !(seesGoodFaceOnly(rough) && bad.zone().face() == Zone.Face.DOWN)
                ? shop.zoneMargin().nanometres()
                : 0;
        Rect zone = bad.rect();
        return new Rect(zone.x0() - margin, zone.y0() - margin, zone.x1() + margin, zone.y1() + margin)
                .intersect(board.raw());
    }

    private static boolean seesGoodFaceOnly(Rough rough) {
        return rough.part().selection().showFaces() == ShowFaces.ONE;
    }

    /** Clear wood takes nothing, the next class tight knots, the last blemishes too; nobody takes metal. */
    static boolean takes(Rough rough, Board.Bad bad) {
        if (bad.zone().metal()) {
            return false;
        }
        if (seesGoodFaceOnly(rough) && bad.zone().face() == Zone.Face.DOWN) {
            return true;
        }
        return switch (bad.zone().severity()) {
            case UNUSABLE -> false;
            case BLEMISH -> rough.part().woodClass() == WoodClass.ANY;
            case TIGHT_KNOT -> rough.part().woodClass() != WoodClass.CLEAR;
        };
    }
}
