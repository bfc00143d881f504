package org.stockcutting.sequence;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.stockcutting.job.Job;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;

/**
 * Puts all cuts of a plan in one order: sheets before boards, first-end trims before all, then position by position of stop and fence.
 * No cut comes before those that free its piece of wood, and on one piece of wood cuts run from the origin outwards.
 *
 * <p>Which sequence has the fewest set-ups is a scheduling problem with precedence and hard in general. Two greedy orders are tried and
 * the better one is kept, so {@code setUps} is what this sequence takes, not the least there is. Stateless.
 */
public final class CutSequencer {

    private CutSequencer() {}

    /**
     * A sequence of cuts.
     *
     * @param steps numbered from 1
     * @param setUps how often a stop or fence is set to a new position
     */
    public record Sequence(List<SequenceStep> steps, int setUps) {
        public Sequence {
            steps = List.copyOf(steps);
        }
    }

    /**
     * Sequences a plan.
     *
     * @param job tells sheets from boards and in which unit the maker reads
     * @param layouts a plan's layouts, in its order: boards are numbered {@code {stock} #k} along it
     */
    public static Sequence sequence(Job job, List<Layout> layouts) {
        Cautions cautions = new Cautions(job.writing().unit().isImperial());
        Set<String> sheets = Stream.concat(job.forSale().stream(), job.onHand().stream())
                .filter(stock -> stock.form() == Form.SHEET)
                .map(StockItem::id)
                .collect(Collectors.toSet());
        BoardReader fromSheets = new BoardReader(cautions);
        BoardReader fromBoards = new BoardReader(cautions);
        Map<String, Integer> boards = new HashMap<>();
        for (Layout layout : layouts) {
            BoardReader reader = sheets.contains(layout.stock()) ? fromSheets : fromBoards;
            for (int copy = 0; copy < layout.repeat(); copy++) {
                int k = boards.merge(layout.stock(), 1, Integer::sum);
                reader.read(layout, copy, layout.stock() + " #" + k);
            }
        }
        Sequence forGood = made(Bench.Preference.DONE_FOR_GOOD, fromSheets, fromBoards);
        Sequence most = made(Bench.Preference.MOST_CUTS, fromSheets, fromBoards);
        return most.setUps() < forGood.setUps() ? most : forGood;
    }

    private static Sequence made(Bench.Preference preference, BoardReader fromSheets, BoardReader fromBoards) {
        Bench bench = new Bench(preference);
        bench.work(fromSheets);
        bench.work(fromBoards);
        return new Sequence(bench.steps(), bench.setUps());
    }
}
