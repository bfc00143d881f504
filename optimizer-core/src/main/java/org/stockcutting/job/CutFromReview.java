package org.stockcutting.job;

import java.util.stream.Stream;
import org.stockcutting.part.CutFrom;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.stock.StockItem;

/** Reviews the maker's own choices of wood: an entry of stock, or for one piece a place on one board that is there. */
final class CutFromReview {

    private final Job job;
    private final Findings findings;

    CutFromReview(Job job, Findings findings) {
        this.job = job;
        this.findings = findings;
    }

    void review(String at, Part part) {
        CutFrom chosen = part.selection().cutFrom();
        if (chosen == null) {
            return;
        }
        findings.notNegative(at + "/cutFrom/from", chosen.from());
        findings.notNegative(at + "/cutFrom/edge", chosen.edge());
        if (chosen.from() == null) {
            entry(at, part, chosen);
            return;
        }
        stock(at, part, chosen);
        long pieces = part.quantity() * (long) job.sets();
        if (pieces > 1) {
            findings.add(
                    at + "/cutFrom",
                    FaultCode.CONFLICT,
                    pieces + " pieces",
                    "one piece",
                    "One place is chosen for " + part.id() + ", but " + pieces
                            + " of it are wanted; give the piece a line of its own.",
                    at + "/quantity",
                    "/sets");
        }
        boolean glued = part.making() instanceof Making.GlueUp || part.making() instanceof Making.Lamination;
        if (glued || part.group() != null) {
            findings.add(
                    at + "/cutFrom",
                    FaultCode.CONFLICT,
                    glued ? "a glued part" : "group " + part.group(),
                    "a part that is one piece and in no group",
                    "A place is chosen for " + part.id() + ", which is "
                            + (glued ? "glued up from several pieces" : "in a group")
                            + "; leave out one of the two.",
                    glued ? at + "/make" : at + "/group");
        }
    }

    /** Any place on one entry: every piece of the part, its staves too, comes from there. */
    private void entry(String at, Part part, CutFrom chosen) {
        boolean known = Stream.concat(job.forSale().stream(), job.onHand().stream())
                .anyMatch(item -> item.id().equals(chosen.stock()));
        if (!known) {
            findings.add(
                    at + "/cutFrom/stock",
                    FaultCode.UNKNOWN_STOCK,
                    chosen.stock(),
                    "the id of an entry for sale or on hand",
                    "Part " + part.id() + " is to come from \"" + chosen.stock()
                            + "\", which is neither for sale nor on hand; give the id of such an entry.",
                    "/stock",
                    "/onHand");
        }
        if (chosen.edge() != null) {
            findings.add(
                    at + "/cutFrom/edge",
                    FaultCode.CONFLICT,
                    findings.say(chosen.edge()),
                    "from too, or no edge",
                    "A place for " + part.id() + " is chosen across but not along; give from too, or leave edge out.");
        }
    }

    private void stock(String at, Part part, CutFrom chosen) {
        boolean single =
                job.onHand().stream().anyMatch(item -> item.id().equals(chosen.stock()) && item.quantity() == 1);
        if (single) {
            return;
        }
        boolean several = job.onHand().stream().map(StockItem::id).anyMatch(chosen.stock()::equals);
        findings.add(
                at + "/cutFrom/stock",
                FaultCode.UNKNOWN_STOCK,
                chosen.stock(),
                "the id of one piece on hand",
                "Part " + part.id() + " is to come from \"" + chosen.stock() + "\", "
                        + (several ? "of which there are several" : "which is not on hand")
                        + "; a place can be chosen on one piece that is on hand and measured. Leave from out to choose an entry.",
                "/onHand");
    }
}
