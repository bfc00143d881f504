package org.stockcutting.solve;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.blank.RoughSection;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.part.Binding;
import org.stockcutting.part.CutFrom;
import org.stockcutting.part.Making;
import org.stockcutting.pattern.fit.Fit;
import org.stockcutting.pattern.fit.UsableArea;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/**
 * Why a part got no wood: the first of the questions below that every stock item answers with no.
 */
public final class Diagnosis {

    private final Job job;
    private final List<StockItem> stock;
    private final Fit fit;
    private final LengthWriter writer;

    public Diagnosis(Job job, List<StockItem> stock) {
        this.job = job;
        this.stock = List.copyOf(stock);
        this.fit = new Fit(job.shop());
        this.writer = new LengthWriter(job.writing().unit(), job.writing().decimal());
    }

    /**
     * The reason for one part.
     *
     * @param missing finished pieces that are not placed
     * @param exhausted true if the search itself ran to its end
     * @param used boards that the plan cuts, by stock id
     */
    public Unplaced explain(RoughPiece piece, int missing, boolean exhausted, Map<String, Integer> used) {
        RoughPiece narrow = narrowest(piece);
        if (fitsNowhere(piece) && !fitsNowhere(narrow)) {
            return unplaced(
                    piece.part().id(),
                    missing,
                    Unplaced.Reason.EXCLUDED_BY_RULE,
                    null,
                    null,
                    "staves of equal width are too wide for this stock: ask for more of them with staves.count");
        }
        return explained(narrow, missing, exhausted, used);
    }

    private Unplaced explained(RoughPiece piece, int missing, boolean exhausted, Map<String, Integer> used) {
        String id = piece.part().id();
        List<StockItem> left = filter(stock, item -> fit.materialFits(piece, item));
        List<String> grades = piece.part().selection().grades();
        CutFrom chosen = piece.part().selection().cutFrom();
        if (chosen != null && chosen.from() == null && fitsNowhere(piece)) {
            return notThere(id, missing, chosen);
        }
        List<StockItem> sameWood =
                filter(stock, item -> item.material().equals(piece.part().material()));
        if (left.isEmpty() && !sameWood.isEmpty()) {
            return unplaced(
                    id,
                    missing,
                    Unplaced.Reason.NO_STOCK_OF_MATERIAL,
                    piece.part().material() + " " + String.join(" or ", grades),
                    String.join(
                            ", ",
                            sameWood.stream()
                                    .map(item -> item.grade() == null ? "not graded" : item.grade())
                                    .collect(Collectors.toCollection(TreeSet::new))),
                    "add " + piece.part().material() + " of grade " + String.join(" or ", grades)
                            + ", or let the part take another grade");
        }
        if (left.isEmpty()) {
            return unplaced(
                    id,
                    missing,
                    Unplaced.Reason.NO_STOCK_OF_MATERIAL,
                    piece.part().material(),
                    null,
                    "add stock of material \"" + piece.part().material() + "\", or change the part's material");
        }
        List<StockItem> sameMaterial = left;
        left = filter(left, item -> fit.sectionFits(piece, item));
        if (left.isEmpty()) {
            return noThickness(piece, missing, sameMaterial);
        }
        if (mustTurnInVain(piece, left)) {
            return wrongGrain(id, missing);
        }
        List<StockItem> wideEnough = filter(left, item -> isWideEnough(piece, item));
        if (filter(left, item -> isLongEnough(piece, item)).isEmpty()) {
            return tooLong(piece, missing, left);
        }
        if (wideEnough.isEmpty()) {
            return tooWide(piece, missing, left);
        }
        List<StockItem> grainFits = filter(left, item -> grainFits(piece, item));
        if (grainFits.isEmpty()) {
            // Either the grain forbids what the size would allow, or the long boards are too narrow and the wide ones
            // too short.
            return filter(left, item -> fit.waysBySize(piece, item).any()).isEmpty()
                    ? tooLong(piece, missing, wideEnough)
                    : wrongGrain(id, missing);
        }
        List<StockItem> clear = filter(grainFits, item -> isClear(piece, item));
        if (clear.isEmpty()) {
            return unplaced(
                    id,
                    missing,
                    Unplaced.Reason.NO_CLEAR_ZONE,
                    writer.exact(piece.length()),
                    null,
                    "add a board with " + text(piece.length()) + " of clear wood, or let the part take knots");
        }
        List<StockItem> allowed = filter(clear, item -> !fit.isTooLongToBuy(item));
        if (allowed.isEmpty()) {
            return carLimit(piece, missing, clear);
        }
        return lastReason(piece, missing, exhausted, allowed, used);
    }

    /** True if no stock item could give the piece even with nothing else on it: no search overcomes that. */
    public boolean isImpossible(RoughPiece piece) {
        return fitsNowhere(narrowest(piece));
    }

    /** A stave as narrow as it may be: that its fellows are planned equally wide is no law. */
    private static RoughPiece narrowest(RoughPiece piece) {
        if (piece.jointedWidth() == null
                || !(piece.section() instanceof RoughSection.Sized sized)
                || !(piece.part().making() instanceof Making.GlueUp glueUp)) {
            return piece;
        }
        Length width = sized.width().minus(piece.jointedWidth()).plus(glueUp.minStave());
        return RoughPiece.uniform(
                piece.part(),
                piece.kind(),
                piece.perPart(),
                piece.length(),
                new RoughSection.Sized(width, sized.thickness(), sized.planed()),
                glueUp.minStave(),
                piece.trail());
    }

    private boolean fitsNowhere(RoughPiece piece) {
        return stock.stream().noneMatch(item -> fit.ways(piece, item).any());
    }

    private Unplaced notThere(String id, int missing, CutFrom chosen) {
        Length from = chosen.from();
        return unplaced(
                id,
                missing,
                Unplaced.Reason.EXCLUDED_BY_RULE,
                "cut from " + chosen.stock() + (from == null ? "" : " at " + text(from)),
                null,
                (from == null ? "choose an entry that has room for it" : "measure the place again")
                        + ", or leave cutFrom out and let the plan choose");
    }

    /** Pieces that are there, but in no whole pack. */
    private static String openedPacks(List<StockItem> allowed) {
        StringBuilder said = new StringBuilder();
        for (StockItem item : allowed) {
            if (item instanceof StockItem.ForSale sold
                    && sold.available() != null
                    && sold.available() % sold.offer().pack() > 0) {
                said.append("; ")
                        .append(sold.id())
                        .append(" is only sold in whole packs of ")
                        .append(sold.offer().pack());
            }
        }
        return said.toString();
    }

    private Unplaced lastReason(
            RoughPiece piece, int missing, boolean proved, List<StockItem> allowed, Map<String, Integer> used) {
        String id = piece.part().id();
        CutFrom chosen = piece.part().selection().cutFrom();
        if (chosen != null) {
            return notThere(id, missing, chosen);
        }
        boolean exhausted = proved && !isEasy(piece, allowed, used);
        boolean limited = allowed.stream()
                .allMatch(item -> item.copies().isPresent()
                        && (exhausted
                                || piece.kind() != RoughPiece.Kind.WHOLE
                                || used.getOrDefault(item.id(), 0)
                                        >= item.copies().getAsInt()));
        if (limited && (exhausted || piece.part().group() == null)) {
            return unplaced(
                    id,
                    missing,
                    Unplaced.Reason.STOCK_EXHAUSTED,
                    String.valueOf(missing),
                    null,
                    "add stock for " + missing + " more of length " + text(piece.length())
                            + (exhausted ? "" : ", or allow more time") + openedPacks(allowed));
        }
        if (piece.part().group() != null) {
            return unplaced(
                    id,
                    missing,
                    Unplaced.Reason.EXCLUDED_BY_RULE,
                    "group " + piece.part().group(),
                    null,
                    piece.part().selection().binding() == Binding.PAIRS
                            ? "take the part out of its group, or add a board long enough for both mates"
                            : "take the part out of its group, or add a board long enough for the whole group");
        }
        if (piece.part().making() instanceof Making.GlueUp glueUp && glueUp.from() == Making.StaveSource.ONE_BOARD) {
            return unplaced(
                    id,
                    missing,
                    Unplaced.Reason.EXCLUDED_BY_RULE,
                    piece.perPart() + " staves from one board",
                    null,
                    "let the staves come from any boards, or add a board that gives all of them");
        }
        if (exhausted || hasLimits()) {
            return unplaced(
                    id,
                    missing,
                    Unplaced.Reason.EXCLUDED_BY_RULE,
                    null,
                    null,
                    "the saw limits leave no way to cut it: raise ripCapacity, crosscutCapacity or stages");
        }
        return unplaced(
                id, missing, Unplaced.Reason.NOT_REACHED_BEFORE_LIMIT, null, null, "allow more work or seconds");
    }

    /** True if the piece could lie alone on a board that is left: whatever a search says, the wood is there. */
    private boolean isEasy(RoughPiece piece, List<StockItem> allowed, Map<String, Integer> used) {
        return piece.kind() == RoughPiece.Kind.WHOLE
                && piece.part().group() == null
                && !hasLimits()
                && allowed.stream().noneMatch(item -> item.zones().stream().anyMatch(Zone::metal))
                && allowed.stream()
                        .anyMatch(item -> item.copies().isEmpty()
                                || used.getOrDefault(item.id(), 0)
                                        < item.copies().getAsInt());
    }

    private boolean hasLimits() {
        return !job.shop().limits().equals(org.stockcutting.job.SawLimits.NONE);
    }

    private Unplaced noThickness(RoughPiece piece, int missing, List<StockItem> sameMaterial) {
        String id = piece.part().id();
        if (piece.section() instanceof RoughSection.AsItComes asItComes) {
            return unplaced(
                    id,
                    missing,
                    Unplaced.Reason.NO_STOCK_OF_THICKNESS,
                    asItComes.nominal(),
                    null,
                    "add a length of " + asItComes.nominal());
        }
        Length need = ((RoughSection.Sized) piece.section()).thickness();
        Length nearest = sameMaterial.stream()
                .map(item -> flat(item, piece))
                .min(Comparator.comparing((Length t) -> Math.abs(t.minus(need).nanometres())))
                .orElse(Length.ZERO);
        return unplaced(
                id,
                missing,
                Unplaced.Reason.NO_STOCK_OF_THICKNESS,
                writer.exact(need),
                writer.exact(nearest),
                "add stock " + text(need) + " thick, or change the part's thickness or allowance");
    }

    /** Thickness that is left once the bow is planed out, where it is. */
    private static Length flat(StockItem item, RoughPiece piece) {
        boolean planed = piece.section() instanceof RoughSection.Sized sized && sized.planed();
        return planed
                ? item.thickness().minus(item.condition().bowOf(piece.length(), item.length()))
                : item.thickness();
    }

    private Unplaced tooLong(RoughPiece piece, int missing, List<StockItem> left) {
        Length longest = left.stream()
                .map(item -> UsableArea.of(item, job.shop()).length())
                .max(Comparator.naturalOrder())
                .orElse(Length.ZERO);
        StockItem sample = left.get(0);
        Length trims = sample.length().minus(UsableArea.of(sample, job.shop()).length());
        return unplaced(
                piece.part().id(),
                missing,
                Unplaced.Reason.LONGER_THAN_ANY_STOCK,
                writer.exact(piece.length()),
                writer.exact(longest),
                "add a length of " + nextLength(piece.length().plus(trims)) + " or more");
    }

    private Unplaced tooWide(RoughPiece piece, int missing, List<StockItem> left) {
        Length need = piece.section() instanceof RoughSection.Sized sized ? sized.width() : Length.ZERO;
        Length widest = left.stream()
                .map(item -> UsableArea.of(item, job.shop()).width().minus(Fit.lostWidth(piece, item, piece.length())))
                .max(Comparator.naturalOrder())
                .orElse(Length.ZERO);
        return unplaced(
                piece.part().id(),
                missing,
                Unplaced.Reason.WIDER_THAN_ANY_STOCK,
                writer.exact(need),
                writer.exact(widest),
                "add stock at least " + text(need) + " wide inside its trims, or glue the part up from staves");
    }

    private Unplaced carLimit(RoughPiece piece, int missing, List<StockItem> clear) {
        Length shortest = clear.stream()
                .map(StockItem::length)
                .min(Comparator.naturalOrder())
                .orElse(Length.ZERO);
        return unplaced(
                piece.part().id(),
                missing,
                Unplaced.Reason.EXCLUDED_BY_RULE,
                writer.exact(shortest),
                job.shop().carLength() == null ? null : writer.exact(job.shop().carLength()),
                "raise carLength to " + text(shortest) + ", or have the yard deliver");
    }

    /** The next length that is usually sold: even feet, or steps of 300 mm (EN 336 practice). */
    private String nextLength(Length need) {
        LengthUnit unit = job.writing().unit();
        long step = unit.isImperial() ? 2 * LengthUnit.FOOT.nanometres() : 300 * LengthUnit.MILLIMETRE.nanometres();
        long steps = -Math.floorDiv(-need.nanometres(), step);
        return unit.isImperial() ? 2 * steps + "'" : text(Length.ofNanometres(steps * step));
    }

    private static Unplaced wrongGrain(String id, int missing) {
        return unplaced(
                id,
                missing,
                Unplaced.Reason.GRAIN_DOES_NOT_FIT,
                null,
                null,
                "let the part lie either way (grain \"any\"), or add wider stock");
    }

    /** The grain lets the piece lie across only, where it is too big; along, it would fit: its length is not the trouble. */
    private boolean mustTurnInVain(RoughPiece piece, List<StockItem> left) {
        return filter(left, item -> fit.waysByGrain(piece, item).straight() || grainFits(piece, item))
                        .isEmpty()
                && !filter(left, item -> fit.waysBySize(piece, item).straight()).isEmpty();
    }

    private boolean isLongEnough(RoughPiece piece, StockItem item) {
        UsableArea area = UsableArea.of(item, job.shop());
        Fit.Ways grain = fit.waysByGrain(piece, item);
        return (grain.straight() && !piece.length().isMoreThan(area.length()))
                || (grain.turned() && !piece.length().isMoreThan(area.width()));
    }

    private boolean isWideEnough(RoughPiece piece, StockItem item) {
        UsableArea area = UsableArea.of(item, job.shop());
        Fit.Ways grain = fit.waysByGrain(piece, item);
        Length width = Fit.widthOn(piece, area);
        Length needed = width.plus(Fit.lostWidth(piece, item, piece.length()));
        return (grain.straight() && !needed.isMoreThan(area.width()))
                || (grain.turned() && !width.isMoreThan(area.length()));
    }

    private boolean grainFits(RoughPiece piece, StockItem item) {
        Fit.Ways size = fit.waysBySize(piece, item);
        Fit.Ways grain = fit.waysByGrain(piece, item);
        return (size.straight() && grain.straight()) || (size.turned() && grain.turned());
    }

    private boolean isClear(RoughPiece piece, StockItem item) {
        Fit.Ways size = fit.waysBySize(piece, item);
        Fit.Ways grain = fit.waysByGrain(piece, item);
        return (size.straight() && grain.straight() && fit.hasClearPlace(piece, item, false))
                || (size.turned() && grain.turned() && fit.hasClearPlace(piece, item, true));
    }

    /** Exact text with its unit, as a person reads it. */
    private String text(Length length) {
        String exact = writer.exact(length);
        boolean bare = exact.chars().noneMatch(c -> Character.isLetter(c) || c == '"' || c == '\'');
        return bare ? exact + " " + job.writing().unit().symbol() : exact;
    }

    private static List<StockItem> filter(List<StockItem> items, Predicate<StockItem> test) {
        List<StockItem> kept = new ArrayList<>();
        for (StockItem item : items) {
            if (test.test(item)) {
                kept.add(item);
            }
        }
        return kept;
    }

    private static Unplaced unplaced(
            String part,
            int missing,
            Unplaced.Reason reason,
            @org.jspecify.annotations.Nullable String needs,
            @org.jspecify.annotations.Nullable String limit,
            String remedy) {
        return new Unplaced(part, missing, reason, needs, limit, remedy);
    }
}
