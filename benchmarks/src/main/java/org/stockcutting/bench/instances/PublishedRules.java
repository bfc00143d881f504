package org.stockcutting.bench.instances;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;

/** Instances by the rules that their papers give (the ranges from memory, held against the published files by a test where they lie). */
final class PublishedRules {

    private static final long UNIFORM_CAPACITY = 150;
    private static final long TRIPLET_CAPACITY = 1000;
    private static final int FIRST_VARIED_CLASS = 7;

    /** Sheet and greatest side of classes 1 to 6. */
    private static final long[][] PLAIN_CLASSES = {{10, 10}, {30, 10}, {40, 35}, {100, 35}, {100, 100}, {300, 100}};

    private PublishedRules() {}

    /** Falkenauer, Journal of Heuristics 2 (1996): sizes uniform from 20 to 100, capacity 150. */
    static Instance uniform(String name, String group, int items, Random random) {
        List<Long> sizes = new ArrayList<>();
        for (int i = 0; i < items; i++) {
            sizes.add(between(20, 100, random));
        }
        return new Instance(name, group, lengths(name, UNIFORM_CAPACITY, sizes), Known.NOTHING);
    }

    /**
     * Falkenauer (1996): triplets that fill a capacity of 1000 exactly, the first of 380 to 490, the second from 250 to under half of
     * what is left. The sizes together fill a third as many boards as there are items, so no fewer can do.
     */
    static Instance triplets(String name, String group, int items, Random random) {
        List<Long> sizes = new ArrayList<>();
        for (int i = 0; i < items / 3; i++) {
            long first = between(380, 490, random);
            long left = TRIPLET_CAPACITY - first;
            long second = between(250, (left - 1) / 2, random);
            Collections.addAll(sizes, first, second, left - second);
        }
        return new Instance(name, group, lengths(name, TRIPLET_CAPACITY, sizes), Known.optimum(items / 3));
    }

    private static Job lengths(String name, long capacity, List<Long> sizes) {
        TreeMap<Long, Integer> counts = new TreeMap<>(Collections.reverseOrder());
        sizes.forEach(size -> counts.merge(size, 1, Integer::sum));
        PlainJob job = new PlainJob(name, Goal.BOARDS, capacity, 0, false);
        counts.forEach(job::piece);
        job.board(capacity, null, null);
        return job.build();
    }

    /**
     * Sheets of classes 1 to 6 by Berkey, Wang (1987): both sides uniform from 1; of classes 7 to 10 by Martello, Vigo (1998): seven in
     * ten of one of four types, one in ten of each other, on 100 by 100.
     */
    static Instance sheets(String name, String group, int number, int items, boolean turned, Random random) {
        boolean plain = number < FIRST_VARIED_CLASS;
        long side = plain ? PLAIN_CLASSES[number - 1][0] : 100;
        PlainJob job = new PlainJob(name, Goal.BOARDS, side, 0, turned);
        for (int i = 0; i < items; i++) {
            if (plain) {
                long most = PLAIN_CLASSES[number - 1][1];
                job.rectangle(between(1, most, random), between(1, most, random), 1);
            } else {
                varied(job, side, type(number - FIRST_VARIED_CLASS, random), random);
            }
        }
        job.sheet(side, side, null);
        return new Instance(name, group, job.build(), Known.NOTHING);
    }

    /** The usual type seven times in ten, each other type once. */
    private static int type(int usual, Random random) {
        int drawn = random.nextInt(10);
        return drawn < 7 ? usual : (usual + drawn - 6) % 4;
    }

    /** Wide and low, narrow and high, large, small. */
    private static void varied(PlainJob job, long side, int type, Random random) {
        long half = side / 2;
        long most = 2 * side / 3;
        switch (type) {
            case 0 -> job.rectangle(between(1, half, random), between(most, side, random), 1);
            case 1 -> job.rectangle(between(most, side, random), between(1, half, random), 1);
            case 2 -> job.rectangle(between(half, side, random), between(half, side, random), 1);
            default -> job.rectangle(between(1, half, random), between(1, half, random), 1);
        }
    }

    private static long between(long least, long most, Random random) {
        return least + random.nextInt((int) (most - least + 1));
    }
}
