package org.stockcutting.solve;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.blank.RoughSection;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.fit.Fit;
import org.stockcutting.pattern.fit.UsableArea;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Taper;
import org.stockcutting.stock.Zone;

/**
 * What boards that are out of true lack, as bad zones for the engines. The steps of a taper have their corners where pieces, alone or two
 * and three side by side, end across the board, so that pieces in rows from the straight edge lose nothing.
 */
final class OutOfTrue {

    private static final int MOST_LEVELS = 24;

    private final Job job;
    private final Component component;
    private final boolean rippedWhole;

    OutOfTrue(Job job, Component component) {
        this(job, component, false);
    }

    private OutOfTrue(Job job, Component component, boolean rippedWhole) {
        this.job = job;
        this.component = component;
        this.rippedWhole = rippedWhole;
    }

    boolean isCrooked() {
        return component.stock().stream()
                .anyMatch(item -> item.condition().crook().isPositive());
    }

    /** The same, with the whole crook of a board taken off along its far edge. */
    OutOfTrue rippedWhole() {
        return new OutOfTrue(job, component, true);
    }

    /** Bad zones beyond those that were measured. */
    List<Zone> missing(StockItem item) {
        if (item.condition().isFullWidth()) {
            return List.of();
        }
        UsableArea area = UsableArea.of(item, job.shop());
        Length farTrim = item.width().minus(area.y1());
        Length crook = rippedWhole ? item.condition().crook() : Length.ZERO;
        if (item.condition().widthEnd() == null) {
            return crook.isZero() ? List.of() : List.of(strip(item, farTrim.plus(crook)));
        }
        List<Zone> zones = new ArrayList<>(Taper.steps(item, farTrim.plus(crook), levels(item, area)));
        if (!crook.isZero()) {
            zones.add(strip(item, farTrim.plus(crook)));
        }
        return zones;
    }

    private static Zone strip(StockItem item, Length width) {
        return new Zone(
                Length.ZERO,
                item.length(),
                item.width().minus(width).max(Length.ZERO),
                item.width(),
                Zone.Severity.UNUSABLE,
                Zone.Face.BOTH,
                false);
    }

    /** Where pieces end across the board: single ones first, then rows of two and three, as many as engines can bear. */
    private TreeSet<Length> levels(StockItem item, UsableArea area) {
        Length kerf = job.shop().kerf().rip();
        TreeSet<Length> singles = new TreeSet<>();
        Fit fit = new Fit(job.shop());
        for (RoughPiece piece : component.pieces()) {
            Fit.Ways ways = fit.ways(piece, item);
            if (ways.straight() && piece.section() instanceof RoughSection.Sized sized) {
                singles.add(area.y0().plus(sized.width()));
            }
            if (ways.turned()) {
                singles.add(area.y0().plus(piece.length()));
            }
        }
        TreeSet<Length> levels = new TreeSet<>();
        List<Length> row = new ArrayList<>(singles);
        for (int pieces = 1; pieces <= 3; pieces++) {
            List<Length> next = new ArrayList<>();
            for (Length level : row) {
                if (levels.size() < MOST_LEVELS && level.isLessThan(area.y1())) {
                    levels.add(level);
                    singles.forEach(one -> next.add(level.plus(kerf).plus(one.minus(area.y0()))));
                }
            }
            row = next;
        }
        return levels;
    }
}
