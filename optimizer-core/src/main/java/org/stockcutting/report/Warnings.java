package org.stockcutting.report;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.stockcutting.blank.RoughSection;
import org.stockcutting.blank.TaperedPair;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.part.Part;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.Warning;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Trim;

/** What a maker should know about layouts that are valid all the same; at most one warning of a kind for each layout. */
final class Warnings {

    /** A part keeps an end of a board as it came. */
    static final String RAW_END = "raw-end";
    /** A part keeps an edge of a sheet as it came. */
    static final String FACTORY_EDGE = "factory-edge";
    /** The stock is thinner than the part asks, within the shop's tolerance. */
    static final String THINNER = "thinner";
    /** Small work at the saw. */
    static final String SHORT_CUT = "short-cut";

    /** Parts are ripped from a board without a straight edge, and nothing is taken off it there. */
    static final String NO_STRAIGHT_EDGE = "no-straight-edge";

    /** Two tapered parts would come from a blank that is narrower than two. */
    static final String TAPERED_PAIR = "tapered-pair";

    /** Rules of thumb in workshop teaching: think twice about work shorter than 12 in, keep hands 3 in from the blade. */
    private static final Length SHORT = Length.inches("12");

    private static final Length NARROW = Length.inches("3");

    private final Lookup lookup;
    private final LengthWriter writer;
    private final List<Warning> found = new ArrayList<>();
    private final List<Layout> layouts;
    private final Set<String> paired = new HashSet<>();
    private final Set<String> thin = new HashSet<>();
    private final MachineWarnings machines;

    private Warnings(Lookup lookup, List<Layout> layouts) {
        this.lookup = lookup;
        this.layouts = layouts;
        this.writer = new LengthWriter(
                lookup.job().writing().unit(), lookup.job().writing().decimal());
        this.machines = new MachineWarnings(lookup, writer, found);
    }

    static List<Warning> of(Lookup lookup, List<Layout> layouts) {
        Warnings warnings = new Warnings(lookup, layouts);
        for (int i = 0; i < layouts.size(); i++) {
            warnings.look("/layouts/" + i, layouts.get(i));
        }
        return warnings.found;
    }

    private void look(String pointer, Layout layout) {
        rawSides(pointer, layout);
        crookedEdge(pointer, layout);
        thinner(pointer, layout);
        smallWork(pointer, layout);
        taperedPairs(pointer, layout);
        machines.look(pointer, layout);
    }

    /** Said once for each part: the plan cuts a straight blank for each of them. */
    private void taperedPairs(String pointer, Layout layout) {
        for (PlacedPiece piece : layout.pieces()) {
            Part part = lookup.rough(piece.part()).part();
            TaperedPair pair = TaperedPair.of(part, lookup.job().shop().kerf().rip());
            if (pair != null && !part.isNested() && lookup.job().demand(part) > 1 && paired.add(part.id())) {
                add(
                        TAPERED_PAIR,
                        pointer,
                        "Two of " + part.id() + " come head to foot from one blank " + printed(pair.width(), true)
                                + " wide before allowances, " + printed(pair.saved(), false)
                                + " less than two blanks side by side; this plan cuts a blank for each.");
            }
        }
    }

    /** For people: to what a rule shows, widths never down, savings never up. */
    private String printed(Length length, boolean up) {
        boolean imperial = lookup.job().writing().unit().isImperial();
        Length step = imperial ? Length.inches("0.015625") : Length.millimetres("0.1");
        long steps = length.nanometres() / step.nanometres();
        boolean between = length.nanometres() % step.nanometres() != 0;
        return writer.withUnit(Length.ofNanometres((up && between ? steps + 1 : steps) * step.nanometres()));
    }

    private void rawSides(String pointer, Layout layout) {
        StockItem stock = lookup.stock(layout.stock());
        Trim trim = lookup.trim(stock);
        boolean own = stock.ownTrim() != null;
        boolean board = stock.form() == Form.BOARD;
        List<String> sides = new ArrayList<>();
        check(sides, "start", trim.start(), own, layout, piece -> piece.x().isZero());
        check(
                sides,
                "far end",
                trim.end(),
                own,
                layout,
                piece -> piece.x().plus(piece.extentX()).equals(layout.length()));
        if (!board) {
            check(
                    sides,
                    "near edge",
                    trim.edge(),
                    own,
                    layout,
                    piece -> piece.y().isZero());
            check(
                    sides,
                    "far edge",
                    trim.farEdge(),
                    own,
                    layout,
                    piece -> piece.y().plus(piece.extentY()).equals(layout.width()));
        }
        if (sides.isEmpty()) {
            return;
        }
        String where = String.join(" and the ", sides);
        String advice = " Give a trim to have it cut off, or a trim of 0 on this stock if it is good as it is.";
        if (board) {
            add(RAW_END, pointer, "A part keeps the raw end of " + layout.stock() + " (the " + where + ")." + advice);
        } else {
            add(
                    FACTORY_EDGE,
                    pointer,
                    "A part keeps the factory edge of " + layout.stock() + " (the " + where + ")." + advice);
        }
    }

    /** A side is sound only where the entry itself says 0; a trim of more keeps the pieces away from it. */
    private static void check(
            List<String> sides,
            String side,
            @Nullable Length trim,
            boolean own,
            Layout layout,
            Predicate<PlacedPiece> touches) {
        boolean unsaid = trim == null || (trim.isZero() && !own);
        if (unsaid && layout.pieces().stream().anyMatch(touches)) {
            sides.add(side);
        }
    }

    private void crookedEdge(String pointer, Layout layout) {
        StockItem stock = lookup.stock(layout.stock());
        boolean missing = Boolean.FALSE.equals(stock.condition().straightEdge());
        boolean kept = layout.pieces().stream().anyMatch(piece -> piece.y().isZero());
        if (missing && kept) {
            add(
                    NO_STRAIGHT_EDGE,
                    pointer,
                    layout.stock() + " has no straight edge and nothing is taken off it there: joint it first, or give "
                            + "it a trim of its edge.");
        }
    }

    /** Said once for each entry of stock, with every part that is cut from it. */
    private void thinner(String pointer, Layout layout) {
        if (thicker(layout).isEmpty() || !thin.add(layout.stock())) {
            return;
        }
        TreeMap<Length, TreeSet<String>> parts = new TreeMap<>();
        layouts.stream()
                .filter(other -> other.stock().equals(layout.stock()))
                .forEach(other -> thicker(other)
                        .forEach((wanted, ids) -> parts.computeIfAbsent(wanted, t -> new TreeSet<>())
                                .addAll(ids)));
        List<String> asked = new ArrayList<>();
        parts.forEach((wanted, ids) -> asked.add(
                String.join(", ", ids) + (ids.size() == 1 ? " asks for " : " ask for ") + writer.withUnit(wanted)));
        add(
                THINNER,
                pointer,
                layout.stock() + " is " + writer.withUnit(layout.thickness()) + " thick, thinner than "
                        + String.join("; ", asked) + ": fit joints to the wood, not to the list.");
    }

    /** Parts that ask for more than this layout's board has, by what they ask for. */
    private TreeMap<Length, TreeSet<String>> thicker(Layout layout) {
        TreeMap<Length, TreeSet<String>> parts = new TreeMap<>();
        for (PlacedPiece piece : layout.pieces()) {
            if (lookup.rough(piece.part()).section() instanceof RoughSection.Sized sized
                    && !sized.planed()
                    && layout.thickness().isLessThan(sized.thickness())) {
                parts.computeIfAbsent(sized.thickness(), t -> new TreeSet<>()).add(piece.part());
            }
        }
        return parts;
    }

    private void smallWork(String pointer, Layout layout) {
        boolean small = layout.pieces().stream().anyMatch(piece -> isSmall(piece, layout));
        if (small) {
            add(
                    SHORT_CUT,
                    pointer,
                    "Small work on " + layout.stock()
                            + ": a piece is cut to under 12 in (305 mm) long or ripped to under 3 in (76 mm) "
                            + "wide. Keep hands clear with a push stick or hold-down, or pick another way to cut it; your machine's "
                            + "manual has the last word.");
        }
    }

    private static boolean isSmall(PlacedPiece piece, Layout layout) {
        boolean crosscut = piece.extentX().isLessThan(layout.length());
        boolean ripped = piece.extentY().isLessThan(layout.width());
        return (crosscut && piece.extentX().isLessThan(SHORT))
                || (ripped && piece.extentY().isLessThan(NARROW));
    }

    private void add(String code, String pointer, String text) {
        found.add(new Warning(code, pointer, text));
    }
}
