package org.stockcutting.draw;

import java.awt.geom.Rectangle2D;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.Form;

/**
 * Where on the paper a board lies. x runs to the right from the origin end; the origin edge lies at the bottom, as for somebody who
 * stands before the bench. A long thin board is drawn wider than to scale, or its text could not be read.
 *
 * @param left paper x of the origin end
 * @param top paper y of the far edge
 * @param perX paper units per nanometre along the length
 * @param perY paper units per nanometre across
 * @param length raw length of the board
 * @param width raw width of the board
 */
record Frame(double left, double top, double perX, double perY, Length length, Length width) {

    private static final double DRAWN_LENGTH = 940;
    private static final double SHEET_HEIGHT = 620;
    private static final double BOARD_LEAST = 62;
    private static final double BOARD_MOST = 280;
    private static final double STRIP_LEAST = 18;

    static Frame of(Layout layout, Form form, double left, double top) {
        double length = layout.length().nanometres();
        double width = layout.width().nanometres();
        if (form == Form.SHEET) {
            double scale = Math.min(DRAWN_LENGTH / length, SHEET_HEIGHT / width);
            return new Frame(left, top, scale, scale, layout.length(), layout.width());
        }
        double perX = Math.min(DRAWN_LENGTH / length, BOARD_MOST / width);
        double narrowest = layout.pieces().stream()
                .map(PlacedPiece::extentY)
                .mapToDouble(Length::nanometres)
                .min()
                .orElse(width);
        double wanted = Math.max(BOARD_LEAST, Math.min(BOARD_MOST, STRIP_LEAST * width / narrowest));
        return new Frame(left, top, perX, Math.max(perX, wanted / width), layout.length(), layout.width());
    }

    boolean isToScale() {
        return perY <= perX * 1.000001;
    }

    double x(Length x) {
        return left + x.nanometres() * perX;
    }

    double y(Length y) {
        return bottom() - y.nanometres() * perY;
    }

    double right() {
        return x(length);
    }

    double bottom() {
        return top + width.nanometres() * perY;
    }

    Rectangle2D board() {
        return box(Length.ZERO, Length.ZERO, length, width);
    }

    Rectangle2D box(Length x, Length y, Length extentX, Length extentY) {
        double height = extentY.nanometres() * perY;
        return new Rectangle2D.Double(x(x), y(y) - height, extentX.nanometres() * perX, height);
    }
}
