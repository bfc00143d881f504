package org.stockcutting.http.print;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.Warning;

/** Warnings of a plan and cautions of its cuts; equal sentences are said once, with how often they hold. */
public final class CautionText {

    private CautionText() {}

    /** All of them, warnings first. */
    public static List<String> sentences(CuttingPlan plan) {
        Map<String, Integer> said = new LinkedHashMap<>();
        for (Warning warning : plan.derived().warnings()) {
            said.merge(warning.text(), 1, Integer::sum);
        }
        for (SequenceStep step : plan.derived().cutSequence()) {
            if (step.caution() != null) {
                said.merge(step.caution(), 1, Integer::sum);
            }
        }
        return said.entrySet().stream()
                .map(entry -> entry.getKey() + (entry.getValue() == 1 ? "" : " (" + entry.getValue() + " times)"))
                .toList();
    }
}
