package org.stockcutting.wood;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.length.Length;
import org.stockcutting.stock.Zone;

/** Draws the bad zones of one board from a {@link KnotModel}; positions are rounded outward to the marks of a tape. */
final class BoardDraw {

    private final KnotModel model;
    private final long mark;

    /**
     * @param mark distance of the marks of the tape
     */
    BoardDraw(KnotModel model, Length mark) {
        this.model = model;
        this.mark = mark.nanometres();
    }

    /** Zones of a board of this length, from its start to its end. */
    List<Zone> draw(Length board, Noise noise) {
        long length = board.nanometres();
        List<Zone> zones = new ArrayList<>();
        if (noise.unit() < model.unusableBoards().doubleValue()) {
            add(zones, 0, length, length, Zone.Severity.UNUSABLE);
            return zones;
        }
        double startCheck = noise.exponential(model.endCheck().nanometres());
        double endCheck = noise.exponential(model.endCheck().nanometres());
        add(zones, 0, startCheck, length, Zone.Severity.UNUSABLE);
        if (model.zone().isPositive()) {
            knots(zones, startCheck, length - endCheck, length, noise);
        }
        add(zones, length - endCheck, length, length, Zone.Severity.UNUSABLE);
        return zones;
    }

    private void knots(List<Zone> zones, double from, double to, long length, Noise noise) {
        double at = from + noise.exponential(model.clearRun().nanometres());
        while (at < to) {
            double end = at + noise.erlang(KnotModel.SHAPE, model.zone().nanometres());
            add(zones, at, end, length, severity(noise.unit()));
            at = end + noise.exponential(model.clearRun().nanometres());
        }
    }

    private Zone.Severity severity(double unit) {
        double tight = model.tightKnots().doubleValue();
        if (unit < tight) {
            return Zone.Severity.TIGHT_KNOT;
        }
        return unit < tight + model.blemishes().doubleValue() ? Zone.Severity.BLEMISH : Zone.Severity.UNUSABLE;
    }

    private void add(List<Zone> zones, double from, double to, long length, Zone.Severity severity) {
        if (to <= from) {
            return;
        }
        long first = Math.max(0, (long) Math.floor(from / mark) * mark);
        long last = Math.min(length, (long) Math.ceil(to / mark) * mark);
        if (last > first) {
            zones.add(new Zone(
                    Length.ofNanometres(first),
                    Length.ofNanometres(last),
                    null,
                    null,
                    severity,
                    Zone.Face.BOTH,
                    false));
        }
    }
}
