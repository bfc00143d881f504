package org.stockcutting.solve;

import org.jspecify.annotations.Nullable;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.blank.RoughSection;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.SawLimits;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.fit.Fit;
import org.stockcutting.pattern.fit.UsableArea;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/**
 * The unit of length of one instance.
 *
 * <p>Positions that matter are sums of pieces, kerfs and zone ends. With g the greatest common divisor of those, usable sizes may be
 * rounded down to multiples of g without losing a plan; so stock lengths enter only under the goal waste, where leftovers have a value,
 * and under saw limits, which ask whether a piece ends with its board.
 * Where g is so small that tables would not fit, a coarser unit is taken: pieces and kerfs are rounded up, stock down, zones outwards.
 *
 * @param unitX nanometres of a unit along x
 * @param unitY nanometres of a unit along y
 * @param exact false if the coarser unit was taken
 */
record Scale(long unitX, long unitY, boolean exact) {

    /** Most units along a board that engines keep tables for. */
    static final long MOST_UNITS_ONE_AXIS = 200_000;

    static final long MOST_UNITS_TWO_AXES = 200_000;

    static Scale of(Job job, Component component) {
        boolean turning = mayTurn(job, component);
        long x = gcdX(job, component);
        long y = gcdY(job, component);
        long most = turning ? MOST_UNITS_TWO_AXES : MOST_UNITS_ONE_AXIS;
        if (turning) {
            x = gcd(x, y);
            y = x;
        }
        long longest = longest(component, true);
        long widest = longest(component, false);
        long unitX = coarsen(Math.max(1, x), longest, most);
        long unitY = coarsen(Math.max(1, y), widest, most);
        if (turning) {
            unitX = Math.max(unitX, unitY);
            unitY = unitX;
        }
        return new Scale(unitX, unitY, unitX == Math.max(1, x) && unitY == Math.max(1, y));
    }

    private static boolean mayTurn(Job job, Component component) {
        Fit fit = new Fit(job.shop());
        for (RoughPiece piece : component.pieces()) {
            for (StockItem stock : component.stock()) {
                if (fit.ways(piece, stock).turned()) {
                    return true;
                }
            }
        }
        return false;
    }

    private static long gcdX(Job job, Component component) {
        Fit fit = new Fit(job.shop());
        long g = job.shop().kerf().crosscut().nanometres();
        for (RoughPiece piece : component.pieces()) {
            g = gcd(g, piece.length().nanometres());
        }
        for (StockItem stock : component.stock()) {
            UsableArea area = UsableArea.of(stock, job.shop());
            for (Zone zone : fit.zones(stock)) {
                g = gcd(g, zone.from().minus(area.x0()).nanometres());
                g = gcd(g, zone.to().minus(area.x0()).nanometres());
            }
            if (knowsEnds(job)) {
                g = gcd(gcd(g, area.length().nanometres()), stock.length().nanometres());
                g = gcd(g, stock.length().minus(area.x1()).nanometres());
            }
        }
        SawLimits limits = job.shop().limits();
        return gcd(gcd(g, orZero(limits.longestRip())), orZero(limits.minimumPiece()));
    }

    private static long gcdY(Job job, Component component) {
        Fit fit = new Fit(job.shop());
        long g = job.shop().kerf().rip().nanometres();
        for (RoughPiece piece : component.pieces()) {
            if (piece.section() instanceof RoughSection.Sized sized) {
                g = gcd(g, sized.width().nanometres());
            }
        }
        for (StockItem stock : component.stock()) {
            UsableArea area = UsableArea.of(stock, job.shop());
            for (Zone zone : fit.zones(stock)) {
                if (zone.fromEdge() != null && zone.toEdge() != null) {
                    g = gcd(g, zone.fromEdge().minus(area.y0()).nanometres());
                    g = gcd(g, zone.toEdge().minus(area.y0()).nanometres());
                }
            }
            if (knowsEnds(job)) {
                g = gcd(gcd(g, area.width().nanometres()), stock.width().nanometres());
                g = gcd(g, stock.width().minus(area.y1()).nanometres());
            }
        }
        SawLimits limits = job.shop().limits();
        g = gcd(gcd(g, orZero(limits.ripCapacity())), orZero(limits.crosscutCapacity()));
        return g == 0 ? longest(component, false) : g;
    }

    /** Leftovers have a value under the goal waste; saw limits ask whether a piece ends with its board. */
    private static boolean knowsEnds(Job job) {
        return job.goal() == Goal.WASTE || !job.shop().limits().equals(SawLimits.NONE);
    }

    private static long orZero(@Nullable Length limit) {
        return limit == null ? 0 : limit.nanometres();
    }

    private static long longest(Component component, boolean along) {
        return component.stock().stream()
                .mapToLong(stock ->
                        along ? stock.length().nanometres() : stock.width().nanometres())
                .max()
                .orElse(1);
    }

    private static long coarsen(long unit, long extent, long most) {
        return extent / unit <= most ? unit : Math.floorDiv(extent, most) + 1;
    }

    private static long gcd(long a, long b) {
        long x = Math.abs(a);
        long y = Math.abs(b);
        while (y != 0) {
            long rest = x % y;
            x = y;
            y = rest;
        }
        return x;
    }

    static long down(long nanometres, long unit) {
        return Math.floorDiv(nanometres, unit);
    }

    static long up(long nanometres, long unit) {
        return -Math.floorDiv(-nanometres, unit);
    }
}
