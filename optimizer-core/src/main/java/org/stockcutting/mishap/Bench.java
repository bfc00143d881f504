package org.stockcutting.mishap;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.stockcutting.blank.BlankPlanner;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.part.Part;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Replan;
import org.stockcutting.plan.Worklog;

/** What lies on the bench: pieces that are cut and good, and which are still wanted. */
final class Bench {

    private final Job job;
    private final Map<String, RoughPiece> rough = new TreeMap<>();
    private final SortedSet<Want> good = new TreeSet<>();
    private final SortedSet<Want> wanted = new TreeSet<>();
    private final SortedMap<String, Integer> spares = new TreeMap<>();
    private final Map<Want, Length> widths = new TreeMap<>();
    private final List<String> notes = new ArrayList<>();

    /**
     * @param planned pieces that boards which are still there are going to give
     */
    Bench(Job job, Worklog worklog, Progress progress, SortedSet<Want> planned) {
        this.job = job;
        BlankPlanner.plan(job).forEach(piece -> rough.put(piece.part().id(), piece));
        progress.boards()
                .values()
                .forEach(board -> board.layout()
                        .pieces()
                        .forEach(piece -> widths.put(Want.of(piece, board.copy()), piece.width())));
        progress.sawn()
                .values()
                .forEach(board -> board.finished()
                        .forEach(piece -> good.add(Want.of(piece, board.board().copy()))));
        worklog.spoiled()
                .forEach(spoiled -> good.removeIf(want -> want.part().equals(spoiled.part())
                        && isIn(want, spoiled.number())
                        && (spoiled.member() == null || want.member() == spoiled.member())));
        for (Part part : job.parts()) {
            if (part.gang() > 1
                    && worklog.spoiled().stream()
                            .anyMatch(spoiled -> spoiled.part().equals(part.id()))) {
                notes.add("Of " + part.id() + " " + part.gang()
                        + " come from one blank: where one is spoiled all of them are made again, and the good ones are to"
                        + " spare.");
            }
            count(part);
            useSpares(part, planned);
        }
    }

    /** Of a gang all is made again: what is still good of it is to spare. */
    private boolean isIn(Want want, int number) {
        RoughPiece piece = rough.get(want.part());
        int gang = piece == null ? 1 : piece.part().gang();
        return want.number() <= number && number < want.number() + gang;
    }

    private void count(Part part) {
        RoughPiece piece = piece(part);
        for (int number = 1; number <= job.demand(part); number += part.gang()) {
            if (piece.kind() == RoughPiece.Kind.WHOLE) {
                want(new Want(part.id(), number, 0));
            } else {
                for (int member = 1; member <= piece.perPart(); member++) {
                    want(new Want(part.id(), number, member));
                }
            }
        }
        int there = (int) good.stream()
                .filter(want -> want.part().equals(part.id()) && want.number() > job.demand(part))
                .map(Want::number)
                .distinct()
                .count();
        spares.put(part.id(), Math.max(0, part.spares() - there));
    }

    private void want(Want want) {
        if (!good.contains(want)) {
            wanted.add(want);
        }
    }

    /** A spare that is cut takes the place of a piece that nothing gives any more. Groups go by board, so their spares stay spares. */
    private void useSpares(Part part, SortedSet<Want> planned) {
        if (part.group() != null || piece(part).kind() != RoughPiece.Kind.WHOLE) {
            return;
        }
        List<Want> extra = new ArrayList<>();
        good.stream()
                .filter(want -> want.part().equals(part.id()) && want.number() > job.demand(part))
                .forEach(extra::add);
        List<Want> lost = wanted.stream()
                .filter(want -> want.part().equals(part.id()) && !planned.contains(want))
                .toList();
        for (int i = 0; i < Math.min(extra.size(), lost.size()); i++) {
            wanted.remove(lost.get(i));
            good.remove(extra.get(i));
            good.add(lost.get(i));
            notes.add("Spare " + extra.get(i).number() + " of " + part.id() + " takes the place of number "
                    + lost.get(i).number() + ".");
        }
    }

    private RoughPiece piece(Part part) {
        return java.util.Objects.requireNonNull(rough.get(part.id()));
    }

    SortedSet<Want> wanted() {
        return Collections.unmodifiableSortedSet(wanted);
    }

    Map<String, Integer> spares() {
        return spares;
    }

    Map<Want, Length> widths() {
        return widths;
    }

    List<String> notes() {
        return notes;
    }

    /** Finished pieces by part; a glued-up part when all of it is cut. */
    List<Replan.Finished> finished() {
        List<Replan.Finished> finished = new ArrayList<>();
        for (Part part : job.parts().stream()
                .sorted(java.util.Comparator.comparing(Part::id))
                .toList()) {
            SortedMap<Integer, Integer> members = new TreeMap<>();
            for (Want want : good) {
                if (want.part().equals(part.id())) {
                    members.merge(want.number(), 1, Integer::sum);
                }
            }
            int needed = piece(part).kind() == RoughPiece.Kind.WHOLE
                    ? 1
                    : piece(part).perPart();
            List<Integer> numbers = members.entrySet().stream()
                    .filter(entry -> entry.getValue() >= needed)
                    .flatMap(entry -> part.gangFrom(entry.getKey()).stream())
                    .toList();
            if (!numbers.isEmpty()) {
                finished.add(new Replan.Finished(part.id(), numbers));
            }
        }
        return finished;
    }

    /** True if some rough piece that is wanted could be cut from a rectangle of this size, whatever its wood. */
    boolean mayServe(PlacedSize size) {
        return wanted.stream().map(Want::part).distinct().anyMatch(part -> {
            RoughPiece piece = java.util.Objects.requireNonNull(rough.get(part));
            if (piece.section() instanceof org.stockcutting.blank.RoughSection.Sized sized) {
                Length low = piece.length().min(sized.width());
                Length high = piece.length().max(sized.width());
                return !size.low().isLessThan(low) && !size.high().isLessThan(high);
            }
            return !size.along().isLessThan(piece.length());
        });
    }

    /** Extents of a rectangle. */
    record PlacedSize(Length along, Length across) {
        Length low() {
            return along.min(across);
        }

        Length high() {
            return along.max(across);
        }
    }

    /** What a placed piece is called in notes. */
    static String named(PlacedPiece piece, int copy) {
        return piece.part() + " " + piece.numbers().get(copy);
    }
}
