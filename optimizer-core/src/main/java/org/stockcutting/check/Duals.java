package org.stockcutting.check;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.commons.math3.fraction.BigFraction;

/**
 * What the rows are worth: one piece of a part, or one nanometre of a panel's width, in atomic units of the goal.
 *
 * @param values by part id, none negative
 * @param demand placed pieces by part id, panels counted whole
 */
record Duals(SortedMap<String, BigFraction> values, Map<String, Integer> demand) {

    private static final int BITS = 58;

    /**
     * Worths of one board in whole units.
     *
     * @param unit what one unit is; worths that do not come out whole are rounded up, which keeps the bound valid
     */
    record Scaled(List<Worth> worths, BigFraction unit) {}

    /** What is asked of a row: pieces, gangs counted as one, or nanometres of panel width. */
    static long rows(Rough rough, Map<String, Integer> demand) {
        long pieces = Math.max(0, demand.getOrDefault(rough.part().id(), 0));
        if (rough.isStave()) {
            return Math.multiplyExact(rough.panelWidth(), pieces);
        }
        return Math.multiplyExact(pieces, (long) rough.perPart()) / rough.gang();
    }

    BigFraction value(Rough rough) {
        return values.getOrDefault(rough.part().id(), BigFraction.ZERO);
    }

    /** Sum of worth times demand over a component. */
    BigFraction total(Component component) {
        BigFraction sum = BigFraction.ZERO;
        for (Rough rough : component.roughs()) {
            sum = sum.add(value(rough).multiply(BigInteger.valueOf(rows(rough, demand))));
        }
        return sum;
    }

    Duals times(BigFraction factor) {
        SortedMap<String, BigFraction> scaled = new TreeMap<>();
        values.forEach((part, value) -> scaled.put(part, value.multiply(factor)));
        return new Duals(scaled, demand);
    }

    Scaled on(Board board, Component component, Facts facts, Goals goals) {
        SortedMap<String, BigFraction> exact = new TreeMap<>();
        List<Worth> shapes = new ArrayList<>();
        for (Rough rough : component.roughs()) {
            BigFraction worth = worthOn(board, rough, component, facts, goals);
            long rows = rows(rough, demand);
            if (rows > 0
                    && worth.compareTo(BigFraction.ZERO) > 0
                    && Fit.anyhow(rough, board, facts.job().shop())) {
                exact.put(rough.part().id(), worth);
                shapes.add(shape(rough, board, rows));
            }
        }
        BigFraction unit = unit(board, shapes, exact, facts);
        List<Worth> worths = new ArrayList<>();
        for (Worth shape : shapes) {
            BigFraction units = exact.getOrDefault(shape.rough().part().id(), BigFraction.ZERO)
                    .divide(unit);
            worths.add(new Worth(
                    shape.rough(),
                    ceil(units).longValueExact(),
                    shape.cap(),
                    shape.straight(),
                    shape.turned(),
                    shape.length(),
                    shape.leastWidth(),
                    shape.mostWidth()));
        }
        return new Scaled(worths, unit);
    }

    /** Under the goal waste a part taken as it comes counts for less on a thinner board; the worth carries the difference. */
    private BigFraction worthOn(Board board, Rough rough, Component component, Facts facts, Goals goals) {
        BigFraction worth = value(rough);
        if (!goals.isWaste()
                || !rough.asItComes()
                || !Fit.anyhow(rough, board, facts.job().shop())) {
            return worth;
        }
        BigInteger most = goals.mostFinished(rough, component);
        BigInteger here = Facts.finished(rough.part(), board);
        return most == null ? worth : worth.subtract(most.subtract(here));
    }

    private static Worth shape(Rough rough, Board board, long rows) {
        boolean straight = Fit.straight(rough, board);
        boolean turned = Fit.turned(rough, board);
        long across = Math.max(
                straight ? board.usable().width() : 0, turned ? board.usable().length() : 0);
        long least = rough.leastWidthOn(board);
        long most = rough.isStave() ? Math.min(rough.mostWidth(), across) : least;
        return new Worth(rough, 0, rows, straight, turned, rough.length(), least, most);
    }

    /** The greatest unit in which all worths are whole, unless a board full of them would not fit a long: then a coarser one. */
    private static BigFraction unit(
            Board board, List<Worth> shapes, SortedMap<String, BigFraction> exact, Facts facts) {
        BigInteger divisor = BigInteger.ZERO;
        BigInteger denominator = BigInteger.ONE;
        BigFraction full = BigFraction.ONE;
        for (BigFraction worth : exact.values()) {
            BigInteger common = denominator.gcd(worth.getDenominator());
            denominator = denominator.multiply(worth.getDenominator().divide(common));
            divisor = divisor.gcd(worth.getNumerator());
            if (denominator.bitLength() > 2_000) {
                break;
            }
        }
        BigInteger area = Worth.times(
                board.usable().length() + facts.crosscutKerf(), board.usable().width() + facts.ripKerf());
        for (Worth shape : shapes) {
            BigInteger own = shape.folded(facts.crosscutKerf(), facts.ripKerf()).max(BigInteger.ONE);
            BigFraction worth = exact.getOrDefault(shape.rough().part().id(), BigFraction.ZERO);
            BigInteger widths = BigInteger.valueOf(shape.isStave() ? shape.mostJointed() : 1);
            BigFraction filled =
                    worth.multiply(widths).multiply(area.divide(own).add(BigInteger.TWO));
            full = full.compareTo(filled) < 0 ? filled : full;
        }
        BigFraction whole = new BigFraction(divisor.max(BigInteger.ONE), denominator);
        BigFraction coarse = full.divide(BigInteger.ONE.shiftLeft(BITS));
        return whole.compareTo(coarse) >= 0 && denominator.bitLength() <= 2_000 ? whole : coarse;
    }

    static BigInteger ceil(BigFraction value) {
        BigInteger[] parts = value.getNumerator().divideAndRemainder(value.getDenominator());
        return parts[1].signum() > 0 ? parts[0].add(BigInteger.ONE) : parts[0];
    }
}
