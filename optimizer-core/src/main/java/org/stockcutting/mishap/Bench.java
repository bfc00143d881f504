package org.stockcutting.mishap;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.stockcutting.blank.BlankPlanner;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.blank.RoughSection;
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
    /** The same with a blank for each copy. */
    private final Map<String, RoughPiece> alone = new TreeMap<>();

    private final SortedSet<Want> good = new TreeSet<>();
    private final SortedSet<Want> wanted = new TreeSet<>();
    /** Copies spoiled out of blanks that have others which are good, by part. */
    private final SortedMap<String, SortedSet<Integer>> copies = new TreeMap<>();

    private final SortedMap<String, Integer> spares = new TreeMap<>();
    private final Map<Want, Length> widths = new TreeMap<>();
    private final List<String> notes = new ArrayList<>();

    /**
     * @param planned pieces that boards which are still there are going to give
     */
    Bench(Job job, Worklog worklog, Progress progress, SortedSet<Want> planned) {
        this.job = job;
        BlankPlanner.plan(job).forEach(piece -> rough.put(piece.part().id(), piece));
        Job apart =
                job.withParts(job.parts().stream().map(part -> part.withGang(1)).toList());
        BlankPlanner.plan(apart).forEach(piece -> alone.put(piece.part().id(), piece));
        progress.boards()
                .values()
                .forEach(board -> board.layout()
                        .pieces()
                        .forEach(piece -> widths.put(Want.of(piece, board.copy()), piece.width())));
        progress.sawn()
                .values()
                .forEach(board -> board.finished()
                        .forEach(piece -> good.add(Want.of(piece, board.board().copy()))));
        worklog.spoiled().forEach(this::spoil);
        for (Part part : job.parts()) {
            dropEmptyGangs(part);
            count(part);
            useSpares(part, planned);
        }
    }

    private void spoil(Worklog.Spoiled spoiled) {
        RoughPiece piece = rough.get(spoiled.part());
        if (piece != null && piece.part().gang() > 1) {
            copies.computeIfAbsent(spoiled.part(), id -> new TreeSet<>()).add(spoiled.number());
        } else {
            good.removeIf(want -> want.part().equals(spoiled.part())
                    && want.number() == spoiled.number()
                    && (spoiled.member() == null || want.member() == spoiled.member()));
        }
    }

    /** Of a gang only what is spoiled is made again, whether or not it is cut apart by now; one that is spoiled throughout is made again as it was. */
    private void dropEmptyGangs(Part part) {
        SortedSet<Integer> spoiled = copies.get(part.id());
        if (spoiled == null) {
            return;
        }
        for (Want want : List.copyOf(good)) {
            List<Integer> gang = part.gangFrom(want.number());
            if (want.part().equals(part.id()) && spoiled.containsAll(gang)) {
                good.remove(want);
                gang.forEach(spoiled::remove);
            }
        }
        if (!spoiled.isEmpty()) {
            notes.add("Of " + part.id() + " " + part.gang()
                    + " come from one blank: only what is spoiled is made again, the others are still good.");
        }
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

    SortedMap<String, SortedSet<Integer>> copies() {
        return copies;
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
                    .filter(number -> !isSpoiledCopy(part, number))
                    .toList();
            if (!numbers.isEmpty()) {
                finished.add(new Replan.Finished(part.id(), numbers));
            }
        }
        return finished;
    }

    private boolean isSpoiledCopy(Part part, int number) {
        SortedSet<Integer> spoiled = copies.get(part.id());
        return spoiled != null && spoiled.contains(number);
    }

    /** True if some rough piece that is wanted could be cut from a rectangle of this size, whatever its wood. */
    boolean mayServe(PlacedSize size) {
        return Stream.concat(
                        wanted.stream().map(Want::part).distinct().map(rough::get),
                        copies.keySet().stream().map(alone::get))
                .anyMatch(piece -> piece != null && serves(size, piece));
    }

    private static boolean serves(PlacedSize size, RoughPiece piece) {
        if (piece.section() instanceof RoughSection.Sized sized) {
            Length low = piece.length().min(sized.width());
            Length high = piece.length().max(sized.width());
            return !size.low().isLessThan(low) && !size.high().isLessThan(high);
        }
        return !size.along().isLessThan(piece.length());
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
