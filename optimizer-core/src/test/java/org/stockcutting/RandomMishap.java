package org.stockcutting;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.stockcutting.length.Length;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.Worklog;
import org.stockcutting.stock.Zone;

/** What may go wrong in a shop, at random: some boards half cut, a part spoiled, a knot found, a board gone. */
final class RandomMishap {

    private final Random random;
    private final CuttingPlan plan;

    private RandomMishap(long seed, CuttingPlan plan) {
        this.random = new Random(seed);
        this.plan = plan;
    }

    static Worklog of(long seed, CuttingPlan plan) {
        return new RandomMishap(seed, plan).worklog();
    }

    private Worklog worklog() {
        Map<String, List<SequenceStep>> byBoard = new LinkedHashMap<>();
        for (SequenceStep step : plan.derived().cutSequence()) {
            if (step.board() != null) {
                byBoard.computeIfAbsent(step.board(), b -> new ArrayList<>()).add(step);
            }
        }
        List<Integer> done = new ArrayList<>();
        List<Worklog.Spoiled> candidates = new ArrayList<>();
        byBoard.values().forEach(steps -> {
            int count = random.nextInt(3) == 0 ? 0 : random.nextInt(steps.size() + 1);
            for (SequenceStep step : steps.subList(0, count)) {
                done.add(step.step());
                if (step.piece() != null && step.cut() != null) {
                    candidates.add(new Worklog.Spoiled(
                            step.piece().part(),
                            step.piece().number(),
                            step.piece().member()));
                }
            }
        });
        List<Worklog.Spoiled> spoiled = new ArrayList<>();
        if (!candidates.isEmpty() && random.nextInt(3) > 0) {
            spoiled.add(candidates.get(random.nextInt(candidates.size())));
        }
        Map<String, Layout> boards = boards(plan);
        List<Worklog.FoundZone> zones = new ArrayList<>();
        List<String> missing = new ArrayList<>();
        List<String> names = List.copyOf(boards.keySet());
        if (!names.isEmpty() && random.nextBoolean()) {
            String board = names.get(random.nextInt(names.size()));
            zones.add(new Worklog.FoundZone(
                    board,
                    zone(java.util.Objects.requireNonNull(boards.get(board))),
                    Worklog.MeasuredFrom.ORIGINAL_ZERO));
        }
        if (!names.isEmpty() && random.nextInt(5) == 0) {
            missing.add(names.get(random.nextInt(names.size())));
        }
        return new Worklog(plan.header().jobHash(), done, spoiled, zones, missing);
    }

    static Map<String, Layout> boards(CuttingPlan plan) {
        Map<String, Layout> boards = new LinkedHashMap<>();
        Map<String, Integer> counted = new LinkedHashMap<>();
        for (Layout layout : plan.layouts()) {
            for (int i = 0; i < layout.repeat(); i++) {
                boards.put(layout.stock() + " #" + counted.merge(layout.stock(), 1, Integer::sum), layout);
            }
        }
        return boards;
    }

    private Zone zone(Layout board) {
        long inch = 25_400_000L;
        long from = (long) (random.nextDouble() * (board.length().nanometres() - inch));
        boolean across = random.nextBoolean();
        long half = board.width().nanometres() / 2;
        return new Zone(
                Length.ofNanometres(from),
                Length.ofNanometres(from + inch),
                across ? null : Length.ZERO,
                across ? null : Length.ofNanometres(half),
                Zone.Severity.values()[random.nextInt(3)],
                Zone.Face.BOTH,
                random.nextInt(10) == 0);
    }
}
