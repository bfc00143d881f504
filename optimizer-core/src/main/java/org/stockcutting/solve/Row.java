package org.stockcutting.solve;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.apache.commons.math3.fraction.BigFraction;
import org.jspecify.annotations.Nullable;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.blank.RoughSection;
import org.stockcutting.job.Job;
import org.stockcutting.job.SawLimits;
import org.stockcutting.length.Length;
import org.stockcutting.part.Edging;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.part.Shaping;
import org.stockcutting.pattern.fit.UsableArea;
import org.stockcutting.stock.StockItem;

/**
 * One set of a sequence as a blank.
 *
 * @param blank the blank
 * @param column true if the pieces follow each other across their width, false if along their length
 * @param members rough pieces of the parts, by id
 */
record Row(RoughPiece blank, boolean column, List<RoughPiece> members) {

    Row {
        members = List.copyOf(members);
    }

    /** Pieces of one section follow each other end to end, those of one length edge to edge; null where they are neither. */
    static @Nullable Row of(Job job, List<RoughPiece> pieces) {
        List<RoughPiece> members = new ArrayList<>(pieces);
        members.sort(Comparator.comparing(piece -> piece.part().id()));
        RoughPiece first = members.get(0);
        boolean row = members.stream().allMatch(piece -> piece.section().equals(first.section()));
        boolean column = !row
                && members.stream().allMatch(piece -> piece.length().equals(first.length()) && isSameBut(first, piece));
        boolean whole = members.stream().allMatch(piece -> piece.kind() == RoughPiece.Kind.WHOLE);
        if (!whole || (!row && !column)) {
            return null;
        }
        Length kerf = job.shop().kerf().crosscut().max(job.shop().kerf().rip());
        Length run = Length.ZERO;
        Length finished = Length.ZERO;
        int count = 0;
        for (RoughPiece piece : members) {
            int each = piece.part().quantity();
            run = run.plus((column ? width(piece) : piece.length()).times(each));
            finished = finished.plus(finished(piece.part(), column).times(each));
            count += each;
        }
        run = run.plus(kerf.times(count - 1L));
        return new Row(blank(members, column, run, finished), column, members);
    }

    private static RoughPiece blank(List<RoughPiece> members, boolean column, Length run, Length finished) {
        RoughPiece first = members.get(0);
        Part like = first.part();
        Section section = column && like.coreSection() instanceof Section.Measured measured
                ? new Section.Measured(finished, measured.thickness())
                : like.coreSection();
        Part part = new Part(
                like.id(),
                1,
                column ? like.coreLength() : finished,
                section,
                like.material(),
                like.grain(),
                members.stream()
                        .map(piece -> piece.part().woodClass())
                        .min(Comparator.naturalOrder())
                        .orElseThrow(),
                0,
                new Making.AsCut(),
                like.group(),
                null,
                Edging.NONE,
                Shaping.NONE,
                members.stream()
                        .map(piece -> piece.part().selection())
                        .filter(selection -> !selection.goodFaceOnly())
                        .findFirst()
                        .orElse(like.selection()));
        RoughSection rough = column && first.section() instanceof RoughSection.Sized sized
                ? new RoughSection.Sized(run, sized.thickness(), sized.planed())
                : first.section();
        return RoughPiece.uniform(
                part, RoughPiece.Kind.WHOLE, 1, column ? first.length() : run, rough, null, first.trail());
    }

    private static boolean isSameBut(RoughPiece one, RoughPiece other) {
        return one.section() instanceof RoughSection.Sized a
                && other.section() instanceof RoughSection.Sized b
                && a.thickness().equals(b.thickness())
                && a.planed() == b.planed();
    }

    private static Length finished(Part part, boolean across) {
        return across && part.coreSection() instanceof Section.Measured measured ? measured.width() : part.coreLength();
    }

    private static Length width(RoughPiece piece) {
        return piece.section() instanceof RoughSection.Sized sized ? sized.width() : Length.ZERO;
    }

    private Length step(RoughPiece piece) {
        return column ? width(piece) : piece.length();
    }

    /** Part of the worth of the run that one piece of this part has. */
    BigFraction share(RoughPiece piece) {
        BigInteger all = BigInteger.ZERO;
        for (RoughPiece member : members) {
            all = all.add(BigInteger.valueOf(step(member).nanometres())
                    .multiply(BigInteger.valueOf(member.part().quantity())));
        }
        return new BigFraction(BigInteger.valueOf(step(piece).nanometres()), all);
    }

    /**
     * True if the cuts inside the run are within the shop's limits wherever it lies. A stage fewer is left for everything around it; where
     * there is only one, or where the run could be a whole board and so its first cut, it is not tried.
     */
    boolean isSawable(Job job, List<StockItem> stock) {
        SawLimits limits = job.shop().limits();
        Length longest =
                members.stream().map(this::step).max(Comparator.naturalOrder()).orElseThrow();
        Length across = column ? blank.length() : width(blank);
        Length shortest =
                members.stream().map(this::step).min(Comparator.naturalOrder()).orElseThrow();
        Length least = column ? blank.length().min(shortest) : shortest;
        boolean single = limits.stages() != null && limits.stages() < 2;
        boolean first = limits.firstCut() != SawLimits.FirstCut.ANY
                && stock.stream().map(item -> UsableArea.of(item, job.shop())).anyMatch(this::fills);
        return !single
                && !first
                && isWithin(longest, limits.ripCapacity())
                && isWithin(across, limits.longestRip())
                && isWithin(across, limits.crosscutCapacity())
                && (limits.minimumPiece() == null || !least.isLessThan(limits.minimumPiece()));
    }

    private boolean fills(UsableArea area) {
        boolean taken = blank.section() instanceof RoughSection.AsItComes
                || width(blank).equals(area.width());
        return blank.length().equals(area.length()) && taken;
    }

    private static boolean isWithin(Length size, @Nullable Length limit) {
        return limit == null || !size.isMoreThan(limit);
    }
}
