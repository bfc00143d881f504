package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Boards that are worth much under given worths of the pieces, with no piece on them more often than it is wanted. Exact pricing takes
 * the piece that is worth most as often as it fits, which says little where no two pieces are alike; here every rectangle keeps a few
 * sets of pieces, and only sets that have no piece in common are joined. As just a few are kept the best may be missed: it is then a
 * heuristic, by the state space of Gilmore and Gomory (Operations Research 14, 1966) with sets for states.
 *
 * <p>Large boards are priced on a coarser grid, all extents rounded up.
 */
final class LabelPricing {

    /** Most points along one side: a table then takes some milliseconds. */
    private static final long MOST_POINTS = 150;
    /** More pieces than this make a set too long. */
    private static final int MOST_PIECES = 400;
    /** Worth of all pieces together, in whole units. */
    private static final double FULL = 1e8;

    private final Yard yard;
    private final Model model;
    private final int stock;
    private final int labels;
    private final boolean lyingLines;
    private final long gridX;
    private final long gridY;
    private long operations;

    /** @param labels sets that a rectangle keeps */
    LabelPricing(Yard yard, int stock, int labels) {
        this.yard = yard;
        this.model = yard.model;
        this.stock = stock;
        this.labels = labels;
        this.gridX = grid(model.boardLength(stock));
        this.gridY = grid(model.boardWidth(stock));
        this.lyingLines = model.boardLength(stock) / gridX > model.boardWidth(stock) / gridY;
    }

    private static long grid(long size) {
        return (size + MOST_POINTS - 1) / MOST_POINTS;
    }

    /** True if there are few enough pieces for sets. */
    static boolean suits(Yard yard) {
        return Arrays.stream(RestProgramme.most(new Draft(yard))).sum() <= MOST_PIECES;
    }

    /**
     * The best boards found, best first, all different.
     *
     * @param most of each type
     */
    List<Board> price(double[] worths, int[] most) {
        double all = 0;
        for (int t = 0; t < model.types; t++) {
            all += Math.max(0, worths[t]) * most[t];
        }
        List<ExactPricing.Lying> lyings = new ArrayList<>();
        int[] typeOf = new int[Arrays.stream(most).sum()];
        int pieces = 0;
        for (int t = 0; t < model.types; t++) {
            int value = all == 0 ? 0 : (int) (worths[t] / all * FULL);
            for (int n = 0; n < most[t] && value > 0 && model.hasPlace(stock, t); n++) {
                typeOf[pieces] = t;
                addLyings(lyings, t, pieces, value);
                pieces++;
            }
        }
        if (lyings.isEmpty()) {
            return List.of();
        }
        LabelTable table = new LabelTable(points(lyings, true), points(lyings, false), lyings, pieces, labels);
        operations += table.fill();
        return boards(table, typeOf);
    }

    private void addLyings(List<ExactPricing.Lying> lyings, int type, int piece, int value) {
        for (boolean turned : new boolean[] {false, true}) {
            int length = (int) ((model.length(stock, type, turned) + gridX - 1) / gridX);
            int width = (int) ((model.width(stock, type, turned) + gridY - 1) / gridY);
            if (model.allows(stock, type, turned)
                    && length <= model.boardLength(stock) / gridX
                    && width <= model.boardWidth(stock) / gridY) {
                int across = lyingLines ? width : length;
                lyings.add(new ExactPricing.Lying(piece, turned, across, lyingLines ? length : width, value));
            }
        }
    }

    private Points points(List<ExactPricing.Lying> lyings, boolean across) {
        int[] sizes = lyings.stream()
                .mapToInt(l -> across ? l.across() : l.along())
                .distinct()
                .toArray();
        boolean alongX = across != lyingLines;
        return new Points((int) (alongX ? model.boardLength(stock) / gridX : model.boardWidth(stock) / gridY), sizes);
    }

    private List<Board> boards(LabelTable table, int[] typeOf) {
        List<Board> boards = new ArrayList<>();
        CellReader reader = new CellReader(typeOf);
        for (int rank = 0; rank < table.count(); rank++) {
            Cell pattern = reader.whole(table.read(rank, reader));
            if (yard.allows(stock, pattern)) {
                boards.add(new Board(yard, stock, pattern));
            }
        }
        return boards;
    }

    /** Operations since the last call. */
    long takeOperations() {
        long taken = operations;
        operations = 0;
        return taken;
    }

    /** Makes padded cells in full units. */
    private final class CellReader implements LabelTable.Reader<Cell> {

        private final int[] typeOf;

        CellReader(int[] typeOf) {
            this.typeOf = typeOf;
        }

        @Override
        public Cell piece(ExactPricing.Lying lying, int across, int along) {
            int type = typeOf[lying.type()];
            Cell piece = Cell.piece(
                    type,
                    lying.turned(),
                    model.length(stock, type, lying.turned()),
                    model.width(stock, type, lying.turned()));
            return within(piece, length(across, along), width(across, along));
        }

        @Override
        public Cell join(boolean stacked, int across, int along, Cell one, Cell other) {
            return join(stacked != lyingLines, length(across, along), width(across, along), one, other);
        }

        private Cell join(boolean crosscut, long length, long width, Cell one, Cell other) {
            return Cell.join(crosscut, length, width, List.of(one, other), yard.order(stock));
        }

        private long length(int across, int along) {
            return gridX * (lyingLines ? along : across);
        }

        private long width(int across, int along) {
            return gridY * (lyingLines ? across : along);
        }

        /** The board, with what the grid leaves out. */
        Cell whole(Cell cell) {
            return within(cell, model.boardLength(stock), model.boardWidth(stock));
        }

        /** The cell in a corner of a rectangle of these extents. */
        private Cell within(Cell cell, long length, long width) {
            Cell column = cell.width == width
                    ? cell
                    : join(false, cell.length, width, cell, Cell.rest(cell.length, width - cell.width));
            return cell.length == length
                    ? column
                    : join(true, length, width, column, Cell.rest(length - cell.length, width));
        }
    }
}
