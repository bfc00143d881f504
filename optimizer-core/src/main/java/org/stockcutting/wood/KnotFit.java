package org.stockcutting.wood;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.stockcutting.length.Length;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/**
 * Fits a {@link KnotModel} to measured boards by maximum likelihood, shrunk to what is usual.
 *
 * <p>Clear runs are exponential and the last one of each board is cut off by its end, so the likelihood is greatest at (clear length of
 * all boards) / (zones seen): the estimate for censored lifetimes, as in any handbook of reliability. For zones and checks it is the
 * mean, for shares the share seen. Each estimate counts the usual figure as if it had been seen {@value #USUAL_WEIGHT} times more, which
 * is the mean of a conjugate prior: few boards change little, many boards change everything.
 *
 * <p>A zone that touches an end is that end's check, one that covers the whole board makes it an unusable board. Zones that overlap count
 * once, with the worst severity; part of the width counts as the whole.
 */
final class KnotFit {

    /** How many sightings the usual figure is worth; common practice, no source. */
    static final int USUAL_WEIGHT = 4;

    private static final int DIGITS = 6;

    private long boards;
    private long unusable;
    private long clear;
    private long zones;
    private long zoneLength;
    private long checkLength;
    private final long[] bySeverity = new long[Zone.Severity.values().length];

    /** The model that these boards and the usual figures make most likely. */
    static KnotModel fit(KnotModel usual, List<StockItem.OnHand> measured) {
        KnotFit fit = new KnotFit();
        measured.forEach(board -> {
            for (int i = 0; i < board.quantity(); i++) {
                fit.count(board);
            }
        });
        return fit.boards == 0 ? usual : fit.model(usual);
    }

    private record Stretch(long from, long to, Zone.Severity severity) {}

    private void count(StockItem.OnHand board) {
        long length = board.length().nanometres();
        boards++;
        List<Stretch> stretches = merged(board.zones());
        if (stretches.size() == 1
                && stretches.get(0).from() <= 0
                && stretches.get(0).to() >= length) {
            unusable++;
            return;
        }
        clear += length;
        for (Stretch stretch : stretches) {
            long extent = stretch.to() - stretch.from();
            clear -= extent;
            if (stretch.from() <= 0 || stretch.to() >= length) {
                checkLength += extent;
            } else {
                zones++;
                zoneLength += extent;
                bySeverity[stretch.severity().ordinal()]++;
            }
        }
    }

    private static List<Stretch> merged(List<Zone> zones) {
        List<Stretch> merged = new ArrayList<>();
        zones.stream().sorted(Comparator.comparing(Zone::from)).forEach(zone -> {
            long from = zone.from().nanometres();
            long to = zone.to().nanometres();
            Zone.Severity severity = zone.metal() ? Zone.Severity.UNUSABLE : zone.severity();
            int last = merged.size() - 1;
            if (last >= 0 && merged.get(last).to() > from) {
                Stretch before = merged.get(last);
                Zone.Severity worst = before.severity().compareTo(severity) >= 0 ? before.severity() : severity;
                merged.set(last, new Stretch(before.from(), Math.max(before.to(), to), worst));
            } else {
                merged.add(new Stretch(from, to, severity));
            }
        });
        return merged;
    }

    private KnotModel model(KnotModel usual) {
        return new KnotModel(
                mean(usual.clearRun(), clear, zones),
                mean(usual.zone(), zoneLength, zones),
                mean(usual.endCheck(), checkLength, 2 * (boards - unusable)),
                share(usual.unusableBoards(), unusable, boards),
                share(usual.tightKnots(), bySeverity[Zone.Severity.TIGHT_KNOT.ordinal()], zones),
                share(usual.blemishes(), bySeverity[Zone.Severity.BLEMISH.ordinal()], zones),
                boards + " measured boards, and " + usual.origin());
    }

    private static Length mean(Length usual, long sum, long count) {
        long all = Math.addExact(Math.multiplyExact(usual.nanometres(), (long) USUAL_WEIGHT), sum);
        return Length.ofNanometres(all / (USUAL_WEIGHT + count));
    }

    private static BigDecimal share(BigDecimal usual, long seen, long count) {
        return usual.multiply(BigDecimal.valueOf(USUAL_WEIGHT))
                .add(BigDecimal.valueOf(seen))
                .divide(BigDecimal.valueOf(USUAL_WEIGHT + count), DIGITS, RoundingMode.HALF_UP);
    }
}
