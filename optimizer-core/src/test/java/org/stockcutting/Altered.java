package org.stockcutting;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Derived;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.Warning;

/** Plans with something told otherwise, for checkers to find. */
final class Altered {

    private Altered() {}

    /** Other steps, numbered in the order given. */
    static CuttingPlan steps(CuttingPlan plan, List<SequenceStep> steps) {
        List<SequenceStep> numbered = new ArrayList<>();
        steps.forEach(step -> numbered.add(step.numbered(numbered.size() + 1)));
        Derived d = plan.derived();
        return plan.withDerived(
                new Derived(d.buyingList(), d.offcuts(), numbered, d.setUps(), d.yield(), d.warnings()));
    }

    /** Other warnings. */
    static CuttingPlan warnings(CuttingPlan plan, List<Warning> warnings) {
        Derived d = plan.derived();
        return plan.withDerived(
                new Derived(d.buyingList(), d.offcuts(), d.cutSequence(), d.setUps(), d.yield(), warnings));
    }

    /** Without warnings of this code. */
    static CuttingPlan without(CuttingPlan plan, String code) {
        return warnings(
                plan,
                plan.derived().warnings().stream()
                        .filter(warning -> !warning.code().equals(code))
                        .toList());
    }
}
