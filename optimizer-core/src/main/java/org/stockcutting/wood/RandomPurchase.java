package org.stockcutting.wood;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.blank.RoughSection;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.length.Volume;
import org.stockcutting.pattern.fit.Fit;
import org.stockcutting.pattern.fit.UsableArea;
import org.stockcutting.plan.Estimate;
import org.stockcutting.stock.Bill;
import org.stockcutting.stock.Money;
import org.stockcutting.stock.RandomBoards;
import org.stockcutting.stock.StockItem;

/**
 * Estimates what to buy of boards of random size. Boards are drawn one after the other, evenly from the ranges of length and width (nothing
 * better is known of a pile that nobody has seen; no source), with knots from the model of their grade, and cut as {@link RoughSawing} cuts them
 * until nothing is wanted. As long as something is wanted that the least of the boards could not give, the next board is picked among those
 * that are large enough for it, as a maker picks them. What was bought on average over all trials gives the yield.
 *
 * <p>The same job and seed give the same estimate on any machine.
 */
public final class RandomPurchase {

    private static final int MOST_TRIALS = 200;
    private static final int LEAST_TRIALS = 20;
    /** Pieces cut over all trials: keeps large jobs quick. */
    private static final long ALL_PIECES = 100_000;

    private static final int YIELD_DIGITS = 4;
    private static final long STREAM = 1_000_003;

    private final Job job;
    private final RandomBoards boards;
    private final int index;
    private final StockItem.OnHand largest;
    private final long alongTrim;
    private final long acrossTrim;
    private final KnotModel model;

    /**
     * @param job the job, for its shop, its knowledge of wood and its seed
     * @param boards what is bought
     * @param index place of the boards among those of random size, in order of their ids
     */
    public RandomPurchase(Job job, RandomBoards boards, int index) {
        this.job = job;
        this.boards = boards;
        this.index = index;
        this.largest = boards.largest(job.shop().carLength());
        this.model = new Models(job).of(boards.material(), boards.grade(), Models.usualGrade(boards.nominal()));
        UsableArea usable = UsableArea.of(largest, job.shop());
        this.alongTrim = largest.length().minus(usable.length()).nanometres();
        this.acrossTrim = largest.width().minus(usable.width()).nanometres();
    }

    /**
     * Finished pieces of one line.
     *
     * @param piece rough piece of a part that the largest board could give; not one that takes a trade size as it comes
     * @param quantity how many
     */
    public record Wanted(RoughPiece piece, int quantity) {}

    /**
     * What one trial bought.
     *
     * @param area of all boards, in square nanometres
     * @param boards the boards with their bad zones
     */
    record Bought(BigInteger area, List<StockItem.OnHand> boards) {}

    /** The estimate; empty where such boards hardly ever give what is wanted, so that no sensible purchase is enough. */
    public Optional<Estimate> estimate(List<Wanted> lines) {
        List<Want> wants = lines.stream()
                .map(line -> Want.of(line.piece(), line.quantity()))
                .toList();
        long pieces = wants.stream().mapToLong(Want::count).sum();
        int trials = (int) Math.max(LEAST_TRIALS, Math.min(MOST_TRIALS, ALL_PIECES / Math.max(1, pieces)));
        List<Bought> bought = new ArrayList<>();
        for (int trial = 0; trial < trials; trial++) {
            Bought one = purchase(lines, trial);
            if (one == null) {
                return Optional.empty();
            }
            bought.add(one);
        }
        return Optional.of(written(lines, wants, bought, model.origin()));
    }

    /** One trial; null if a great many boards did not give what is wanted. */
    @Nullable Bought purchase(List<Wanted> lines, int trial) {
        List<Want> wants = lines.stream()
                .map(line -> Want.of(line.piece(), line.quantity()))
                .toList();
        long most = 100 + 10 * wants.stream().mapToLong(Want::count).sum();
        boolean imperial = job.writing().unit().isImperial();
        BoardDraw knots = new BoardDraw(model, imperial ? Length.inches("0.0625") : Length.millimetres("1"));
        long mark = (imperial ? Length.inches("0.25") : Length.millimetres("5")).nanometres();
        RoughSawing sawing = new RoughSawing(
                wants, job.shop().kerf().crosscut(), job.shop().kerf().rip());
        BigInteger area = BigInteger.ZERO;
        List<StockItem.OnHand> bought = new ArrayList<>();
        while (!sawing.isDone()) {
            if (bought.size() >= most) {
                return null;
            }
            Noise noise = Noise.of(job.effort().seed(), STREAM, index, trial, bought.size());
            Want large =
                    sawing.open().stream().filter(this::isLarge).findFirst().orElse(null);
            long least = boards.leastLength().nanometres();
            long narrow = boards.leastWidth().nanometres();
            Length length = drawn(
                    large == null ? least : Math.max(least, large.length() + alongTrim), largest.length(), mark, noise);
            Length width = drawn(
                    large == null ? narrow : Math.max(narrow, large.leastWidth() + acrossTrim),
                    largest.width(),
                    mark,
                    noise);
            area = area.add(area(length.nanometres(), width.nanometres()));
            StockItem.OnHand board = boards.board(length, width, knots.draw(length, noise));
            bought.add(board);
            UsableArea usable = UsableArea.of(board, job.shop());
            sawing.cut(
                    Line.of(0, board, job.shop().zonesOf(board), job.shop()),
                    usable.width().nanometres());
        }
        return new Bought(area, bought);
    }

    /** True if the least of the boards could not give such a piece. */
    private boolean isLarge(Want want) {
        return want.length() + alongTrim > boards.leastLength().nanometres()
                || want.leastWidth() + acrossTrim > boards.leastWidth().nanometres();
    }

    private static Length drawn(long least, Length most, long mark, Noise noise) {
        long span = Math.max(0, most.nanometres() - least);
        return Length.ofNanometres(least + (long) (noise.unit() * (span / mark + 1)) * mark)
                .min(most);
    }

    private static BigInteger area(long length, long width) {
        return BigInteger.valueOf(length).multiply(BigInteger.valueOf(width));
    }

    private Estimate written(List<Wanted> lines, List<Want> wants, List<Bought> bought, String wood) {
        BigInteger thickness = BigInteger.valueOf(boards.billedThickness().nanometres());
        BigInteger net = wants.stream()
                .map(want -> area(want.length(), want.acrossAll()))
                .reduce(BigInteger.ZERO, BigInteger::add);
        BigInteger all = bought.stream().map(Bought::area).reduce(BigInteger.ZERO, BigInteger::add);
        BigDecimal yield = new BigDecimal(net.multiply(BigInteger.valueOf(bought.size())))
                .divide(new BigDecimal(all), YIELD_DIGITS, RoundingMode.DOWN)
                .max(BigDecimal.ONE.movePointLeft(YIELD_DIGITS));
        BigInteger netVolume = net.multiply(thickness);
        BigInteger volume =
                new BigDecimal(netVolume).divide(yield, 0, RoundingMode.CEILING).toBigInteger();
        BigDecimal feet = Bill.boardFeet(boards, volume);
        long boardsInAll = bought.stream().mapToLong(one -> one.boards().size()).sum();
        return new Estimate(
                boards.id(),
                lines.stream()
                        .map(line -> new Estimate.Served(line.piece().part().id(), line.quantity()))
                        .toList(),
                new Volume(netVolume),
                yield,
                new Volume(volume),
                feet,
                (int) -Math.floorDiv(-boardsInAll, (long) bought.size()),
                cost(volume, feet),
                sure(bought, thickness, volume, feet),
                atLeast(lines),
                bought.size(),
                wood);
    }

    private @Nullable Money cost(BigInteger volume, BigDecimal feet) {
        return boards.price() == null ? null : Bill.price(boards, volume, feet);
    }

    /** What was enough in the wanted share of the trials. */
    private Estimate.Sure sure(List<Bought> bought, BigInteger thickness, BigInteger volume, BigDecimal feet) {
        int at = job.wood()
                        .confidence()
                        .multiply(BigDecimal.valueOf(bought.size()))
                        .setScale(0, RoundingMode.CEILING)
                        .intValueExact()
                - 1;
        BigInteger[] areas = bought.stream().map(Bought::area).sorted().toArray(BigInteger[]::new);
        int[] counts =
                bought.stream().mapToInt(one -> one.boards().size()).sorted().toArray();
        BigInteger enough = areas[at].multiply(thickness).max(volume);
        BigDecimal enoughFeet = Bill.boardFeet(boards, enough).max(feet);
        return new Estimate.Sure(job.wood().confidence(), enoughFeet, counts[at], cost(enough, enoughFeet));
    }

    /** For each piece that the least of the boards cannot give: how many boards so large there must be, even of the largest. */
    private List<Estimate.AtLeast> atLeast(List<Wanted> lines) {
        List<Estimate.AtLeast> rows = new ArrayList<>();
        List<Want> wants = lines.stream()
                .map(line -> Want.of(line.piece(), line.quantity()))
                .toList();
        UsableArea usable = UsableArea.of(largest, job.shop());
        for (Want want : wants) {
            if (isLarge(want)) {
                long count = wants.stream()
                        .filter(other -> other.length() >= want.length() && other.leastWidth() >= want.leastWidth())
                        .mapToLong(Want::count)
                        .sum();
                long most =
                        copies(usable.length(), want.length(), job.shop().kerf().crosscut())
                                * copies(
                                        usable.width(),
                                        want.leastWidth(),
                                        job.shop().kerf().rip());
                rows.add(new Estimate.AtLeast(
                        Math.toIntExact(-Math.floorDiv(-count, most)),
                        Length.ofNanometres(want.leastWidth() + acrossTrim),
                        Length.ofNanometres(want.length() + alongTrim)));
            }
        }
        return rows.stream()
                .distinct()
                .filter(row -> rows.stream().noneMatch(other -> !other.equals(row) && covers(other, row)))
                .sorted(Comparator.comparing(Estimate.AtLeast::width)
                        .thenComparing(Estimate.AtLeast::length)
                        .reversed())
                .toList();
    }

    private static long copies(Length room, long size, Length kerf) {
        return (room.nanometres() + kerf.nanometres()) / (size + kerf.nanometres());
    }

    private static boolean covers(Estimate.AtLeast row, Estimate.AtLeast other) {
        return row.boards() >= other.boards()
                && !row.width().isLessThan(other.width())
                && !row.length().isLessThan(other.length());
    }

    /** Price of a cubic metre, to compare by; null where there is none. */
    public static @Nullable Money priceOfCubicMetre(RandomBoards boards) {
        if (boards.price() == null) {
            return null;
        }
        BigInteger cubicMetre = BigInteger.valueOf(1_000_000_000L).pow(3);
        return Bill.price(boards, cubicMetre, Bill.boardFeet(boards, cubicMetre));
    }

    /** True if the largest of the boards could give this piece; a trade size taken as it comes has no random width. */
    public boolean canGive(RoughPiece piece) {
        return piece.section() instanceof RoughSection.Sized
                && new Fit(job.shop()).ways(narrowest(piece), largest).straight();
    }

    /** A stave as narrow as it may be. */
    private static RoughPiece narrowest(RoughPiece piece) {
        if (piece.jointedWidth() == null || !(piece.section() instanceof RoughSection.Sized sized)) {
            return piece;
        }
        Length width = Length.ofNanometres(Want.of(piece, 1).leastWidth());
        return RoughPiece.uniform(
                piece.part(),
                piece.kind(),
                piece.perPart(),
                piece.length(),
                new RoughSection.Sized(width, sized.thickness(), sized.planed()),
                piece.jointedWidth(),
                piece.trail());
    }
}
