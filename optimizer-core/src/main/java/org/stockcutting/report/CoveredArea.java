package org.stockcutting.report;

import java.math.BigInteger;
import java.util.Comparator;
import java.util.List;
import java.util.stream.LongStream;

/** Area of the union of rectangles that may overlap: strip by strip between neighbouring x, intervals merged across. */
final class CoveredArea {

    private CoveredArea() {}

    static BigInteger of(List<Rectangle> rectangles) {
        List<Rectangle> sorted = rectangles.stream()
                .filter(r -> !r.isEmpty())
                .sorted(Comparator.comparingLong(Rectangle::y0))
                .toList();
        long[] bounds = sorted.stream()
                .flatMapToLong(r -> LongStream.of(r.x0(), r.x1()))
                .sorted()
                .distinct()
                .toArray();
        BigInteger area = BigInteger.ZERO;
        for (int i = 1; i < bounds.length; i++) {
            BigInteger covered = BigInteger.valueOf(coveredAcross(sorted, bounds[i - 1], bounds[i]));
            area = area.add(covered.multiply(BigInteger.valueOf(bounds[i] - bounds[i - 1])));
        }
        return area;
    }

    private static long coveredAcross(List<Rectangle> sorted, long from, long to) {
        long covered = 0;
        long reached = Long.MIN_VALUE;
        for (Rectangle r : sorted) {
            if (r.x0() <= from && r.x1() >= to && r.y1() > reached) {
                covered += r.y1() - Math.max(r.y0(), reached);
                reached = r.y1();
            }
        }
        return covered;
    }
}
