package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** What boards remember from the board that they were made of, and what is taken off them, against boards that remember nothing. */
final class BoardTest {

    @Test
    void aFilledBoardRemembersNoMoveThatItWouldNotFindItself() {
        int impossible = 0;
        for (long seed = 0; seed < 20; seed++) {
            Yard yard = new Yard(new Model(SheetJobs.typical(seed, 15, 60)));
            Dice dice = new Dice(seed);
            Board board = yard.empty(0);
            for (int n = 0; n < 60; n++) {
                Board.Move move = board.bestMove(dice.below(yard.model.types));
                board = move.isPossible() ? board.with(move) : board;
                Board fresh = new Board(yard, 0, board.root);
                for (int t = 0; t < yard.model.types; t++) {
                    assertThat(board.bestMove(t)).as("seed " + seed).isEqualTo(fresh.bestMove(t));
                    impossible += fresh.bestMove(t).isPossible() ? 0 : 1;
                }
            }
        }
        assertThat(impossible).isPositive();
    }

    @Test
    void aThinnedBoardHoldsSomeOfItsPiecesAndNoOthers() {
        for (long seed = 0; seed < 20; seed++) {
            Yard yard = new Yard(new Model(SheetJobs.typical(seed, 15, 60)));
            Dice dice = new Dice(seed);
            Draft draft = new Filling(yard).build(Filling.Order.AREA, 0);
            for (Board board : draft.boards) {
                int keep = dice.below(board.root.pieces);
                Board thinned = Pruning.thinned(board, keep, Integer.MAX_VALUE, dice);
                assertThat(Arrays.stream(thinned.counts).sum()).isLessThanOrEqualTo(keep);
                Board once = Pruning.thinned(board, 0, 1, dice);
                assertThat(Arrays.stream(once.counts).sum()).isLessThan(board.root.pieces);
                for (int t = 0; t < yard.model.types; t++) {
                    assertThat(thinned.counts[t]).isBetween(0, board.counts[t]);
                }
            }
        }
    }
}
