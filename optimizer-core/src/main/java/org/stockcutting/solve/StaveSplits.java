package org.stockcutting.solve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.blank.RoughSection;
import org.stockcutting.blank.StaveWidths;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.part.Making;

/**
 * Ways to make a panel from staves that are not all equally wide: whole boards, halves, thirds and quarters of boards, what is left of a
 * board beside another piece, and one stave that makes up the rest. Those come first whose staves lie with least waste beside each other
 * and beside the other pieces on boards that cost least; which one pays only a plan can say.
 */
final class StaveSplits {

    /** A board is parted into at most so many equal staves. */
    private static final int MOST_SHARES = 4;
    /** More widths than this make more splits than anybody looks at. */
    private static final int MOST_WIDTHS = 12;
    /** Boards wider than so many steps of a rule are measured in coarser ones. */
    private static final long MOST_STEPS = 2_000;

    private final RoughPiece stave;
    private final Making.GlueUp glueUp;
    private final List<Source> sources;
    private final long[] others;
    private final long kerf;
    private final long step;
    private final long perStave;
    private final long panel;
    private final int count;

    /**
     * Stock that staves can come from.
     *
     * @param width usable width
     * @param rate what a unit of its length costs, in any unit: for comparison only
     */
    record Source(Length width, double rate) {}

    /** Jointed widths of a panel, widest first. */
    private record Split(TreeMap<Long, Integer> counts, double score) {}

    private StaveSplits(
            RoughPiece stave,
            Making.GlueUp glueUp,
            List<Source> sources,
            List<Length> others,
            Length kerf,
            LengthUnit unit) {
        this.stave = stave;
        this.glueUp = glueUp;
        this.sources = sources;
        this.others = others.stream()
                .mapToLong(Length::nanometres)
                .distinct()
                .sorted()
                .toArray();
        this.kerf = kerf.nanometres();
        this.step = StaveWidths.step(unit).nanometres();
        this.count = stave.members().of();
        this.perStave = width(stave) - jointed(stave);
        this.panel = panelWidth(stave);
    }

    /**
     * True for staves whose widths may differ: two or more, between bounds that leave a choice, from any boards or all from one. Staves
     * from different boards stay equal, and so do those of a part that a group rule binds.
     */
    static boolean isFree(RoughPiece piece) {
        return piece.part().making() instanceof Making.GlueUp glueUp
                && piece.members().of() > 1
                && glueUp.maxStave().isMoreThan(glueUp.minStave())
                && glueUp.from() != Making.StaveSource.DIFFERENT_BOARDS
                && piece.part().group() == null;
    }

    /** The piece itself, but a free stave as narrow as it may be: what decides which stock it may come from. */
    static RoughPiece narrowest(RoughPiece piece) {
        return isFree(piece) && piece.part().making() instanceof Making.GlueUp glueUp
                ? piece.staves(piece.perPart(), 0, glueUp.minStave())
                : piece;
    }

    /**
     * Splits of one panel, likeliest first; the equal one is not among them.
     *
     * @param stave staves of equal width
     * @param sources stock that the narrowest of them may come from
     * @param others rough widths of the other pieces that come from this stock
     * @param kerf of a rip
     * @param unit whose steps widths are given in
     * @param most how many at most
     * @return for each split its rough pieces, one for each width, widest first
     */
    static List<List<RoughPiece>> of(
            RoughPiece stave, List<Source> sources, List<Length> others, Length kerf, LengthUnit unit, int most) {
        if (!isFree(stave) || !(stave.part().making() instanceof Making.GlueUp glueUp)) {
            return List.of();
        }
        StaveSplits splits = new StaveSplits(stave, glueUp, sources, others, kerf, unit);
        return splits.ranked().stream().limit(most).map(splits::pieces).toList();
    }

    private static long width(RoughPiece stave) {
        return ((RoughSection.Sized) stave.section()).width().nanometres();
    }

    private static long jointed(RoughPiece stave) {
        Length jointed = stave.jointedWidth();
        return jointed == null ? 0 : jointed.nanometres();
    }

    private static long panelWidth(RoughPiece stave) {
        Length width = stave.trail().get(stave.trail().size() - 2).width();
        return width == null ? 0 : width.nanometres();
    }

    private List<Split> ranked() {
        Map<TreeMap<Long, Integer>, Split> splits = new LinkedHashMap<>();
        long[] widths = candidates();
        for (long wide : widths) {
            for (long narrow : widths) {
                for (int many = 1; many < count && narrow <= wide; many++) {
                    TreeMap<Long, Integer> counts = counts(wide, many, narrow);
                    if (counts != null && counts.size() > 1) {
                        splits.computeIfAbsent(counts, key -> new Split(key, score(key)));
                    }
                }
            }
        }
        List<Split> ranked = new ArrayList<>(splits.values());
        ranked.removeIf(split -> split.score() == Double.POSITIVE_INFINITY);
        ranked.sort(Comparator.comparingDouble(Split::score)
                .thenComparing(split -> split.counts().size())
                .thenComparing(split -> split.counts().toString()));
        return ranked;
    }

    /** Jointed widths worth looking at, in steps of a rule, the widest first. */
    private long[] candidates() {
        TreeSet<Long> widths = new TreeSet<>(Comparator.reverseOrder());
        long most = glueUp.maxStave().nanometres();
        for (Source source : sources) {
            long board = source.width().nanometres();
            for (int shares = 1; shares <= MOST_SHARES; shares++) {
                add(widths, Math.min(most, (board - (shares - 1) * kerf) / shares - perStave));
            }
            for (long other : others) {
                add(widths, board - kerf - other - perStave);
            }
        }
        return widths.stream().limit(MOST_WIDTHS).mapToLong(Long::longValue).toArray();
    }

    private void add(TreeSet<Long> widths, long jointed) {
        long down = jointed - Math.floorMod(jointed, step);
        if (glueUp.minStave().nanometres() <= down && down <= glueUp.maxStave().nanometres()) {
            widths.add(down);
        }
    }

    /** So many wide ones, the others narrow, the last one makes up the rest; null where no last one can. */
    private @Nullable TreeMap<Long, Integer> counts(long wide, int many, long narrow) {
        long rest = panel - many * wide - (count - 1 - many) * narrow;
        long most = glueUp.maxStave().nanometres();
        if (rest > most) {
            return null;
        }
        long rounded = Math.min(most, -Math.floorDiv(-rest, step) * step);
        TreeMap<Long, Integer> counts = new TreeMap<>(Comparator.reverseOrder());
        counts.merge(wide, many, Integer::sum);
        if (count - 1 > many) {
            counts.merge(narrow, count - 1 - many, Integer::sum);
        }
        counts.merge(Math.max(rounded, glueUp.minStave().nanometres()), 1, Integer::sum);
        return counts;
    }

    /** What a unit of length costs if each stave lies as well as it can on some board beside others of the panel and of other parts. */
    private double score(TreeMap<Long, Integer> counts) {
        double sum = 0;
        long[] pieces = new long[counts.size() + others.length];
        int n = 0;
        for (long jointed : counts.keySet()) {
            pieces[n++] = jointed + perStave + kerf;
        }
        for (long other : others) {
            pieces[n++] = other + kerf;
        }
        for (Map.Entry<Long, Integer> stave : counts.entrySet()) {
            long own = stave.getKey() + perStave + kerf;
            double least = Double.POSITIVE_INFINITY;
            for (Source source : sources) {
                long room = source.width().nanometres() + kerf - own;
                if (room >= 0) {
                    double filled = own + mostBeside(room, pieces);
                    least = Math.min(least, source.rate() * own / filled);
                }
            }
            sum += stave.getValue() * least;
        }
        return sum;
    }

    /** The most width that such pieces fill beside a stave. */
    private long mostBeside(long room, long[] pieces) {
        long unit = Math.max(step, room / MOST_STEPS + 1);
        int size = (int) (room / unit);
        long[] most = new long[size + 1];
        for (int at = 1; at <= size; at++) {
            most[at] = most[at - 1];
            for (long piece : pieces) {
                long need = -Math.floorDiv(-piece, unit);
                if (need <= at) {
                    most[at] = Math.max(most[at], most[(int) (at - need)] + piece);
                }
            }
        }
        long exact = Arrays.stream(pieces).filter(piece -> piece <= room).max().orElse(0);
        return Math.max(most[size], exact);
    }

    private List<RoughPiece> pieces(Split split) {
        List<RoughPiece> pieces = new ArrayList<>();
        int before = 0;
        for (Map.Entry<Long, Integer> staves : split.counts().entrySet()) {
            pieces.add(stave.staves(staves.getValue(), before, Length.ofNanometres(staves.getKey())));
            before += staves.getValue();
        }
        return pieces;
    }
}
