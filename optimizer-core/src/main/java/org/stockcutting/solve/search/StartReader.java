package org.stockcutting.solve.search;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.Region;
import org.stockcutting.solve.instance.StockType;

/**
 * Reads a pattern plan into pieces on boards. Boards with bad zones and boards that are not one row of crosscuts stay as they are; the
 * others are joined by boards that could be used instead: unused ones on hand, and a few of each stock for sale.
 */
final class StartReader {

    /** Boards of each stock for sale that are offered beyond those of the start. */
    private static final int SPARE_BOARDS = 2;
    /** Boards on hand that are offered beyond those of the start, of all stocks together. */
    private static final int SPARE_ON_HAND = 300;

    private final SearchTask task;
    private final List<StockFacts> facts = new ArrayList<>();
    private final List<SetGroup> groups = new ArrayList<>();
    private final List<Answer.PatternUse> fixed = new ArrayList<>();
    private final List<Board> boards = new ArrayList<>();
    private final List<Piece> pieces = new ArrayList<>();
    private final int[] used;
    private boolean setsBroken;
    private boolean fixedSetsBroken;
    private long value;
    private long longestFixed;

    StartReader(SearchTask task) {
        this.task = task;
        Instance instance = task.instance();
        used = new int[instance.stocks().size()];
        for (int s = 0; s < used.length; s++) {
            facts.add(new StockFacts(instance, s, task.onHandStock().get(s)));
        }
        for (int g = 0; g < instance.groups().size(); g++) {
            groups.add(new SetGroup(g, instance.groups().get(g)));
        }
        task.start().forEach(this::read);
    }

    private void read(Answer.PatternUse use) {
        used[use.stock()] += use.copies();
        List<Integer> items = new ArrayList<>();
        collect(use.layout(), items);
        boolean broken = groups.stream().anyMatch(group -> group.misfit(group.count(items)) > 0);
        setsBroken |= broken;
        StockFacts stock = facts.get(use.stock());
        if (isMovable(use, stock, items)) {
            for (int copy = 0; copy < use.copies(); copy++) {
                readBoard(stock, items);
            }
        } else {
            fixed.add(use);
            fixedSetsBroken |= broken;
            longestFixed = Math.max(longestFixed, leftoverOfFixed(use, stock));
        }
    }

    private boolean isMovable(Answer.PatternUse use, StockFacts stock, List<Integer> items) {
        return stock.stock().zones().isEmpty()
                && isOneRow(use.layout())
                && items.stream().allMatch(stock::takes);
    }

    private void readBoard(StockFacts stock, List<Integer> items) {
        Board board = addBoard(stock);
        Load load = Load.EMPTY;
        for (int item : items) {
            Piece piece = new Piece(pieces.size(), task.instance(), item, groupOf(item), board);
            pieces.add(piece);
            load = load.plus(piece, stock);
        }
        value += stock.value(load);
    }

    private Board addBoard(StockFacts stock) {
        Board board = new Board(boards.size(), stock);
        boards.add(board);
        return board;
    }

    private @Nullable SetGroup groupOf(int item) {
        return groups.stream().filter(group -> group.holds(item)).findFirst().orElse(null);
    }

    private static void collect(Region region, List<Integer> items) {
        if (region instanceof Region.Item item) {
            items.add(item.item());
        } else if (region instanceof Region.Split split) {
            split.parts().forEach(part -> collect(part, items));
        }
    }

    /** One piece after the other along the board, each at most ripped to width once it is free. */
    private static boolean isOneRow(Region layout) {
        if (layout instanceof Region.Split split && split.crosscut()) {
            return split.parts().stream().allMatch(StartReader::isOnePiece);
        }
        return isOnePiece(layout);
    }

    private static boolean isOnePiece(Region region) {
        if (region instanceof Region.Item item) {
            return !item.turned();
        }
        return region instanceof Region.Split split
                && split.parts().size() == 1
                && isOnePiece(split.parts().get(0));
    }

    private long leftoverOfFixed(Answer.PatternUse use, StockFacts stock) {
        long kerf = task.instance().crosscutKerf();
        long longest = 0;
        long free = 0;
        if (use.layout() instanceof Region.Split split && split.crosscut()) {
            for (Region part : split.parts()) {
                longest = Math.max(longest, part.x() - free - kerf);
                free = part.x() + part.length() + kerf;
            }
            longest = Math.max(longest, stock.stock().length() + stock.stock().rawEnd() - free);
        }
        return longest;
    }

    /** Adds the boards that could be used instead of those of the start. */
    void offerMore() {
        int startBoards = boards.size();
        int moreOnHand = Math.min(SPARE_ON_HAND, pieces.size());
        // A start that ignores groups may need a board for every set.
        int moreForSale = setsBroken ? Math.max(SPARE_BOARDS, startBoards / 2) : SPARE_BOARDS;
        for (StockFacts stock : facts) {
            StockType type = stock.stock();
            boolean useful = type.zones().isEmpty()
                    && (setsBroken || type.cost() <= value || type.offcutValue() != 0)
                    && pieces.stream().anyMatch(piece -> stock.takes(piece.item()));
            int left = type.copies() == StockType.UNLIMITED ? Integer.MAX_VALUE : type.copies() - used[stock.index()];
            int more = useful ? Math.min(left, stock.onHand() ? moreOnHand : moreForSale) : 0;
            for (int k = 0; k < more; k++) {
                addBoard(stock);
            }
            moreOnHand -= stock.onHand() ? Math.max(0, more) : 0;
        }
    }

    /** What the movable boards cost under the goal. */
    long value() {
        return value;
    }

    /** What they may cost at most: no more than in the start, unless that breaks a rule of the shop. */
    Frame frame() {
        return new Frame(setsBroken ? Long.MAX_VALUE : value, longestFixed);
    }

    /** True if sets are split over boards that may not be changed. */
    boolean isHopeless() {
        return fixedSetsBroken;
    }

    List<Answer.PatternUse> fixed() {
        return fixed;
    }

    List<Board> boards() {
        return boards;
    }

    List<Piece> pieces() {
        return pieces;
    }

    List<SetGroup> groups() {
        return groups;
    }
}
