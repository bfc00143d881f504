package org.stockcutting.wood;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.stock.Money;

/**
 * How many boards to take to be sure, beside a plan that is just enough on paper. An estimate: it rests on a model of the wood.
 *
 * @param seed seed of all trials
 * @param wanted wanted chance to finish
 * @param groups parts that share wood; empty where nothing is bought that can have knots
 * @param chance chance to finish the whole job with what is to be taken
 * @param goesBack chance that at least one of the boards is left over whole
 * @param extraCost price of the boards beyond the plan, or null where one has no price
 * @param averageExtra what the boards beyond the plan come to on average over the trials, each buying no more than it needs; null as above, or where
 *     not reached
 * @param reached false if no number of boards that was tried gives the wanted chance
 */
public record WoodRisk(
        long seed,
        BigDecimal wanted,
        List<GroupRisk> groups,
        Chance chance,
        Chance goesBack,
        @Nullable Money extraCost,
        @Nullable Money averageExtra,
        boolean reached) {

    public WoodRisk {
        groups = List.copyOf(groups);
    }
}
