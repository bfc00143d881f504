package org.stockcutting.check;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.plan.Derived;
import org.stockcutting.plan.Estimate;
import org.stockcutting.stock.Money;
import org.stockcutting.stock.RandomBoards;

/**
 * What is estimated of boards of random size: that they could serve their parts, and that every figure follows from the yield. The yield itself
 * comes from drawn boards; here it only has to be a share.
 */
final class EstimateCheck {

    private final Facts facts;
    private final Inspection inspection;

    EstimateCheck(Facts facts, Inspection inspection) {
        this.facts = facts;
        this.inspection = inspection;
    }

    /** Checks all estimates; gives how many finished pieces of each part they are for. */
    SortedMap<String, Integer> check(Derived derived) {
        SortedMap<String, Integer> served = new TreeMap<>();
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < derived.estimates().size(); i++) {
            Estimate estimate = derived.estimates().get(i);
            String at = "/estimates/" + i;
            RandomBoards boards = facts.job().random().stream()
                    .filter(own -> own.id().equals(estimate.stock()))
                    .findFirst()
                    .orElse(null);
            if (boards == null || !seen.add(estimate.stock())) {
                inspection.report(
                        Cause.UNKNOWN_STOCK,
                        at + "/stock",
                        "the job has no boards of random size \"" + estimate.stock() + "\", or they stand twice");
                continue;
            }
            parts(estimate, boards, at, served);
            figures(estimate, boards, at);
            boolean said = derived.warnings().stream()
                    .anyMatch(w -> w.code().equals("estimate") && w.pointer().equals(at));
            inspection.require(said, Cause.WARNING, at, "nothing says that this is an estimate");
        }
        return served;
    }

    private void parts(Estimate estimate, RandomBoards boards, String at, SortedMap<String, Integer> served) {
        Board largest = largest(boards);
        BigInteger net = BigInteger.ZERO;
        for (int i = 0; i < estimate.parts().size(); i++) {
            Estimate.Served line = estimate.parts().get(i);
            String here = at + "/parts/" + i;
            Rough rough = facts.roughs().get(line.part());
            if (rough == null) {
                inspection.report(Cause.UNKNOWN_PART, here, "the job has no part \"" + line.part() + "\"");
                continue;
            }
            boolean fits = !rough.asItComes()
                    && Fit.material(rough, largest)
                    && Fit.section(rough, largest, facts.job().shop())
                    && Fit.straight(rough, largest);
            inspection.require(fits, Cause.ESTIMATE, here, "none of these boards can give " + line.part());
            inspection.require(line.quantity() >= 1, Cause.ESTIMATE, here, "is at least 1, got " + line.quantity());
            served.merge(line.part(), line.quantity(), Integer::sum);
            net = net.add(area(rough).multiply(BigInteger.valueOf(pieces(rough, line))));
        }
        BigInteger volume = net.multiply(Facts.big(boards.billedThickness().nanometres()));
        same(estimate.net().cubicNanometres(), volume, at + "/net");
        List<Estimate.AtLeast> rows = atLeast(estimate, boards, largest);
        same(estimate.atLeast(), rows, at + "/atLeast");
    }

    /** Blanks of a line: a gang is one. */
    private static long pieces(Rough rough, Estimate.Served line) {
        return Rough.ceilDiv(line.quantity(), rough.gang());
    }

    /** Rough area of one finished part, or of a gang: the staves of a panel reach its width, each with what jointing takes. */
    private static BigInteger area(Rough rough) {
        long across = rough.isStave()
                ? rough.panelWidth() + rough.perPart() * rough.perStave()
                : rough.perPart() * rough.leastWidth();
        return Facts.big(rough.length()).multiply(Facts.big(across));
    }

    private Board largest(RandomBoards boards) {
        return Board.of(
                boards.largest(facts.job().shop().carLength()), facts.job().shop());
    }

    private void figures(Estimate estimate, RandomBoards boards, String at) {
        BigDecimal yield = estimate.yield();
        if (yield.signum() <= 0 || yield.compareTo(BigDecimal.ONE) > 0 || yield.scale() > 4) {
            inspection.report(Cause.ESTIMATE, at + "/yield", "is a share of four decimals, got " + yield);
            return;
        }
        BigInteger volume = new BigDecimal(estimate.net().cubicNanometres())
                .divide(yield, 0, RoundingMode.CEILING)
                .toBigInteger();
        same(estimate.volume().cubicNanometres(), volume, at + "/volume");
        BigDecimal feet = Tariff.boardFeet(volume, boards.billedThickness());
        same(estimate.boardFeet(), feet, at + "/boardFeet");
        same(estimate.cost(), cost(boards, volume, feet), at + "/cost");
        Estimate.Sure sure = estimate.sure();
        same(sure.chance(), facts.job().wood().confidence(), at + "/sure/chance");
        inspection.require(
                sure.boardFeet().compareTo(estimate.boardFeet()) >= 0,
                Cause.ESTIMATE,
                at + "/sure/boardFeet",
                "is not less than the average, " + estimate.boardFeet());
        inspection.require(
                estimate.boards() >= 1 && sure.boards() >= 1 && estimate.trials() >= 1,
                Cause.ESTIMATE,
                at,
                "boards and trials are at least 1");
        inspection.require(
                (sure.cost() == null) == (boards.price() == null),
                Cause.ESTIMATE,
                at + "/sure/cost",
                "there is a cost where there is a price");
    }

    /** Price of a volume, rounded half up once; board feet are billed as they are told. */
    private static @Nullable Money cost(RandomBoards boards, BigInteger volume, BigDecimal feet) {
        return boards.price() == null ? null : Tariff.price(boards.price(), volume, feet);
    }

    /** Rows that no other row makes idle, of pieces that the least of the boards cannot give. */
    private List<Estimate.AtLeast> atLeast(Estimate estimate, RandomBoards boards, Board largest) {
        List<Estimate.AtLeast> all = new ArrayList<>();
        long alongTrim = largest.raw().length() - largest.usable().length();
        long acrossTrim = largest.raw().width() - largest.usable().width();
        for (Estimate.Served line : estimate.parts()) {
            Rough rough = facts.roughs().get(line.part());
            if (rough == null || rough.asItComes()) {
                continue;
            }
            long along = rough.length() + alongTrim;
            long across = rough.leastWidth() + acrossTrim;
            if (along <= boards.leastLength().nanometres()
                    && across <= boards.leastWidth().nanometres()) {
                continue;
            }
            long count = estimate.parts().stream()
                    .mapToLong(other -> atLeastAsLarge(other, rough))
                    .sum();
            long most = copies(largest.usable().length(), rough.length(), facts.crosscutKerf())
                    * copies(largest.usable().width(), rough.leastWidth(), facts.ripKerf());
            if (most > 0 && count > 0) {
                int needed = Math.toIntExact(Rough.ceilDiv(count, most));
                all.add(new Estimate.AtLeast(needed, Length.ofNanometres(across), Length.ofNanometres(along)));
            }
        }
        return all.stream()
                .distinct()
                .filter(row -> all.stream().noneMatch(other -> !other.equals(row) && covers(other, row)))
                .sorted(Comparator.comparing(Estimate.AtLeast::width)
                        .thenComparing(Estimate.AtLeast::length)
                        .reversed())
                .toList();
    }

    private long atLeastAsLarge(Estimate.Served line, Rough than) {
        Rough rough = facts.roughs().get(line.part());
        if (rough == null
                || rough.asItComes()
                || rough.length() < than.length()
                || rough.leastWidth() < than.leastWidth()) {
            return 0;
        }
        return rough.perPart() * pieces(rough, line);
    }

    private static long copies(long room, long size, long kerf) {
        return (room + kerf) / (size + kerf);
    }

    private static boolean covers(Estimate.AtLeast row, Estimate.AtLeast other) {
        return row.boards() >= other.boards()
                && !row.width().isLessThan(other.width())
                && !row.length().isLessThan(other.length());
    }

    private void same(@Nullable Object said, @Nullable Object wanted, String at) {
        boolean equal = said instanceof BigDecimal one && wanted instanceof BigDecimal other
                ? one.compareTo(other) == 0
                : Objects.equals(said, wanted);
        inspection.require(equal, Cause.ESTIMATE, at, "says " + said + ", is " + wanted);
    }
}
