package org.stockcutting.mishap;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.stockcutting.blank.BlankPlanner;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.blank.RoughSection;
import org.stockcutting.job.AllowanceProfile;
import org.stockcutting.job.Job;
import org.stockcutting.job.Rule;
import org.stockcutting.job.Rules;
import org.stockcutting.length.Length;
import org.stockcutting.part.Binding;
import org.stockcutting.part.Edging;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.part.Shaping;
import org.stockcutting.plan.Replan;

/**
 * A parts list for some of a job's rough pieces only, and which piece each of its pieces stands for.
 *
 * <p>Groups bind each set on its own, so where there are several sets each gets lines of its own. A panel or lamination of which some
 * staves or plies are wanted no more becomes lines of single pieces with the rough size that they have in the panel.
 */
public final class Lines {

    private static final int LONELY = -1;

    private final Job job;
    private final Map<Want, Length> widths;
    private final List<Part> parts = new ArrayList<>();
    private final List<Replan.Line> lines = new ArrayList<>();
    private final SortedMap<String, AllowanceProfile> allowances;
    private final Map<Want, Want> forward = new HashMap<>();
    private final Map<Want, Want> backward = new HashMap<>();
    private final List<Want> again = new ArrayList<>();
    private final Set<String> ids = new HashSet<>();
    private final List<Rule> rules;
    /** Finished pieces that are wanted whole, as if they were single. */
    private final Set<Want> complete = new HashSet<>();

    private Lines(Job job, Map<Want, Length> widths) {
        this.job = job;
        this.widths = widths;
        this.rules = Rules.of(job);
        this.allowances = new TreeMap<>(job.allowances());
        job.parts().forEach(part -> ids.add(part.id()));
    }

    /**
     * @param wants the pieces that are wanted
     * @param copies numbers that are wanted alone, by part: the blanks that they were in hold others, which are good
     * @param spares how many spares are still wanted, by part
     * @param widths widths that staves have in the plan, where they differ from the job's own
     */
    static Lines of(
            Job job,
            SortedSet<Want> wants,
            SortedMap<String, SortedSet<Integer>> copies,
            Map<String, Integer> spares,
            Map<Want, Length> widths) {
        Lines lines = of(job, wants, spares, widths);
        for (Part part : job.parts()) {
            SortedSet<Integer> numbers = copies.get(part.id());
            if (numbers != null) {
                lines.again(part, numbers);
            }
        }
        return lines;
    }

    /**
     * @param wants the pieces that are wanted
     * @param spares how many spares are still wanted, by part
     * @param widths widths that staves have in the plan, where they differ from the job's own
     */
    public static Lines of(Job job, SortedSet<Want> wants, Map<String, Integer> spares, Map<Want, Length> widths) {
        Lines lines = new Lines(job, widths);
        Map<String, RoughPiece> rough = new HashMap<>();
        BlankPlanner.plan(job).forEach(piece -> rough.put(piece.part().id(), piece));
        lines.findComplete(rough, wants);
        for (Part part : job.parts()) {
            SortedMap<Integer, SortedSet<Integer>> numbers = new TreeMap<>();
            for (Want want : wants) {
                if (want.part().equals(part.id())) {
                    numbers.computeIfAbsent(want.number(), n -> new TreeSet<>()).add(want.member());
                }
            }
            RoughPiece piece = rough.get(part.id());
            if (piece != null && !numbers.isEmpty()) {
                lines.add(piece, numbers, spares.getOrDefault(part.id(), 0));
            }
        }
        return lines;
    }

    private void findComplete(Map<String, RoughPiece> rough, SortedSet<Want> wants) {
        Map<Want, Integer> counts = new HashMap<>();
        wants.forEach(want -> counts.merge(new Want(want.part(), want.number(), 0), 1, Integer::sum));
        counts.forEach((want, count) -> {
            RoughPiece piece = rough.get(want.part());
            if (piece != null && count >= piece.perPart()) {
                complete.add(want);
            }
        });
    }

    /** The new parts list. */
    public List<Part> parts() {
        return parts;
    }

    /** Profiles of the job and of single staves and plies. */
    public SortedMap<String, AllowanceProfile> allowances() {
        return allowances;
    }

    /** What the lines stand for. */
    public List<Replan.Line> lines() {
        return lines;
    }

    /** What a piece of the job is called in the new parts list, or null where it is not wanted. */
    public @Nullable Want renamed(Want own) {
        return forward.get(own);
    }

    /** What a piece of the new parts list is called in the job, or null where it is a spare. */
    public @Nullable Want original(Want renamed) {
        return backward.get(renamed);
    }

    /** Pieces of the new parts list that no piece of the plan stands for: a few copies out of blanks for more. */
    List<Want> again() {
        return again;
    }

    /** The line that a part's spares are of, or null where none are wanted. */
    public @Nullable Part spareLine(String part) {
        for (int i = 0; i < parts.size(); i++) {
            if (lines.get(i).part().equals(part) && parts.get(i).spares() > 0) {
                return parts.get(i);
            }
        }
        return null;
    }

    private void add(RoughPiece piece, SortedMap<Integer, SortedSet<Integer>> numbers, int spares) {
        Part part = piece.part();
        SortedMap<Batch, List<Integer>> whole = new TreeMap<>();
        SortedMap<Integer, SortedSet<Integer>> incomplete = new TreeMap<>();
        numbers.forEach((number, members) -> {
            if (piece.kind() == RoughPiece.Kind.WHOLE || members.size() == piece.perPart()) {
                whole.computeIfAbsent(batch(part, number), s -> new ArrayList<>())
                        .add(number);
            } else {
                incomplete.put(number, members);
            }
        });
        whole.forEach((own, all) -> wholeLine(piece, own, all, own.equals(whole.firstKey()) ? spares : 0));
        singles(piece, incomplete);
    }

    /** Which set a number belongs to; only groups care. Pairs only ask whether both mates are wanted. */
    private int set(Part part, int number) {
        Rule.Pairs pairs = pairs(part);
        if (pairs != null) {
            return hasMate(pairs, part, number) ? 0 : LONELY;
        }
        int set = (number - 1) / part.quantity() + 1;
        boolean sequence = part.group() != null && part.selection().binding() == Binding.SEQUENCE;
        if (sequence && !isWhole(part, set)) {
            return LONELY;
        }
        return part.group() == null || job.sets() == 1 ? 0 : set;
    }

    /** True if all pieces of a set of a sequence are wanted. */
    private boolean isWhole(Part part, int set) {
        return job.parts().stream()
                .filter(other -> Objects.equals(other.group(), part.group()))
                .allMatch(other -> IntStream.rangeClosed((set - 1) * other.quantity() + 1, set * other.quantity())
                        .allMatch(n -> complete.contains(new Want(other.id(), n, 0))));
    }

    private Rule.@Nullable Pairs pairs(Part part) {
        for (Rule rule : rules) {
            if (rule instanceof Rule.Pairs pairs && pairs.parts().contains(part.id())) {
                return pairs;
            }
        }
        return null;
    }

    /** True if the mate is wanted as well, all of it. */
    private boolean hasMate(Rule.Pairs pairs, Part part, int number) {
        List<String> ids = pairs.parts();
        boolean alone = ids.size() == 1;
        String mate = alone || ids.get(1).equals(part.id()) ? ids.get(0) : ids.get(1);
        int mateNumber = !alone ? number : number % 2 == 0 ? number - 1 : number + 1;
        return complete.contains(new Want(mate, mateNumber, 0));
    }

    /** Copies that are alike: of one set where there are groups, of one hand where there are pairs. */
    private record Batch(int set, Shaping.Hand hand) implements Comparable<Batch> {
        private static final Comparator<Batch> ORDER =
                Comparator.comparingInt(Batch::set).thenComparing(Batch::hand);

        @Override
        public int compareTo(Batch other) {
            return ORDER.compare(this, other);
        }

        String named(String part) {
            boolean pairs = hand == Shaping.Hand.LEFT || hand == Shaping.Hand.RIGHT;
            String alike = set == LONELY ? part + " apart" : inSet(part, set);
            return alike + (pairs ? " " + hand.word() : "");
        }
    }

    /**
     * Numbers change, so of what comes in pairs left and right ones become lines of their own; not where two parts are mates of each
     * other already.
     */
    private Batch batch(Part part, int number) {
        Rule.Pairs pairs = pairs(part);
        Shaping.Hand hand = part.shaping().hand();
        boolean split = hand == Shaping.Hand.PAIRS
                && part.gang() == 1
                && (pairs == null || pairs.parts().size() == 1);
        Shaping.Hand own = split ? hand.of(number) : Shaping.Hand.NONE;
        return new Batch(set(part, number), own == null ? Shaping.Hand.NONE : own);
    }

    private static String inSet(String name, int set) {
        return set == 0 ? name : name + " set " + set;
    }

    private void wholeLine(RoughPiece piece, Batch batch, List<Integer> numbers, int spares) {
        Part part = piece.part();
        boolean lonely = batch.set() == LONELY;
        String wanted = batch.named(part.id());
        String id = wanted.equals(part.id()) ? wanted : free(wanted);
        String group = part.group() == null || lonely ? null : inSet(part.group(), batch.set());
        // A place that was chosen on a whole board means nothing on what is left of it.
        Part line = part.line(id, numbers.size() * part.gang(), spares, group)
                .withSelection(part.selection().withCutFrom(null));
        boolean oneHand = batch.hand() != Shaping.Hand.NONE;
        parts.add(oneHand ? line.withShaping(part.shaping().withHand(batch.hand())) : line);
        List<Integer> all =
                numbers.stream().flatMap(first -> part.gangFrom(first).stream()).toList();
        lines.add(new Replan.Line(id, part.id(), all, List.of()));
        for (int i = 0; i < numbers.size(); i++) {
            if (piece.kind() == RoughPiece.Kind.WHOLE) {
                link(new Want(part.id(), numbers.get(i), 0), new Want(id, i * part.gang() + 1, 0));
            } else {
                for (int member = 1; member <= piece.perPart(); member++) {
                    link(new Want(part.id(), numbers.get(i), member), new Want(id, i + 1, member));
                }
            }
        }
    }

    /** Copies by themselves, in as few blanks as such parts came in before, as equal in number as they can be. */
    private void again(Part part, SortedSet<Integer> numbers) {
        Shaping.Hand hand = part.shaping().hand();
        SortedMap<Shaping.Hand, List<Integer>> alike = new TreeMap<>();
        for (int number : numbers) {
            Shaping.Hand own = hand == Shaping.Hand.PAIRS ? hand.of(number) : hand;
            alike.computeIfAbsent(own == null ? hand : own, h -> new ArrayList<>())
                    .add(number);
        }
        alike.forEach((own, all) -> {
            int blanks = -Math.floorDiv(-all.size(), part.gang());
            int fewer = all.size() / blanks;
            int inLarger = all.size() % blanks * (fewer + 1);
            again(part, own, all.subList(0, inLarger), fewer + 1);
            again(part, own, all.subList(inLarger, all.size()), fewer);
        });
    }

    private void again(Part part, Shaping.Hand hand, List<Integer> numbers, int gang) {
        if (numbers.isEmpty()) {
            return;
        }
        String id = free(part.id() + " again");
        Part line = part.line(id, numbers.size(), 0, null);
        parts.add(line.withShaping(line.shaping().withHand(hand)).withGang(gang));
        lines.add(new Replan.Line(id, part.id(), List.copyOf(numbers), List.of()));
        for (int first = 1; first <= numbers.size(); first += gang) {
            again.add(new Want(id, first, 0));
        }
    }

    private record Kind(int set, int panel, Length width) {}

    /** Single staves or plies: one line for all that are equal, but a panel from one board gets its own. */
    private void singles(RoughPiece piece, SortedMap<Integer, SortedSet<Integer>> incomplete) {
        Part part = piece.part();
        boolean oneBoard =
                part.making() instanceof Making.GlueUp glueUp && glueUp.from() == Making.StaveSource.ONE_BOARD;
        Map<Kind, List<Want>> kinds = new java.util.LinkedHashMap<>();
        incomplete.forEach((number, members) -> {
            for (int member : members) {
                Want want = new Want(part.id(), number, member);
                Length width = widths.getOrDefault(want, sized(piece).width());
                Kind kind = new Kind(set(part, number), oneBoard ? number : 0, width);
                kinds.computeIfAbsent(kind, k -> new ArrayList<>()).add(want);
            }
        });
        kinds.forEach((kind, wants) -> singleLine(piece, kind, wants));
    }

    private void singleLine(RoughPiece piece, Kind kind, List<Want> wants) {
        Part part = piece.part();
        boolean stave = piece.kind() == RoughPiece.Kind.STAVE;
        String id = free(part.id() + (stave ? " staves" : " plies"));
        RoughSection.Sized rough = sized(piece);
        Length thickness = rough.thickness();
        if (rough.planed()) {
            thickness = piece.kind() == RoughPiece.Kind.PLY
                    ? thickness.minus(profile(AllowanceProfile.LAMINATION).perPly())
                    : ((Section.Measured) part.section()).thickness();
        }
        Making making = new Making.AsCut();
        if (rough.planed()) {
            making = new Making.Milled(planing(rough.thickness().minus(thickness)));
        }
        String group = part.group() == null || pairs(part) != null ? null : inSet(part.group(), kind.set());
        if (group == null && kind.panel() > 0) {
            group = id;
        }
        Section section = new Section.Measured(kind.width(), thickness);
        // What is glued to the panel's sides and done to it later concerns the whole panel, not its staves.
        parts.add(new Part(
                id,
                wants.size(),
                piece.length(),
                section,
                part.material(),
                part.grain(),
                part.woodClass(),
                0,
                making,
                group,
                part.note(),
                Edging.NONE,
                Shaping.NONE,
                part.selection().withBinding(Binding.SAME_BOARD).withCutFrom(null)));
        lines.add(new Replan.Line(
                id,
                part.id(),
                wants.stream().map(Want::number).toList(),
                wants.stream().map(Want::member).toList()));
        for (int i = 0; i < wants.size(); i++) {
            link(wants.get(i), new Want(id, i + 1, 0));
        }
    }

    private AllowanceProfile profile(String name) {
        return java.util.Objects.requireNonNull(allowances.get(name));
    }

    /** The profile that only planes this much off. */
    private String planing(Length off) {
        AllowanceProfile wanted =
                new AllowanceProfile(Length.ZERO, Length.ZERO, off, Length.ZERO, Length.ZERO, Length.ZERO);
        for (int i = 1; ; i++) {
            String name = "single " + i;
            AllowanceProfile other = allowances.putIfAbsent(name, wanted);
            if (other == null || other.equals(wanted)) {
                return name;
            }
        }
    }

    private static RoughSection.Sized sized(RoughPiece piece) {
        return (RoughSection.Sized) piece.section();
    }

    private String free(String wanted) {
        String id = wanted;
        for (int i = 2; !ids.add(id); i++) {
            id = wanted + " " + i;
        }
        return id;
    }

    private void link(Want own, Want renamed) {
        forward.put(own, renamed);
        backward.put(renamed, own);
    }
}
