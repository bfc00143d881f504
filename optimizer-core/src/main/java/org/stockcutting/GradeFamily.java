package org.stockcutting;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.job.Job;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.pattern.fit.Fit;
import org.stockcutting.solve.Component;
import org.stockcutting.stock.Bill;
import org.stockcutting.stock.StockItem;

/**
 * Parts that share wood, and the ways to share them out among the grades for sale. Mixes give the parts that ask most of the wood, clear ones before
 * knotty ones and long ones before short ones, to the dearer of two grades and the rest to the cheaper, or to what is left of the dearer boards: for
 * each pair of grades one mix for each place to draw that line. Better mixes may exist that are not of this kind.
 */
final class GradeFamily {

    /** Most mixes that are tried; where there are more, every second, third and so on of each pair. */
    private static final int MOST_MIXES = 12;

    private final Job own;
    private final List<StockItem.ForSale> forSale;
    private final SortedMap<String, Set<String>> choices = new TreeMap<>();
    private final List<Part> parts;

    /**
     * One way.
     *
     * @param grades grade of each part that has a choice
     * @param first the dearer grade
     * @param rest the cheaper one, or the same
     */
    record Way(SortedMap<String, String> grades, String first, String rest) {}

    /**
     * @param all the whole job
     * @param component parts and stock that have nothing to do with the rest of it
     */
    GradeFamily(Job all, Component component) {
        this.forSale = component.stock().stream()
                .filter(StockItem.ForSale.class::isInstance)
                .map(StockItem.ForSale.class::cast)
                .toList();
        Fit fit = new Fit(all.shop());
        for (RoughPiece piece : component.pieces()) {
            Set<String> grades = choices.computeIfAbsent(piece.part().id(), id -> new TreeSet<>());
            forSale.stream().filter(item -> serves(fit, piece, item)).forEach(item -> addGrade(grades, item));
        }
        this.own = all.withLists(
                all.parts().stream()
                        .filter(part -> choices.containsKey(part.id()))
                        .toList(),
                forSale,
                component.stock().stream()
                        .filter(StockItem.OnHand.class::isInstance)
                        .map(StockItem.OnHand.class::cast)
                        .toList());
        this.parts = own.parts().stream()
                .filter(part -> choices(part).size() > 1)
                .sorted(Comparator.comparing(Part::woodClass)
                        .thenComparing(Part::length, Comparator.reverseOrder())
                        .thenComparing(Part::id))
                .toList();
    }

    /** Staves of a panel are as wide as the wood allows, so only their thickness decides. */
    private static boolean serves(Fit fit, RoughPiece piece, StockItem.ForSale item) {
        boolean open = piece.part().making() instanceof Making.GlueUp;
        return open
                ? fit.materialFits(piece, item) && fit.sectionFits(piece, item)
                : fit.ways(piece, item).any();
    }

    private static void addGrade(Set<String> grades, StockItem item) {
        String grade = item.grade();
        if (grade != null) {
            grades.add(grade);
        }
    }

    private Set<String> choices(Part part) {
        return choices.getOrDefault(part.id(), Set.of());
    }

    /** True if a part could come from two grades that are for sale. */
    boolean hasChoice() {
        return !parts.isEmpty();
    }

    List<String> partIds() {
        return own.parts().stream().map(Part::id).toList();
    }

    /** The family alone, its parts held to what a way gives them. */
    Job job(Way way) {
        List<Part> graded = own.parts().stream()
                .map(part -> {
                    String grade = way.grades().get(part.id());
                    return grade == null
                            ? part
                            : part.withSelection(part.selection().withGrades(allowed(part, way, grade)));
                })
                .toList();
        return own.withLists(graded, own.forSale(), own.onHand());
    }

    /** Parts of the cheaper grade may come from what is left of the dearer boards too. */
    private List<String> allowed(Part part, Way way, String grade) {
        boolean both = grade.equals(way.rest()) && choices(part).contains(way.first());
        return both ? List.of(grade, way.first()) : List.of(grade);
    }

    /** Each grade alone by its name, then the mixes; two ways that come to the same are one. */
    List<Way> ways() {
        Map<SortedMap<String, String>, Way> ways = new LinkedHashMap<>();
        List<String> grades = byPrice();
        new TreeSet<>(grades).forEach(grade -> add(ways, grade, grade, 0));
        int pairs = Math.max(1, grades.size() * (grades.size() - 1) / 2);
        int step = Math.max(1, -Math.floorDiv(-pairs * Math.max(0, parts.size() - 1), MOST_MIXES));
        for (int dear = 0; dear < grades.size(); dear++) {
            for (int cheap = dear + 1; cheap < grades.size(); cheap++) {
                for (int line = 1; line < parts.size(); line += step) {
                    add(ways, grades.get(dear), grades.get(cheap), line);
                }
            }
        }
        return List.copyOf(ways.values());
    }

    private void add(Map<SortedMap<String, String>, Way> ways, String first, String rest, int line) {
        SortedMap<String, String> grades = split(first, rest, line);
        ways.putIfAbsent(grades, new Way(grades, first, rest));
    }

    /** The first parts from one grade, the others from another; a part that does not take its grade comes from the other one, or from any. */
    private SortedMap<String, String> split(String first, String rest, int line) {
        SortedMap<String, String> grades = new TreeMap<>();
        for (int p = 0; p < parts.size(); p++) {
            Set<String> takes = choices(parts.get(p));
            String wanted = p < line ? first : rest;
            String other = p < line ? rest : first;
            String grade = takes.contains(wanted) ? wanted : takes.contains(other) ? other : null;
            if (grade != null) {
                grades.put(parts.get(p).id(), grade);
            }
        }
        return grades;
    }

    /** Grades for sale, the dearest by the board foot first. */
    private List<String> byPrice() {
        SortedMap<String, BigDecimal> dearest = new TreeMap<>();
        Set<String> wanted = new TreeSet<>();
        parts.forEach(part -> wanted.addAll(choices(part)));
        for (StockItem.ForSale item : forSale) {
            String grade = item.grade();
            if (grade != null && wanted.contains(grade)) {
                dearest.merge(grade, perBoardFoot(item), BigDecimal::max);
            }
        }
        List<String> grades = new ArrayList<>(dearest.keySet());
        grades.sort(Comparator.comparing((String grade) -> dearest.getOrDefault(grade, BigDecimal.ZERO))
                .reversed()
                .thenComparing(Comparator.naturalOrder()));
        return grades;
    }

    private static BigDecimal perBoardFoot(StockItem.ForSale item) {
        BigDecimal feet = Bill.boardFeet(item);
        return item.price() == null || feet.signum() == 0
                ? BigDecimal.ZERO
                : Bill.price(item).amount().divide(feet, 6, RoundingMode.HALF_UP);
    }
}
