package org.stockcutting.job;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.part.Part;
import org.stockcutting.stock.RandomBoards;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/**
 * A job with its lists in canonical order: parts and stock by id, zones by place, keep rules by size. What is planned, hashed and
 * written must not depend on the order in which a request listed things.
 */
public final class JobOrder {

    private static final Pattern POINTER = Pattern.compile("/(parts|stock|onHand)/(\\d+)(/.*)?");
    private static final Pattern ZONE = Pattern.compile("/zones/(\\d+)(/.*)?");

    private static final Comparator<Zone> BY_PLACE = Comparator.comparing(Zone::from)
            .thenComparing(Zone::to)
            .thenComparing(zone -> orZero(zone.fromEdge()))
            .thenComparing(zone -> orZero(zone.toEdge()))
            .thenComparing(Zone::severity)
            .thenComparing(Zone::face)
            .thenComparing(Zone::metal);

    private final Job original;
    private final Job sorted;

    private JobOrder(Job original) {
        this.original = original;
        List<Part> parts = new ArrayList<>(original.parts());
        parts.sort(Comparator.comparing(Part::id));
        List<StockItem.ForSale> forSale = new ArrayList<>(original.forSale());
        forSale.sort(Comparator.comparing(StockItem::id));
        List<StockItem.OnHand> onHand = new ArrayList<>();
        original.onHand()
                .forEach(item -> onHand.add(item.pieces(item.id(), item.quantity(), sortedZones(item.zones()))));
        onHand.sort(Comparator.comparing(StockItem::id));
        this.sorted = new Job(
                original.name(),
                original.writing(),
                original.sets(),
                withSortedKeepRules(original.shop()),
                original.allowances(),
                parts,
                forSale,
                onHand,
                original.goal(),
                original.effort(),
                original.terms(),
                sortedSubsets(original.compare()),
                withSortedModels(original.wood()),
                original.random().stream()
                        .sorted(Comparator.comparing(RandomBoards::id))
                        .toList(),
                original.shortage());
    }

    private static List<List<String>> sortedSubsets(List<List<String>> subsets) {
        return subsets.stream()
                .map(subset -> subset.stream().sorted().toList())
                .sorted(Comparator.comparing(subset -> String.join("\n", subset)))
                .toList();
    }

    public static JobOrder of(Job job) {
        return new JobOrder(job);
    }

    /** The job in canonical order. */
    public Job sorted() {
        return sorted;
    }

    /** Everything for sale and on hand, by id. */
    public static List<StockItem> stock(Job job) {
        List<StockItem> stock = new ArrayList<>(job.forSale());
        stock.addAll(job.onHand());
        stock.sort(Comparator.comparing(StockItem::id));
        return stock;
    }

    /**
     * A pointer into the job as listed, with the ids of parts and stock in place of their positions: it says the same whatever the order
     * of the lists. Slashes and tildes in ids are escaped as in RFC 6901.
     */
    public String byId(String asListed) {
        Matcher matcher = POINTER.matcher(asListed);
        if (!matcher.matches()) {
            return asListed;
        }
        String list = matcher.group(1);
        int index = Integer.parseInt(matcher.group(2));
        String rest = matcher.group(3) == null ? "" : matcher.group(3);
        if (list.equals("onHand")) {
            rest = zonePointer(original.onHand().get(index).zones(), rest);
        }
        String id = idOf(list, index).replace("~", "~0").replace("/", "~1");
        return "/" + list + "/" + id + rest;
    }

    private static String zonePointer(List<Zone> zones, String rest) {
        Matcher matcher = ZONE.matcher(rest);
        if (!matcher.matches()) {
            return rest;
        }
        Zone zone = zones.get(Integer.parseInt(matcher.group(1)));
        String tail = matcher.group(2) == null ? "" : matcher.group(2);
        return "/zones/" + sortedZones(zones).indexOf(zone) + tail;
    }

    private String idOf(String list, int index) {
        return switch (list) {
            case "parts" -> original.parts().get(index).id();
            case "stock" -> soldId(index);
            default -> original.onHand().get(index).id();
        };
    }

    /** Boards of random size stand behind everything else for sale. */
    private String soldId(int index) {
        int fixed = original.forSale().size();
        return index < fixed
                ? original.forSale().get(index).id()
                : original.random().get(index - fixed).id();
    }

    private static List<Zone> sortedZones(List<Zone> zones) {
        List<Zone> sorted = new ArrayList<>(zones);
        sorted.sort(BY_PLACE);
        return sorted;
    }

    private static ShopRules withSortedKeepRules(ShopRules shop) {
        List<KeepRule> keep = new ArrayList<>(shop.keepOffcuts());
        keep.sort(Comparator.comparing(KeepRule::form)
                .thenComparing(KeepRule::length)
                .thenComparing(KeepRule::width));
        return shop.withKeepOffcuts(keep);
    }

    private static WoodRules withSortedModels(WoodRules wood) {
        List<WoodModel> models = new ArrayList<>(wood.models());
        models.sort(Comparator.comparing(WoodModel::material)
                .thenComparing(WoodModel::grade, Comparator.nullsFirst(Comparator.naturalOrder())));
        return new WoodRules(wood.confidence(), wood.trials(), models);
    }

    private static Length orZero(@Nullable Length length) {
        return length == null ? Length.ZERO : length;
    }
}
