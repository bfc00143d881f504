package org.stockcutting.check;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Goal;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.part.Side;
import org.stockcutting.plan.BuyingLine;
import org.stockcutting.plan.Derived;
import org.stockcutting.plan.NearMiss;
import org.stockcutting.plan.TradeOff;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Money;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Trim;

/** Everything that follows from the core: buying list, sequence and set-ups, warnings that are due. */
final class DerivedCheck {

    private final Facts facts;
    private final SortedMap<String, Integer> used;
    private final Inspection inspection;
    private final MachineCheck machines;

    DerivedCheck(Facts facts, SortedMap<String, Integer> used, Inspection inspection) {
        this.facts = facts;
        this.used = used;
        this.inspection = inspection;
        this.machines = new MachineCheck(facts, inspection);
    }

    void check(Derived derived, List<LayoutCheck.Checked> layouts) {
        buying(derived.buyingList());
        SequenceSimulator.run(facts, layouts, derived.cutSequence(), derived.setUps(), inspection);
        for (LayoutCheck.Checked checked : layouts) {
            warnings(derived, checked);
        }
        nearMisses(derived.nearMisses());
    }

    /**
     * The table of a plan that weighs set-ups against money: dearer rows have fewer set-ups, one row is this plan, and none comes to less
     * with its set-ups counted.
     */
    void tradeOff(TradeOff table, @Nullable Money cost, int setUps) {
        List<TradeOff.Row> rows = table.rows();
        if (rows.isEmpty()) {
            return;
        }
        Money price = facts.job().shop().setUpPrice();
        if (price == null) {
            inspection.report(Cause.TRADE_OFF, "/tradeOff", "the job does not say what a set-up is worth");
            return;
        }
        long chosen = rows.stream().filter(TradeOff.Row::chosen).count();
        inspection.require(chosen == 1, Cause.TRADE_OFF, "/tradeOff", chosen + " rows are chosen, one is");
        Money least = rows.stream()
                .map(row -> row.withSetUps(price))
                .min(Comparator.naturalOrder())
                .orElseThrow();
        for (int i = 0; i < rows.size(); i++) {
            TradeOff.Row row = rows.get(i);
            String at = "/tradeOff/" + i;
            inspection.require(
                    i == 0
                            || (row.cost().compareTo(rows.get(i - 1).cost()) > 0
                                    && row.setUps() < rows.get(i - 1).setUps()),
                    Cause.TRADE_OFF,
                    at,
                    "costs more than the row before and has fewer set-ups");
            inspection.require(
                    !row.chosen() || (row.cost().equals(cost) && row.setUps() == setUps),
                    Cause.TRADE_OFF,
                    at,
                    "is not this plan: that costs " + cost + " with " + setUps + " set-ups");
            inspection.require(
                    !row.chosen() || row.withSetUps(price).compareTo(least) == 0,
                    Cause.TRADE_OFF,
                    at,
                    "comes to " + row.withSetUps(price) + " with its set-ups, another row to " + least);
        }
    }

    /** What can be told without planning again: the part may be that much smaller, the line stands once, and something is gained. */
    private void nearMisses(List<NearMiss> misses) {
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < misses.size(); i++) {
            NearMiss miss = misses.get(i);
            String at = "/nearMisses/" + i;
            Rough rough = facts.roughs().get(miss.part());
            if (rough == null) {
                inspection.report(Cause.UNKNOWN_PART, at + "/part", "the job has no part \"" + miss.part() + "\"");
                continue;
            }
            Part part = rough.part();
            inspection.require(
                    miss.by().isPositive()
                            && !miss.by().isMoreThan(part.shaping().tolerance()),
                    Cause.NEAR_MISS,
                    at + "/by",
                    "is more than nothing and at most the tolerance of " + part.id());
            inspection.require(
                    miss.side() == Side.LENGTH || part.section() instanceof Section.Measured,
                    Cause.NEAR_MISS,
                    at + "/side",
                    "a trade size has no width to make smaller");
            inspection.require(
                    seen.add(miss.side() + " " + part.id()),
                    Cause.NEAR_MISS,
                    at,
                    "this side of this part stands twice");
            inspection.require(isGain(miss), Cause.NEAR_MISS, at, "nothing is gained");
        }
    }

    private boolean isGain(NearMiss miss) {
        Money saves = miss.saves();
        if (saves == null || facts.job().goal() == Goal.BOARDS) {
            return miss.places() > 0 || miss.boards() + miss.sheets() > 0;
        }
        return miss.places() > 0 || saves.minorUnits() > 0;
    }

    private void buying(List<BuyingLine> lines) {
        SortedMap<String, Integer> wanted = new TreeMap<>();
        for (StockItem.ForSale stock : facts.job().forSale()) {
            if (used.getOrDefault(stock.id(), 0) > 0) {
                wanted.put(stock.id(), used.get(stock.id()));
            }
        }
        for (int i = 0; i < lines.size(); i++) {
            BuyingLine line = lines.get(i);
            String at = "/buyingList/" + i;
            Integer quantity = wanted.remove(line.stock());
            Board board = facts.boards().get(line.stock());
            if (quantity == null || board == null || !(board.item() instanceof StockItem.ForSale stock)) {
                inspection.report(
                        Cause.BUYING_LIST, at, "\"" + line.stock() + "\" need not be bought, or stands twice");
                continue;
            }
            buyingLine(line, stock, quantity, at);
        }
        for (Map.Entry<String, Integer> entry : wanted.entrySet()) {
            inspection.report(
                    Cause.BUYING_LIST, "/buyingList", entry.getValue() + " of " + entry.getKey() + " are missing");
        }
    }

    private Money money(BigInteger minor) {
        return Money.ofMinor(minor.longValueExact(), facts.job().writing().currency());
    }

    private void buyingLine(BuyingLine line, StockItem.ForSale stock, int cut, String at) {
        Tariff.Sale sale = Tariff.sale(stock, cut, facts.job().goal() == Goal.BOARDS);
        int quantity = (int) Math.min(Integer.MAX_VALUE, sale.pieces());
        Tariff.Row row = sale.row();
        Money price = row == null ? null : money(row.each());
        Money total = row == null ? null : money(sale.total());
        BigDecimal feet = stock.form() == Form.BOARD ? Tariff.boardFeet(stock, quantity) : null;
        buyingValue(line.quantity() == quantity, at + "/quantity", line.quantity(), quantity);
        BuyingLine.Lot lot = line.lot();
        int pack = stock.offer().pack();
        long from = row == null ? 0 : row.from();
        long more = sale.most() - sale.pieces();
        buyingValue(lot.used() == cut, at + "/used", lot.used(), cut);
        buyingValue(lot.pack() == pack, at + "/pack", lot.pack(), pack);
        buyingValue(lot.breakFrom() == from, at + "/breakFrom", lot.breakFrom(), from);
        buyingValue(lot.more() == more, at + "/more", lot.more(), more);
        buyingValue(Objects.equals(price, line.price()), at + "/price", line.price(), price);
        buyingValue(Objects.equals(total, line.total()), at + "/total", line.total(), total);
        BigDecimal said = line.boardFeet();
        boolean same = feet == null || said == null ? feet == said : feet.compareTo(said) == 0;
        buyingValue(same, at + "/boardFeet", said, feet);
    }

    private void buyingValue(boolean right, String at, @Nullable Object said, @Nullable Object wanted) {
        inspection.require(right, Cause.BUYING_LIST, at, "says " + said + ", is " + wanted);
    }

    /** A part that keeps a raw end or a sheet's own edge is warned about unless the entry itself says the end is good. */
    private void warnings(Derived derived, LayoutCheck.Checked checked) {
        Board board = checked.board();
        Trim own = board.item().ownTrim();
        boolean due = false;
        for (Sawn.Leaf leaf : checked.sawn().parts()) {
            Rect rect = leaf.rect();
            due |= rect.x0() == 0 && (own == null || own.start() == null);
            due |= rect.x1() == board.raw().x1() && (own == null || own.end() == null);
            if (board.item().form() == Form.SHEET) {
                due |= rect.y0() == 0 && (own == null || own.edge() == null);
                due |= rect.y1() == board.raw().y1() && (own == null || own.farEdge() == null);
            }
        }
        String code = board.item().form() == Form.SHEET ? "factory-edge" : "raw-end";
        String at = "/layouts/" + checked.index();
        boolean given = derived.warnings().stream()
                .anyMatch(w -> w.code().equals(code)
                        && (w.pointer().equals(at) || w.pointer().startsWith(at + "/")));
        inspection.require(
                given || !due, Cause.WARNING, at, "a part keeps the raw end or edge: the warning " + code + " is due");
        machines.check(derived, checked);
    }
}
