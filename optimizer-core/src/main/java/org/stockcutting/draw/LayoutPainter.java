package org.stockcutting.draw;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.job.Job;
import org.stockcutting.material.Grain;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;

/**
 * Turns one layout into a drawing: the board as it lies with the origin end on the left and the origin edge at the bottom, pieces with
 * name and size, hatched bad zones, trims, leftovers, dashed cuts, and running tape readings from the heavy lines. The same picture
 * stands by itself, large on a page of its own, or small among others.
 */
public final class LayoutPainter {

    /** Said where a board is drawn wider than it is, or its text could not be read. */
    public static final String NOT_TO_SCALE = "The width is drawn larger than to scale.";

    /** What a note on a piece begins with that has no room for its mark. */
    public static final String NOT_SHOWN = "Not shown: ";

    private static final double FOOT = 14;

    private final Job job;
    private final PrintedLengths print;
    private final PieceNames names;
    private final SharedLines shared;

    public LayoutPainter(Job job) {
        this.job = job;
        print = new PrintedLengths(job.writing());
        names = new PieceNames(job);
        shared = new SharedLines(job);
    }

    /**
     * A drawing that stands by itself, with title and legend, in units of 1/96 in.
     *
     * @param layout a layout of a plan of this painter's job
     * @param firstBoard number of its first board among the boards of its stock, counted from 1
     * @throws IllegalArgumentException if the job has no such stock
     */
    public LayoutDrawing drawing(Layout layout, int firstBoard) {
        Medium medium = Medium.SCREEN;
        Drawn drawn = board(layout, medium);
        BoardPicture picture = drawn.picture();
        Legend legend = picture.legend();
        if (!drawn.frame().isToScale()) {
            legend.note(NOT_TO_SCALE);
        }
        double legendTop = picture.bottom();
        double textWidth = medium.width() - medium.left() - 20;
        List<String> lines = legend.lines(textWidth, Pen.SMALL);
        int height = (int) Math.ceil(legendTop + (lines.size() + 1) * Pen.lineHeight(Pen.SMALL) + FOOT);
        return new LayoutDrawing(medium.width(), height, graphics -> {
            Pen pen = new Pen(graphics);
            pen.paper(medium.width(), height);
            head(pen, layout, firstBoard, medium.left());
            picture.draw(pen);
            double y = legendTop + Pen.lineHeight(Pen.SMALL);
            for (String line : lines) {
                pen.text(line, medium.left(), y, Pen.SMALL);
                y += Pen.lineHeight(Pen.SMALL);
            }
        });
    }

    /** The picture alone, for a page of its own: at most as wide and high as given, in points; pieces carry marks and names. */
    public PagePicture large(Layout layout, double width, double height) {
        return page(board(layout, Medium.page(width, height, layout, print)));
    }

    /** The picture alone, to stand among others: at most as wide and high as given, in points; pieces carry marks. */
    public PagePicture small(Layout layout, double width, double height) {
        Drawn plain = board(layout, Medium.compact(width, height, layout, print, false));
        return page(
                plain.picture().hasKeysAbove()
                        ? board(layout, Medium.compact(width, height, layout, print, true))
                        : plain);
    }

    /** What kind of board a layout is cut from: size, material and grain. */
    public String boardText(Layout layout) {
        StockItem stock = stockOf(layout);
        return print.part(layout.length()) + " x " + print.part(layout.width()) + " x " + print.part(layout.thickness())
                + " " + print.unit() + ", " + stock.material()
                + (stock.grade() == null ? "" : " " + stock.grade()) + grain(stock);
    }

    /** A board laid out for a medium, not yet painted. */
    private record Drawn(Medium medium, Frame frame, BoardPicture picture) {}

    private Drawn board(Layout layout, Medium medium) {
        StockItem stock = stockOf(layout);
        Frame frame = Frame.of(layout, stock.form(), medium);
        return new Drawn(medium, frame, new BoardPicture(layout, stock, frame, medium, print, names, shared));
    }

    private static PagePicture page(Drawn drawn) {
        BoardPicture picture = drawn.picture();
        List<String> notes = new ArrayList<>(picture.legend().notes());
        if (!drawn.frame().isToScale()) {
            notes.add(NOT_TO_SCALE);
        }
        int height = (int) Math.ceil(picture.bottom());
        return new PagePicture(
                new LayoutDrawing(drawn.medium().width(), height, graphics -> picture.draw(new Pen(graphics))),
                notes,
                picture.isComplete());
    }

    private void head(Pen pen, Layout layout, int firstBoard, double left) {
        String boards = layout.repeat() == 1
                ? layout.stock() + " #" + firstBoard
                : layout.stock() + " #" + firstBoard + " to #" + (firstBoard + layout.repeat() - 1) + ": cut "
                        + layout.repeat() + " alike";
        pen.text(boards, left, 24, Pen.LARGE + 4);
        pen.text(boardText(layout) + ". Tape readings run from the heavy line.", left, 44, Pen.SMALL + 1);
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
