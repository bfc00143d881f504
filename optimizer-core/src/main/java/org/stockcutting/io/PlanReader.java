package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.FaultCode;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Derived;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.Objective;
import org.stockcutting.plan.PlanHeader;
import org.stockcutting.plan.Status;
import org.stockcutting.plan.StopReason;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.plan.Violation;
import org.stockcutting.stock.Money;

/**
 * Reads plan documents, those that {@link PlanWriter} writes and those made by hand, finding every fault of text and shape at once. Up
 * to 16 MB and 64 levels. Whether the plan keeps the rules is not asked here.
 */
public final class PlanReader {

    private final Job job;
    private final @Nullable Deriver deriver;

    /** Works out what follows from layouts, for documents that have only those. */
    @FunctionalInterface
    public interface Deriver {
        Derived derive(Job job, List<Layout> layouts);
    }

    /**
     * A reader of complete plans.
     *
     * @param job the job that the plans are for: its unit, decimal mark, currency and goal say how they are read
     */
    public PlanReader(Job job) {
        this.job = job;
        this.deriver = null;
    }

    /**
     * A reader that also takes plans without buying list, offcuts, sequence, set-ups, yield and warnings.
     *
     * @param job the job that the plans are for
     * @param deriver works out what is left out
     */
    public PlanReader(Job job, Deriver deriver) {
        this.job = job;
        this.deriver = deriver;
    }

    /** Reads a document from UTF-8 bytes. Never throws on bad input. */
    public PlanReading read(byte[] utf8) {
        Faults faults = new Faults();
        String text = JsonText.PLAN.decode(utf8, faults);
        return text == null ? new PlanReading(null, faults.list(), new TreeMap<>()) : read(text, faults);
    }

    /** Reads a document. Never throws on bad input. */
    public PlanReading read(String json) {
        return read(json, new Faults());
    }

    private PlanReading read(String json, Faults faults) {
        ObjectNode root = JsonText.PLAN.object(json, faults);
        return root == null ? new PlanReading(null, faults.list(), new TreeMap<>()) : read(root, faults);
    }

    private PlanReading read(ObjectNode root, Faults faults) {
        Reading reading = new Reading(PlanFields.PLAN, faults);
        reading.write(job.writing().unit(), job.writing().decimal());
        DocObject doc = new DocObject(reading, root, "", "");
        JobReader.checkFormat(doc, faults);
        PlanHeader header = header(doc);
        DocObject costNode = doc.object("cost");
        Objective objective = objective(doc, costNode, faults);
        Money cost = cost(costNode, objective, faults);
        List<Layout> layouts = new LayoutReader(job, reading).read(doc);
        List<Unplaced> unplaced = unplaced(doc);
        var certificate = new CertificateReader(new GoalText(job, objective.goal()), faults).read(doc);
        List<Violation> violations = violations(doc, faults);
        Derived derived = derived(doc, reading, layouts);
        SortedMap<String, String> defaults = defaults(doc);
        if (!faults.isEmpty() || derived == null) {
            return new PlanReading(null, faults.list(), defaults);
        }
        CuttingPlan plan =
                new CuttingPlan(header, cost, objective, layouts, unplaced, certificate, violations, derived);
        return new PlanReading(plan, List.of(), defaults);
    }

    private PlanHeader header(DocObject doc) {
        String name = doc.text("job");
        String hash = doc.text("jobHash");
        return new PlanHeader(
                name == null ? job.name() : name,
                hash == null ? JobHash.of(job) : hash,
                Or.of(doc.word("status", Status.values(), Status::word), Status.FEASIBLE),
                Or.of(doc.word("stopReason", StopReason.values(), StopReason::word), StopReason.WORK_LIMIT),
                Or.of(doc.bool("reproducible"), true),
                Or.of(doc.longInteger("seed"), 1L),
                Or.of(doc.longInteger("work"), 0L),
                Or.of(doc.integer("workVersion"), 1),
                Or.of(doc.text("engine"), Or.NAME));
    }

    /** Where money is the goal, the searched bound stands with the cost. */
    Objective objective(DocObject doc, @Nullable DocObject costNode, Faults faults) {
        DocObject node = doc.object("objective");
        if (node == null) {
            return new Objective(job.goal(), BigInteger.ZERO, BigInteger.ZERO, null);
        }
        Goal goal = Or.of(node.word("goal", Goal.values(), Goal::word), job.goal());
        GoalText text = new GoalText(job, goal);
        BigInteger searched = value(node, "searchedBound", text);
        DocObject cost = goal == Goal.COST && searched == null ? costNode : null;
        Objective objective = new Objective(
                goal,
                Or.of(value(node, "value", text), BigInteger.ZERO),
                Or.of(value(node, "bound", text), BigInteger.ZERO),
                cost == null ? searched : value(cost, "searchedBound", text));
        checkGap(node, objective, faults);
        return objective;
    }

    static @Nullable BigInteger value(DocObject node, String name, GoalText text) {
        return node.parsed(name, FaultCode.NOT_AN_AMOUNT, text::read);
    }

    /** The amount paid; where money is the goal its bounds are the objective's. */
    @Nullable Money cost(@Nullable DocObject node, Objective objective, Faults faults) {
        if (node == null) {
            return null;
        }
        GoalText text = new GoalText(job, Goal.COST);
        BigInteger amount = value(node, "amount", text);
        BigInteger bound = value(node, "bound", text);
        String currency = node.text("currency");
        String own = job.writing().currency().getCurrencyCode();
        agree(node, "currency", currency, own, faults);
        if (objective.goal() == Goal.COST && bound != null) {
            agree(node, "bound", text.write(bound), text.write(objective.bound()), faults);
        }
        checkGap(node, objective, faults);
        if (amount == null) {
            return null;
        }
        return new Money(
                new BigDecimal(amount, job.writing().currency().getDefaultFractionDigits()),
                job.writing().currency());
    }

    private static void checkGap(DocObject node, Objective objective, Faults faults) {
        BigDecimal gap = node.parsed("gap", FaultCode.NOT_AN_AMOUNT, GoalText::decimal);
        if (gap != null) {
            agree(node, "gap", gap.toPlainString(), GoalText.gap(objective.value(), objective.bound()), faults);
        }
    }

    /** A figure that follows from others must be what follows from them. */
    private static void agree(DocObject node, String name, @Nullable String got, String right, Faults faults) {
        if (got != null && !got.equals(right)) {
            faults.add(
                    node.pointer(name),
                    FaultCode.INCONSISTENT,
                    got,
                    right,
                    "\"" + name + "\" is " + Faults.shown(got) + ", but " + right
                            + " follows from the rest; correct it or leave it out.");
        }
    }

    static List<Unplaced> unplaced(DocObject doc) {
        List<Unplaced> unplaced = new ArrayList<>();
        for (DocObject node : doc.objects("unplaced")) {
            if (node != null) {
                unplaced.add(new Unplaced(
                        Or.of(node.text("part"), Or.NAME),
                        Or.of(node.integer("quantity"), 0),
                        Or.of(
                                node.word("reason", Unplaced.Reason.values(), Unplaced.Reason::word),
                                Unplaced.Reason.NOT_REACHED_BEFORE_LIMIT),
                        node.text("needs"),
                        node.text("limit"),
                        Or.of(node.text("remedy"), Or.NAME)));
            }
        }
        return unplaced;
    }

    private static List<Violation> violations(DocObject doc, Faults faults) {
        DocObject check = doc.object("check");
        if (check == null) {
            return List.of();
        }
        List<Violation> violations = new ArrayList<>();
        for (DocObject node : check.objects("violations")) {
            if (node != null) {
                violations.add(new Violation(
                        Or.of(node.text("cause"), Or.NAME),
                        Or.of(node.text("pointer"), Or.NAME),
                        Or.of(node.text("text"), Or.NAME)));
            }
        }
        Boolean valid = check.bool("valid");
        agree(check, "valid", valid == null ? null : valid.toString(), Boolean.toString(violations.isEmpty()), faults);
        return violations;
    }

    private @Nullable Derived derived(DocObject doc, Reading reading, List<Layout> layouts) {
        boolean none = PlanFields.DERIVED.stream().noneMatch(doc::has);
        if (none && deriver != null) {
            return reading.faults().isEmpty() ? deriver.derive(job, layouts) : null;
        }
        for (String name : PlanFields.DERIVED) {
            if (!doc.has(name)) {
                Field field = Objects.requireNonNull(PlanFields.PLAN.find("/" + name));
                doc.missing(name, field.wanted(), field.meaning());
            }
        }
        return new DerivedReader(job, reading).read(doc);
    }

    private static SortedMap<String, String> defaults(DocObject doc) {
        SortedMap<String, String> defaults = new TreeMap<>();
        DocObject node = doc.object("defaults");
        if (node != null) {
            for (String name : node.names()) {
                String text = node.freeText(name);
                if (text != null) {
                    defaults.put(name, text);
                }
            }
        }
        return defaults;
    }
}
