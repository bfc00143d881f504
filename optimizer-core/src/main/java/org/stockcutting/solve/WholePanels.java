package org.stockcutting.solve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.function.Function;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Engine;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.Region;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * A panel that lacks a stave is no panel. Engines count every stave for itself, so where wood is short they may fill boards with staves
 * that are taken off again, and leave out parts that these boards would have given. Then the component is solved again without the
 * staves and plies that came to nothing, and again with one item type of them kept, and the answer with most finished wood is taken.
 */
final class WholePanels {

    /** Item types of which all pieces are wanted after all, each in one further try. */
    private static final int MOST_TRIES = 3;

    private final Instance instance;
    private final Engine engine;
    private final Function<Answer, int[]> finished;

    WholePanels(Instance instance, Engine engine, Function<Answer, int[]> finished) {
        this.instance = instance;
        this.engine = engine;
        this.finished = finished;
    }

    /** The answer itself where every stave is of use, else the best that was found without the idle ones. */
    Answer instead(Answer answer, WorkMeter meter, long seed) {
        if (answer.unplaced().stream().noneMatch(missing -> missing > 0)) {
            return answer;
        }
        int[] whole = finished.apply(answer);
        List<Integer> idle = idle(answer, whole);
        if (idle.isEmpty()) {
            return answer;
        }
        // What was searched counted idle staves as placed wood: it proves nothing.
        Answer best = unproved(answer);
        List<Integer> kept = new ArrayList<>();
        kept.add(-1);
        kept.addAll(idle.subList(0, Math.min(MOST_TRIES, idle.size())));
        for (int t = 0; t < kept.size() && !meter.isExhausted(); t++) {
            int[] demand = demand();
            for (int item : idle) {
                demand[item] = item == kept.get(t) ? demand[item] : whole[item];
            }
            WorkMeter part = meter.part(meter.left() / (kept.size() - t));
            Answer other = without(demand, part, seed);
            meter.absorb(part);
            best = isBetter(other, best) ? other : best;
        }
        return best;
    }

    private int[] demand() {
        return instance.items().stream().mapToInt(ItemType::demand).toArray();
    }

    /** Item types outside groups of which pieces were placed in vain, the most wood first. */
    private List<Integer> idle(Answer answer, int[] whole) {
        List<Integer> idle = new ArrayList<>();
        long[] weight = new long[whole.length];
        for (int i = 0; i < whole.length; i++) {
            int item = i;
            int vain = instance.items().get(i).demand() - answer.unplaced().get(i) - whole[i];
            weight[i] = vain * instance.items().get(i).weight();
            if (vain > 0
                    && instance.groups().stream()
                            .noneMatch(group -> group.items().contains(item))) {
                idle.add(i);
            }
        }
        idle.sort((a, b) -> Long.compare(weight[b], weight[a]));
        return idle;
    }

    private Answer without(int[] demand, WorkMeter meter, long seed) {
        List<Integer> items = new ArrayList<>();
        for (int i = 0; i < demand.length; i++) {
            if (demand[i] > 0) {
                items.add(i);
            }
        }
        if (items.isEmpty()) {
            return answer(List.of(), Collections.nCopies(demand.length, 0.0));
        }
        Answer found = engine.solve(reduced(items, demand), meter, seed, Engine.EngineListener.NONE);
        List<Answer.PatternUse> uses = new ArrayList<>();
        for (Answer.PatternUse use : found.uses()) {
            uses.add(new Answer.PatternUse(use.stock(), use.copies(), renamed(use.layout(), items)));
        }
        List<Double> duals = new ArrayList<>(Collections.nCopies(demand.length, 0.0));
        for (int i = 0; i < items.size(); i++) {
            duals.set(items.get(i), found.duals().get(i));
        }
        return answer(uses, duals);
    }

    private Instance reduced(List<Integer> items, int[] demand) {
        List<ItemType> types = new ArrayList<>();
        for (int i : items) {
            ItemType item = instance.items().get(i);
            types.add(new ItemType(
                    item.length(), item.width(), item.weight(), demand[i], Math.min(demand[i], item.perBoard())));
        }
        List<StockType> stocks = new ArrayList<>();
        for (StockType stock : instance.stocks()) {
            List<StockType.Placing> places =
                    items.stream().map(stock.places()::get).toList();
            stocks.add(new StockType(
                    stock.length(),
                    stock.width(),
                    stock.rawEnd(),
                    stock.rawFarEdge(),
                    stock.cost(),
                    stock.copies(),
                    stock.offcutValue(),
                    stock.zones(),
                    places));
        }
        List<Instance.Group> groups = new ArrayList<>();
        for (Instance.Group group : instance.groups()) {
            groups.add(new Instance.Group(
                    group.items().stream().map(items::indexOf).toList(), group.perSet()));
        }
        return new Instance(
                types, stocks, instance.crosscutKerf(), instance.ripKerf(), instance.limits(), instance.keep(), groups);
    }

    private static Region renamed(Region region, List<Integer> items) {
        if (region instanceof Region.Item item) {
            return new Region.Item(
                    items.get(item.item()), item.turned(), item.x(), item.y(), item.length(), item.width());
        }
        Region.Split split = (Region.Split) region;
        List<Region> parts =
                split.parts().stream().map(part -> renamed(part, items)).toList();
        return new Region.Split(split.crosscut(), split.x(), split.y(), split.length(), split.width(), parts);
    }

    private Answer answer(List<Answer.PatternUse> uses, List<Double> duals) {
        int[] missing = demand();
        for (Answer.PatternUse use : uses) {
            for (Region.Item place : org.stockcutting.solve.layout.Board.places(use.layout())) {
                missing[place.item()] -= use.copies();
            }
        }
        return new Answer(uses, Arrays.stream(missing).boxed().toList(), duals, false, Answer.NO_BOUND);
    }

    private static Answer unproved(Answer answer) {
        return new Answer(answer.uses(), answer.unplaced(), answer.duals(), false, Answer.NO_BOUND);
    }

    /** More finished wood, or as much for less money. */
    private boolean isBetter(Answer one, Answer other) {
        long more = weight(one) - weight(other);
        return more > 0 || (more == 0 && cost(one) < cost(other));
    }

    private long weight(Answer answer) {
        int[] whole = finished.apply(answer);
        long weight = 0;
        for (int i = 0; i < whole.length; i++) {
            weight += whole[i] * instance.items().get(i).weight();
        }
        return weight;
    }

    private long cost(Answer answer) {
        long cost = 0;
        for (Answer.PatternUse use : answer.uses()) {
            cost += use.copies() * instance.stocks().get(use.stock()).cost();
        }
        return cost;
    }
}
