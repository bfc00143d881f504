package org.stockcutting.job;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Reviews what a job says of its wood. */
final class WoodReview {

    /** Most simulated purchases. */
    static final int MOST_TRIALS = 1_000_000;

    private final WoodRules wood;
    private final Findings findings;
    private final GradeReview grades;

    WoodReview(Job job, Findings findings) {
        this.wood = job.wood();
        this.findings = findings;
        this.grades = new GradeReview(job, findings);
    }

    void review() {
        BigDecimal confidence = wood.confidence();
        if (confidence.signum() <= 0 || confidence.compareTo(BigDecimal.ONE) >= 0) {
            findings.add(
                    "/wood/confidence",
                    FaultCode.OUT_OF_RANGE,
                    confidence.toPlainString(),
                    "above 0 and below 1",
                    "The wanted chance to finish is " + confidence.toPlainString()
                            + "; give a share above 0 and below 1, such as 0.9 for 90 %: no number of boards makes it certain.");
        }
        findings.within(
                "/wood/trials",
                wood.trials(),
                1,
                MOST_TRIALS,
                got -> "There are " + got + " simulated purchases; give 1 to " + MOST_TRIALS + ".");
        Map<String, Integer> first = new HashMap<>();
        List<WoodModel> models = wood.models();
        for (int i = 0; i < models.size(); i++) {
            WoodModel model = models.get(i);
            model("/wood/models/" + i, model);
            grades.name("/wood/models/" + i + "/grade", model.grade());
            Integer other = first.putIfAbsent(model.material() + "\n" + model.grade(), i);
            if (other != null) {
                String at = "/wood/models/" + i + "/material";
                findings.add(
                        at,
                        FaultCode.DUPLICATE_ID,
                        model.material(),
                        "one model for each material and grade",
                        "The material \"" + model.material() + "\" already has a model"
                                + (model.grade() == null ? "" : " of grade " + model.grade()) + "; join the two.",
                        "/wood/models/" + other + "/material");
            }
        }
    }

    private void model(String at, WoodModel model) {
        findings.text(at + "/material", model.material(), JobReview.LONGEST_NAME, false);
        findings.positive(at + "/clearRun", model.clearRun());
        findings.notNegative(at + "/zone", model.zone());
        findings.notNegative(at + "/endCheck", model.endCheck());
        share(at + "/unusableBoards", model.unusableBoards());
        share(at + "/tightKnots", model.tightKnots());
        share(at + "/blemishes", model.blemishes());
        BigDecimal tight = orZero(model.tightKnots());
        BigDecimal sum = tight.add(orZero(model.blemishes()));
        if (tight.compareTo(BigDecimal.ONE) <= 0 && sum.compareTo(BigDecimal.ONE) > 0) {
            findings.add(
                    at + "/blemishes",
                    FaultCode.CONFLICT,
                    sum.toPlainString(),
                    "tightKnots and blemishes at most 1 together",
                    "Tight knots and blemishes together are " + sum.toPlainString()
                            + " of the bad zones; at most 1 is possible, the rest is unusable.",
                    at + "/tightKnots");
        }
    }

    private void share(String at, @Nullable BigDecimal share) {
        if (share != null && (share.signum() < 0 || share.compareTo(BigDecimal.ONE) > 0)) {
            findings.add(
                    at,
                    FaultCode.OUT_OF_RANGE,
                    share.toPlainString(),
                    "from 0 to 1",
                    "This share is " + share.toPlainString() + "; give one from 0 to 1, such as 0.05 for 5 %.");
        }
    }

    private static BigDecimal orZero(@Nullable BigDecimal share) {
        return share == null ? BigDecimal.ZERO : share;
    }
}
