package org.stockcutting.solve;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.part.CutFrom;
import org.stockcutting.pattern.fit.Fit;
import org.stockcutting.pattern.fit.UsableArea;
import org.stockcutting.solve.instance.Region;
import org.stockcutting.solve.layout.Board;
import org.stockcutting.solve.layout.Label;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/**
 * Pieces whose place the maker has chosen. To the engines the place is like a nail: nothing lies there and no cut goes through it; the piece
 * is put in when the boards are written. Where wood, trims or another chosen piece forbid the place, or no cut tree frees it, the piece is
 * left out, and the plan says so.
 */
final class Pins {

    private final Component component;
    private final Map<String, StockItem> originals = new LinkedHashMap<>();
    private final List<Pin> pins = new ArrayList<>();
    private final long kerfX;
    private final long kerfY;

    /** A piece at its place, raw nanometres. */
    private record Pin(RoughPiece piece, String stock, long x, long y, long length, long width) {

        boolean isApart(Pin other, long kerfX, long kerfY) {
            return !stock.equals(other.stock)
                    || x + length + kerfX <= other.x
                    || other.x + other.length + kerfX <= x
                    || y + width + kerfY <= other.y
                    || other.y + other.width + kerfY <= y;
        }

        Zone zone() {
            return new Zone(
                    Length.ofNanometres(x),
                    Length.ofNanometres(x + length),
                    Length.ofNanometres(y),
                    Length.ofNanometres(y + width),
                    Zone.Severity.UNUSABLE,
                    Zone.Face.BOTH,
                    true);
        }
    }

    private Pins(Job job, Component all) {
        this.kerfX = job.shop().kerf().crosscut().nanometres();
        this.kerfY = job.shop().kerf().rip().nanometres();
        List<RoughPiece> free = new ArrayList<>();
        for (RoughPiece piece : all.pieces()) {
            CutFrom.Place chosen = piece.part().selection().place();
            if (chosen == null) {
                free.add(piece);
            } else {
                all.stock().stream()
                        .filter(item -> item.id().equals(chosen.stock()))
                        .findFirst()
                        .ifPresent(item -> pin(job, piece, chosen, item));
            }
        }
        List<StockItem> stock = new ArrayList<>();
        for (StockItem item : all.stock()) {
            stock.add(withPins(item));
        }
        this.component = new Component(free, stock);
    }

    static Pins of(Job job, Component component) {
        return new Pins(job, component);
    }

    private void pin(Job job, RoughPiece piece, CutFrom.Place chosen, StockItem item) {
        UsableArea area = UsableArea.of(item, job.shop());
        Length y = chosen.edge() == null ? area.y0() : chosen.edge();
        Length width = Fit.widthOn(piece, area);
        Pin pin = new Pin(
                piece,
                item.id(),
                chosen.from().nanometres(),
                y.nanometres(),
                piece.length().nanometres(),
                width.nanometres());
        boolean fits = new Fit(job.shop()).isPlaceFor(piece, item, chosen.from(), y);
        if (fits && pins.stream().allMatch(other -> pin.isApart(other, kerfX, kerfY))) {
            pins.add(pin);
        }
    }

    private StockItem withPins(StockItem item) {
        List<Zone> zones = new ArrayList<>(item.zones());
        pins.stream().filter(pin -> pin.stock().equals(item.id())).forEach(pin -> zones.add(pin.zone()));
        if (zones.size() == item.zones().size() || !(item instanceof StockItem.OnHand owned)) {
            return item;
        }
        originals.put(item.id(), item);
        return owned.pieces(owned.id(), owned.quantity(), zones);
    }

    /** What is left for the engines. */
    Component component() {
        return component;
    }

    boolean isEmpty() {
        return pins.isEmpty();
    }

    /** The boards with the chosen pieces in their places. */
    List<Board> inserted(List<Board> boards) {
        List<Board> all = new ArrayList<>();
        List<String> seen = new ArrayList<>();
        for (Board board : boards) {
            StockItem original = originals.get(board.stock().id());
            all.add(original == null ? board : filled(new Board(original, board.region(), board.labels())));
            seen.add(board.stock().id());
        }
        originals.forEach((id, item) -> {
            if (!seen.contains(id)) {
                all.add(alone(item));
            }
        });
        return all;
    }

    private Board alone(StockItem item) {
        Pin first = pins.stream()
                .filter(pin -> pin.stock().equals(item.id()))
                .findFirst()
                .orElseThrow();
        return filled(new Board(item, place(first, 0), List.of(new Label(first.piece(), 1, 0))));
    }

    private Board filled(Board board) {
        Board full = board;
        for (Pin pin : pins) {
            boolean there = full.labels().stream().anyMatch(label -> label.piece() == pin.piece());
            if (pin.stock().equals(board.stock().id()) && !there) {
                @Nullable Region more = into(full.region(), pin, full.labels().size());
                if (more != null) {
                    List<Label> labels = new ArrayList<>(full.labels());
                    labels.add(new Label(pin.piece(), 1, 0));
                    full = Board.renumbered(full.stock(), more, labels);
                }
            }
        }
        return full;
    }

    private static Region.Item place(Pin pin, int label) {
        return new Region.Item(label, false, pin.x(), pin.y(), pin.length(), pin.width());
    }

    private @Nullable Region into(Region region, Pin pin, int label) {
        if (region instanceof Region.Item) {
            Region beside = between(List.of(region), true, pin, label);
            return beside != null ? beside : between(List.of(region), false, pin, label);
        }
        Region.Split split = (Region.Split) region;
        Region between = between(split.parts(), split.crosscut(), pin, label);
        if (between != null) {
            return between;
        }
        List<Region> parts = new ArrayList<>(split.parts());
        for (int i = 0; i < parts.size(); i++) {
            Region part = parts.get(i);
            boolean shares = split.crosscut()
                    ? part.x() < pin.x() + pin.length() && pin.x() < part.x() + part.length()
                    : part.y() < pin.y() + pin.width() && pin.y() < part.y() + part.width();
            Region more = shares ? into(part, pin, label) : null;
            if (more != null) {
                parts.set(i, more);
                return spanning(split.crosscut(), parts);
            }
        }
        // Beside everything that is here.
        return between(List.of(region), !split.crosscut(), pin, label);
    }

    /** The piece before, between or behind these along one axis, if there is room for the cuts. */
    private @Nullable Region between(List<Region> parts, boolean crosscut, Pin pin, int label) {
        long from = crosscut ? pin.x() : pin.y();
        long to = from + (crosscut ? pin.length() : pin.width());
        long kerf = crosscut ? kerfX : kerfY;
        int at = 0;
        for (Region part : parts) {
            long start = crosscut ? part.x() : part.y();
            long end = start + (crosscut ? part.length() : part.width());
            if (end + kerf <= from) {
                at++;
            } else if (to + kerf > start) {
                return null;
            }
        }
        List<Region> more = new ArrayList<>(parts);
        more.add(at, place(pin, label));
        return spanning(crosscut, more);
    }

    private static Region spanning(boolean crosscut, List<Region> parts) {
        long x0 = parts.stream().mapToLong(Region::x).min().orElseThrow();
        long y0 = parts.stream().mapToLong(Region::y).min().orElseThrow();
        long x1 =
                parts.stream().mapToLong(part -> part.x() + part.length()).max().orElseThrow();
        long y1 =
                parts.stream().mapToLong(part -> part.y() + part.width()).max().orElseThrow();
        return new Region.Split(crosscut, x0, y0, x1 - x0, y1 - y0, parts);
    }
}
