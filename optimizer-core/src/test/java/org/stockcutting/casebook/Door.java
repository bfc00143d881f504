package org.stockcutting.casebook;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.stockcutting.Optimizer;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.JobReading;
import org.stockcutting.io.PlanWriter;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthReader;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.Unplaced;

/**
 * The whole way of a request: a job document is read, planned and written. Cases write the document without its outer braces, words
 * without quotes, and other texts in single ones.
 */
final class Door {

    private static final Optimizer OPTIMIZER = new Optimizer();
    private static final JsonMapper MAPPER = JsonMapper.builder().build();
    private static final Pattern TOKEN = Pattern.compile("\"[^\"]*\"|'([^']*)'|([A-Za-z][A-Za-z0-9-]*)");

    private Door() {}

    /** What the reader makes of the text between the braces of a job document. */
    static JobReading read(String fields) {
        return new JobReader().read(json(fields));
    }

    /** The strict document of a case. */
    static String json(String fields) {
        String strict = TOKEN.matcher(fields).replaceAll(token -> {
            String text = token.group(1) == null ? token.group(2) : token.group(1);
            String quoted = text == null ? token.group() : "\"" + text + "\"";
            return Matcher.quoteReplacement(quoted);
        });
        return "{" + strict + "}";
    }

    static Job job(String fields) {
        return read(fields).orThrow();
    }

    static CuttingPlan plan(String fields) {
        return OPTIMIZER.plan(job(fields));
    }

    /** The plan document as it is written. */
    static String document(JobReading reading) {
        Job job = reading.orThrow();
        return new PlanWriter(job).write(OPTIMIZER.plan(job), reading.defaults());
    }

    static JsonNode tree(String json) {
        try {
            return MAPPER.readTree(json);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Value of the goal as the document says it. */
    static String value(String fields) {
        return tree(document(read(fields))).at("/objective/value").textValue();
    }

    /** A length in inches as makers write it. */
    static Length length(String text) {
        return new LengthReader(LengthUnit.INCH, '.').read(text);
    }

    /** Boards used, such as {@code b x2, rack x1}. */
    static String boards(CuttingPlan plan) {
        TreeMap<String, Integer> boards = new TreeMap<>();
        plan.layouts().forEach(layout -> boards.merge(layout.stock(), layout.repeat(), Integer::sum));
        List<String> words = new ArrayList<>();
        boards.forEach((id, count) -> words.add(id + " x" + count));
        return String.join(", ", words);
    }

    /** The only part that is missing, with quantity, reason, needs and limit. */
    static String missing(CuttingPlan plan) {
        List<String> words = new ArrayList<>();
        for (Unplaced u : plan.unplaced()) {
            words.add(u.quantity() + " " + u.part() + ": " + u.reason().word() + ", needs " + u.needs() + ", limit "
                    + u.limit());
        }
        return String.join("; ", words);
    }

    /** Places of the pieces of one part, copy by copy: {@code number, layout index}. */
    static List<Placed> pieces(CuttingPlan plan, String part) {
        List<Placed> placed = new ArrayList<>();
        int first = 0;
        for (Layout layout : plan.layouts()) {
            for (PlacedPiece piece : layout.pieces()) {
                for (int copy = 0; copy < layout.repeat() && piece.part().equals(part); copy++) {
                    placed.add(new Placed(
                            piece.numbers().get(copy),
                            piece.members().isEmpty() ? 0 : piece.members().get(copy),
                            first + copy,
                            piece));
                }
            }
            first += layout.repeat();
        }
        return placed;
    }

    /**
     * One piece of wood.
     *
     * @param number which copy of the part
     * @param member which stave or ply of it, 0 for the whole
     * @param board which board it lies on, counted through the plan
     * @param piece where
     */
    record Placed(int number, int member, int board, PlacedPiece piece) {}
}
