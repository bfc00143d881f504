package org.stockcutting.samples;

import java.math.BigDecimal;
import java.util.List;
import org.stockcutting.Optimizer;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.job.WoodModel;
import org.stockcutting.job.WoodRules;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.wood.GroupRisk;
import org.stockcutting.wood.WoodRisk;

/** The plan needs a few boards of clear pine: how many extra do I take from the yard, knots and all? */
public final class HowManyToBeSure {

    private HowManyToBeSure() {}

    static String answer() {
        WoodModel yard = new WoodModel("pine", "no1", null, null, null, null, null, null);
        Job job = JobBuilder.inches("Potting bench")
                .material("pine")
                .boardTrim("1/2", "1/2")
                .wood(new WoodRules(new BigDecimal("0.9"), 1_000, List.of(yard)))
                .part("leg", 4, "35", "2x4")
                .part("long rail", 4, "44", "2x4")
                .part("short rail", 4, "17-1/2", "2x4")
                .board("2x4-10", "2x4", "10'", "6.10")
                .build();
        Optimizer optimizer = new Optimizer();
        CuttingPlan plan = optimizer.plan(job);
        WoodRisk risk = optimizer.sure(job, plan);
        StringBuilder out = new StringBuilder();
        for (GroupRisk group : risk.groups()) {
            out.append("the plan needs ").append(group.needed());
            out.append(", take ").append(group.needed() + group.take()).append('\n');
            for (GroupRisk.Row row : group.rows()) {
                out.append("  ").append(row.boards()).append(" boards: chance ");
                out.append(row.chance().share()).append(", between ");
                out.append(row.chance().low()).append(" and ");
                out.append(row.chance().high()).append('\n');
            }
        }
        return out.append("one goes back: ")
                .append(risk.goesBack().share())
                .append('\n')
                .toString();
    }

    public static void main(String[] args) {
        System.out.print(answer());
    }
}
