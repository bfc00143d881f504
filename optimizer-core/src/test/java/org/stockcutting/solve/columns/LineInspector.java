package org.stockcutting.solve.columns;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.Region;
import org.stockcutting.solve.instance.StockType;

/** Looks every layout over with no help from the engine, and adds up what it costs. */
final class LineInspector {

    private LineInspector() {}

    /** Weight left unplaced and cost; fails where a layout cannot be cut. */
    static long[] inspect(String what, Instance instance, Answer answer) {
        int[] placed = new int[instance.items().size()];
        int[] boards = new int[instance.stocks().size()];
        long cost = 0;
        for (Answer.PatternUse use : answer.uses()) {
            StockType stock = instance.stocks().get(use.stock());
            boards[use.stock()] += use.copies();
            int[] counts = board(what, instance, stock, (Region.Split) use.layout());
            for (int i = 0; i < counts.length; i++) {
                placed[i] += use.copies() * counts[i];
            }
            cost += use.copies() * (stock.cost() - gain(instance, stock, (Region.Split) use.layout()));
        }
        for (int s = 0; s < boards.length; s++) {
            int copies = instance.stocks().get(s).copies();
            assertThat(copies == StockType.UNLIMITED || boards[s] <= copies)
                    .as("%s: boards of stock %d", what, s)
                    .isTrue();
        }
        long unplaced = 0;
        for (int i = 0; i < placed.length; i++) {
            ItemType item = instance.items().get(i);
            assertThat(placed[i] + answer.unplaced().get(i))
                    .as("%s: item %d", what, i)
                    .isEqualTo(item.demand());
            assertThat(answer.unplaced().get(i)).as("%s: item %d", what, i).isNotNegative();
            unplaced += answer.unplaced().get(i) * item.weight();
        }
        assertThat(answer.duals()).hasSize(placed.length).allMatch(d -> d >= 0);
        return new long[] {unplaced, cost};
    }

    private static int[] board(String what, Instance instance, StockType stock, Region.Split layout) {
        int[] counts = new int[instance.items().size()];
        long kerf = instance.crosscutKerf();
        long before = -kerf;
        long cutFrom = 0;
        assertThat(layout.crosscut()).isTrue();
        assertThat(layout.parts()).as(what).isNotEmpty();
        for (Region part : layout.parts()) {
            Region.Item piece = (Region.Item) part;
            ItemType item = instance.items().get(piece.item());
            StockType.Placing place = stock.places().get(piece.item());
            counts[piece.item()]++;
            assertThat(piece.length()).as(what).isEqualTo(item.length());
            assertThat(piece.width()).as(what).isEqualTo(item.width() == 0 ? stock.width() : item.width());
            assertThat(place.straight()).as(what).isTrue();
            assertThat(piece.x()).as("%s: kerf before %s", what, piece).isGreaterThanOrEqualTo(before + kerf);
            assertThat(piece.x() + piece.length()).as(what).isLessThanOrEqualTo(stock.length());
            boolean endsWithBoard = piece.x() + piece.length() == stock.length() && stock.rawEnd() == 0;
            for (StockType.ZoneRect zone : stock.zones()) {
                boolean bad = zone.metal() || zone.severity() >= place.woodClass();
                long margin = zone.metal() ? kerf : 0;
                long from = piece.x() == 0 ? 0 : piece.x() - margin;
                long to = piece.x() + piece.length() + (endsWithBoard ? 0 : margin);
                assertThat(bad && from < zone.x1() && to > zone.x0())
                        .as("%s: %s in %s", what, piece, zone)
                        .isFalse();
            }
            long raw = stock.length() + stock.rawEnd();
            if (piece.x() - cutFrom >= kerf && piece.x() > cutFrom) {
                assertThat(raw - cutFrom)
                        .as(what)
                        .isGreaterThanOrEqualTo(instance.limits().minimumPiece());
            }
            if (!endsWithBoard) {
                assertThat(raw - piece.x())
                        .as(what)
                        .isGreaterThanOrEqualTo(instance.limits().minimumPiece());
            }
            before = piece.x() + piece.length();
            cutFrom = before + kerf;
        }
        for (int i = 0; i < counts.length; i++) {
            assertThat(counts[i])
                    .as("%s: per board", what)
                    .isLessThanOrEqualTo(instance.items().get(i).perBoard());
        }
        for (Instance.Group group : instance.groups()) {
            int sets = counts[group.items().get(0)] / group.perSet().get(0);
            for (int g = 0; g < group.items().size(); g++) {
                assertThat(counts[group.items().get(g)])
                        .as("%s: whole sets", what)
                        .isEqualTo(sets * group.perSet().get(g));
            }
        }
        return counts;
    }

    private static long gain(Instance instance, StockType stock, Region.Split layout) {
        List<Region> parts = layout.parts();
        Region last = parts.get(parts.size() - 1);
        long end = last.x() + last.length();
        return LineOracle.gain(instance, stock, end);
    }
}
