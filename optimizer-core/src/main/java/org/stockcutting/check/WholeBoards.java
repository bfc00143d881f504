package org.stockcutting.check;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.fraction.BigFraction;
import org.jspecify.annotations.Nullable;

/**
 * The least that whole boards come to which no row rules out. A row says for given worths: one board of each stock holds at most so much,
 * and all that was placed is worth so much; so the numbers of boards times what they hold must come to that. All purchases are tried,
 * which few kinds of stock allow. With one row and packs or price breaks {@link LeastPurchase} says the same for any number of kinds.
 */
final class WholeBoards {

    private static final int MOST_KINDS = 4;
    private static final long MOST_PURCHASES = 5_000;

    private final Goals goals;
    private final List<Board> kinds;
    private final List<Row> rows;
    private @Nullable BigInteger least;

    /**
     * What boards must hold, in whole units of its own.
     *
     * @param need worth of all that was placed
     * @param most by board, the most that one of them is worth, at least 0
     */
    private record Row(BigInteger need, List<BigInteger> most) {

        static Row of(BigFraction need, List<BigFraction> most) {
            BigInteger unit = BigInteger.ONE;
            for (BigFraction each : most) {
                unit = unit.multiply(each.getDenominator().divide(unit.gcd(each.getDenominator())));
            }
            BigInteger scale = unit;
            return new Row(
                    Duals.ceil(need.multiply(scale)),
                    most.stream()
                            .map(each -> each.multiply(scale).getNumerator())
                            .toList());
        }

        /** What is owned costs nothing, so all of it is taken; only these boards are left to buy. */
        Row without(List<Board> boards, List<Integer> bought) {
            BigInteger open = need;
            for (int b = 0; b < boards.size(); b++) {
                if (!boards.get(b).forSale()) {
                    int copies = boards.get(b).copies().orElseThrow();
                    open = open.subtract(most.get(b).multiply(BigInteger.valueOf(copies)));
                }
            }
            return new Row(open, bought.stream().map(most::get).toList());
        }
    }

    private WholeBoards(Goals goals, List<Board> kinds, List<Row> rows) {
        this.goals = goals;
        this.kinds = kinds;
        this.rows = rows;
    }

    /**
     * The least amount; null where there are too many purchases to try, or none holds everything.
     *
     * @param needs for each row the worth of all that was placed
     * @param most for each row and board the most that one such board is worth
     */
    static @Nullable BigInteger of(
            Goals goals, List<Board> boards, List<BigFraction> needs, List<List<BigFraction>> most) {
        List<Integer> bought = new ArrayList<>();
        for (int b = 0; b < boards.size(); b++) {
            int board = b;
            boolean holds = most.stream().anyMatch(row -> row.get(board).compareTo(BigFraction.ZERO) > 0);
            if (holds && boards.get(b).forSale()) {
                bought.add(b);
            }
        }
        if (bought.size() > MOST_KINDS) {
            return null;
        }
        List<Row> rows = new ArrayList<>();
        for (int r = 0; r < needs.size(); r++) {
            rows.add(Row.of(needs.get(r), most.get(r)).without(boards, bought));
        }
        WholeBoards whole =
                new WholeBoards(goals, bought.stream().map(boards::get).toList(), rows);
        List<BigInteger> open = rows.stream().map(Row::need).toList();
        if (whole.isTooMany(open)) {
            return null;
        }
        whole.buy(0, open, BigInteger.ZERO);
        return whole.least;
    }

    private boolean isTooMany(List<BigInteger> open) {
        long purchases = 1;
        for (int kind = 0; kind < kinds.size() && purchases <= MOST_PURCHASES; kind++) {
            long most = most(kind, open);
            // Of the last kind only so many as are needed are tried, but no more than that can be counted.
            purchases *= kind + 1 < kinds.size() ? 1 + most : most < MOST_PURCHASES ? 1 : MOST_PURCHASES + 1;
        }
        return purchases > MOST_PURCHASES;
    }

    private void buy(int kind, List<BigInteger> open, BigInteger paid) {
        if (least != null && paid.compareTo(least) >= 0) {
            return;
        }
        if (open.stream().allMatch(need -> need.signum() <= 0)) {
            least = paid;
            return;
        }
        if (kind == kinds.size()) {
            return;
        }
        int most = most(kind, open);
        for (int boards = kind + 1 == kinds.size() ? most : 0; boards <= most; boards++) {
            BigInteger times = BigInteger.valueOf(boards);
            List<BigInteger> rest = new ArrayList<>();
            for (int r = 0; r < rows.size(); r++) {
                rest.add(open.get(r).subtract(rows.get(r).most().get(kind).multiply(times)));
            }
            buy(kind + 1, rest, paid.add(goals.paid(kinds.get(kind), boards)));
        }
    }

    /** Boards of which more would be of no use, or are not to be had: as many as fill every row that they can fill. */
    private int most(int kind, List<BigInteger> open) {
        BigInteger enough = BigInteger.ZERO;
        for (int r = 0; r < rows.size(); r++) {
            BigInteger each = rows.get(r).most().get(kind);
            if (each.signum() > 0 && open.get(r).signum() > 0) {
                enough = enough.max(
                        open.get(r).add(each).subtract(BigInteger.ONE).divide(each));
            }
        }
        int copies = kinds.get(kind).copies().orElse(Integer.MAX_VALUE);
        return enough.min(BigInteger.valueOf(Math.min(copies, MOST_PURCHASES))).intValue();
    }
}
