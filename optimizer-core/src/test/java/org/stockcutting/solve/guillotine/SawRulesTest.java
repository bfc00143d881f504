package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.stockcutting.solve.instance.Instance;

class SawRulesTest {

    private static Instance sheets(Random random) {
        Instance free = SheetJobs.typical(random.nextInt(1_000), 8, 30);
        long width = free.stocks().get(0).width();
        Instance.Limits limits = new Instance.Limits(
                width / 4 + random.nextInt((int) width / 4),
                Long.MAX_VALUE,
                width * 3 / 4 + random.nextInt((int) width / 2),
                Integer.MAX_VALUE,
                null,
                0);
        return new Instance(
                free.items(), free.stocks(), free.crosscutKerf(), free.ripKerf(), limits, free.keep(), free.groups());
    }

    private static List<Board.Move> moves(Board board, int type) {
        List<Board.Move> moves = new ArrayList<>();
        Model model = board.yard.model;
        for (int o = 0; o < board.openings().size(); o++) {
            for (boolean turned : new boolean[] {false, true}) {
                Board.Opening opening = board.openings().get(o);
                long right = opening.length() - model.length(0, type, turned);
                long above = opening.width() - model.width(0, type, turned);
                if (model.allows(0, type, turned) && right >= 0 && above >= 0) {
                    moves.add(new Board.Move(type, o, turned, true, opening.x(), opening.y(), 0));
                    if (right > 0 && above > 0) {
                        moves.add(new Board.Move(type, o, turned, false, opening.x(), opening.y(), 0));
                    }
                }
            }
        }
        return moves;
    }

    /** What is seen from the rest alone is what the whole tree says: every move of boards as they fill up. */
    @Test
    void aRestAloneTellsWhatTheWholeTreeDoes() {
        int allowed = 0;
        int forbidden = 0;
        for (long seed = 0; seed < 300; seed++) {
            Random random = new Random(seed);
            Yard yard = new Yard(new Model(sheets(random)));
            SawRules rules = yard.rules(0);
            assertThat(rules.isLocal()).isTrue();
            Board board = yard.empty(0);
            for (int n = 0; n < 12; n++) {
                for (Board.Move move : moves(board, random.nextInt(yard.model.types))) {
                    boolean whole = yard.allows(0, board.with(move).root);
                    boolean rest = rules.allowLocally(board.openings().get(move.opening()), move);
                    assertThat(rest).as("seed %d, piece %d: %s", seed, n, move).isEqualTo(whole);
                    allowed += rest ? 1 : 0;
                    forbidden += rest ? 0 : 1;
                }
                Board.Move best = board.bestMove(random.nextInt(yard.model.types));
                board = best.isPossible() ? board.with(best) : board;
                board = random.nextInt(5) == 0 && !board.isEmpty()
                        ? Pruning.thinned(board, 0, 1 + random.nextInt(3), new Dice(seed + n))
                        : board;
                assertThat(yard.allows(0, board.root)).isTrue();
            }
        }
        assertThat(allowed).isGreaterThan(5_000);
        assertThat(forbidden).isGreaterThan(200);
    }

    /** By hand: a piece 20 wide on a board of 48, with 16 to the fence and no kerf: 16 is ripped off first, then 12 behind the piece. */
    @Test
    void aWideRestIsRippedOffInSteps() {
        PartOrder order = new PartOrder(true, true, 16, 16);
        Cell piece = Cell.piece(0, false, 60, 20);
        Cell board = Cell.join(false, 60, 48, List.of(piece, Cell.rest(60, 28)), order);
        assertThat(board.parts).extracting(part -> part.width).containsExactly(16L, 20L, 12L);
        Cell fuller = Cell.join(
                false, 60, 48, List.of(Cell.piece(1, false, 60, 14), board.parts[1], Cell.rest(60, 14)), order);
        assertThat(fuller.parts).extracting(part -> part.width).containsExactly(14L, 20L, 14L);
    }
}
