package org.stockcutting.check;

import java.math.BigInteger;
import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;
import org.stockcutting.job.Job;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.part.Taper;
import org.stockcutting.stock.StockItem;

/**
 * The job, made ready to be looked things up in.
 *
 * @param job the job
 * @param boards stock for sale and on hand, by id
 * @param roughs rough pieces by part id
 */
record Facts(Job job, SortedMap<String, Board> boards, SortedMap<String, Rough> roughs) {

    static Facts of(Job job) {
        SortedMap<String, Board> boards = new TreeMap<>();
        for (StockItem item : job.forSale()) {
            boards.put(item.id(), Board.of(item, job.shop()));
        }
        for (StockItem item : job.onHand()) {
            boards.put(item.id(), Board.of(item, job.shop()));
        }
        SortedMap<String, Rough> roughs = new TreeMap<>();
        for (Part part : job.parts()) {
            roughs.put(part.id(), Rough.of(part, job));
        }
        return new Facts(job, Collections.unmodifiableSortedMap(boards), Collections.unmodifiableSortedMap(roughs));
    }

    int demand(Part part) {
        return Math.multiplyExact(part.quantity(), job.sets());
    }

    long crosscutKerf() {
        return job.shop().kerf().crosscut().nanometres();
    }

    long ripKerf() {
        return job.shop().kerf().rip().nanometres();
    }

    /** Volume of one finished part, the strips of its edging not counted; where the board is taken as it comes its whole section is the part's. */
    static BigInteger finished(Part part, Board board) {
        BigInteger length = big(part.length().nanometres() - Rough.onEnds(part));
        if (part.section() instanceof Section.Measured measured) {
            long width = measured.width().nanometres() - Rough.onEdges(part);
            long slope = part.shaping().ends() == null
                    ? 0
                    : Mitre.slope(part.shaping().ends(), width);
            BigInteger whole = length.subtract(big(slope))
                    .multiply(big(width))
                    .multiply(big(measured.thickness().nanometres()));
            return whole.subtract(nestedAway(part, length.longValueExact(), width, measured));
        }
        return length.multiply(big(board.raw().width())).multiply(big(board.thickness()));
    }

    /** What the taper takes off is wood of the other part where two lie head to foot; half a cubic nanometre counts as taken. */
    private static BigInteger nestedAway(Part part, long length, long width, Section.Measured measured) {
        Taper taper = part.shaping().taper();
        if (taper == null || !taper.nest()) {
            return BigInteger.ZERO;
        }
        BigInteger twice = big(length - Due.start(part, length))
                .multiply(big(width - taper.foot().nanometres()))
                .multiply(big(measured.thickness().nanometres()));
        return twice.add(BigInteger.ONE).shiftRight(1);
    }

    static BigInteger big(long value) {
        return BigInteger.valueOf(value);
    }
}
