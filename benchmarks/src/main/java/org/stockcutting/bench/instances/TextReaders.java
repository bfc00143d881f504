package org.stockcutting.bench.instances;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;

/** The public text formats of numbers, one method each; the papers stand beside them. */
final class TextReaders {

    private TextReaders() {}

    /** What a text becomes. */
    @FunctionalInterface
    interface Reader {
        Job read(String name, String text, boolean rotate);
    }

    /**
     * One stock length, least boards: {@code m}, capacity, then m lines of size and demand. Delorme, Iori, Martello, European Journal of
     * Operational Research 255 (2016) 1-20.
     */
    static Job oneLength(String name, String text, boolean rotate) {
        Numbers in = new Numbers(text);
        int m = in.count("the number of sizes");
        long capacity = in.size("the capacity");
        PlainJob job = new PlainJob(name, Goal.BOARDS, capacity, 0, rotate);
        for (int i = 0; i < m; i++) {
            job.piece(in.size("a size"), in.count("a demand"));
        }
        in.end();
        job.board(capacity, null, null);
        return job.build();
    }

    /**
     * Several stock lengths with costs and few copies: {@code K}, K lines of length, copies and cost, {@code n}, n lines of size and
     * demand. Belov, Scheithauer, European Journal of Operational Research 141 (2002); Crainic and others, Computers and Operations
     * Research 38 (2011).
     */
    static Job severalLengths(String name, String text, boolean rotate) {
        Numbers in = new Numbers(text);
        int k = in.count("the number of lengths");
        long[][] stock = new long[k][];
        long largest = 0;
        for (int i = 0; i < k; i++) {
            stock[i] = new long[] {in.size("a length"), in.count("copies"), in.number("a cost", 0)};
            largest = Math.max(largest, stock[i][0]);
        }
        PlainJob job = new PlainJob(name, Goal.COST, largest, 0, rotate);
        for (long[] s : stock) {
            if (s[1] > 0) {
                job.board(s[0], (int) s[1], s[2]);
            }
        }
        int n = in.count("the number of sizes");
        for (int i = 0; i < n; i++) {
            job.piece(in.size("a size"), in.count("a demand"));
        }
        in.end();
        return job.build();
    }

    /**
     * Several stock lengths with costs, as many as wanted: {@code n K . .}, K pairs of length and cost, n sizes. Haouari, Serairi,
     * Computers and Operations Research 36 (2009); Monaci, thesis (Bologna 2002).
     */
    static Job pricedLengths(String name, String text, boolean rotate) {
        Numbers in = new Numbers(text);
        int n = in.count("the number of items");
        int k = in.count("the number of lengths");
        in.skipLine();
        long[][] stock = new long[k][];
        long largest = 0;
        for (int i = 0; i < k; i++) {
            stock[i] = new long[] {in.size("a length"), in.number("a cost", 0)};
            largest = Math.max(largest, stock[i][0]);
        }
        PlainJob job = new PlainJob(name, Goal.COST, largest, 0, rotate);
        for (long[] s : stock) {
            job.board(s[0], null, s[1]);
        }
        for (int i = 0; i < n; i++) {
            job.piece(in.size("a size"), 1);
        }
        in.end();
        return job.build();
    }

    /**
     * One sheet size, least sheets, with words behind the numbers: class, n, number, {@code H W}, n lines {@code h w}. Berkey, Wang,
     * Journal of the Operational Research Society 38 (1987); Martello, Vigo, Management Science 44 (1998).
     */
    static Job classSheets(String name, String text, boolean rotate) {
        Numbers in = new Numbers(text);
        in.count("the class");
        in.skipLine();
        int n = in.count("the number of items");
        in.skipLine();
        in.count("the number of the instance");
        in.skipLine();
        long length = in.size("the height of the sheet");
        long width = in.size("the width of the sheet");
        in.skipLine();
        PlainJob job = new PlainJob(name, Goal.BOARDS, Math.max(length, width), 0, rotate);
        for (int i = 0; i < n; i++) {
            job.rectangle(in.size("a height"), in.size("a width"), 1);
            in.skipLine();
        }
        job.sheet(length, width, null);
        return job.build();
    }

    /**
     * Several sheet sizes with costs and demands: {@code 2 bins n 0 0 0} and bins lines {@code w h cost}, or {@code W H n ...} with one
     * sheet that costs its area; then n lines {@code w h demand ...}. Cintra, Miyazawa, Wakabayashi, Xavier, European Journal of
     * Operational Research 191 (2008).
     */
    static Job demandSheets(String name, String text, boolean rotate) {
        Numbers in = new Numbers(text);
        boolean several = in.wordsOnLine() == 6;
        List<long[]> sheets = new ArrayList<>();
        long first = in.size("a number");
        int bins = several ? in.count("the number of sheets") : 1;
        long width = several ? 0 : in.size("the height of the sheet");
        int n = in.count("the number of sizes");
        in.skipLine();
        if (!several) {
            sheets.add(new long[] {first, width, Math.multiplyExact(first, width)});
        }
        for (int i = 0; several && i < bins; i++) {
            sheets.add(new long[] {in.size("a width"), in.size("a height"), in.number("a cost", 0)});
            in.skipLine();
        }
        PlainJob job = new PlainJob(name, Goal.COST, largest(sheets), 0, rotate);
        sheets.forEach(s -> job.sheet(s[0], s[1], s[2]));
        for (int i = 0; i < n; i++) {
            job.rectangle(in.size("a width"), in.size("a height"), in.count("a demand"));
            in.skipLine();
        }
        return job.build();
    }

    /**
     * Several sheet sizes, as many as wanted, least area: {@code n bins 1}, bins lines {@code W H 1 cost}, n lines {@code number w h 1}.
     * Pisinger, Sigurd, Discrete Optimization 2 (2005).
     *
     * <p>A sheet is charged its area, not the cost of the file: all best values published for these files are sums of areas, and half of
     * them no sum of the costs, so they answer another question. The 1 of a sheet is no limit: those values need many copies.
     */
    static Job variedSheets(String name, String text, boolean rotate) {
        Numbers in = new Numbers(text);
        int n = in.count("the number of items");
        int bins = in.count("the number of sheets");
        in.skipLine();
        List<long[]> sheets = new ArrayList<>();
        for (int i = 0; i < bins; i++) {
            long width = in.size("a width");
            long height = in.size("a height");
            in.number("the mark of a sheet", 0);
            in.number("a cost", 0);
            sheets.add(new long[] {width, height, Math.multiplyExact(width, height)});
        }
        PlainJob job = new PlainJob(name, Goal.COST, largest(sheets), 0, rotate);
        sheets.forEach(s -> job.sheet(s[0], s[1], s[2]));
        for (int i = 0; i < n; i++) {
            in.number("the number of an item", 0);
            job.rectangle(in.size("a width"), in.size("a height"), in.count("a demand"));
        }
        in.end();
        return job.build();
    }

    private static long largest(List<long[]> sheets) {
        return sheets.stream().mapToLong(s -> Math.max(s[0], s[1])).max().orElse(0);
    }
}
