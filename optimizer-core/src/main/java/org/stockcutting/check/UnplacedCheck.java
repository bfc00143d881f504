package org.stockcutting.check;

import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.SawLimits;
import org.stockcutting.job.ShopRules;
import org.stockcutting.job.Shortage;
import org.stockcutting.plan.Unplaced;

/** What got no wood: the quantities must add up with what was placed, and the reason must not be plainly false. */
final class UnplacedCheck {

    private final Facts facts;
    private final ShopRules shop;
    private final Census census;
    private final SortedMap<String, Integer> used;
    private final Inspection inspection;

    /**
     * @param used boards cut, by stock id
     */
    UnplacedCheck(Facts facts, Census census, SortedMap<String, Integer> used, Inspection inspection) {
        this.facts = facts;
        this.shop = facts.job().shop();
        this.census = census;
        this.used = used;
        this.inspection = inspection;
    }

    /**
     * @param estimated finished pieces that boards of random size are bought for, by part id
     */
    void check(List<Unplaced> unplaced, SortedMap<String, Integer> estimated) {
        SortedMap<String, Integer> missing = new TreeMap<>(estimated);
        for (int i = 0; i < unplaced.size(); i++) {
            Unplaced line = unplaced.get(i);
            String at = "/unplaced/" + i;
            Rough rough = facts.roughs().get(line.part());
            if (rough == null) {
                inspection.report(Cause.UNKNOWN_PART, at + "/part", "the job has no part \"" + line.part() + "\"");
                continue;
            }
            inspection.require(
                    line.quantity() >= 1, Cause.UNPLACED, at + "/quantity", "is at least 1, got " + line.quantity());
            missing.merge(line.part(), line.quantity(), Integer::sum);
            String lie = untrue(rough, line.reason());
            if (lie != null) {
                inspection.report(
                        Cause.UNPLACED, at + "/reason", "\"" + line.reason().word() + "\" is not so: " + lie);
            }
        }
        for (Rough rough : facts.roughs().values()) {
            int demand = facts.demand(rough.part());
            int placed = census.placed(rough, demand);
            int left = missing.getOrDefault(rough.part().id(), 0);
            inspection.require(
                    placed + left == demand,
                    Cause.UNPLACED,
                    "/unplaced",
                    rough.part().id() + ": " + placed + " placed and " + left + " left out do not make " + demand);
        }
    }

    /** Why the reason is not true, or null where it may well be. */
    private @Nullable String untrue(Rough rough, Unplaced.Reason reason) {
        for (Board board : facts.boards().values()) {
            if (!board.barred() && contradicts(rough, board, reason)) {
                return "see " + board.id();
            }
        }
        if (reason == Unplaced.Reason.EXCLUDED_BY_RULE && !hasRules(rough)) {
            return "the job has no rule that could exclude it";
        }
        return null;
    }

    private boolean contradicts(Rough rough, Board board, Unplaced.Reason reason) {
        boolean material = Fit.material(rough, board);
        boolean section = material && Fit.section(rough, board, shop);
        Rect usable = board.usable();
        long width = rough.leastWidthOn(board);
        boolean straight = section && Fit.lie(rough, board, false);
        boolean turned = section && Fit.lie(rough, board, true);
        return switch (reason) {
            case NO_STOCK_OF_MATERIAL -> material;
            case NO_STOCK_OF_THICKNESS -> section;
            case LONGER_THAN_ANY_STOCK -> {
                boolean longEnough =
                        (straight && rough.length() <= usable.length()) || (turned && rough.length() <= usable.width());
                // Where the long boards are too narrow and the wide ones too short, either word is true.
                yield Fit.anyhow(rough, board, shop) || (longEnough && !isWideEnoughSomewhere(rough));
            }
            case WIDER_THAN_ANY_STOCK ->
                (straight && Fit.isWideEnough(rough, board, width, rough.length()))
                        || (turned && width <= usable.length());
            case GRAIN_DOES_NOT_FIT -> Fit.anyhow(rough, board, shop);
            case NO_CLEAR_ZONE -> Fit.anyhow(rough, board, shop) && hasClearPlace(rough, board);
            case STOCK_EXHAUSTED ->
                Fit.anyhow(rough, board, shop)
                        && hasClearPlace(rough, board)
                        && !hasRules(rough)
                        && rough.kind() == Rough.Kind.WHOLE
                        && hasBoardLeft(board);
            case EXCLUDED_BY_RULE, NOT_REACHED_BEFORE_LIMIT -> false;
        };
    }

    private boolean isWideEnoughSomewhere(Rough rough) {
        return facts.boards().values().stream()
                .filter(board -> !board.barred() && Fit.material(rough, board) && Fit.section(rough, board, shop))
                .anyMatch(board -> {
                    long width = rough.leastWidthOn(board);
                    return (Fit.lie(rough, board, false) && Fit.isWideEnough(rough, board, width, rough.length()))
                            || (Fit.lie(rough, board, true)
                                    && width <= board.usable().length());
                });
    }

    private boolean hasBoardLeft(Board board) {
        return board.copies().isEmpty()
                || used.getOrDefault(board.id(), 0) < board.copies().getAsInt();
    }

    private boolean hasRules(Rough rough) {
        return facts.job().shortage() == Shortage.WHOLE_SETS
                || rough.part().group() != null
                || rough.part().selection().cutFrom() != null
                || rough.isStave()
                || shop.carLength() != null
                || facts.boards().values().stream().anyMatch(b -> !b.evenness().isEven())
                || !shop.limits().equals(SawLimits.NONE)
                || facts.boards().values().stream()
                        .anyMatch(b -> b.zones().stream().anyMatch(z -> z.zone().metal()));
    }

    /** Tries the corner and every place just behind a zone, lying both ways. */
    private boolean hasClearPlace(Rough rough, Board board) {
        long length = rough.length();
        long width = rough.leastWidthOn(board);
        return (Fit.straight(rough, board) && hasClearPlace(rough, board, length, width))
                || (Fit.turned(rough, board) && hasClearPlace(rough, board, width, length));
    }

    private boolean hasClearPlace(Rough rough, Board board, long along, long across) {
        List<Rect> bad = board.zones().stream()
                .map(z -> PieceCheck.avoided(rough, z, board, shop))
                .filter(z -> !z.isEmpty())
                .toList();
        Rect usable = board.usable();
        TreeMap<Long, Boolean> xs = new TreeMap<>();
        TreeMap<Long, Boolean> ys = new TreeMap<>();
        xs.put(usable.x0(), true);
        ys.put(usable.y0(), true);
        bad.forEach(z -> xs.put(z.x1(), true));
        bad.forEach(z -> ys.put(z.y1(), true));
        for (long x : xs.keySet()) {
            for (long y : ys.keySet()) {
                Rect place = new Rect(x, y, x + along, y + across);
                if (usable.contains(place)
                        && PieceCheck.isOnWood(rough, place, board)
                        && bad.stream().noneMatch(z -> z.overlaps(place))) {
                    return true;
                }
            }
        }
        return false;
    }
}
