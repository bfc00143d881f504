package org.stockcutting.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.stockcutting.Optimizer;
import org.stockcutting.PlanRejectedException;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.solve.guillotine.Oracle;
import org.stockcutting.solve.guillotine.Shelves;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;

/**
 * F: 1,000 tiny jobs of sheets, one to six pieces each (two sizes, limited and owned ones, grain, kerfs, trims, bad rectangles, saw
 * limits). Every plan passes the checker, never costs less than its bound and is as good as trying every edge-to-edge cut at every
 * whole millimetre; without limits it never costs more than shelves filled first-fit. The oracle sees no start and edge trims, so jobs
 * with a nail in a trim, or with such a trim and a longest cut, are only held against the checker.
 */
class F02_TinySheetsTest {

    private static final int JOBS = 1000;

    /** A job as text, and as the oracle sees it. */
    private record Tiny(String text, Instance instance, boolean plain, boolean unseenTrim) {}

    private final Optimizer optimizer = new Optimizer();
    private final List<String> wrong = new ArrayList<>();
    private int compared;
    private int shelved;

    @Test
    void everyTinyJobIsSound() {
        for (long seed = 1; seed <= JOBS; seed++) {
            Tiny tiny = new Maker(seed).make();
            try {
                look(tiny).forEach(text -> wrong.add(text + " in " + tiny.text()));
            } catch (PlanRejectedException e) {
                wrong.add(e.getMessage() + " in " + tiny.text());
            }
        }
        assertThat(wrong).as(() -> String.join("\n", wrong)).isEmpty();
        assertThat(compared).isGreaterThan(JOBS * 4 / 5);
        assertThat(shelved).isGreaterThan(JOBS / 10);
    }

    private List<String> look(Tiny tiny) {
        List<String> found = new ArrayList<>();
        Job job = Door.job(tiny.text());
        CuttingPlan plan = optimizer.plan(job);
        PlanChecker.check(job, plan).forEach(v -> found.add(v.toString()));
        long value = plan.objective().value().longValueExact();
        long bound = plan.objective().bound().longValueExact();
        if (bound > value) {
            found.add("bound " + bound + " over value " + value);
        }
        if (!tiny.unseenTrim()) {
            compared++;
            Oracle oracle = new Oracle(tiny.instance());
            if (placedArea(plan) != oracle.bestWeight()) {
                found.add("area " + placedArea(plan) + " of " + oracle.bestWeight());
            } else if (value != oracle.bestCost() || bound > value) {
                found.add("bound " + bound + ", value " + value + ", oracle " + oracle.bestCost());
            }
        }
        OptionalLong shelves = tiny.plain() ? shelves(tiny.instance()) : OptionalLong.empty();
        if (shelves.isPresent() && plan.unplaced().isEmpty()) {
            shelved++;
            if (value > shelves.getAsLong()) {
                found.add("value " + value + " over shelves " + shelves.getAsLong());
            }
        }
        return found;
    }

    private static long placedArea(CuttingPlan plan) {
        long area = 0;
        for (Layout layout : plan.layouts()) {
            for (var piece : layout.pieces()) {
                area += layout.repeat()
                        * (piece.length().nanometres() / 1_000_000)
                        * (piece.width().nanometres() / 1_000_000);
            }
        }
        return area;
    }

    /** Least cost over the sheets that can be bought without end, each alone, where every piece may lie on it as shelves want. */
    private static OptionalLong shelves(Instance instance) {
        long least = Long.MAX_VALUE;
        for (StockType stock : instance.stocks()) {
            boolean all = stock.copies() == StockType.UNLIMITED;
            for (int t = 0; t < instance.items().size(); t++) {
                ItemType item = instance.items().get(t);
                boolean straight = stock.places().get(t).straight();
                all &= (straight ? item.length() : item.width()) <= stock.length()
                        && (straight ? item.width() : item.length()) <= stock.width();
            }
            if (all) {
                Instance alone = new Instance(
                        instance.items(),
                        List.of(stock),
                        instance.crosscutKerf(),
                        instance.ripKerf(),
                        instance.limits(),
                        List.of(),
                        List.of());
                least = Math.min(least, Shelves.boards(alone) * stock.cost());
            }
        }
        return least == Long.MAX_VALUE ? OptionalLong.empty() : OptionalLong.of(least);
    }

    /** Draws one job, and writes it down twice. */
    private static final class Maker {

        private static final String[] GRAINS = {"length", "width", "any"};

        private final Random random;
        private final StringBuilder text = new StringBuilder("unit: mm, shop: {");
        private final List<ItemType> items = new ArrayList<>();
        private final List<Integer> grains = new ArrayList<>();
        private final List<Integer> classes = new ArrayList<>();
        private final List<StockType> stocks = new ArrayList<>();
        private final int[] trim = new int[4];
        private boolean plain;
        private boolean unseenTrim;

        Maker(long seed) {
            this.random = new Random(seed);
        }

        private boolean oneIn(int n) {
            return random.nextInt(n) == 0;
        }

        Tiny make() {
            int kerfX = random.nextInt(3);
            int kerfY = oneIn(2) ? kerfX : random.nextInt(3);
            text.append("kerf: {crosscut: " + kerfX + ", rip: " + kerfY + "}");
            for (int t = 0; t < 4; t++) {
                trim[t] = oneIn(3) ? 1 : 0;
            }
            text.append(", sheetTrim: {start: " + trim[0] + ", end: " + trim[1] + ", edge: " + trim[2] + ", farEdge: "
                    + trim[3] + "}");
            Instance.Limits limits = limits();
            text.append("}, parts: [");
            int open = 1 + random.nextInt(6);
            while (open > 0) {
                open -= part(open);
            }
            text.append("], stock: [");
            forSale(0);
            if (oneIn(2)) {
                text.append(", ");
                forSale(1);
            }
            text.append("]");
            if (oneIn(3)) {
                plain = false;
                text.append(", onHand: [");
                owned();
                text.append("]");
            }
            Instance instance = new Instance(items, stocks, kerfX, kerfY, limits, List.of(), List.of());
            return new Tiny(text.toString(), instance, plain, unseenTrim);
        }

        private Instance.Limits limits() {
            plain = oneIn(2);
            if (plain) {
                return Instance.Limits.NONE;
            }
            int rip = oneIn(3) ? 1 + random.nextInt(4) : 0;
            int longest = oneIn(4) ? 4 + random.nextInt(7) : 0;
            int across = oneIn(3) ? 2 + random.nextInt(6) : 0;
            int stages = oneIn(2) ? 1 + random.nextInt(3) : 0;
            int first = random.nextInt(3);
            text.append(", limits: {firstCut: " + new String[] {"any", "crosscut", "rip"}[first]);
            text.append(rip == 0 ? "" : ", ripCapacity: " + rip);
            text.append(longest == 0 ? "" : ", longestRip: " + longest);
            text.append(across == 0 ? "" : ", crosscutCapacity: " + across);
            text.append(stages == 0 ? "" : ", stages: " + stages);
            text.append("}");
            unseenTrim = (longest > 0 || across > 0) && (trim[0] > 0 || trim[2] > 0);
            return new Instance.Limits(
                    rip == 0 ? Long.MAX_VALUE : rip,
                    longest == 0 ? Long.MAX_VALUE : longest,
                    across == 0 ? Long.MAX_VALUE : across,
                    stages == 0 ? Integer.MAX_VALUE : stages,
                    first == 0 ? null : (Boolean) (first == 1),
                    0);
        }

        private int part(int open) {
            int count = 1 + random.nextInt(Math.min(2, open));
            int length = 1 + random.nextInt(7);
            int width = 1 + random.nextInt(5);
            int grain = random.nextInt(3);
            int woodClass = random.nextInt(3);
            text.append(items.isEmpty() ? "" : ", ")
                    .append("{quantity: " + count + ", length: " + length + ", width: " + width
                            + ", thickness: 18, grain: " + GRAINS[grain] + ", class: "
                            + new String[] {"clear", "tight-knot", "any"}[woodClass] + "}");
            items.add(new ItemType(length, width, (long) length * width, count, count));
            grains.add(grain);
            classes.add(woodClass);
            return count;
        }

        private void forSale(int index) {
            int length = 7 + random.nextInt(6);
            int width = 4 + random.nextInt(5);
            int cents = 10 + random.nextInt(60);
            int copies = oneIn(3) ? 1 + random.nextInt(2) : 0;
            int grain = random.nextInt(3);
            text.append("{id: s" + index + ", form: sheet, length: " + length + ", width: " + width
                    + ", thickness: 18, grain: "
                    + GRAINS[grain] + ", price: {amount: '0." + cents + "'}"
                    + (copies == 0 ? "" : ", available: " + copies) + "}");
            add(length, width, cents, copies == 0 ? StockType.UNLIMITED : copies, grain, List.of());
        }

        private void owned() {
            int length = 5 + random.nextInt(6);
            int width = 4 + random.nextInt(4);
            int grain = random.nextInt(3);
            text.append("{id: o, form: sheet, length: " + length + ", width: " + width + ", thickness: 18, grain: "
                    + GRAINS[grain] + ", zones: [");
            List<StockType.ZoneRect> zones = new ArrayList<>();
            int count = random.nextInt(3);
            for (int z = 0; z < count; z++) {
                int x = random.nextInt(length - 1);
                int y = random.nextInt(width - 1);
                int x1 = Math.min(length, x + 1 + random.nextInt(2));
                int y1 = Math.min(width, y + 1 + random.nextInt(2));
                int severity = random.nextInt(3);
                boolean metal = oneIn(4);
                text.append(z == 0 ? "" : ", ")
                        .append("{from: " + x + ", to: " + x1 + ", fromEdge: " + y + ", toEdge: " + y1 + ", severity: "
                                + new String[] {"tight-knot", "blemish", "unusable"}[severity]
                                + (metal ? ", kind: metal" : "") + "}");
                unseenTrim |= metal && (x < trim[0] || x1 > length - trim[1] || y < trim[2] || y1 > width - trim[3]);
                zones.add(
                        new StockType.ZoneRect(x - trim[0], y - trim[2], x1 - trim[0], y1 - trim[2], severity, metal));
            }
            text.append("]}");
            add(length, width, 0, 1, grain, zones);
        }

        private void add(int length, int width, int cents, int copies, int grain, List<StockType.ZoneRect> zones) {
            List<StockType.Placing> places = new ArrayList<>();
            for (int i = 0; i < items.size(); i++) {
                boolean either = grain == 2 || grains.get(i) == 2;
                boolean same = grain == grains.get(i);
                places.add(new StockType.Placing(either || same, either || !same, classes.get(i)));
            }
            stocks.add(new StockType(
                    length - trim[0] - trim[1],
                    width - trim[2] - trim[3],
                    trim[1],
                    trim[3],
                    cents,
                    copies,
                    0,
                    zones,
                    places));
        }
    }
}
