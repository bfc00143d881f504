package org.stockcutting.plan;

import java.math.BigInteger;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Goal;
import org.stockcutting.length.Length;
import org.stockcutting.stock.Money;

/**
 * What comes out if only some of the stock for sale can be bought; pieces on hand are there in every choice.
 *
 * @param stock ids of what is for sale, sorted
 * @param status how good the plan of this choice is known to be; see {@link #isComplete}
 * @param cost money paid, or null where something bought has no price
 * @param objective value and certified bound under the job's goal
 * @param boards boards and sheets bought
 * @param yield where the wood goes
 * @param setUps how often a stop or fence is moved
 * @param weightGrams weight of what is bought, rounded up to a gram, or null where the density of any of it is not known
 * @param longest length of the longest board or sheet that has to be carried home, or null where nothing is bought
 * @param unplaced what got no wood, by part id; what is estimated beside the comparison is not among it
 */
public record Choice(
        List<String> stock,
        Status status,
        @Nullable Money cost,
        Objective objective,
        int boards,
        YieldFigures yield,
        int setUps,
        @Nullable Long weightGrams,
        @Nullable Length longest,
        List<Unplaced> unplaced) {

    public Choice {
        stock = List.copyOf(stock);
        unplaced = List.copyOf(unplaced);
    }

    /** The same where other parts are left out. */
    public Choice withUnplaced(Status known, List<Unplaced> others) {
        return new Choice(stock, known, cost, objective, boards, yield, setUps, weightGrams, longest, others);
    }

    /** True if every part is made. A choice that leaves parts out is never compared by cost. */
    public boolean isComplete() {
        return unplaced.isEmpty();
    }

    /**
     * Wood that ends in no finished part and in no kept offcut, in cubic nanometres: the goal's own value where the goal is waste, else
     * the sum over the yield.
     */
    public BigInteger waste() {
        return objective.goal() == Goal.WASTE
                ? objective.value()
                : yield.used().minus(yield.parts()).minus(yield.offcutsKept()).cubicNanometres();
    }
}
