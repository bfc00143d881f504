package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.plan.Worklog;
import org.stockcutting.stock.StockItem;

/** Reads worklog documents: what was done of a plan and what went wrong. Up to 1 MB; every fault of text and shape at once. */
public final class WorklogReader {

    private final Job job;

    /**
     * @param job the job that the plan was made for: its unit and decimal mark say how lengths are read
     */
    public WorklogReader(Job job) {
        this.job = job;
    }

    /** Reads a document from UTF-8 bytes. Never throws on bad input. */
    public WorklogReading read(byte[] utf8) {
        Faults faults = new Faults();
        String text = JsonText.JOB.decode(utf8, faults);
        return text == null ? new WorklogReading(null, faults.list()) : read(text, faults);
    }

    /** Reads a document. Never throws on bad input. */
    public WorklogReading read(String json) {
        return read(json, new Faults());
    }

    private WorklogReading read(String json, Faults faults) {
        ObjectNode root = JsonText.JOB.object(json, faults);
        if (root == null) {
            return new WorklogReading(null, faults.list());
        }
        Reading reading = new Reading(WorklogFields.WORKLOG, faults);
        reading.write(job.writing().unit(), job.writing().decimal());
        DocObject doc = new DocObject(reading, root, "", "");
        JobReader.checkFormat(doc, faults);
        Worklog worklog = new Worklog(
                Or.of(doc.text("plan"), Or.NAME),
                doc.integers("done"),
                spoiled(doc),
                zones(doc, reading),
                doc.texts("missing"));
        return new WorklogReading(faults.isEmpty() ? worklog : null, faults.list());
    }

    private static List<Worklog.Spoiled> spoiled(DocObject doc) {
        List<Worklog.Spoiled> spoiled = new ArrayList<>();
        for (DocObject node : doc.objects("spoiled")) {
            if (node != null) {
                spoiled.add(new Worklog.Spoiled(
                        Or.of(node.text("part"), Or.NAME), Or.of(node.integer("number"), 0), node.integer("member")));
            }
        }
        return spoiled;
    }

    private List<Worklog.FoundZone> zones(DocObject doc, Reading reading) {
        List<Worklog.FoundZone> zones = new ArrayList<>();
        for (DocObject node : doc.objects("zones")) {
            if (node != null) {
                String board = Or.of(node.text("board"), Or.NAME);
                zones.add(new Worklog.FoundZone(
                        board,
                        ZoneReader.zone(node, width(board), reading),
                        Or.of(
                                node.word("measuredFrom", Worklog.MeasuredFrom.values(), Worklog.MeasuredFrom::word),
                                Worklog.MeasuredFrom.ORIGINAL_ZERO)));
            }
        }
        return zones;
    }

    /** Width of the board of this name; a board that the job does not have is a fault that is found later. */
    private Length width(String board) {
        int mark = board.lastIndexOf(" #");
        String stock = mark < 0 ? board : board.substring(0, mark);
        return Stream.<StockItem>concat(job.forSale().stream(), job.onHand().stream())
                .filter(item -> item.id().equals(stock))
                .map(StockItem::width)
                .findFirst()
                .orElse(Or.SIZE);
    }
}
