package org.stockcutting.solve.layout;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** Parts of one size over the copies of patterns. No published table; the oracle tries every way. */
class DealingTest {

    private static int layouts(int[] copies, List<Dealing.Spot> spots, int[][] owners) {
        int layouts = 0;
        for (int pattern = 0; pattern < copies.length; pattern++) {
            TreeSet<String> ways = new TreeSet<>();
            for (int copy = 0; copy < copies[pattern]; copy++) {
                StringBuilder way = new StringBuilder();
                for (int s = 0; s < spots.size(); s++) {
                    if (spots.get(s).pattern() == pattern) {
                        way.append(owners[s][copy]).append(' ');
                    }
                }
                ways.add(way.toString());
            }
            layouts += ways.size();
        }
        return layouts;
    }

    private static int[] dealt(int[][] owners, int parts) {
        int[] dealt = new int[parts];
        for (int[] row : owners) {
            for (int owner : row) {
                if (owner != Dealing.NOBODY) {
                    dealt[owner]++;
                }
            }
        }
        return dealt;
    }

    @Test
    void dividesNothingWhereWholeRunsAddUp() {
        int[] copies = {5, 4, 3};
        List<Dealing.Spot> spots =
                List.of(new Dealing.Spot(0, 0), new Dealing.Spot(1, 0), new Dealing.Spot(2, 0), new Dealing.Spot(2, 1));
        int[][] owners = new Dealing(copies).deal(spots, new int[] {7, 8});
        assertThat(dealt(owners, 2)).containsExactly(7, 8);
        assertThat(layouts(copies, spots, owners)).isEqualTo(3);
    }

    @Test
    void dividesWhereAnotherSizeDividedAlready() {
        int[] copies = {10, 10};
        Dealing dealing = new Dealing(copies);
        List<Dealing.Spot> first = List.of(new Dealing.Spot(0, 0));
        List<Dealing.Spot> second = List.of(new Dealing.Spot(0, 1), new Dealing.Spot(1, 0));
        int[][] one = dealing.deal(first, new int[] {4, 6});
        int[][] two = dealing.deal(second, new int[] {14, 6});
        assertThat(dealt(two, 2)).containsExactly(14, 6);
        List<Dealing.Spot> all = new ArrayList<>(first);
        all.addAll(second);
        int[][] owners = {one[0], two[0], two[1]};
        assertThat(layouts(copies, all, owners)).isEqualTo(3);
    }

    @Test
    void placesWithoutAPartGoLast() {
        int[][] owners =
                new Dealing(new int[] {3}).deal(List.of(new Dealing.Spot(0, 0), new Dealing.Spot(0, 1)), new int[] {3});
        assertThat(owners[0]).containsExactly(0, 0, 0);
        assertThat(owners[1]).containsExactly(Dealing.NOBODY, Dealing.NOBODY, Dealing.NOBODY);
    }

    @Test
    void givesEachPartItsOwnWithAsFewLayoutsAsThereCanBe() {
        for (long seed = 1; seed <= 300; seed++) {
            Random random = new Random(seed);
            int[] copies = new int[1 + random.nextInt(4)];
            List<Dealing.Spot> spots = new ArrayList<>();
            int places = 0;
            for (int p = 0; p < copies.length; p++) {
                copies[p] = 1 + random.nextInt(3);
                spots.add(new Dealing.Spot(p, 0));
                places += copies[p];
            }
            int[] wanted = new int[2 + random.nextInt(2)];
            for (int i = 0; i < places; i++) {
                wanted[random.nextInt(wanted.length)]++;
            }
            int[][] owners = new Dealing(copies).deal(spots, wanted);
            assertThat(dealt(owners, wanted.length)).as("seed %d", seed).containsExactly(wanted);
            assertThat(layouts(copies, spots, owners))
                    .as("seed %d: %s for %s", seed, Arrays.toString(copies), Arrays.toString(wanted))
                    .isEqualTo(least(copies, spots, wanted, 0, new int[places]));
        }
    }

    private static int least(int[] copies, List<Dealing.Spot> spots, int[] wanted, int place, int[] flat) {
        if (place == flat.length) {
            int[][] owners = new int[copies.length][];
            int at = 0;
            for (int p = 0; p < copies.length; p++) {
                owners[p] = Arrays.copyOfRange(flat, at, at + copies[p]);
                at += copies[p];
            }
            return layouts(copies, spots, owners);
        }
        int least = Integer.MAX_VALUE;
        for (int part = 0; part < wanted.length; part++) {
            if (wanted[part] > 0) {
                wanted[part]--;
                flat[place] = part;
                least = Math.min(least, least(copies, spots, wanted, place + 1, flat));
                wanted[part]++;
            }
        }
        return least;
    }
}
