package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.solve.instance.StockType.ZoneRect;

/** Racks of boards, all different and with bad rectangles, made from the pieces that they are known to give. */
final class Racks {

    static final int UNUSABLE = 2;
    static final long BOUGHT_LENGTH = 96;
    static final long BOUGHT_WIDTH = 8;
    static final long PRICE = 100;

    private static final int WIDTHS = 4;

    private final Random random;
    private final long kerf;
    private final long[][] sizes;

    private Racks(long seed, int types, long kerf) {
        this.random = new Random(seed * 6151 + 5);
        this.kerf = kerf;
        this.sizes = new long[types][];
        for (int t = 0; t < types; t++) {
            sizes[t] = new long[] {8 + random.nextInt(30), 1 + t % WIDTHS};
        }
    }

    /** Boards that give every piece, so that nothing need be bought, hardly more; one kind of board is for sale. */
    static Instance enough(long seed, int boards, int types) {
        return new Racks(seed, types, seed % 2).rack(boards);
    }

    /** The same boards without what is for sale. */
    static Instance onHand(Instance instance) {
        return new Instance(
                instance.items(),
                instance.stocks().stream().filter(stock -> stock.cost() == 0).toList(),
                instance.crosscutKerf(),
                instance.ripKerf(),
                instance.limits(),
                instance.keep(),
                instance.groups());
    }

    /** The same boards with other demand. */
    static Instance wanting(Instance instance, int[] demand) {
        List<ItemType> items = new ArrayList<>();
        for (int t = 0; t < demand.length; t++) {
            ItemType item = instance.items().get(t);
            items.add(new ItemType(item.length(), item.width(), item.weight(), demand[t], demand[t]));
        }
        return new Instance(
                items,
                instance.stocks(),
                instance.crosscutKerf(),
                instance.ripKerf(),
                instance.limits(),
                instance.keep(),
                instance.groups());
    }

    private Instance rack(int boards) {
        int[] demand = new int[sizes.length];
        List<StockType> stocks = new ArrayList<>();
        for (int b = 0; b < boards; b++) {
            stocks.add(board(demand));
        }
        stocks.add(stock(BOUGHT_LENGTH, BOUGHT_WIDTH, PRICE, StockType.UNLIMITED, List.of()));
        List<ItemType> items = new ArrayList<>();
        for (int t = 0; t < sizes.length; t++) {
            int wanted = Math.max(1, demand[t]);
            items.add(new ItemType(sizes[t][0], sizes[t][1], sizes[t][0] * sizes[t][1], wanted, wanted));
        }
        return new Instance(items, stocks, kerf, kerf, Instance.Limits.NONE, List.of(), List.of());
    }

    /** Two to four strips of pieces; what a strip is shorter than the longest one is bad. */
    private StockType board(int[] demand) {
        List<long[]> strips = new ArrayList<>();
        long longest = 0;
        long width = 0;
        for (int n = 2 + random.nextInt(3); n > 0; n--) {
            long length = 0;
            int wide = 1 + random.nextInt(Math.min(WIDTHS, sizes.length));
            for (int k = 2 + random.nextInt(3); k > 0; k--) {
                int t = wide - 1 + WIDTHS * random.nextInt((sizes.length - wide) / WIDTHS + 1);
                demand[t]++;
                length += (length > 0 ? kerf : 0) + sizes[t][0];
            }
            width += strips.isEmpty() ? 0 : kerf;
            strips.add(new long[] {length, width, width + wide});
            width += wide;
            longest = Math.max(longest, length);
        }
        List<ZoneRect> zones = new ArrayList<>();
        for (long[] strip : strips) {
            if (longest - strip[0] > kerf) {
                zones.add(new ZoneRect(strip[0] + kerf, strip[1], longest, strip[2], UNUSABLE, false));
            }
        }
        return stock(longest, width, 0, 1, zones);
    }

    private StockType stock(long length, long width, long cost, int copies, List<ZoneRect> zones) {
        List<StockType.Placing> places = new ArrayList<>();
        for (int t = 0; t < sizes.length; t++) {
            places.add(new StockType.Placing(true, false, 0));
        }
        return new StockType(length, width, 0, 0, cost, copies, 0, zones, places);
    }
}
