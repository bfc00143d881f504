package org.stockcutting.job;

import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Consumer;
import org.stockcutting.part.Part;
import org.stockcutting.stock.RandomBoards;
import org.stockcutting.stock.StockItem;

/**
 * One request: what is to be made, what it may be cut from, and the shop it is cut in. Every default is already filled in.
 *
 * @param name printed name of the job
 * @param writing unit, decimal mark, print precision, currency
 * @param sets how many times the parts list is made, at least 1
 * @param shop shop rules
 * @param allowances profiles by name, the built-in ones included
 * @param parts parts list, in the order of the request
 * @param forSale stock that can be bought, in the order of the request
 * @param onHand stock that is owned, in the order of the request
 * @param goal what is least
 * @param effort how hard to search
 * @param terms what is reckoned about load and bill beside the plan
 * @param compare subsets of what is for sale, by id, that a comparison looks at besides each entry alone and all together
 * @param wood knots to be expected, and how sure to be; it changes no plan
 * @param random boards of random size that can be bought by volume, in the order of the request; plans do not cut them, they say how much of
 *     them to buy for what nothing else serves
 * @param shortage what comes first where the wood runs short
 */
public record Job(
        String name,
        Writing writing,
        int sets,
        ShopRules shop,
        SortedMap<String, AllowanceProfile> allowances,
        List<Part> parts,
        List<StockItem.ForSale> forSale,
        List<StockItem.OnHand> onHand,
        Goal goal,
        Effort effort,
        TradeTerms terms,
        List<List<String>> compare,
        WoodRules wood,
        List<RandomBoards> random,
        Shortage shortage) {

    public Job {
        allowances = java.util.Collections.unmodifiableSortedMap(new TreeMap<>(allowances));
        parts = List.copyOf(parts);
        forSale = List.copyOf(forSale);
        onHand = List.copyOf(onHand);
        compare = compare.stream().map(List::copyOf).toList();
        random = List.copyOf(random);
    }

    /** A job that places most wood where it runs short. */
    public Job(
            String name,
            Writing writing,
            int sets,
            ShopRules shop,
            SortedMap<String, AllowanceProfile> allowances,
            List<Part> parts,
            List<StockItem.ForSale> forSale,
            List<StockItem.OnHand> onHand,
            Goal goal,
            Effort effort,
            TradeTerms terms,
            List<List<String>> compare,
            WoodRules wood,
            List<RandomBoards> random) {
        this(
                name,
                writing,
                sets,
                shop,
                allowances,
                parts,
                forSale,
                onHand,
                goal,
                effort,
                terms,
                compare,
                wood,
                random,
                Shortage.MOST_WOOD);
    }

    /** A job with nothing said about load, bill, wood, subsets to compare and boards of random size. */
    public Job(
            String name,
            Writing writing,
            int sets,
            ShopRules shop,
            SortedMap<String, AllowanceProfile> allowances,
            List<Part> parts,
            List<StockItem.ForSale> forSale,
            List<StockItem.OnHand> onHand,
            Goal goal,
            Effort effort) {
        this(
                name,
                writing,
                sets,
                shop,
                allowances,
                parts,
                forSale,
                onHand,
                goal,
                effort,
                TradeTerms.NONE,
                List.of(),
                WoodRules.defaults(),
                List.of(),
                Shortage.MOST_WOOD);
    }

    /** How many finished pieces of this line the whole job needs; spares not counted. */
    public int demand(Part part) {
        return Math.multiplyExact(part.quantity(), sets);
    }

    /** The same job, to be searched harder or less hard. */
    public Job withEffort(Effort other) {
        return with(draft -> draft.effort = other);
    }

    /** The same job with another parts list. */
    public Job withParts(List<Part> other) {
        return with(draft -> draft.parts = other);
    }

    /** The same job in which only some parts are made, of other stock. Subsets to compare and boards of random size are not carried over. */
    public Job withLists(List<Part> other, List<StockItem.ForSale> toBuy, List<StockItem.OnHand> owned) {
        return with(draft -> {
            draft.parts = other;
            draft.forSale = toBuy;
            draft.onHand = owned;
            draft.compare = List.of();
            draft.random = List.of();
        });
    }

    /** The same job in another shop. */
    public Job withShop(ShopRules other) {
        return with(draft -> draft.shop = other);
    }

    /** The same job with other things said about load and bill. */
    public Job withTerms(TradeTerms other) {
        return with(draft -> draft.terms = other);
    }

    /** The same job with other subsets to compare. */
    public Job withCompare(List<List<String>> other) {
        return with(draft -> draft.compare = other);
    }

    /** The same job with other knowledge of its wood. */
    public Job withWood(WoodRules other) {
        return with(draft -> draft.wood = other);
    }

    /** The same job with other boards of random size. */
    public Job withRandom(List<RandomBoards> other) {
        return with(draft -> draft.random = other);
    }

    /** The same job with another number of sets of another parts list, from the same wood. */
    public Job withSets(int other, List<Part> list) {
        return with(draft -> {
            draft.sets = other;
            draft.parts = list;
        });
    }

    /** The same job where something else comes first when the wood runs short. */
    public Job withShortage(Shortage other) {
        return with(draft -> draft.shortage = other);
    }

    /** The profiles that a job has without defining them, in exact inches. */
    public static Map<String, AllowanceProfile> builtInAllowances() {
        return BuiltInAllowances.PROFILES;
    }

    private Job with(Consumer<Draft> change) {
        Draft draft = new Draft(this);
        change.accept(draft);
        return draft.done();
    }

    /** All fields, some of them to be replaced: the one place that lists them, since records of Java 17 have no other way. */
    private static final class Draft {

        private String name;
        private Writing writing;
        private int sets;
        private ShopRules shop;
        private SortedMap<String, AllowanceProfile> allowances;
        private List<Part> parts;
        private List<StockItem.ForSale> forSale;
        private List<StockItem.OnHand> onHand;
        private Goal goal;
        private Effort effort;
        private TradeTerms terms;
        private List<List<String>> compare;
        private WoodRules wood;
        private List<RandomBoards> random;
        private Shortage shortage;

        Draft(Job from) {
            name = from.name;
            writing = from.writing;
            sets = from.sets;
            shop = from.shop;
            allowances = from.allowances;
            parts = from.parts;
            forSale = from.forSale;
            onHand = from.onHand;
            goal = from.goal;
            effort = from.effort;
            terms = from.terms;
            compare = from.compare;
            wood = from.wood;
            random = from.random;
            shortage = from.shortage;
        }

        Job done() {
            return new Job(
                    name,
                    writing,
                    sets,
                    shop,
                    allowances,
                    parts,
                    forSale,
                    onHand,
                    goal,
                    effort,
                    terms,
                    compare,
                    wood,
                    random,
                    shortage);
        }
    }
}
