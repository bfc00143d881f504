package org.stockcutting.check;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.YieldFigures;

/**
 * Where the wood goes, in cubic nanometres, added up from areas on the boards.
 *
 * @param used raw volume of all boards
 * @param parts finished volume of all parts placed, spares included
 * @param spares the share of spares in it: they are filled from waste and count as waste under that goal
 * @param rough volume of the rough pieces in the board's thickness
 * @param kerf dust of all cuts but trims
 * @param trim trims with their cuts
 * @param zones bad zones in what is thrown away
 * @param kept offcuts kept
 * @param thrown offcuts not kept, bad zones included
 */
record WoodTally(
        BigInteger used,
        BigInteger parts,
        BigInteger spares,
        BigInteger rough,
        BigInteger kerf,
        BigInteger trim,
        BigInteger zones,
        BigInteger kept,
        BigInteger thrown) {

    static WoodTally of(Facts facts, Census census, List<LayoutCheck.Checked> layouts) {
        BigInteger used = BigInteger.ZERO;
        BigInteger parts = panels(facts, census);
        BigInteger spares = BigInteger.ZERO;
        BigInteger rough = BigInteger.ZERO;
        BigInteger kerf = BigInteger.ZERO;
        BigInteger trim = BigInteger.ZERO;
        BigInteger zones = BigInteger.ZERO;
        BigInteger kept = BigInteger.ZERO;
        BigInteger thrown = BigInteger.ZERO;
        for (LayoutCheck.Checked checked : layouts) {
            Board board = checked.board();
            used = used.add(checked.volume(board.raw().area()));
            kerf = kerf.add(checked.volume(checked.sawn().kerfArea()));
            trim = trim.add(checked.volume(checked.sawn().trimArea()));
            for (PlacedPiece piece : checked.layout().pieces()) {
                rough = rough.add(checked.volume(Rect.of(piece).area()));
                Rough of = facts.roughs().get(piece.part());
                if (of != null && of.kind() == Rough.Kind.WHOLE) {
                    BigInteger finished = Facts.finished(of.part(), board);
                    int demand = facts.demand(of.part());
                    long extra = piece.numbers().stream()
                                    .filter(number -> number > demand)
                                    .count()
                            * of.gang();
                    parts = parts.add(finished.multiply(
                            BigInteger.valueOf((long) checked.layout().repeat() * of.gang())));
                    spares = spares.add(finished.multiply(BigInteger.valueOf(extra)));
                }
            }
            for (Layout.LeftOver left : checked.layout().offcuts()) {
                Rect rect = LayoutCheck.rect(left);
                if (left.keep()) {
                    kept = kept.add(checked.volume(rect.area()));
                } else {
                    thrown = thrown.add(checked.volume(rect.area()));
                    zones = zones.add(checked.volume(badArea(board, rect)));
                }
            }
        }
        return new WoodTally(used, parts, spares, rough, kerf, trim, zones, kept, thrown);
    }

    /** Glue-ups and laminations count once, however many pieces make them; they are always given by sizes. */
    private static BigInteger panels(Facts facts, Census census) {
        BigInteger sum = BigInteger.ZERO;
        for (Rough rough : facts.roughs().values()) {
            if (rough.kind() != Rough.Kind.WHOLE && !facts.boards().isEmpty()) {
                Board any = facts.boards().get(facts.boards().firstKey());
                if (any != null) {
                    sum = sum.add(Facts.finished(rough.part(), any)
                            .multiply(BigInteger.valueOf(
                                    census.of(rough.part().id()).size())));
                }
            }
        }
        return sum;
    }

    /** Area of the union of the bad zones inside a rectangle: cut into columns at every zone's ends, then merged across. */
    static BigInteger badArea(Board board, Rect rect) {
        List<Rect> inside = board.zones().stream()
                .map(bad -> bad.rect().intersect(rect))
                .filter(r -> !r.isEmpty())
                .toList();
        List<Long> xs = new ArrayList<>();
        inside.forEach(r -> {
            xs.add(r.x0());
            xs.add(r.x1());
        });
        List<Long> ends = xs.stream().sorted().distinct().toList();
        BigInteger area = BigInteger.ZERO;
        for (int i = 0; i + 1 < ends.size(); i++) {
            long from = ends.get(i);
            long to = ends.get(i + 1);
            area = area.add(BigInteger.valueOf(to - from).multiply(BigInteger.valueOf(covered(inside, from, to))));
        }
        return area;
    }

    private static long covered(List<Rect> rects, long from, long to) {
        List<Rect> here = rects.stream()
                .filter(r -> r.x0() <= from && r.x1() >= to)
                .sorted(Comparator.comparingLong(Rect::y0))
                .toList();
        long covered = 0;
        long reached = Long.MIN_VALUE;
        for (Rect rect : here) {
            long start = Math.max(reached, rect.y0());
            if (rect.y1() > start) {
                covered += rect.y1() - start;
                reached = rect.y1();
            }
        }
        return covered;
    }

    void check(YieldFigures said, Inspection inspection) {
        compare("used", used, said.used().cubicNanometres(), inspection);
        compare("parts", parts, said.parts().cubicNanometres(), inspection);
        compare("allowance", rough.subtract(parts), said.allowance().cubicNanometres(), inspection);
        compare("kerf", kerf, said.kerf().cubicNanometres(), inspection);
        compare("trim", trim, said.trim().cubicNanometres(), inspection);
        compare("zones", zones, said.zones().cubicNanometres(), inspection);
        compare("offcutsKept", kept, said.offcutsKept().cubicNanometres(), inspection);
        compare("waste", thrown.subtract(zones), said.waste().cubicNanometres(), inspection);
        BigDecimal ratio = used.signum() == 0
                ? BigDecimal.ZERO
                : new BigDecimal(parts).divide(new BigDecimal(used), 4, RoundingMode.FLOOR);
        inspection.require(
                ratio.compareTo(said.ratio()) == 0,
                Cause.YIELD,
                "/yield/ratio",
                "says " + said.ratio() + ", is " + ratio);
    }

    private static void compare(String name, BigInteger right, BigInteger said, Inspection inspection) {
        inspection.require(
                right.equals(said),
                Cause.YIELD,
                "/yield/" + name,
                "says " + said + " nm3, the layouts give " + right + " nm3");
    }
}
