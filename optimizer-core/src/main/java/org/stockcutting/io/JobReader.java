package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.AllowanceProfile;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Fault;
import org.stockcutting.job.FaultCode;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobOrder;
import org.stockcutting.job.JobReview;
import org.stockcutting.job.ShopRules;
import org.stockcutting.job.Shortage;
import org.stockcutting.job.UsualGang;
import org.stockcutting.job.Writing;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.material.NominalCatalog;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.stock.RandomBoards;
import org.stockcutting.stock.StockItem;

/**
 * Reads job documents (JSON), finding every fault at once: of text and shape here, of meaning by {@link JobReview}. Safe to share
 * between threads.
 *
 * <p>A document has at most 1 MB and 20 levels; numbers are exact decimals in the job's unit.
 */
public final class JobReader {

    /** The form of documents this version reads. */
    static final int FORMAT = 1;

    private final NominalCatalog catalog;

    /** A reader that looks trade sizes up in the standard catalog. */
    public JobReader() {
        this(NominalCatalog.standard());
    }

    /** A reader with a catalog of its own. */
    public JobReader(NominalCatalog catalog) {
        this.catalog = catalog;
    }

    /** Reads a document from UTF-8 bytes. Never throws on bad input. */
    public JobReading read(byte[] utf8) {
        Faults faults = new Faults();
        String text = JsonText.JOB.decode(utf8, faults);
        return text == null ? refused(faults) : read(text, faults);
    }

    /** Reads a document. Never throws on bad input. */
    public JobReading read(String json) {
        return read(json, new Faults());
    }

    private JobReading read(String json, Faults faults) {
        ObjectNode root = JsonText.JOB.object(json, faults);
        return root == null ? refused(faults) : read(root, faults);
    }

    private static JobReading refused(Faults faults) {
        return new JobReading(null, faults.list(), new TreeMap<>());
    }

    /** Reads a job from its tree, wherever that came from. */
    JobReading read(ObjectNode root, Faults faults) {
        Reading reading = new Reading(Fields.JOB, faults);
        DocObject doc = new DocObject(reading, root, "", "");
        checkFormat(doc, faults);
        Writing writing = writing(doc, reading);
        StockPlaces places = new StockPlaces();
        Job job = job(doc, reading, writing, places);
        Set<String> unreadable = faults.pointers().stream().map(places::inJob).collect(Collectors.toSet());
        JobReview.review(job, unreadable).forEach(fault -> faults.addAll(List.of(placed(fault, places))));
        if (!faults.isEmpty()) {
            return new JobReading(null, faults.list(), reading.defaults());
        }
        Job ganged = inGangs(job, doc.objects("parts"), reading);
        return new JobReading(ganged, List.of(), byId(JobOrder.of(ganged), reading.defaults(), places));
    }

    /** Milled parts that are too short for the machines stay together, where their lines say nothing of gangs. */
    private static Job inGangs(Job job, List<@Nullable DocObject> lines, Reading reading) {
        List<Part> parts = new ArrayList<>(job.parts());
        for (int i = 0; i < parts.size(); i++) {
            DocObject line = lines.get(i);
            UsualGang usual = line == null || line.has("gang") ? null : UsualGang.of(job, parts.get(i));
            if (line != null && usual != null && usual.parts() > 1) {
                parts.set(i, parts.get(i).withGang(usual.parts()));
                reading.filledIn(line.pointer("gang"), Integer.toString(usual.parts()));
            }
        }
        return parts.equals(job.parts()) ? job : job.withParts(parts);
    }

    /** Defaults go into the plan, which must not depend on the order of the lists. */
    private static SortedMap<String, String> byId(
            JobOrder order, SortedMap<String, String> defaults, StockPlaces places) {
        SortedMap<String, String> named = new TreeMap<>();
        defaults.forEach((pointer, value) -> named.put(order.byId(places.inJob(pointer)), value));
        return named;
    }

    private static Fault placed(Fault fault, StockPlaces places) {
        return new Fault(
                places.inDocument(fault.pointer()),
                fault.code(),
                fault.got(),
                fault.expected(),
                places.inDocument(fault.text()));
    }

    static void checkFormat(DocObject doc, Faults faults) {
        Integer format = doc.integer("format");
        if (format != null && format != FORMAT) {
            faults.add(
                    doc.pointer("format"),
                    FaultCode.UNSUPPORTED_FORMAT,
                    format.toString(),
                    Integer.toString(FORMAT),
                    "The document says format " + format + "; this version reads format " + FORMAT + ".");
        }
    }

    private static Writing writing(DocObject doc, Reading reading) {
        LengthUnit unit = Or.of(doc.word("unit", LengthUnit.values(), LengthUnit::symbol), LengthUnit.INCH);
        String decimal = Or.of(doc.word("decimal"), ".");
        reading.write(unit, decimal.charAt(0));
        return new Writing(unit, decimal.charAt(0), doc.length("precision"), Currencies.ofJob(doc, reading));
    }

    private Job job(DocObject doc, Reading reading, Writing writing, StockPlaces places) {
        String material = Or.of(doc.text("material"), Or.NAME);
        DocObject shopDoc = doc.objectOrEmpty("shop");
        ShopRules shop = ShopReader.read(shopDoc)
                .withZoneMargin(Or.of(doc.length("zoneMargin"), Length.ZERO))
                .withMachines(MachineReader.read(doc))
                .withSetUpPrice(TermsReader.setUpPrice(doc, reading, writing.currency()));
        DocObject profiles = doc.objectOrEmpty("allowances");
        SortedMap<String, AllowanceProfile> allowances = AllowanceReader.read(profiles);
        List<Part> parts = new PartReader(reading, material).read(doc);
        noteBuiltIns(profiles, parts, allowances, reading);
        StockReader stock = new StockReader(reading, catalog, material, writing.currency());
        List<StockItem.ForSale> forSale = new ArrayList<>();
        List<StockItem.OnHand> onHand = new ArrayList<>();
        List<RandomBoards> random = new ArrayList<>();
        stock.read(doc, forSale, onHand, random, places);
        return new Job(
                Or.of(doc.text("name"), Or.NAME),
                writing,
                Or.of(doc.integer("sets"), 1),
                shop,
                allowances,
                parts,
                forSale,
                onHand,
                goal(doc, reading, forSale),
                effort(doc, reading),
                TermsReader.read(doc, shopDoc, reading, writing.currency()),
                doc.textLists("compare"),
                WoodReader.read(doc, material),
                random,
                Or.of(doc.word("whenShort", Shortage.values(), Shortage::word), Shortage.MOST_WOOD));
    }

    /** Without a goal: money, if anything has a price to add up; else the least waste. */
    private static Goal goal(DocObject doc, Reading reading, List<StockItem.ForSale> forSale) {
        if (doc.has("goal")) {
            return Or.of(doc.word("goal", Goal.values(), Goal::word), Goal.WASTE);
        }
        Goal goal = forSale.stream().anyMatch(s -> s.price() != null) ? Goal.COST : Goal.WASTE;
        reading.filledIn(doc.pointer("goal"), goal.word());
        return goal;
    }

    private static Effort effort(DocObject doc, Reading reading) {
        DocObject effort = doc.objectOrEmpty("effort");
        Long work = effort.longInteger("work");
        Integer seconds = effort.integer("seconds");
        long seed = Or.of(effort.longInteger("seed"), 1L);
        int threads = Or.of(effort.integer("threads"), 1);
        if (!effort.has("seconds")) {
            reading.filledIn(effort.pointer("seconds"), Integer.toString(Effort.DEFAULT_SECONDS));
            if (!effort.has("work")) {
                reading.filledIn(effort.pointer("work"), Long.toString(Effort.DEFAULT_WORK));
            }
        }
        return new Effort(work, seconds, seed, threads);
    }

    /** The built-in profiles that parts use are echoed: they are defaults like any other. */
    private static void noteBuiltIns(
            DocObject said, List<Part> parts, SortedMap<String, AllowanceProfile> allowances, Reading reading) {
        for (Part part : parts) {
            String name = profileOf(part.making());
            AllowanceProfile profile = name == null || said.has(name) ? null : allowances.get(name);
            if (profile != null) {
                AllowanceReader.note(said.pointer(String.valueOf(name)), profile, reading);
            }
        }
    }

    private static @Nullable String profileOf(Making making) {
        if (making instanceof Making.Milled milled) {
            return milled.profile();
        }
        if (making instanceof Making.GlueUp) {
            return AllowanceProfile.GLUE_UP;
        }
        return making instanceof Making.Lamination ? AllowanceProfile.LAMINATION : null;
    }
}
