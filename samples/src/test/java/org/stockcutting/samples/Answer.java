package org.stockcutting.samples;

import java.io.IOException;
import java.math.BigInteger;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.stockcutting.Optimizer;
import org.stockcutting.io.CsvJobReader;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.JobReading;
import org.stockcutting.io.PlanWriter;
import org.stockcutting.job.Job;
import org.stockcutting.length.Volume;
import org.stockcutting.length.VolumeWriter;
import org.stockcutting.plan.BuyingLine;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Status;
import org.stockcutting.stock.Money;

/** One sample job with its plan, its row of the table of answers and what the read-me says of it. */
record Answer(String name, Job job, CuttingPlan plan, String document) {

    static final String HEADER = "sample,status,stopped,value,bound,searchedBound,bought,setUps,yield\n";

    /** Job documents, and folders of tables. */
    static List<Path> samples() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("jobs"))) {
            return files.sorted().toList();
        }
    }

    static Answer to(Path sample, Optimizer optimizer) throws IOException {
        JobReading reading = read(sample);
        Job job = reading.orThrow();
        CuttingPlan plan = optimizer.plan(job);
        String name = sample.getFileName().toString().replace(".json", "");
        return new Answer(name, job, plan, new PlanWriter(job).write(plan, reading.defaults()));
    }

    private static JobReading read(Path sample) throws IOException {
        if (Files.isDirectory(sample)) {
            return new CsvJobReader()
                    .read(
                            Files.readString(sample.resolve("parts.csv")),
                            Files.readString(sample.resolve("stock.csv")),
                            Files.readString(sample.resolve("shop.json")));
        }
        return new JobReader().read(Files.readAllBytes(sample));
    }

    String row() {
        String searched = searched() == null ? "" : amount(searched());
        return String.join(
                        ",",
                        name,
                        plan.header().status().word(),
                        plan.header().stopReason().word(),
                        amount(plan.objective().value()),
                        amount(plan.objective().bound()),
                        searched,
                        String.valueOf(bought()),
                        String.valueOf(plan.derived().setUps()),
                        plan.derived().yield().ratio().toPlainString())
                + "\n";
    }

    /** The same in the words of the read-me. */
    String outcome() {
        String value = amount(plan.objective().value());
        String bound = amount(plan.objective().bound());
        String missing = plan.header().status() == Status.INFEASIBLE
                ? "can't be made: " + plan.unplaced().get(0).part() + "; the rest: "
                : "";
        String proof;
        if (value.equals(bound)) {
            proof = "proved: no plan can be lower";
        } else if (plan.objective().value().equals(searched())) {
            proof = "exact search found nothing lower; certified: not under " + bound;
        } else {
            proof = "not under " + bound + ", the gap is open";
        }
        if (!plan.derived().estimates().isEmpty()) {
            return estimated() + (plan.layouts().isEmpty() ? "" : "; for the rest " + value + ", " + proof);
        }
        return missing + value + ", " + bought() + " to buy; " + proof;
    }

    private String estimated() {
        return plan.derived().estimates().stream()
                .map(estimate -> estimate.boardFeet() + " board feet of " + estimate.stock() + " on average, "
                        + estimate.sure().boardFeet() + " to be sure")
                .collect(Collectors.joining("; ", "estimated: ", ""));
    }

    private BigInteger searched() {
        return plan.objective().searchedBound();
    }

    private int bought() {
        return plan.derived().buyingList().stream()
                .mapToInt(BuyingLine::quantity)
                .sum();
    }

    private String amount(BigInteger atomic) {
        return switch (job.goal()) {
            case COST ->
                Money.ofMinor(atomic.longValueExact(), job.writing().currency()).toString();
            case BOARDS -> atomic + " boards";
            case WASTE -> wasted(job, new VolumeWriter(job.writing().unit()).exact(new Volume(atomic)));
        };
    }

    /** Volumes that cubic inches cannot say exactly bring their unit with them. */
    private static String wasted(Job job, String volume) {
        String unit = job.writing().unit().isImperial() ? " in3" : " mm3";
        return volume + (volume.endsWith("mm3") ? "" : unit) + " wasted";
    }
}
