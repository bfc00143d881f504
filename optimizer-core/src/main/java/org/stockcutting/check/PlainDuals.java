package org.stockcutting.check;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.commons.math3.fraction.BigFraction;

/** Duals that need no search: a piece is worth the wood it takes with its cuts, by area or by length. */
final class PlainDuals {

    private PlainDuals() {}

    static List<Duals> of(Facts facts, Component component, Map<String, Integer> placed) {
        List<Duals> all = new ArrayList<>();
        all.add(by(component, placed, rough -> area(facts, component, rough, true)));
        all.add(by(component, placed, rough -> length(facts, rough)));
        if (new Goals(facts).isWaste()) {
            all.add(by(component, placed, rough -> area(facts, component, rough, false)));
        }
        return all;
    }

    private interface Measure {
        BigFraction of(Rough rough);
    }

    private static Duals by(Component component, Map<String, Integer> placed, Measure measure) {
        SortedMap<String, BigFraction> values = new TreeMap<>();
        for (Rough rough : component.roughs()) {
            if (Duals.rows(rough, placed) > 0) {
                values.put(rough.part().id(), measure.of(rough));
            }
        }
        return new Duals(values, placed);
    }

    private static BigFraction length(Facts facts, Rough rough) {
        return perRow(rough, BigInteger.valueOf(rough.length() + facts.crosscutKerf()));
    }

    /** Area, times thickness so that the goal waste can take it as it is. */
    private static BigFraction area(Facts facts, Component component, Rough rough, boolean kerf) {
        long across = kerf ? facts.ripKerf() : 0;
        long along = kerf ? facts.crosscutKerf() : 0;
        BigInteger least = null;
        for (Board board : component.boards()) {
            if (Fit.anyhow(rough, board, facts.job().shop())) {
                long width = rough.isStave() ? rough.mostWidth() : rough.leastWidthOn(board);
                BigInteger volume = Worth.times(rough.length() + along, width + across)
                        .multiply(BigInteger.valueOf(board.thickness()));
                least = least == null ? volume : least.min(volume);
            }
        }
        return perRow(rough, least == null ? BigInteger.ZERO : least);
    }

    private static BigFraction perRow(Rough rough, BigInteger piece) {
        return rough.isStave()
                ? new BigFraction(piece, BigInteger.valueOf(rough.mostWidth() - rough.perStave()))
                : new BigFraction(piece);
    }
}
