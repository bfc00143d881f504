package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.Weights;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * Chooses one known pattern for every board of a rack so that least is missing: local search by changes of one board, each for more of a
 * type that is missing, in which types weigh more and more while they are missing (as rows do in the local search for set covering of
 * Gao, Weise, Li, European Journal of Operational Research 246, 2015). From time to time a board is fitted anew for just what all others leave.
 *
 * <p>In 25,000 steps a fifth of what a dive left missing is left, where {@link RackMending} leaves half in 60,000.
 */
final class RackChoice {

    private static final long STEPS = 40_000;
    /** What a missing type weighs more after each change without gain, in what it weighs by itself, and what stays of earlier rises. */
    private static final double RISE = 0.2;

    private static final double STAYS = 0.98;
    /** Changes during which a board stays as it is once changed. */
    private static final int REST = 3;
    /** Changes without gain after which a board is fitted anew, and after which all begin again from the best. */
    private static final int REFIT = 40;

    private static final int AGAIN = 300;
    private static final int REFIT_MOVES = 4;

    private final RackDive.Kit kit;
    private final RackDive dive;
    private final Model model;
    private final double[] each;
    private final int[] demand;
    private final List<List<PriceList.Column>> known = new ArrayList<>();
    private final Set<List<Object>> keys = new HashSet<>();
    private final double[] weight;
    private final int[] covered;
    private final Slot[] slots;
    private long changes;

    /** A board, and how it is cut for now. */
    private static final class Slot {
        final int stock;
        int[] counts;
        PriceList.@Nullable Column column;
        PriceList.@Nullable Column last;
        long changed = -REST;

        Slot(int stock, int types) {
            this.stock = stock;
            this.counts = new int[types];
        }
    }

    private record Change(@Nullable Slot slot, PriceList.@Nullable Column column, double gain) {}

    private RackChoice(RackDive.Kit kit, RackDive dive, Draft draft, RackAim aim) {
        this.kit = kit;
        this.dive = dive;
        this.model = kit.yard().model;
        double[] shortfall = aim.shortfall();
        this.each = new double[model.types];
        this.demand = new int[model.types];
        for (int t = 0; t < model.types; t++) {
            each[t] = shortfall == null ? model.area(t) : shortfall[t];
            demand[t] = model.hasPlace(t) ? model.item(t).demand() : 0;
        }
        this.weight = each.clone();
        this.covered = new int[model.types];
        for (int s = 0; s < model.stocks; s++) {
            known.add(new ArrayList<>());
        }
        dive.patterns().forEach(this::learn);
        this.slots = slots(draft, aim.allowance());
    }

    /** A draft that misses no more than this one, with no other boards than are in it or may be taken by number. */
    static Draft improved(RackDive.Kit kit, RackDive dive, Draft draft, RackAim aim, WorkMeter meter) {
        WorkMeter part = meter.part(STEPS);
        Draft best = new RackChoice(kit, dive, draft, aim).run(draft, aim.tolerated(), part);
        meter.absorb(part);
        return best;
    }

    private Slot[] slots(Draft draft, Allowance allowance) {
        List<Slot> found = new ArrayList<>();
        for (Board board : draft.boards) {
            Slot slot = new Slot(board.stock, model.types);
            found.add(slot);
            PriceList.Column column = PriceList.Column.of(board);
            learn(column);
            put(slot, column);
        }
        long money = allowance.cost() - draft.cost();
        for (int s = 0; s < model.stocks; s++) {
            int left = allowance.left(draft, s);
            long cost = model.stock(s).cost();
            for (int n = 0; n < left && left < Integer.MAX_VALUE && cost <= money; n++) {
                found.add(new Slot(s, model.types));
                money -= cost;
            }
        }
        return found.toArray(new Slot[0]);
    }

    private boolean learn(PriceList.Column column) {
        if (column.pattern() == null || !keys.add(List.of(column.stock(), Arrays.toString(column.counts())))) {
            return false;
        }
        return known.get(column.stock()).add(column);
    }

    private Draft run(Draft draft, double enough, WorkMeter meter) {
        double least = missing();
        double start = least;
        List<PriceList.@Nullable Column> kept = columns();
        int idle = 0;
        while (least > enough && slots.length > 0 && !meter.isExhausted()) {
            long operations = change();
            idle++;
            if (idle % REFIT == 0) {
                refit(slots[kit.dice().below(slots.length)]);
                operations += kit.yard().takeOperations();
            }
            if (missing() < least) {
                least = missing();
                kept = columns();
                idle = 0;
            } else if (idle % AGAIN == 0) {
                for (int k = 0; k < slots.length; k++) {
                    put(slots[k], kept.get(k));
                }
                System.arraycopy(each, 0, weight, 0, each.length);
            }
            meter.spend(Weights.of(operations));
        }
        return least < start ? draft(kept) : draft;
    }

    private List<PriceList.@Nullable Column> columns() {
        List<PriceList.@Nullable Column> columns = new ArrayList<>();
        for (Slot slot : slots) {
            columns.add(slot.column);
        }
        return columns;
    }

    private Draft draft(List<PriceList.@Nullable Column> columns) {
        Draft draft = new Draft(kit.yard());
        for (PriceList.Column column : columns) {
            if (column != null) {
                dive.fix(draft, column);
            }
        }
        return draft;
    }

    private void put(Slot slot, PriceList.@Nullable Column column) {
        for (int t = 0; t < covered.length; t++) {
            int count = column == null ? 0 : (int) column.counts()[t];
            covered[t] += count - slot.counts[t];
            slot.counts[t] = count;
        }
        slot.last = slot.column;
        slot.column = column;
    }

    private double missing() {
        double sum = 0;
        for (int t = 0; t < demand.length; t++) {
            sum += Math.max(0, demand[t] - covered[t]) * each[t];
        }
        return sum;
    }

    /** Makes the best change of one board that gives more of some missing type; returns the operations that it took. */
    private long change() {
        changes++;
        int wanted = wanted();
        Change best = new Change(null, null, Double.NEGATIVE_INFINITY);
        long seen = 0;
        for (Slot slot : slots) {
            if (changes - slot.changed <= REST) {
                continue;
            }
            for (PriceList.Column column : known.get(slot.stock)) {
                if (column.counts()[wanted] > slot.counts[wanted] && column != slot.last) {
                    double gain = gain(slot, column)
                            + 1e-9 * each[wanted] * kit.dice().unit();
                    best = gain > best.gain ? new Change(slot, column, gain) : best;
                    seen++;
                }
            }
        }
        if (best.gain <= 1e-6 * each[wanted]) {
            for (int t = 0; t < weight.length; t++) {
                double rise = covered[t] < demand[t] ? RISE * each[t] : 0;
                weight[t] = each[t] + STAYS * (weight[t] - each[t]) + rise;
            }
        }
        if (best.slot != null) {
            put(best.slot, best.column);
            best.slot.changed = changes;
        }
        return seen * covered.length + 2L * slots.length;
    }

    /** One of the missing types by chance. */
    private int wanted() {
        int[] missing = IntStream.range(0, demand.length)
                .filter(t -> covered[t] < demand[t] && each[t] > 0)
                .toArray();
        return missing[kit.dice().below(missing.length)];
    }

    private double gain(Slot slot, PriceList.Column column) {
        double gain = 0;
        for (int t = 0; t < covered.length; t++) {
            int now = demand[t] - covered[t];
            int then = now + slot.counts[t] - (int) column.counts()[t];
            gain += weight[t] * (Math.max(0, now) - Math.max(0, then));
        }
        return gain;
    }

    /** Fits a board anew for exactly what all others leave missing. */
    private void refit(Slot slot) {
        int[] most = new int[demand.length];
        for (int t = 0; t < most.length; t++) {
            int left = Math.max(0, demand[t] - covered[t] + slot.counts[t]);
            most[t] = Math.min(left, model.item(t).perBoard());
        }
        Board start = slot.column == null ? kit.yard().empty(slot.stock) : dive.board(slot.column);
        Board next = kit.refit().improved(Pruning.within(start, most), most, weight, REFIT_MOVES);
        PriceList.Column column = PriceList.Column.of(next);
        if (!next.isEmpty() && learn(column)) {
            kit.found().accept(column);
            if (gain(slot, column) >= 0) {
                put(slot, column);
                slot.changed = changes;
            }
        }
    }
}
