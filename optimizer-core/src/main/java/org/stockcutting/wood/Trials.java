package org.stockcutting.wood;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/**
 * Trials of one group's purchase. Board k of trial t is the same whatever else is bought, so a trial that is finished with n boards is
 * finished with n + 1: the chance never falls when more is bought. Safe to share between threads.
 */
final class Trials {

    /** Steps that the planner may take for one purchase that the quick look leaves open. */
    private static final long PLANNER_WORK = 3_000;

    private static final Length INCH_MARK = Length.inches("0.0625");
    private static final Length METRIC_MARK = Length.millimetres("1");

    private final Job job;
    private final Group group;
    private final long seed;
    private final Planning planning;
    private final List<BoardDraw> draws = new ArrayList<>();
    private final List<Line> owned = new ArrayList<>();
    private final AsPlanned asPlanned;
    private final Optional<QuickCut> quick;

    Trials(Job job, Group group, List<KnotModel> models, long seed, Planning planning) {
        this.job = job;
        this.group = group;
        this.seed = seed;
        this.planning = planning;
        LengthUnit unit = job.writing().unit();
        boolean imperial = unit == LengthUnit.INCH || unit == LengthUnit.FOOT;
        models.forEach(model -> draws.add(new BoardDraw(model, imperial ? INCH_MARK : METRIC_MARK)));
        this.asPlanned = new AsPlanned(group);
        this.quick = Slices.quick(job, group);
        int kind = group.bought().size();
        for (StockItem.OnHand board : group.owned()) {
            for (int i = 0; i < board.quantity(); i++) {
                owned.add(Line.of(kind, board, board.zones(), job.shop()));
            }
            kind++;
        }
    }

    /** True if all parts can be cut in this trial when so many boards beyond the plan are bought. */
    boolean finishes(int trial, int more) {
        List<Integer> kinds = group.purchase(more);
        List<List<Zone>> zones = new ArrayList<>();
        List<Line> boards = new ArrayList<>();
        for (int b = 0; b < kinds.size(); b++) {
            int kind = kinds.get(b);
            StockItem.ForSale stock = group.bought().get(kind);
            List<Zone> drawn = draws.get(kind).draw(stock.length(), Noise.of(seed, group.number(), trial, b));
            zones.add(drawn);
            boards.add(Line.of(kind, stock, drawn, job.shop()));
        }
        if (asPlanned.fits(boards)) {
            return true;
        }
        boards.addAll(owned);
        QuickCut.Verdict verdict = quick.map(
                        look -> look.decide(boards, Noise.of(seed, group.number(), trial, kinds.size(), -1)))
                .orElse(QuickCut.Verdict.UNKNOWN);
        return verdict == QuickCut.Verdict.YES
                || (verdict == QuickCut.Verdict.UNKNOWN && plannerFinishes(kinds, zones, trial));
    }

    private boolean plannerFinishes(List<Integer> kinds, List<List<Zone>> zones, int trial) {
        List<StockItem.OnHand> boards = new ArrayList<>(group.owned());
        for (int b = 0; b < kinds.size(); b++) {
            boards.add(asOwned(group.bought().get(kinds.get(b)), zones.get(b), b));
        }
        Effort effort = new Effort(PLANNER_WORK, null, seed + trial, 1);
        List<String> parts =
                group.pieces().stream().map(piece -> piece.part().id()).toList();
        Job purchase = new Job(
                job.name(),
                job.writing(),
                job.sets(),
                job.shop(),
                job.allowances(),
                job.parts().stream().filter(part -> parts.contains(part.id())).toList(),
                List.of(),
                boards,
                Goal.WASTE,
                effort);
        return planning.placesAll(purchase, effort);
    }

    private StockItem.OnHand asOwned(StockItem.ForSale stock, List<Zone> zones, int number) {
        String id = "drawn " + number;
        while (isOwned(id)) {
            id += "'";
        }
        return new StockItem.OnHand(
                id,
                stock.form(),
                stock.nominal(),
                stock.length(),
                stock.width(),
                stock.thickness(),
                stock.material(),
                stock.grain(),
                stock.ownTrim(),
                1,
                zones);
    }

    private boolean isOwned(String id) {
        return group.owned().stream().anyMatch(board -> board.id().equals(id));
    }
}
