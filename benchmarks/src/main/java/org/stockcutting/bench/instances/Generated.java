package org.stockcutting.bench.instances;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Jobs made by rule, asked for as {@code KIND:COUNT} or {@code KIND-SIZE:COUNT}, the size being the number of items. Same words, same
 * seed, same jobs.
 */
public final class Generated {

    private static final Pattern WORDS = Pattern.compile("([A-Za-z]+)([0-9]*)(?:-([0-9]+))?:([0-9]+)");
    private static final int MOST = 100_000;
    private static final int CLASSES = 10;

    private Generated() {}

    /** Makes one job of a kind that has no number. */
    @FunctionalInterface
    private interface Plain {
        Instance make(String name, String group, int size, Random random);
    }

    /** Makes one job; only a class looks at the number and at whether pieces may be turned. */
    @FunctionalInterface
    private interface Maker {
        Instance make(String name, String group, int number, int size, boolean turned, Random random);
    }

    private static Maker plain(Plain maker) {
        return (name, group, number, size, turned, random) -> maker.make(name, group, size, random);
    }

    /** The kinds, each with the size it has where none is given. */
    private enum Kind {
        U(120, plain(PublishedRules::uniform)),
        T(60, plain(PublishedRules::triplets)),
        CLASS(20, PublishedRules::sheets),
        BOARDS(20, plain(ShopJobs::boards)),
        SHEETS(12, plain(ShopJobs::sheets)),
        MIXED(16, plain(ShopJobs::mixed)),
        RUNS(30, plain(ShopJobs::runs)),
        SERIES(8, plain(ShopJobs::series)),
        MEASURED(15, plain(ShopJobs::measured)),
        SCARCE(12, plain(ShopJobs::scarce)),
        SAWS(12, plain(ShopJobs::saws)),
        PLYWOOD(20, plain(PlywoodJobs::make)),
        FOOT(15, plain(ShopJobs::byTheFoot)),
        SHELF(15, plain(ShopJobs::shelf));

        private final int usual;
        private final Maker maker;

        Kind(int usual, Maker maker) {
            this.usual = usual;
            this.maker = maker;
        }

        /** Kinds of one stream are the same jobs under other terms. */
        int stream() {
            return switch (this) {
                case SCARCE, SAWS -> SHEETS.ordinal();
                case FOOT, SHELF -> MEASURED.ordinal();
                default -> ordinal();
            };
        }
    }

    /**
     * Makes jobs.
     *
     * @param words {@code KIND:COUNT}: U, T, CLASS1 to CLASS10, boards, sheets, mixed, runs, series, measured, foot, shelf, scarce, saws, plywood
     * @param seed seed of all of them
     * @throws IllegalArgumentException if there is no such kind, saying which there are
     */
    public static List<Instance> of(String words, long seed) {
        return of(words, seed, false);
    }

    /**
     * Makes jobs whose pieces may be turned where their rule leaves that open.
     *
     * @param turned true if the rectangles of classes may be turned
     * @see #of(String, long)
     */
    public static List<Instance> of(String words, long seed, boolean turned) {
        Matcher matcher = WORDS.matcher(words);
        if (!matcher.matches()) {
            throw wrong(words);
        }
        Kind kind = kind(matcher.group(1), words);
        boolean numbered = !matcher.group(2).isEmpty();
        int number = numbered ? atMost(matcher.group(2), CLASSES, words) : 0;
        if (numbered != (kind == Kind.CLASS) || numbered && number == 0) {
            throw wrong(words);
        }
        int size = matcher.group(3) == null ? kind.usual : atMost(matcher.group(3), MOST, words);
        int count = atMost(matcher.group(4), MOST, words);
        if (size == 0 || count == 0 || kind == Kind.T && size % 3 != 0) {
            throw wrong(words);
        }
        return all(kind, number, size, count, turned && kind == Kind.CLASS, seed);
    }

    private static List<Instance> all(Kind kind, int number, int size, int count, boolean turned, long seed) {
        String group = "made/" + kind.name().toLowerCase(Locale.ROOT) + (number == 0 ? "" : number) + "-" + size
                + (turned ? " turned" : "");
        List<Instance> made = new ArrayList<>();
        for (int i = 1; i <= count; i++) {
            String name = String.format(Locale.ROOT, "%s seed %d no %03d", group, seed, i);
            Random random = new Random(seed * 1_000_003L + 7_919L * kind.stream() + 131L * number + 31L * size + i);
            made.add(kind.maker.make(name, group, number, size, turned, random));
        }
        return made;
    }

    private static Kind kind(String name, String words) {
        return Arrays.stream(Kind.values())
                .filter(kind -> kind.name().equalsIgnoreCase(name))
                .findFirst()
                .orElseThrow(() -> wrong(words));
    }

    private static int atMost(String digits, int most, String words) {
        if (digits.length() > 9 || Integer.parseInt(digits) > most) {
            throw wrong(words);
        }
        return Integer.parseInt(digits);
    }

    private static IllegalArgumentException wrong(String words) {
        String classes =
                IntStream.rangeClosed(1, CLASSES).mapToObj(i -> "CLASS" + i).collect(Collectors.joining(", "));
        return new IllegalArgumentException(
                "\"" + words + "\": wanted KIND:COUNT or KIND-ITEMS:COUNT, as U-250:10, with a kind of U, T "
                        + "(items a multiple of 3), " + classes
                        + ", boards, sheets, mixed, runs, series, measured, foot, shelf, scarce, saws, plywood");
    }
}
