package org.stockcutting.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.groups.Tuple.tuple;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import org.apache.commons.math3.fraction.BigFraction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stockcutting.job.Fault;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.length.Volume;
import org.stockcutting.part.Side;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.Direction;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.BuyingLine;
import org.stockcutting.plan.Certificate;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Derived;
import org.stockcutting.plan.Estimate;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.LongestOffcut;
import org.stockcutting.plan.NearMiss;
import org.stockcutting.plan.Objective;
import org.stockcutting.plan.PlanHeader;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.Status;
import org.stockcutting.plan.StepKind;
import org.stockcutting.plan.StopReason;
import org.stockcutting.plan.TradeOff;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.plan.Violation;
import org.stockcutting.plan.Warning;
import org.stockcutting.plan.WholeSets;
import org.stockcutting.plan.YieldFigures;
import org.stockcutting.stock.Money;

/** Plans as documents: what the words mean is tested by the checker, here only that nothing is lost and nothing slips in. */
class PlanTextTest {

    private static final Currency USD = Currency.getInstance("USD");

    private static Job job(String goal) {
        return new JobReader()
                .read("{\"currency\": \"USD\", \"goal\": \"" + goal + "\", \"parts\": ["
                        + "{\"id\": \"post\", \"quantity\": 2, \"length\": 60, \"width\": \"3-1/2\", \"thickness\": \"1-1/2\"},"
                        + "{\"id\": \"top\", \"length\": 48, \"width\": 14, \"thickness\": 1, \"make\": {\"as\": \"glue-up\","
                        + " \"staves\": {\"min\": 3, \"max\": 5}}},"
                        + "{\"id\": \"bow\", \"length\": 30, \"width\": 2, \"thickness\": 1, \"make\": {\"as\": \"lamination\","
                        + " \"plies\": 3}}],"
                        + "\"stock\": [{\"id\": \"2x4-8\", \"nominal\": \"2x4\", \"length\": 96, \"price\": {\"amount\":"
                        + " \"3.98\"}}], \"onHand\": [{\"id\": \"rack\", \"nominal\": \"2x4\", \"length\": 40}]}")
                .orThrow();
    }

    private static Length in(String inches) {
        return Length.inches(inches);
    }

    private static CuttingPlan plan(Job job, BigInteger value, BigInteger bound, BigInteger searched) {
        CutNode cuts = new CutNode.Cuts(
                Direction.CROSSCUT,
                List.of(new CutNode.Slot(in("0.375"), in("0.5")), new CutNode.Slot(in("60.5"), in("60.625"))),
                List.of(
                        CutNode.RestLeaf.TRIM,
                        new CutNode.Cuts(
                                Direction.RIP,
                                List.of(new CutNode.Slot(in("3"), in("3.125"))),
                                List.of(new CutNode.PartLeaf("post"), CutNode.RestLeaf.SLIVER)),
                        CutNode.RestLeaf.OFFCUT));
        Layout first = new Layout(
                "2x4-8",
                2,
                in("96"),
                in("3.5"),
                in("1.5"),
                List.of(
                        new PlacedPiece(
                                "post", List.of(1, 2), List.of(), in("0.5"), Length.ZERO, in("60"), in("3.5"), false),
                        new PlacedPiece(
                                "top", List.of(1, 1), List.of(1, 2), in("61"), in("1"), in("50"), in("3"), true),
                        new PlacedPiece(
                                "bow", List.of(1, 1), List.of(3, 2), in("62"), in("1"), in("31"), in("2"), true)),
                cuts,
                List.of(new Layout.LeftOver(in("60.625"), Length.ZERO, in("35.375"), in("3.5"), true)));
        Layout whole =
                new Layout("rack", 1, in("40"), in("3.5"), in("1.5"), List.of(), CutNode.RestLeaf.OFFCUT, List.of());
        Certificate certificate = new Certificate(List.of(new Certificate.Component(
                List.of("2x4-8", "rack"),
                List.of(
                        new Certificate.Dual("post", new BigFraction(199)),
                        new Certificate.Dual("top", new BigFraction(1, 25_400_000))),
                bound)));
        Volume volume = Volume.of(in("96"), in("3.5"), in("1.5"));
        Derived derived = new Derived(
                List.of(new BuyingLine(
                        "2x4-8",
                        2,
                        new Money(new BigDecimal("3.98"), USD),
                        new Money(new BigDecimal("7.96"), USD),
                        new BigDecimal("10.67"),
                        new BuyingLine.Lot(1, 2, 2, 3))),
                job.onHand(),
                List.of(
                        new SequenceStep(
                                1,
                                StepKind.CROSSCUT,
                                new SequenceStep.SetUp("crosscut", in("60")),
                                "2x4-8 #1",
                                new SequenceStep.SawCut(
                                        Direction.CROSSCUT,
                                        wood("0.5", "95.5"),
                                        in("60.5"),
                                        in("60.625"),
                                        wood("60.625", "35.375"),
                                        in("4")),
                                new SequenceStep.Piece("post", 1, null),
                                new SequenceStep.Piece("top", 1, 2),
                                "keep hands away",
                                "the stick is long now"),
                        new SequenceStep(
                                2,
                                StepKind.TRIM,
                                null,
                                "rack #1",
                                new SequenceStep.SawCut(
                                        Direction.RIP, wood("0", "40"), in("0.5"), in("0.625"), null, Length.ZERO),
                                null,
                                null,
                                null,
                                null),
                        new SequenceStep(3, StepKind.REST, null, null, null, null, null, null, null),
                        new SequenceStep(
                                4,
                                StepKind.GLUE,
                                null,
                                null,
                                null,
                                new SequenceStep.Piece("bow", 1, 3),
                                null,
                                null,
                                null)),
                1,
                new YieldFigures(
                        volume,
                        new Volume(BigInteger.ONE),
                        Volume.ZERO,
                        Volume.ZERO,
                        Volume.ZERO,
                        Volume.ZERO,
                        Volume.ZERO,
                        volume.minus(new Volume(BigInteger.ONE)),
                        new BigDecimal("0.8600")),
                List.of(new Warning("raw-end", "/layouts/0", "a raw end stays")),
                new LongestOffcut(in("35.375"), in("40.25"), false),
                List.of(new NearMiss(
                        "post", Side.WIDTH, in("0.015625"), 1, -1, 2, new Money(new BigDecimal("-3.98"), USD), true)),
                new TradeOff(List.of(
                        new TradeOff.Row(new Money(new BigDecimal("7.96"), USD), 1, true),
                        new TradeOff.Row(new Money(new BigDecimal("9.00"), USD), 0, false))),
                List.of(new Estimate(
                        "rough",
                        List.of(new Estimate.Served("post", 2)),
                        Volume.of(in("10"), in("5"), in("2")),
                        new BigDecimal("0.5"),
                        Volume.of(in("20"), in("5"), in("2")),
                        new BigDecimal("1.39"),
                        1,
                        new Money(new BigDecimal("7.00"), USD),
                        new Estimate.Sure(
                                new BigDecimal("0.9"),
                                new BigDecimal("1.50"),
                                2,
                                new Money(new BigDecimal("8.00"), USD)),
                        List.of(new Estimate.AtLeast(1, in("4"), in("60.25"))),
                        200,
                        "grade fas")),
                new WholeSets(0, 1, List.of(new WholeSets.Lack("bow", 1))));
        return new CuttingPlan(
                new PlanHeader("job", JobHash.of(job), Status.PARTIAL, StopReason.PROVED, true, 7, 18_211, 1, "1.0.0"),
                new Money(new BigDecimal("7.96"), USD),
                new Objective(job.goal(), value, bound, searched),
                List.of(first, whole),
                List.of(new Unplaced(
                        "bow", 1, Unplaced.Reason.LONGER_THAN_ANY_STOCK, "102", null, "add a longer length")),
                certificate,
                List.of(new Violation("kerf", "/layouts/0/cuts", "too narrow")),
                derived);
    }

    private static CuttingPlan plan(Job job) {
        return plan(job, BigInteger.valueOf(796), BigInteger.valueOf(794), BigInteger.valueOf(795));
    }

    @ParameterizedTest
    @CsvSource({"cost", "boards", "waste"})
    void writtenReadAndWrittenAgainItIsTheSameBytes(String goal) {
        Job job = job(goal);
        TreeMap<String, String> defaults = new TreeMap<>(java.util.Map.of("/parts/0/class", "clear"));
        String text = new PlanWriter(job).write(plan(job), defaults);
        PlanReading reading = new PlanReader(job).read(text);
        assertThat(reading.faults()).as(text).isEmpty();
        assertThat(reading.orThrow()).isEqualTo(plan(job));
        assertThat(reading.defaults()).isEqualTo(defaults);
        assertThat(new PlanWriter(job).write(reading.orThrow(), reading.defaults()))
                .isEqualTo(text);
    }

    @Test
    void theDocumentReadsAsDesigned() {
        Job job = job("cost");
        ObjectNode doc = Documents.parse(new PlanWriter(job).write(plan(job), new TreeMap<>()));
        List<String> names = new ArrayList<>();
        doc.fieldNames().forEachRemaining(names::add);
        assertThat(names).containsExactlyElementsOf(PlanFields.PLAN.of("").keySet());
        assertThat(doc.get("cost").toString())
                .isEqualTo(
                        "{\"amount\":\"7.96\",\"currency\":\"USD\",\"bound\":\"7.94\",\"searchedBound\":\"7.95\",\"gap\":"
                                + "\"0.0026\"}");
        assertThat(doc.get("objective").toString())
                .isEqualTo("{\"goal\":\"cost\",\"value\":\"7.96\",\"bound\":\"7.94\"}");
        assertThat(doc.at("/layouts/0/cuts").toString())
                .isEqualTo(
                        "{\"cut\":\"crosscut\",\"kerf\":[[\"3/8\",\"1/2\"],[\"60-1/2\",\"60-5/8\"]],\"pieces\":[\"trim\","
                                + "{\"cut\":\"rip\",\"kerf\":[[\"3\",\"3-1/8\"]],\"pieces\":[\"post\",\"sliver\"]},\"offcut\"]}");
        assertThat(doc.at("/layouts/1/cuts").textValue()).isEqualTo("offcut");
        assertThat(doc.at("/layouts/0/pieces/1/staves").toString()).isEqualTo("[1,2]");
        assertThat(doc.at("/layouts/0/pieces/2/plies").toString()).isEqualTo("[3,2]");
        assertThat(doc.at("/layouts/0/pieces/0").has("staves")).isFalse();
        // 199 cents a piece; a panel's 1/25,400,000 cent a nanometre is one cent an inch of width.
        assertThat(doc.at("/certificate/components/0/duals").toString())
                .isEqualTo("[[\"post\",\"199/100\"],[\"top\",\"1/100\"]]");
        assertThat(doc.at("/check/valid").booleanValue()).isFalse();
    }

    /** (value - bound) / value, up to the next ten-thousandth: a gap never looks smaller than it is. */
    @ParameterizedTest
    @CsvSource({
        "15136, 15092, 0.0030",
        "3, 2, 0.3334",
        "100, 100, 0.0000",
        "0, 0, 0.0000",
        "1000000000, 999999999, 0.0001",
        "4, 3, 0.2500"
    })
    void theGapIsRoundedUp(String value, String bound, String gap) {
        assertThat(GoalText.gap(new BigInteger(value), new BigInteger(bound))).isEqualTo(gap);
    }

    @Test
    void figuresThatDoNotFollowAreFaults() {
        Job job = job("cost");
        ObjectNode doc = Documents.parse(new PlanWriter(job).write(plan(job), new TreeMap<>()));
        ((ObjectNode) doc.get("cost")).put("gap", "0.0025").put("bound", "7.95").put("currency", "EUR");
        ((ObjectNode) doc.get("check")).put("valid", true);
        ((ObjectNode) doc.at("/layouts/0/cuts")).withArray("/pieces").remove(0);
        ((ObjectNode) doc.at("/layouts/0/pieces/0")).put("colour", "red");
        ((ObjectNode) doc.at("/certificate/components/0"))
                .withArray("/duals")
                .addArray()
                .add("bow")
                .add("1/0");
        assertThat(new PlanReader(job).read(doc.toString()).faults())
                .extracting(Fault::pointer, Fault::code)
                .containsExactlyInAnyOrder(
                        tuple("/cost/gap", "inconsistent"),
                        tuple("/cost/bound", "inconsistent"),
                        tuple("/cost/currency", "inconsistent"),
                        tuple("/check/valid", "inconsistent"),
                        tuple("/layouts/0/cuts/pieces", "inconsistent"),
                        tuple("/layouts/0/pieces/0/colour", "unknown-field"),
                        tuple("/certificate/components/0/duals/2/1", "not-a-fraction"));
    }

    @Test
    void aPlanByHandNeedsNoMoreThanItsLayouts() {
        Job job = job("boards");
        String text =
                "{\"objective\": {\"goal\": \"boards\", \"value\": \"1\", \"bound\": \"0\"}, \"layouts\": [{\"stock\":"
                        + " \"rack\", \"length\": 40, \"width\": 3.5, \"thickness\": \"1-1/2\", \"pieces\": [], \"cuts\": \"offcut\"}]}";
        assertThat(new PlanReader(job).read(text).faults())
                .extracting(Fault::pointer)
                .containsExactlyElementsOf(
                        PlanFields.DERIVED.stream().map(name -> "/" + name).toList());
        Derived derived = plan(job).derived();
        CuttingPlan read =
                new PlanReader(job, (j, layouts) -> derived).read(text).orThrow();
        assertThat(read.derived()).isEqualTo(derived);
        assertThat(read.header().jobHash()).isEqualTo(JobHash.of(job));
        assertThat(read.layouts()).hasSize(1);
    }

    @Test
    void everyFieldOfAPlanIsReadAndItsTypeIsChecked() {
        Job job = job("waste");
        ObjectNode whole = Documents.parse(new PlanWriter(job).write(plan(job), new TreeMap<>()));
        List<String> pointers = new ArrayList<>();
        collect(whole, "", pointers);
        JsonNode wrong = Documents.MAPPER.createObjectNode().put("x", 1);
        for (String pointer : pointers) {
            ObjectNode doc = whole.deepCopy();
            Documents.set(doc, pointer, doc.at(pointer).isObject() ? Documents.MAPPER.createArrayNode() : wrong);
            List<Fault> faults = new PlanReader(job).read(doc.toString()).faults();
            assertThat(faults)
                    .as(pointer)
                    .anyMatch(
                            f -> f.pointer().startsWith(pointer) || f.pointer().equals(pairOf(pointer)));
        }
    }

    /** The two texts of a dual are judged as a pair. */
    private static String pairOf(String pointer) {
        return pointer.contains("/duals/") ? pointer.substring(0, pointer.lastIndexOf('/')) : pointer;
    }

    private static void collect(JsonNode node, String pointer, List<String> pointers) {
        if (!pointer.isEmpty()) {
            pointers.add(pointer);
        }
        if (node.isObject()) {
            node.fields().forEachRemaining(e -> collect(e.getValue(), pointer + "/" + e.getKey(), pointers));
        } else {
            for (int i = 0; i < node.size(); i++) {
                collect(node.get(i), pointer + "/" + i, pointers);
            }
        }
    }

    @Test
    void damagedPlansNeverThrow() {
        Job job = job("cost");
        String sound = new PlanWriter(job).write(plan(job), new TreeMap<>());
        for (long seed = 1; seed <= 1_500; seed++) {
            Random random = new Random(seed);
            StringBuilder text = new StringBuilder(sound);
            for (int i = 0, n = 1 + random.nextInt(4); i < n; i++) {
                int at = random.nextInt(text.length());
                switch (random.nextInt(3)) {
                    case 0 -> text.deleteCharAt(at);
                    case 1 -> text.insert(at, "{}[],:\"0e9-x/.".charAt(random.nextInt(14)));
                    default -> text.setCharAt(at, (char) random.nextInt(0x180));
                }
            }
            PlanReading reading = new PlanReader(job).read(text.toString());
            assertThat(reading.isValid())
                    .as("seed %d", seed)
                    .isEqualTo(reading.faults().isEmpty());
        }
    }

    @Test
    void deepTreesAreReadUpToTheLimit() {
        Job job = job("boards");
        String leaf = "\"offcut\"";
        StringBuilder cuts = new StringBuilder(leaf);
        for (int i = 0; i < 40; i++) {
            cuts.insert(0, "{\"cut\": \"rip\", \"kerf\": [], \"pieces\": [").append("]}");
        }
        String text = "{\"layouts\": [{\"cuts\": " + cuts + "}]}";
        assertThat(new PlanReader(job).read(text).faults())
                .extracting(Fault::code)
                .containsExactly("too-deep");
    }

    @Test
    void aBuyingListAndAReviewAreDocumentsToo() {
        Job job = job("cost");
        ObjectNode list = Documents.parse(BuyingListWriter.write(job, plan(job)));
        assertThat(list.at("/buyingList/0/total").textValue()).isEqualTo("7.96");
        assertThat(list.get("total").textValue()).isEqualTo("7.96");
        assertThat(list.at("/fromOnHand/0").toString()).isEqualTo("{\"stock\":\"rack\",\"quantity\":1}");
        assertThat(CsvTables.buyingList(job, plan(job)))
                .isEqualTo("stock,quantity,price,total,currency,boardFeet,used,pack,breakFrom,more\r\n"
                        + "2x4-8,2,3.98,7.96,USD,10.67,1,2,2,3\r\n");
        ObjectNode review =
                Documents.parse(ReviewWriter.write(List.of(new Fault("/parts", "no-parts", "a", "b", "c"))));
        assertThat(review.get("valid").booleanValue()).isFalse();
        assertThat(review.at("/faults/0/code").textValue()).isEqualTo("no-parts");
        assertThat(new CsvJobReader()
                        .read("length,nominal\n10,2x4\n", null, CsvTables.offcuts(job, plan(job)), null)
                        .orThrow()
                        .onHand()
                        .get(0)
                        .length())
                .isEqualTo(in("40"));
    }

    private static SequenceStep.Wood wood(String x, String length) {
        return new SequenceStep.Wood(in(x), Length.ZERO, in(length), in("3.5"));
    }
}
