package org.stockcutting.http.print;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.Warning;

/**
 * Warnings of a plan and cautions of its cuts. Equal sentences are said once, with how often they hold; sentences that differ in the name of
 * the board only are said once for all of them.
 */
public final class CautionText {

    private static final Pattern LAYOUT = Pattern.compile("/layouts/(\\d{1,9})(?:/.*)?");
    /** Stands for the board's name; no name holds a control character. */
    private static final String BOARD = "\u0000";
    /** Boards that are named in one sentence. */
    private static final int NAMED = 12;

    private CautionText() {}

    /** All of them, warnings first. */
    public static List<String> sentences(CuttingPlan plan) {
        List<String> all = new ArrayList<>(warnings(plan));
        Map<String, Integer> said = new LinkedHashMap<>();
        for (SequenceStep step : plan.derived().cutSequence()) {
            if (step.caution() != null) {
                said.merge(step.caution(), 1, Integer::sum);
            }
        }
        said.forEach((text, times) -> all.add(counted(text, times)));
        return all;
    }

    /** The plan's warnings alone. */
    public static List<String> warnings(CuttingPlan plan) {
        Map<String, Integer> times = new LinkedHashMap<>();
        Map<String, TreeSet<String>> boards = new LinkedHashMap<>();
        for (Warning warning : plan.derived().warnings()) {
            String board = board(plan, warning);
            String text = board == null ? warning.text() : withoutName(warning.text(), board);
            boolean named = board != null && text.contains(BOARD);
            times.merge(text, 1, Integer::sum);
            if (named) {
                boards.computeIfAbsent(text, key -> new TreeSet<>()).add(board);
            }
        }
        List<String> said = new ArrayList<>();
        times.forEach((text, count) -> {
            TreeSet<String> own = boards.getOrDefault(text, new TreeSet<>());
            said.add(
                    own.isEmpty()
                            ? counted(text, count)
                            : own.size() == 1
                                    ? counted(text.replace(BOARD, own.first()), count)
                                    : text.replace(BOARD, listed(own)));
        });
        return said;
    }

    private static @Nullable String board(CuttingPlan plan, Warning warning) {
        Matcher matcher = LAYOUT.matcher(warning.pointer());
        int index = matcher.matches() ? Integer.parseInt(matcher.group(1)) : Integer.MAX_VALUE;
        return index < plan.layouts().size() ? plan.layouts().get(index).stock() : null;
    }

    /** A name of a letter or two may be a word of the sentence. */
    private static String withoutName(String text, String board) {
        return board.length() < 3 ? text : text.replaceAll("(?<![\\w-])" + Pattern.quote(board) + "(?![\\w-])", BOARD);
    }

    private static String listed(TreeSet<String> boards) {
        String first = String.join(", ", boards.stream().limit(NAMED).toList());
        return boards.size() <= NAMED ? first : first + " and " + (boards.size() - NAMED) + " more";
    }

    private static String counted(String text, int times) {
        return text + (times == 1 ? "" : " (" + times + " times)");
    }
}
