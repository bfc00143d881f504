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

    private static final double STRIP_LEAST = 18;

    static Frame of(Layout layout, Form form, Medium medium) {
        double left = medium.left();
        double top = medium.head();
        double length = layout.length().nanometres();
        double width = layout.width().nanometres();
        if (form == Form.SHEET) {
            double scale = Math.min(medium.drawnLength() / length, medium.sheetHeight() / width);
            // A small picture has room to spare above and below: used, or marks of narrow strips could not be read.
            double stretch = medium.lettering() == Medium.Lettering.MARKS ? 1.5 : 1;
            double perY = Math.min(medium.sheetHeight() / width, stretch * scale);
            return new Frame(left, top, scale, perY, layout.length(), layout.width());
        }
        double perX = Math.min(medium.drawnLength() / length, medium.boardMost() / width);
        double narrowest = layout.pieces().stream()
                .map(PlacedPiece::extentY)
                .mapToDouble(Length::nanometres)
                .min()
                .orElse(width);
        double wanted = Math.max(medium.boardLeast(), Math.min(medium.boardMost(), STRIP_LEAST * width / narrowest));
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
