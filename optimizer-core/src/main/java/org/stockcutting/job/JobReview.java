package org.stockcutting.job;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.stockcutting.stock.StockItem;

/**
 * Reviews what a job means: everything that can be wrong with values that were read, or built, without a fault. All faults are found at
 * once (up to {@link #MOST}); pointers are those of a job document whose lists are in the job's order.
 *
 * <p>Parts that no stock can serve are no faults: the plan says so, with reasons.
 */
public final class JobReview {

    /** Most faults that one review lists. */
    public static final int MOST = 100;
    /** Characters of a faulty value that are shown. */
    public static final int SHOWN = 40;
    /** Most lines of a parts list. */
    public static final int MOST_PARTS = 5_000;
    /** Most entries of stock for sale. */
    public static final int MOST_FOR_SALE = 200;
    /** Most entries on hand. */
    public static final int MOST_ON_HAND = 5_000;
    /** Most rough pieces to be cut, spares, staves and plies included. */
    public static final int MOST_PIECES = 200_000;
    /** Most characters of a name, an id or a material. */
    public static final int LONGEST_NAME = 200;
    /** Most characters of the name of an allowance profile. */
    public static final int LONGEST_PROFILE_NAME = 64;
    /** Most characters of a note. */
    public static final int LONGEST_NOTE = 1_000;
    /** Most subsets of stock that a comparison names. */
    public static final int MOST_SUBSETS = 100;
    /** Longest guard of the clock: one day. */
    public static final int MOST_SECONDS = 86_400;
    /** Most threads. */
    public static final int MOST_THREADS = 256;

    private JobReview() {}

    /** Every fault of the job; empty if it can be planned. */
    public static List<Fault> review(Job job) {
        return review(job, Set.of());
    }

    /**
     * Reviews a job in which some values stand for others that could not be read.
     *
     * @param job the job
     * @param unreadable pointers of values that already have a fault: nothing that rests on them is reported
     */
    public static List<Fault> review(Job job, Set<String> unreadable) {
        Findings findings = new Findings(job.writing(), unreadable);
        findings.text("/name", job.name(), LONGEST_NAME, true);
        findings.positive("/precision", job.writing().precision());
        findings.within(
                "/sets",
                job.sets(),
                1,
                MOST_PIECES,
                got -> "The parts list is made " + got + " times; at least 1 is wanted.");
        new ShopReview(job, findings).review();
        new PartReview(job, findings).review();
        new StockReview(job, findings).review();
        new RandomReview(job, findings).review();
        new TermsReview(job, findings).review();
        reviewEffort(job.effort(), findings);
        new WoodReview(job, findings).review();
        reviewStockIds(job, findings);
        new CompareReview(job, findings).review();
        return findings.list();
    }

    private static void reviewEffort(Effort effort, Findings findings) {
        findings.within(
                "/effort/work",
                effort.work(),
                1,
                Long.MAX_VALUE,
                got -> "The work limit is " + got + " steps; give at least 1, or leave it out for the usual effort.");
        findings.within(
                "/effort/seconds",
                effort.seconds(),
                1,
                MOST_SECONDS,
                got -> "The clock limit is " + got + " seconds; give 1 to " + MOST_SECONDS + ", or leave it out.");
        findings.within(
                "/effort/threads",
                effort.threads(),
                1,
                MOST_THREADS,
                got -> "The search is given " + got + " threads; give 1 to " + MOST_THREADS + ".");
    }

    /** Ids of parts are reviewed with the parts; stock shares one set of ids over what is for sale and what is on hand. */
    private static void reviewStockIds(Job job, Findings findings) {
        Map<String, String> first = new HashMap<>();
        List<StockItem.ForSale> forSale = job.forSale();
        for (int i = 0; i < forSale.size(); i++) {
            reviewId("/stock/" + i, forSale.get(i).id(), first, findings);
        }
        for (int i = 0; i < job.random().size(); i++) {
            reviewId("/stock/" + (forSale.size() + i), job.random().get(i).id(), first, findings);
        }
        List<StockItem.OnHand> onHand = job.onHand();
        for (int i = 0; i < onHand.size(); i++) {
            reviewId("/onHand/" + i, onHand.get(i).id(), first, findings);
        }
    }

    static void reviewId(String entry, String id, Map<String, String> first, Findings findings) {
        String pointer = entry + "/id";
        findings.text(pointer, id, LONGEST_NAME, false);
        String other = first.putIfAbsent(id, entry);
        if (other != null) {
            findings.add(
                    pointer,
                    FaultCode.DUPLICATE_ID,
                    id,
                    "an id of its own",
                    "The id \"" + id + "\" is already taken by " + other + "; every entry needs one of its own.",
                    other + "/id");
        }
    }
}
