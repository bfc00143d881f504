package org.stockcutting.solve.layout;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;

/**
 * Deals the parts of one size to the places of that size, so that copies of a pattern stay alike as far as they can: each part is given
 * whole runs of copies that add up to it, if there are such; else one run is divided. Where a pattern is divided already, dividing it
 * there again costs nothing.
 *
 * <p>Least divisions is a partition problem, hard in general; all orders of few parts are tried, each with exact subset sums where
 * these are small. Mutable: remembers where patterns are divided.
 */
final class Dealing {

    /** A place that gets no part. */
    static final int NOBODY = -1;

    private static final int MOST_ORDERED = 4;
    private static final long MOST_SUMS = 2_000_000;

    /** For each pattern the first copy of each of its runs of equal copies. */
    private List<TreeSet<Integer>> runs;

    private final int[] copies;

    /** @param copies how often each pattern is cut */
    Dealing(int[] copies) {
        this.copies = copies;
        this.runs = new ArrayList<>();
        for (int ignored : copies) {
            runs.add(new TreeSet<>(List.of(0)));
        }
    }

    /** A place of the size that is dealt, on every copy of a pattern. */
    record Spot(int pattern, int place) {}

    /** Equal copies of one spot; nobody's or some part's. */
    private record Chunk(int spot, int from, int to, int owner) {
        int size() {
            return to - from;
        }

        Chunk owned(int by) {
            return new Chunk(spot, from, to, by);
        }
    }

    /**
     * Deals.
     *
     * @param spots in order of patterns
     * @param wanted how many places each part gets; together at most as many as there are
     * @return for each spot and each copy of its pattern the index of a part, or {@link #NOBODY}
     */
    int[][] deal(List<Spot> spots, int[] wanted) {
        Attempt best = null;
        for (int[] order : orders(wanted)) {
            Attempt attempt = new Attempt(spots, runs);
            for (int part : order) {
                attempt.give(part, wanted[part]);
            }
            if (best == null || attempt.divisions < best.divisions) {
                best = attempt;
            }
        }
        if (best == null) {
            best = new Attempt(spots, runs);
        }
        runs = best.ownRuns;
        return best.owners();
    }

    /** Largest first, then every other order of few parts. */
    private static List<int[]> orders(int[] wanted) {
        List<Integer> parts = new ArrayList<>();
        for (int part = 0; part < wanted.length; part++) {
            parts.add(part);
        }
        parts.sort((a, b) -> Integer.compare(wanted[b], wanted[a]));
        List<int[]> orders = new ArrayList<>();
        if (parts.size() > MOST_ORDERED) {
            orders.add(parts.stream().mapToInt(p -> p).toArray());
        } else {
            permute(parts, new ArrayList<>(), orders);
        }
        return orders;
    }

    private static void permute(List<Integer> rest, List<Integer> head, List<int[]> orders) {
        if (rest.isEmpty()) {
            orders.add(head.stream().mapToInt(p -> p).toArray());
        }
        for (int i = 0; i < rest.size(); i++) {
            List<Integer> less = new ArrayList<>(rest);
            List<Integer> more = new ArrayList<>(head);
            more.add(less.remove(i));
            permute(less, more, orders);
        }
    }

    /** Dealing in one order of the parts. */
    private final class Attempt {
        private final List<Spot> spots;
        private final List<TreeSet<Integer>> ownRuns = new ArrayList<>();
        private List<Chunk> chunks = new ArrayList<>();
        private int divisions;

        Attempt(List<Spot> spots, List<TreeSet<Integer>> runs) {
            this.spots = spots;
            runs.forEach(run -> ownRuns.add(new TreeSet<>(run)));
            for (int s = 0; s < spots.size(); s++) {
                int pattern = spots.get(s).pattern();
                for (int from : runs.get(pattern)) {
                    Integer next = runs.get(pattern).higher(from);
                    chunks.add(new Chunk(s, from, next == null ? copies[pattern] : next, NOBODY));
                }
            }
        }

        void give(int part, int wanted) {
            List<Integer> free = new ArrayList<>();
            for (int c = 0; c < chunks.size(); c++) {
                if (chunks.get(c).owner() == NOBODY) {
                    free.add(c);
                }
            }
            int missing = wanted;
            for (int c : fitting(free, wanted)) {
                missing -= chunks.get(c).size();
                chunks.set(c, chunks.get(c).owned(part));
            }
            if (missing > 0) {
                divide(part, missing);
            }
        }

        /** Free chunks that together come as near to what is wanted as they can without exceeding it. */
        private List<Integer> fitting(List<Integer> free, int wanted) {
            List<Integer> chosen = new ArrayList<>();
            if ((long) free.size() * wanted > MOST_SUMS) {
                int left = wanted;
                for (int c : free) {
                    if (chunks.get(c).size() <= left) {
                        left -= chunks.get(c).size();
                        chosen.add(c);
                    }
                }
                return chosen;
            }
            int[] by = new int[wanted + 1];
            Arrays.fill(by, -1);
            for (int c : free) {
                int size = chunks.get(c).size();
                for (int sum = wanted; sum >= size; sum--) {
                    if (by[sum] < 0 && (sum == size || by[sum - size] >= 0 && by[sum - size] != c)) {
                        by[sum] = c;
                    }
                }
            }
            int sum = wanted;
            while (sum > 0 && by[sum] < 0) {
                sum--;
            }
            while (sum > 0) {
                chosen.add(by[sum]);
                sum -= chunks.get(by[sum]).size();
            }
            return chosen;
        }

        /** Divides the smallest chunk that is large enough, and with it all that is cut from the same boards. */
        private void divide(int part, int missing) {
            int smallest = -1;
            for (int c = 0; c < chunks.size(); c++) {
                Chunk chunk = chunks.get(c);
                boolean enough = chunk.owner() == NOBODY && chunk.size() > missing;
                if (enough
                        && (smallest < 0 || chunk.size() < chunks.get(smallest).size())) {
                    smallest = c;
                }
            }
            if (smallest < 0) {
                return;
            }
            Chunk divided = chunks.get(smallest);
            int pattern = spots.get(divided.spot()).pattern();
            int at = divided.from() + missing;
            ownRuns.get(pattern).add(at);
            divisions++;
            List<Chunk> next = new ArrayList<>();
            for (Chunk chunk : chunks) {
                if (spots.get(chunk.spot()).pattern() != pattern || chunk.from() >= at || chunk.to() <= at) {
                    next.add(chunk);
                } else {
                    int first = chunk.equals(divided) ? part : chunk.owner();
                    next.add(new Chunk(chunk.spot(), chunk.from(), at, first));
                    next.add(new Chunk(chunk.spot(), at, chunk.to(), chunk.owner()));
                }
            }
            chunks = next;
        }

        /** Owners by spot and copy; on one board the places of one size go to the parts in their order. */
        int[][] owners() {
            int[][] owners = new int[spots.size()][];
            for (int s = 0; s < owners.length; s++) {
                owners[s] = new int[copies[spots.get(s).pattern()]];
            }
            for (Chunk chunk : chunks) {
                Arrays.fill(owners[chunk.spot()], chunk.from(), chunk.to(), chunk.owner());
            }
            int first = 0;
            while (first < owners.length) {
                int last = first;
                while (last < owners.length
                        && spots.get(last).pattern() == spots.get(first).pattern()) {
                    last++;
                }
                for (int copy = 0; copy < owners[first].length; copy++) {
                    sort(owners, first, last, copy);
                }
                first = last;
            }
            return owners;
        }

        private static void sort(int[][] owners, int first, int last, int copy) {
            int[] column = new int[last - first];
            for (int s = first; s < last; s++) {
                // Nobody comes last.
                column[s - first] = owners[s][copy] == NOBODY ? Integer.MAX_VALUE : owners[s][copy];
            }
            Arrays.sort(column);
            for (int s = first; s < last; s++) {
                owners[s][copy] = column[s - first] == Integer.MAX_VALUE ? NOBODY : column[s - first];
            }
        }
    }
}
