package org.stockcutting;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.stockcutting.plan.Choice;
import org.stockcutting.plan.Comparison;

/** Which choices are best and which ones no other beats (Pareto). Only choices that make every part take part. */
final class Ranking {

    private final List<Choice> choices;

    Ranking(List<Choice> choices) {
        this.choices = choices;
    }

    Comparison.Best best() {
        boolean priced = choices.stream().filter(Choice::isComplete).allMatch(choice -> choice.cost() != null);
        return new Comparison.Best(
                priced ? least(Ranking::cost) : null,
                least(Choice::waste),
                least(choice -> BigInteger.valueOf(choice.boards())),
                least(choice -> BigInteger.valueOf(choice.setUps())));
    }

    /** Ascending indexes. */
    List<Integer> front() {
        List<Integer> front = new ArrayList<>();
        for (int i = 0; i < choices.size(); i++) {
            if (choices.get(i).isComplete() && !isBeaten(i)) {
                front.add(i);
            }
        }
        return front;
    }

    private @Nullable Integer least(Function<Choice, BigInteger> figure) {
        Integer best = null;
        for (int i = 0; i < choices.size(); i++) {
            Choice choice = choices.get(i);
            if (choice.isComplete()
                    && (best == null || figure.apply(choice).compareTo(figure.apply(choices.get(best))) < 0)) {
                best = i;
            }
        }
        return best;
    }

    private boolean isBeaten(int index) {
        List<BigInteger> mine = figures(choices.get(index));
        for (int other = 0; other < choices.size(); other++) {
            if (other == index || !choices.get(other).isComplete()) {
                continue;
            }
            List<BigInteger> theirs = figures(choices.get(other));
            boolean asGood = true;
            boolean better = other < index;
            for (int f = 0; f < mine.size(); f++) {
                int sign = theirs.get(f).compareTo(mine.get(f));
                asGood &= sign <= 0;
                better |= sign < 0;
            }
            // Of choices with the same four figures the first stands for all.
            if (asGood && better) {
                return true;
            }
        }
        return false;
    }

    private static BigInteger cost(Choice choice) {
        return choice.cost() == null ? BigInteger.ZERO : choice.cost().amount().unscaledValue();
    }

    private static List<BigInteger> figures(Choice choice) {
        return List.of(
                cost(choice), choice.waste(), BigInteger.valueOf(choice.boards()), BigInteger.valueOf(choice.setUps()));
    }
}
