package org.stockcutting.report;

import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.stockcutting.blank.BlankPlanner;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.job.Job;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Trim;

/** The job's stock and rough pieces by id, and which trim holds for which stock. */
final class Lookup {

    private final Job job;
    private final TreeMap<String, StockItem> stock = new TreeMap<>();
    private final TreeMap<String, RoughPiece> rough = new TreeMap<>();

    Lookup(Job job) {
        this.job = job;
        job.forSale().forEach(item -> stock.put(item.id(), item));
        job.onHand().forEach(item -> stock.put(item.id(), item));
        BlankPlanner.plan(job).forEach(piece -> rough.put(piece.part().id(), piece));
    }

    Job job() {
        return job;
    }

    Set<String> stockIds() {
        return new TreeSet<>(stock.keySet());
    }

    StockItem stock(String id) {
        StockItem item = stock.get(id);
        if (item == null) {
            throw new IllegalArgumentException("the plan cuts stock \"" + id + "\", which the job does not have");
        }
        return item;
    }

    RoughPiece rough(String part) {
        RoughPiece piece = rough.get(part);
        if (piece == null) {
            throw new IllegalArgumentException("the plan cuts part \"" + part + "\", which the job does not have");
        }
        return piece;
    }

    /** The entry's own trim, else the shop's for its form. */
    Trim trim(StockItem item) {
        return item.trimIn(shopTrim(item));
    }

    private Trim shopTrim(StockItem item) {
        return item.form() == Form.BOARD ? job.shop().boardTrim() : job.shop().sheetTrim();
    }
}
