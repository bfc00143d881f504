package org.stockcutting.job;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.stockcutting.stock.StockItem;

/** Reviews the subsets of stock that a comparison is to look at. */
final class CompareReview {

    private final Job job;
    private final Findings findings;

    CompareReview(Job job, Findings findings) {
        this.job = job;
        this.findings = findings;
    }

    void review() {
        List<List<String>> subsets = job.compare();
        if (subsets.size() > JobReview.MOST_SUBSETS) {
            findings.add(
                    "/compare",
                    FaultCode.TOO_MANY,
                    String.valueOf(subsets.size()),
                    "at most " + JobReview.MOST_SUBSETS,
                    "There are " + subsets.size() + " subsets to compare; at most " + JobReview.MOST_SUBSETS
                            + " are taken.");
        }
        Set<String> known = job.forSale().stream().map(StockItem::id).collect(Collectors.toSet());
        for (int i = 0; i < subsets.size(); i++) {
            subset("/compare/" + i, subsets.get(i), known);
        }
    }

    private void subset(String pointer, List<String> subset, Set<String> known) {
        if (subset.isEmpty()) {
            findings.add(
                    pointer,
                    FaultCode.NO_STOCK,
                    "[]",
                    "ids of stock",
                    "This subset is empty; name at least one entry of the stock for sale.");
        }
        Set<String> seen = new HashSet<>();
        for (int j = 0; j < subset.size(); j++) {
            String id = subset.get(j);
            if (!known.contains(id)) {
                findings.add(
                        pointer + "/" + j,
                        FaultCode.UNKNOWN_STOCK,
                        id,
                        "an id of the stock for sale",
                        "Nothing for sale is called \"" + id
                                + "\"; name ids of the stock list (what is on hand is always used).",
                        "/stock");
            } else if (!seen.add(id)) {
                findings.add(
                        pointer + "/" + j,
                        FaultCode.DUPLICATE_ID,
                        id,
                        "each id once",
                        "This subset names \"" + id + "\" twice; once is enough.");
            }
        }
    }
}
