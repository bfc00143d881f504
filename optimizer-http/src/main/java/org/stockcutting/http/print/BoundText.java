package org.stockcutting.http.print;

import java.math.BigInteger;
import org.stockcutting.job.Goal;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Objective;

/** Says in a sentence how far from the best possible list a plan can be. */
public final class BoundText {

    private BoundText() {}

    /** The sentence, or two where an exact search ruled out more than is certified. */
    public static String sentence(CuttingPlan plan, Amounts amounts) {
        Objective objective = plan.objective();
        String scope = plan.unplaced().isEmpty() ? "" : "For what could be placed: ";
        Goal goal = objective.goal();
        String sentence = objective.value().equals(objective.bound())
                ? proved(goal)
                : open(goal, objective.value(), objective.bound(), amounts);
        BigInteger searched = objective.searchedBound();
        if (searched != null && searched.compareTo(objective.bound()) > 0) {
            sentence += searched.equals(objective.value())
                    ? " An exact search found nothing better."
                    : " An exact search ruled out everything under " + amounts.bound(goal, searched) + ".";
        }
        return scope.isEmpty() ? sentence : scope + Character.toLowerCase(sentence.charAt(0)) + sentence.substring(1);
    }

    private static String proved(Goal goal) {
        return switch (goal) {
            case COST -> "No list can cost less: proved.";
            case BOARDS -> "No list can do with fewer boards: proved.";
            case WASTE -> "No plan can waste less: proved.";
        };
    }

    private static String open(Goal goal, BigInteger value, BigInteger bound, Amounts amounts) {
        BigInteger over = value.subtract(bound);
        return switch (goal) {
            case COST ->
                "No list can cost under " + amounts.bound(goal, bound) + "; this one is " + amounts.value(goal, over)
                        + " over.";
            case BOARDS ->
                "No list can do with fewer than " + amounts.bound(goal, bound) + "; this one takes " + value + ".";
            case WASTE ->
                "No plan can waste under " + amounts.bound(goal, bound) + "; this one wastes "
                        + amounts.value(goal, value) + ".";
        };
    }
}
