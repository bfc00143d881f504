package org.stockcutting.plan;

import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.part.Side;
import org.stockcutting.stock.Money;

/**
 * What would be gained if one line of the parts list were a little smaller. The planner found a plan for the smaller part, and the
 * checker accepted it; the plan itself is not kept, it comes out again when the smaller part is planned.
 *
 * @param part the line
 * @param side which of its sides
 * @param by how much smaller, above zero and at most its tolerance; a whole number of steps of 1/64 in or 0.1 mm, or the whole
 *     tolerance where that is less than a step
 * @param places how many parts more could be made; 0 where the plan places everything
 * @param boards how many boards less are bought, below zero where more are
 * @param sheets how many sheets less are bought, below zero where more are
 * @param saves money that is saved, below zero where more is spent; null where something bought has no price
 * @param smallest true if a certified bound, or a reason that the checker has confirmed, refutes one step less
 */
public record NearMiss(
        String part,
        Side side,
        Length by,
        int places,
        int boards,
        int sheets,
        @Nullable Money saves,
        boolean smallest) {}
