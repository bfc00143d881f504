package org.stockcutting.check;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.fraction.BigFraction;
import org.stockcutting.job.ShopRules;

/**
 * The most that one board can gain under given worths: at least the worth of every pattern that may be cut from it, less what the
 * board costs. Groups, stave sources and what the saws cannot do are left out, which can only raise it; only the guillotine table knows
 * what the saws reach, and {@link ZoneTable} where zones and tapers lie.
 */
final class StockGain {

    /** Vector operations on cells of all tables of boards with bad zones together. */
    private static final long ZONE_WORK = 3_000_000_000L;

    /** The same of one board. */
    private static final long MOST_ZONE_WORK = 300_000_000;

    private final Facts facts;
    private final Goals goals;
    private final Component component;
    private final Map<Asked, BigFraction> known = new HashMap<>();

    /** What was asked before, so that no table is filled twice. */
    private record Asked(String board, Duals duals, boolean table) {}

    StockGain(Facts facts, Goals goals, Component component) {
        this.facts = facts;
        this.goals = goals;
        this.component = component;
    }

    /**
     * @param table false to leave the guillotine table out, which is quicker and may be higher
     */
    BigFraction gain(Board board, Duals duals, boolean table) {
        Asked asked = new Asked(board.id(), duals, table);
        BigFraction before = known.get(asked);
        if (before != null) {
            return before;
        }
        BigFraction gain = most(board, duals, table);
        known.put(asked, gain);
        return gain;
    }

    private BigFraction most(Board board, Duals duals, boolean table) {
        Duals.Scaled scaled = duals.on(board, component, facts, goals);
        List<Worth> worths = scaled.worths();
        BigFraction unit = scaled.unit();
        BigFraction cost = goals.cost(board);
        boolean lane = isLane(board, worths);
        if (!goals.returnsOffcuts(board)) {
            long most = lane ? lane(board, worths) : plane(board, worths, table);
            if (lane && table && board.evenness().isTapered()) {
                most = Math.min(most, plane(board, worths, true));
            }
            return unit.multiply(BigInteger.valueOf(most)).subtract(cost);
        }
        if (lane && !leavesStrips(board)) {
            return laneWithOffcut(board, worths, unit, cost);
        }
        return planeWithOffcuts(board, worths, unit);
    }

    /**
     * The shortest row of pieces, each with its cut, on a board that is only crosscut, that is worth at least so much; -1 if no row is.
     */
    long shortest(Board board, Duals duals, BigFraction wanted) {
        if (wanted.compareTo(BigFraction.ZERO) <= 0) {
            return 0;
        }
        Duals.Scaled scaled = duals.on(board, component, facts, goals);
        Knapsack points = knapsack(board, scaled.worths());
        for (int i = 0; i < points.values().length; i++) {
            if (scaled.unit().multiply(BigInteger.valueOf(points.values()[i])).compareTo(wanted) >= 0) {
                return points.length(i);
            }
        }
        return -1;
    }

    /** True if the guillotine table has a say in this board's gain. */
    boolean usesTable(Board board, Duals duals) {
        List<Worth> worths = duals.on(board, component, facts, goals).worths();
        boolean plane = !isLane(board, worths) || board.evenness().isTapered();
        return !worths.isEmpty() && !goals.returnsOffcuts(board) && plane;
    }

    /** No two pieces that matter fit side by side, and none lies across. */
    private boolean isLane(Board board, List<Worth> worths) {
        long least = Long.MAX_VALUE / 4;
        for (Worth worth : worths) {
            if (worth.turned()) {
                return false;
            }
            least = Math.min(least, worth.leastWidth());
        }
        return 2 * least + facts.ripKerf() > board.usable().width();
    }

    private long lane(Board board, List<Worth> worths) {
        Knapsack knapsack = knapsack(board, worths);
        if (board.zones().isEmpty()) {
            return knapsack.best();
        }
        return Math.min(knapsack.best(), ZoneWalk.best(board, worths, facts.crosscutKerf()));
    }

    private Knapsack knapsack(Board board, List<Worth> worths) {
        List<Knapsack.Item> items = new ArrayList<>();
        for (Worth worth : worths) {
            long length = worth.length() + facts.crosscutKerf();
            if (!worth.isStave()) {
                items.add(new Knapsack.Item(length, worth.value(), worth.cap()));
                continue;
            }
            long full = worth.cap() / worth.mostJointed();
            items.add(new Knapsack.Item(length, worth.single(), full));
            long rest = worth.cap() - full * worth.mostJointed();
            items.add(new Knapsack.Item(length, Math.multiplyExact(worth.value(), rest), rest > 0 ? 1 : 0));
        }
        return Knapsack.solve(items, board.usable().length() + facts.crosscutKerf());
    }

    private long plane(Board board, List<Worth> worths, boolean table) {
        List<AreaBound.Filling> fillings = new ArrayList<>();
        for (Worth worth : worths) {
            fillings.add(
                    AreaBound.filling(worth, new BigFraction(worth.single()), facts.crosscutKerf(), facts.ripKerf()));
        }
        BigFraction area = AreaBound.best(
                fillings,
                Worth.times(
                        board.usable().length() + facts.crosscutKerf(),
                        board.usable().width() + facts.ripKerf()));
        BigInteger whole = area.getNumerator().divide(area.getDenominator());
        long most = whole.longValueExact();
        if (!table || worths.isEmpty()) {
            return most;
        }
        ShopRules shop = facts.job().shop();
        GuillotineTable clear = GuillotineTable.of(board, worths, shop.kerf(), shop.limits());
        if (clear == null) {
            return most;
        }
        long zoned = ZoneTable.best(worths, Ban.of(board, worths, shop), clear, zoneWork());
        return Math.min(most, Math.min(clear.best(), zoned));
    }

    /** What the table of one board with bad zones may take, so that all of them together take about a second of one core of 2026. */
    private long zoneWork() {
        long zoned = component.boards().stream().filter(Ban::concerns).count();
        return Math.min(MOST_ZONE_WORK, ZONE_WORK / Math.max(1, zoned));
    }

    /** True if a strip beside a piece could be wide enough to be kept. */
    private boolean leavesStrips(Board board) {
        long least = component.roughs().stream()
                .filter(rough -> Fit.anyhow(rough, board, facts.job().shop()))
                .mapToLong(rough -> rough.leastWidthOn(board))
                .min()
                .orElse(0);
        boolean turns = component.roughs().stream()
                .anyMatch(rough -> Fit.anyhow(rough, board, facts.job().shop()) && Fit.turned(rough, board));
        return turns || board.raw().width() - least - facts.ripKerf() >= goals.leastKeptWidth(board);
    }

    /** One offcut takes what the pieces with their cuts leave of the raw length; two offcuts are never longer than one. */
    private BigFraction laneWithOffcut(Board board, List<Worth> worths, BigFraction unit, BigFraction cost) {
        Knapsack points = knapsack(board, worths);
        BigInteger section = Worth.times(board.raw().width(), board.thickness());
        long keep = goals.leastKeptLength(board);
        BigInteger best = null;
        BigInteger p = unit.getNumerator();
        BigInteger q = unit.getDenominator();
        for (int i = 0; i < points.values().length; i++) {
            long length = points.length(i);
            boolean kept = board.raw().length() - length >= keep;
            BigInteger paid = kept ? section.multiply(BigInteger.valueOf(length)) : cost.getNumerator();
            BigInteger gain = p.multiply(BigInteger.valueOf(points.values()[i])).subtract(q.multiply(paid));
            best = best == null ? gain : best.max(gain);
        }
        return best == null ? cost.negate() : new BigFraction(best, q);
    }

    /** Every bit of wood that is no part may come back, so a part gains what it is worth beyond its own wood. */
    private BigFraction planeWithOffcuts(Board board, List<Worth> worths, BigFraction unit) {
        List<AreaBound.Filling> fillings = new ArrayList<>();
        BigInteger thickness = BigInteger.valueOf(board.thickness());
        for (Worth worth : worths) {
            BigInteger wood = Worth.times(worth.length(), worth.mostWidth()).multiply(thickness);
            BigFraction single =
                    unit.multiply(BigInteger.valueOf(worth.single())).subtract(wood);
            fillings.add(AreaBound.filling(worth, single, facts.crosscutKerf(), facts.ripKerf()));
        }
        return AreaBound.best(
                fillings,
                Worth.times(
                        board.usable().length() + facts.crosscutKerf(),
                        board.usable().width() + facts.ripKerf()));
    }
}
