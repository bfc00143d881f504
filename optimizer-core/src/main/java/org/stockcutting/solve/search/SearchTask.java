package org.stockcutting.solve.search;

import java.util.List;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Instance;

/**
 * What is to be improved.
 *
 * @param instance a one-dimensional instance
 * @param start a plan for it that keeps every limit of a single board; it may ignore the groups
 * @param onHandStock for each stock type of the instance, true if it is owned already
 */
public record SearchTask(Instance instance, List<Answer.PatternUse> start, List<Boolean> onHandStock) {

    public SearchTask {
        start = List.copyOf(start);
        onHandStock = List.copyOf(onHandStock);
        if (onHandStock.size() != instance.stocks().size()) {
            throw new IllegalArgumentException("one mark a stock type wanted, " + onHandStock.size() + " marks for "
                    + instance.stocks().size() + " stock types");
        }
    }
}
