package org.stockcutting.job;

import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.part.Shaping;

/**
 * What comes of a milled part whose rough piece is shorter than jointer or planer take: where the parts list does not say how many stay
 * together in one blank, so many do that the blank is long enough. Common practice, no source.
 *
 * <p>Only for a job that passed the review.
 *
 * @param alone rough length of the part by itself
 * @param machine the machine that takes only longer ones
 * @param shortest what that machine takes
 * @param parts the least number that makes a blank long enough and comes out even; 1 where there is none
 * @param fewest the least number that makes a blank long enough, whether or not it comes out even
 * @param inTheWay what keeps copies apart whatever their number, such as a group; null where nothing does
 */
public record UsualGang(
        Length alone,
        String machine,
        Length shortest,
        int parts,
        int fewest,
        @Nullable String inTheWay) {

    /** A blank is not made many times longer than the machine asks for: a long one loses more to bow. */
    private static final long LONGEST = 4;

    /** Null where the machines take the part by itself, nothing is known of them, or nothing is milled. */
    public static @Nullable UsualGang of(Job job, Part part) {
        AllowanceProfile add =
                part.making() instanceof Making.Milled milled ? job.allowances().get(milled.profile()) : null;
        if (add == null
                || part.isNested()
                || part.shaping().ends() != null
                || !(part.coreSection() instanceof Section.Measured)) {
            return null;
        }
        boolean planed = add.thickness().isPositive();
        Length jointer = planed || add.width().isPositive()
                ? orZero(job.shop().machines().jointer())
                : Length.ZERO;
        Length planer = planed ? orZero(job.shop().machines().planer()) : Length.ZERO;
        Length shortest = jointer.max(planer);
        Length alone = part.coreLength().plus(add.length());
        if (!alone.isLessThan(shortest)) {
            return null;
        }
        String machine = planer.equals(shortest) ? "planer" : "jointer";
        Length step = part.coreLength().plus(job.shop().kerf().crosscut());
        int fewest = Math.toIntExact(Math.min(
                GangReview.MOST + 1L, 1 - Math.floorDiv(alone.minus(shortest).nanometres(), step.nanometres())));
        String inTheWay = inTheWay(part);
        int parts = inTheWay == null ? even(job, part, fewest, alone, step, shortest) : 1;
        return new UsualGang(alone, machine, shortest, parts, fewest, inTheWay);
    }

    private static Length orZero(Machines.Machine machine) {
        Length shortest = machine.shortest();
        return shortest == null ? Length.ZERO : shortest;
    }

    private static @Nullable String inTheWay(Part part) {
        if (part.group() != null) {
            return "its group";
        }
        if (part.selection().place() != null) {
            return "its cutFrom";
        }
        if (part.spares() > 0) {
            return "its spares";
        }
        return part.shaping().fit() == Shaping.Fit.AFTER_ASSEMBLY ? "its fit after-assembly" : null;
    }

    private static int even(Job job, Part part, int fewest, Length alone, Length step, Length shortest) {
        long wanted = (long) part.quantity() * job.sets();
        boolean pairs = part.shaping().hand() == Shaping.Hand.PAIRS;
        Length most = shortest.times(LONGEST).min(longestWood(job, part.material()));
        for (int gang = fewest; gang <= Math.min(wanted, GangReview.MOST); gang++) {
            if (alone.plus(step.times(gang - 1L)).isMoreThan(most)) {
                break;
            }
            if (wanted % gang == 0 && !(pairs && gang % 2 != 0)) {
                return gang;
            }
        }
        return 1;
    }

    private static Length longestWood(Job job, String material) {
        Stream<Length> owned = Stream.concat(job.forSale().stream(), job.onHand().stream())
                .filter(item -> item.material().equals(material))
                .map(item -> item.length());
        Stream<Length> random = job.random().stream()
                .filter(boards -> boards.material().equals(material))
                .map(boards -> boards.length());
        return Stream.concat(owned, random).reduce(Length.ZERO, Length::max);
    }
}
