package org.stockcutting.draw;

import java.util.List;
import org.stockcutting.job.Job;
import org.stockcutting.material.Grain;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;

/**
 * Turns one layout into a drawing: the board as it lies with the origin end on the left and the origin edge at the bottom, pieces with
 * name and size, hatched bad zones, trims, leftovers, dashed cuts, and running tape readings from the heavy lines.
 */
public final class LayoutPainter {

    private static final int WIDTH = 1060;
    private static final double LEFT = 84;
    private static final double HEAD = 76;
    private static final double FOOT = 14;

    private final Job job;
    private final PrintedLengths print;

    public LayoutPainter(Job job) {
        this.job = job;
        print = new PrintedLengths(job.writing());
    }

    /**
     * Lays out the paper for one layout of a plan of this painter's job.
     *
     * @param layout the layout
     * @param firstBoard number of its first board among the boards of its stock, counted from 1
     */
    public LayoutDrawing drawing(Layout layout, int firstBoard) {
        StockItem stock = stockOf(layout);
        Frame frame = Frame.of(layout, stock.form(), LEFT, HEAD);
        BoardPicture picture = new BoardPicture(layout, stock, frame, print, new PieceNames(job));
        Legend legend = picture.legend();
        if (!frame.isToScale()) {
            legend.note("The width is drawn larger than to scale.");
        }
        double legendTop = picture.bottom();
        double textWidth = WIDTH - LEFT - 20;
        List<String> lines = legend.lines(textWidth, Pen.SMALL);
        int height = (int) Math.ceil(legendTop + (lines.size() + 1) * Pen.lineHeight(Pen.SMALL) + FOOT);
        return new LayoutDrawing(WIDTH, height, graphics -> {
            Pen pen = new Pen(graphics);
            pen.paper(WIDTH, height);
            head(pen, layout, stock, firstBoard);
            picture.draw(pen);
            double y = legendTop + Pen.lineHeight(Pen.SMALL);
            for (String line : lines) {
                pen.text(line, LEFT, y, Pen.SMALL);
                y += Pen.lineHeight(Pen.SMALL);
            }
        });
    }

    private void head(Pen pen, Layout layout, StockItem stock, int firstBoard) {
        String boards = layout.repeat() == 1
                ? layout.stock() + " #" + firstBoard
                : layout.stock() + " #" + firstBoard + " to #" + (firstBoard + layout.repeat() - 1) + ": cut "
                        + layout.repeat() + " alike";
        String size = print.part(layout.length()) + " x " + print.part(layout.width()) + " x "
                + print.part(layout.thickness()) + " " + print.unit() + ", " + stock.material() + grain(stock)
                + ". Tape readings run from the heavy line.";
        pen.text(boards, LEFT, 24, Pen.LARGE + 4);
        pen.text(size, LEFT, 44, Pen.SMALL + 1);
    }

    private static String grain(StockItem stock) {
        if (stock.form() == Form.BOARD) {
            return "";
        }
        return stock.grain() == Grain.ANY
                ? ", no grain"
                : stock.grain() == Grain.LENGTH ? ", grain from left to right" : ", grain from bottom to top";
    }

    private StockItem stockOf(Layout layout) {
        for (StockItem item : job.forSale()) {
            if (item.id().equals(layout.stock())) {
                return item;
            }
        }
        for (StockItem item : job.onHand()) {
            if (item.id().equals(layout.stock())) {
                return item;
            }
        }
        throw new IllegalArgumentException("the job has no stock called " + layout.stock());
    }
}
