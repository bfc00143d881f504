package org.stockcutting.job;

import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.stock.Money;
import org.stockcutting.stock.Trim;

/** Reviews the shop and its allowance profiles. */
final class ShopReview {

    private final Job job;
    private final Findings findings;

    ShopReview(Job job, Findings findings) {
        this.job = job;
        this.findings = findings;
    }

    void review() {
        ShopRules shop = job.shop();
        findings.notNegative("/shop/kerf/crosscut", shop.kerf().crosscut());
        findings.notNegative("/shop/kerf/rip", shop.kerf().rip());
        findings.notNegative("/zoneMargin", shop.zoneMargin());
        trim("/shop/boardTrim", shop.boardTrim(), findings);
        trim("/shop/sheetTrim", shop.sheetTrim(), findings);
        limits(shop.limits());
        for (int i = 0; i < shop.keepOffcuts().size(); i++) {
            KeepRule keep = shop.keepOffcuts().get(i);
            findings.notNegative("/shop/keepOffcuts/" + i + "/length", keep.length());
            findings.notNegative("/shop/keepOffcuts/" + i + "/width", keep.width());
        }
        findings.notNegative("/shop/thicknessTolerance", shop.thicknessTolerance());
        findings.notNegative("/shop/maxPlaning", shop.maxPlaning());
        findings.positive("/shop/carLength", shop.carLength());
        findings.positive("/shop/stopReach", shop.stopReach());
        machines(shop);
        setUpPrice(shop.setUpPrice());
        job.allowances().forEach((name, profile) -> profile("/allowances/" + escaped(name), name, profile));
    }

    private void setUpPrice(@Nullable Money price) {
        if (price == null) {
            return;
        }
        if (price.amount().signum() < 0) {
            findings.add(
                    "/setUpPrice",
                    FaultCode.NEGATIVE,
                    price.amount().toPlainString(),
                    "0 or more",
                    "A set-up is worth " + price.amount().toPlainString() + "; it must be 0 or more.");
        } else if (price.amount().compareTo(TermsReview.MOST_MONEY) > 0) {
            findings.add(
                    "/setUpPrice",
                    FaultCode.OUT_OF_RANGE,
                    price.amount().toPlainString(),
                    "at most " + TermsReview.MOST_MONEY.toPlainString(),
                    "A set-up is worth " + price.amount().toPlainString()
                            + "; that much is taken for a slip of the pen.");
        }
        if (job.goal() != Goal.COST) {
            findings.add(
                    "/setUpPrice",
                    FaultCode.CONFLICT,
                    job.goal().word(),
                    Goal.COST.word(),
                    "Set-ups can be weighed against money only where the goal is cost; make it so, or leave setUpPrice out.",
                    "/goal");
        }
    }

    private void machines(ShopRules shop) {
        findings.positive("/machines/jointer/width", shop.machines().jointer().width());
        findings.positive(
                "/machines/jointer/shortest", shop.machines().jointer().shortest());
        findings.positive("/machines/planer/width", shop.machines().planer().width());
        findings.positive("/machines/planer/shortest", shop.machines().planer().shortest());
        Machines.Breakdown saw = shop.machines().breakdown();
        if (saw == null) {
            return;
        }
        findings.positive("/breakdown/kerf", saw.kerf());
        findings.notNegative("/breakdown/over", saw.over());
        Length left = shop.kerf().crosscut().min(shop.kerf().rip());
        if (saw.kerf().plus(saw.over()).isMoreThan(left)) {
            findings.add(
                    "/breakdown",
                    FaultCode.CONFLICT,
                    findings.say(saw.kerf().plus(saw.over())),
                    "at most " + findings.say(left),
                    "The first cuts take " + findings.say(saw.kerf()) + " and leave " + findings.say(saw.over())
                            + " on, but layouts leave only " + findings.say(left)
                            + " between pieces; give the shop a kerf of as much as both together.",
                    "/shop/kerf");
        }
    }

    static void trim(String pointer, Trim trim, Findings findings) {
        findings.notNegative(pointer + "/start", trim.start());
        findings.notNegative(pointer + "/end", trim.end());
        findings.notNegative(pointer + "/edge", trim.edge());
        findings.notNegative(pointer + "/farEdge", trim.farEdge());
    }

    private void limits(SawLimits limits) {
        String at = "/shop/limits";
        findings.positive(at + "/ripCapacity", limits.ripCapacity());
        findings.positive(at + "/longestRip", limits.longestRip());
        findings.positive(at + "/crosscutCapacity", limits.crosscutCapacity());
        findings.notNegative(at + "/minimumPiece", limits.minimumPiece());
        findings.within(
                at + "/stages",
                limits.stages(),
                1,
                JobReview.MOST_PIECES,
                got -> "The saws may cut in " + got
                        + " directions in a row; give at least 1, or leave it out for no limit.");
    }

    private void profile(String pointer, String name, AllowanceProfile profile) {
        findings.text(pointer, name, JobReview.LONGEST_PROFILE_NAME, false);
        Map.of(
                        "length", profile.length(),
                        "width", profile.width(),
                        "thickness", profile.thickness(),
                        "perStave", profile.perStave(),
                        "staveThickness", profile.staveThickness(),
                        "perPly", profile.perPly())
                .entrySet()
                .stream()
                .sorted(Map.Entry.comparingByKey())
                .forEach(e -> findings.notNegative(pointer + "/" + e.getKey(), e.getValue()));
    }

    /** A name as one step of an RFC 6901 pointer. */
    static String escaped(String name) {
        return name.replace("~", "~0").replace("/", "~1");
    }
}
