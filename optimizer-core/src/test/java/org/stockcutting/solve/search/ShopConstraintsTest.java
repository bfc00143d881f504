package org.stockcutting.solve.search;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.optaplanner.test.api.score.stream.ConstraintVerifier;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;

/** Every sentence of {@link ShopConstraints} alone. Kerf 1; the longest board is 100, so a length's mark is a hundred times the length. */
class ShopConstraintsTest {

    private static final long MARK = 100;

    private final ConstraintVerifier<ShopConstraints, BoardPlan> verifier =
            ConstraintVerifier.build(new ShopConstraints(), BoardPlan.class, Piece.class);

    /** Items of 49, 30 and 60 (the last on one board once only); a board of 100 for sale at 7, one of 80 on hand. */
    private static Boards shop() {
        return new Boards()
                .item(49, 9)
                .item(30, 9)
                .item(new ItemType(60, 0, 60, 9, 1))
                .forSale(100, 7)
                .onHand(80, 9);
    }

    private static Board board(Instance instance, int id, int stock) {
        return new Board(id, new StockFacts(instance, stock, stock == 1));
    }

    /** Pieces of these items, all on one board. */
    private static List<Object> on(Instance instance, Board board, int... items) {
        List<Object> pieces = new ArrayList<>();
        for (int k = 0; k < items.length; k++) {
            SetGroup group = instance.groups().isEmpty()
                            || !instance.groups().get(0).items().contains(items[k])
                    ? null
                    : instance.groups().get(0).items().size() == 1 ? MATES : GROUP;
            pieces.add(new Piece(100 * board.id() + k, instance, items[k], group, board));
        }
        return pieces;
    }

    private static final SetGroup GROUP = new SetGroup(0, new Instance.Group(List.of(0, 1), List.of(1, 2)));

    private static final SetGroup MATES = new SetGroup(0, new Instance.Group(List.of(1), List.of(2)));

    private static Object[] all(List<?> first, Object... more) {
        List<Object> all = new ArrayList<>(first);
        for (Object one : more) {
            if (one instanceof List<?> list) {
                all.addAll(list);
            } else {
                all.add(one);
            }
        }
        return all.toArray();
    }

    @Test
    void piecesFitTheUsableLength() {
        Instance shop = shop().instance();
        Board hundred = board(shop, 0, 0);
        // 49 + 1 + 49 = 99 fits; 30 * 3 + 2 kerfs = 92 fits; 49 + 1 + 60 = 110 is 10 too long.
        verifier.verifyThat(ShopConstraints::piecesFitLength)
                .given(all(on(shop, hundred, 0, 0), on(shop, board(shop, 1, 0), 1, 1, 1)))
                .penalizesBy(0);
        verifier.verifyThat(ShopConstraints::piecesFitLength)
                .given(all(on(shop, hundred, 0, 2)))
                .penalizesBy((int) (10 * MARK));
    }

    @Test
    void aPieceThatEndsAtTheUsableEndNeedsNoCutBehindIt() {
        Boards exact = new Boards().item(50, 2).item(49, 2).forSale(100, 7);
        Instance shop = exact.instance();
        verifier.verifyThat(ShopConstraints::piecesFitLength)
                .given(all(on(shop, board(shop, 0, 0), 0, 1)))
                .penalizesBy(0);
        verifier.verifyThat(ShopConstraints::piecesFitLength)
                .given(all(on(shop, board(shop, 0, 0), 0, 0)))
                .penalizesBy((int) MARK);
    }

    @Test
    void piecesLieOnStockThatMayBeUsed() {
        Boards boards = shop();
        StockType hand = boards.stocks.get(1);
        boards.stocks.set(
                1,
                new StockType(
                        80,
                        10,
                        0,
                        0,
                        0,
                        9,
                        0,
                        List.of(),
                        List.of(
                                hand.places().get(0),
                                StockType.Placing.NOWHERE,
                                hand.places().get(2))));
        Instance shop = boards.instance();
        verifier.verifyThat(ShopConstraints::piecesMayLieThere)
                .given(all(on(shop, board(shop, 0, 1), 0, 1, 1), on(shop, board(shop, 1, 0), 1)))
                .penalizesBy(2_000);
    }

    @Test
    void copiesOnOneBoard() {
        Instance shop = shop().instance();
        verifier.verifyThat(ShopConstraints::copiesPerBoard)
                .given(all(on(shop, board(shop, 0, 0), 2, 2, 2), on(shop, board(shop, 1, 0), 2, 0, 0)))
                .penalizesBy(200);
    }

    @Test
    void wholeSetsOnABoard() {
        Instance shop = shop().group(List.of(0, 1), List.of(1, 2)).instance();
        verifier.verifyThat(ShopConstraints::wholeSets)
                .given(all(on(shop, board(shop, 0, 0), 0, 1, 1, 2), on(shop, board(shop, 1, 0), 0, 0, 1, 1, 1, 1)))
                .penalizesBy(0);
        // One more of the second item is missing; then a lonely first item, best taken away.
        verifier.verifyThat(ShopConstraints::wholeSets)
                .given(all(on(shop, board(shop, 0, 0), 0, 1), on(shop, board(shop, 1, 0), 0)))
                .penalizesBy(200);
    }

    @Test
    void matesOnABoard() {
        Instance shop = shop().group(List.of(1), List.of(2)).instance();
        verifier.verifyThat(ShopConstraints::wholeSets)
                .given(all(on(shop, board(shop, 0, 0), 1, 1), on(shop, board(shop, 1, 0), 1, 1, 0)))
                .penalizesBy(0);
        // Three and one: a mate is missing on both boards.
        verifier.verifyThat(ShopConstraints::wholeSets)
                .given(all(on(shop, board(shop, 0, 0), 1, 1, 1), on(shop, board(shop, 1, 0), 1)))
                .penalizesBy(200);
    }

    @Test
    void cutsAreMadeOnLongPieces() {
        Boards boards = shop();
        boards.limits =
                new Instance.Limits(Long.MAX_VALUE, Long.MAX_VALUE, Long.MAX_VALUE, Integer.MAX_VALUE, null, 45);
        Instance shop = boards.instance();
        // 49, 30: the second is cut from the 50 that is left. 30, 30, 30: the third cut is made on 38.
        verifier.verifyThat(ShopConstraints::cutsOnLongEnoughPieces)
                .given(all(on(shop, board(shop, 0, 0), 0, 1)))
                .penalizesBy(0);
        verifier.verifyThat(ShopConstraints::cutsOnLongEnoughPieces)
                .given(all(on(shop, board(shop, 0, 0), 1, 1, 1)))
                .penalizesBy(100);
    }

    @Test
    void costCap() {
        Instance shop = shop().instance();
        List<Object> bought = on(shop, board(shop, 0, 0), 0);
        bought.addAll(on(shop, board(shop, 1, 0), 0, 1));
        verifier.verifyThat(ShopConstraints::valueCap)
                .given(all(bought, new Frame(14, 0)))
                .penalizesBy(0);
        verifier.verifyThat(ShopConstraints::valueCap)
                .given(all(bought, new Frame(13, 0)))
                .penalizesBy(100);
    }

    @Test
    void leastValueCountsEveryBoardThatHoldsAPiece() {
        Instance shop = shop().instance();
        verifier.verifyThat(ShopConstraints::leastValue)
                .given(all(
                        on(shop, board(shop, 0, 0), 0, 1),
                        on(shop, board(shop, 1, 0), 0),
                        on(shop, board(shop, 2, 1), 0),
                        board(shop, 3, 0)))
                .penalizesBy(14);
    }

    @Test
    void keptOffcutsAreTakenOffTheValue() {
        Boards boards = new Boards().item(49, 9).stock(100, 3, 1_030, StockType.UNLIMITED, 1, false);
        boards.keeps.add(new Instance.Keep(20, 5));
        Instance shop = boards.instance();
        // 100 + 3 at the raw end - 49 - kerf = 53 long, 10 wide: 530 is kept of 1030. Two pieces leave 3: too short to
        // keep.
        verifier.verifyThat(ShopConstraints::leastValue)
                .given(all(on(shop, board(shop, 0, 0), 0), on(shop, board(shop, 1, 0), 0, 0)))
                .penalizesBy(500 + 1_030);
    }

    @Test
    void stripsBesideNarrowPiecesAreKeptToo() {
        Boards boards =
                new Boards().item(new ItemType(49, 6, 49, 9, 9)).stock(100, 0, 1_000, StockType.UNLIMITED, 1, false);
        boards.keeps.add(new Instance.Keep(40, 3));
        Instance shop = boards.instance();
        // Behind the piece 50 x 10, beside it 49 x (10 - 6 - kerf 1).
        verifier.verifyThat(ShopConstraints::leastValue)
                .given(all(on(shop, board(shop, 0, 0), 0)))
                .penalizesBy(1_000 - 500 - 147);
    }

    @Test
    void littleIsBought() {
        Instance shop = shop().instance();
        // The mark of a whole board: the longest is 10,000 long and 10,000 wide.
        verifier.verifyThat(ShopConstraints::buyLittle)
                .given(all(on(shop, board(shop, 0, 0), 0, 1), on(shop, board(shop, 1, 1), 0)))
                .penalizesBy(100_000_000);
    }

    @Test
    void whatIsOnHandIsUsed() {
        Instance shop = shop().instance();
        verifier.verifyThat(ShopConstraints::useOnHand)
                .given(all(on(shop, board(shop, 0, 0), 0, 1), on(shop, board(shop, 1, 1), 0)))
                .penalizesBy(50 + 31);
    }

    @Test
    void oneLongOffcut() {
        Instance shop = shop().instance();
        List<Object> pieces = on(shop, board(shop, 0, 0), 0);
        pieces.addAll(on(shop, board(shop, 1, 0), 1));
        // 100 - 30 - 1 = 69 is longer than 100 - 49 - 1; a board that is not touched leaves 9 already.
        verifier.verifyThat(ShopConstraints::oneLongOffcut)
                .given(all(pieces, new Frame(99, 9)))
                .rewardsWith(60);
        verifier.verifyThat(ShopConstraints::oneLongOffcut)
                .given(all(pieces, new Frame(99, 70)))
                .rewardsWith(0);
    }

    @Test
    void fewPatterns() {
        Instance shop = shop().instance();
        verifier.verifyThat(ShopConstraints::fewPatterns)
                .given(all(
                        on(shop, board(shop, 0, 0), 0, 1),
                        on(shop, board(shop, 1, 0), 1, 0),
                        on(shop, board(shop, 2, 1), 0, 1),
                        on(shop, board(shop, 3, 0), 0)))
                .penalizesBy(3);
    }

    @Test
    void unevenOffcuts() {
        Instance shop = shop().instance();
        verifier.verifyThat(ShopConstraints::unevenOffcuts)
                .given(all(on(shop, board(shop, 0, 0), 0), on(shop, board(shop, 1, 0), 0, 1)))
                .rewardsWith((int) (50 * MARK * 50 * MARK + 19 * MARK * 19 * MARK));
    }
}
