package org.stockcutting.http.print;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.apache.batik.dom.GenericDOMImplementation;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.knowm.xchart.CategoryChart;
import org.knowm.xchart.CategoryChartBuilder;
import org.knowm.xchart.style.CategoryStyler;
import org.knowm.xchart.style.Styler.LegendLayout;
import org.knowm.xchart.style.Styler.LegendPosition;
import org.stockcutting.job.Job;
import org.stockcutting.plan.Choice;
import org.stockcutting.plan.Comparison;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/**
 * A chart of a comparison: one bar a choice that makes everything, dark up to what is proved, light up to what the plan found comes to;
 * one chart below the other for each independent part of the job.
 */
public final class ComparisonPicture {

    private static final String SVG = "http://www.w3.org/2000/svg";
    private static final int WIDTH = 860;
    private static final int HEIGHT = 360;
    private static final int MOST_BARS = 12;
    private static final int NAME = 26;
    private static final int FEW_BARS = 4;
    private static final BigDecimal CUBIC_DECIMETRE = BigDecimal.TEN.pow(24);
    private static final Color INK = new Color(0x33, 0x2f, 0x2a);
    private static final Color LINE = new Color(0xd9, 0xd3, 0xc7);
    private static final Color PROVED = new Color(0x8a, 0x5a, 0x2b);
    private static final Color OPEN = new Color(0xd9, 0xb9, 0x86);

    private final Job job;
    private final ComparisonRows rows;

    public ComparisonPicture(Job job) {
        this.job = job;
        this.rows = new ComparisonRows(job);
    }

    /** The chart as an SVG document in UTF-8. */
    public byte[] svg(Comparison comparison) {
        return SvgPrinter.written(root(comparison));
    }

    /** The chart as an element to stand inside a page. */
    String inline(Comparison comparison) {
        String text = new String(svg(comparison), StandardCharsets.UTF_8);
        return text.substring(text.indexOf("<svg"));
    }

    private Element root(Comparison comparison) {
        Document document = GenericDOMImplementation.getDOMImplementation().createDocument(SVG, "svg", null);
        SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
        context.setComment("What each choice of stock comes to");
        SVGGraphics2D graphics = new SVGGraphics2D(context, false);
        int height = 0;
        // One bar alone compares nothing.
        boolean any = comparison.components().stream()
                .anyMatch(section -> shown(section).size() > 1);
        for (Comparison.Section section : comparison.components()) {
            List<Choice> shown = shown(section);
            if (shown.size() > (any ? 1 : 0)) {
                graphics.translate(0, height == 0 ? 0 : HEIGHT);
                chart(section, shown).paint(graphics, WIDTH, HEIGHT);
                height += HEIGHT;
            }
        }
        int total = Math.max(height, 1);
        graphics.setSVGCanvasSize(new Dimension(WIDTH, total));
        Element root = graphics.getRoot();
        root.setAttributeNS(null, "viewBox", "0 0 " + WIDTH + " " + total);
        root.setAttributeNS(null, "role", "img");
        return root;
    }

    /** The best choices that make everything, all together always among them. */
    private static List<Choice> shown(Comparison.Section section) {
        List<Choice> complete = new ArrayList<>(
                section.choices().stream().filter(Choice::isComplete).toList());
        complete.sort(Comparator.comparing(choice -> choice.objective().value()));
        // All together is never worse than any other, so it is among the first of its value at least in a sorted list.
        List<Choice> shown = new ArrayList<>(complete.subList(0, Math.min(MOST_BARS, complete.size())));
        Choice all = section.allTogether();
        if (all.isComplete() && !shown.contains(all)) {
            shown.set(0, all);
        }
        return shown;
    }

    private CategoryChart chart(Comparison.Section section, List<Choice> shown) {
        CategoryChart chart = new CategoryChartBuilder()
                .width(WIDTH)
                .height(HEIGHT)
                .title(Clip.to(String.join(", ", section.parts()), 90))
                .yAxisTitle(unit())
                .build();
        style(chart.getStyler(), shown.size());
        List<String> names = new ArrayList<>();
        List<BigDecimal> proved = new ArrayList<>();
        List<BigDecimal> open = new ArrayList<>();
        for (Choice choice : shown) {
            names.add(unique(Clip.to(rows.name(section, choice), NAME), names));
            proved.add(amount(choice.objective().bound()));
            open.add(amount(
                    choice.objective().value().subtract(choice.objective().bound())));
        }
        boolean closed = open.stream().allMatch(more -> more.signum() == 0);
        chart.addSeries(closed ? "the plan found; proved: not under this" : "proved: not under this", names, proved);
        if (!closed) {
            chart.addSeries("the plan found comes to this", names, open);
        }
        return chart;
    }

    /** Shortened names may be the same; two bars never are. */
    private static String unique(String name, List<String> taken) {
        String free = name;
        for (int i = 2; taken.contains(free); i++) {
            free = name + " (" + i + ")";
        }
        return free;
    }

    private static void style(CategoryStyler styler, int bars) {
        Font small = new Font(Font.SANS_SERIF, Font.PLAIN, 12);
        styler.setStacked(true).setAvailableSpaceFill(Math.min(0.7, 0.15 * bars));
        styler.setSeriesColors(new Color[] {PROVED, OPEN});
        styler.setXAxisLabelRotation(bars > FEW_BARS ? 30 : 0).setYAxisMin(0.0);
        styler.setAxisTickLabelsFont(small).setAxisTitleFont(small).setAxisTickMarksColor(LINE);
        styler.setAxisTickLabelsColor(INK).setPlotGridLinesColor(LINE).setPlotGridVerticalLinesVisible(false);
        styler.setChartTitleFont(small).setChartTitleBoxVisible(false).setLegendFont(small);
        styler.setLegendPosition(LegendPosition.OutsideS).setLegendLayout(LegendLayout.Horizontal);
        styler.setChartBackgroundColor(Color.WHITE)
                .setPlotBackgroundColor(Color.WHITE)
                .setPlotBorderVisible(false);
        styler.setLegendBorderColor(Color.WHITE)
                .setLegendBackgroundColor(Color.WHITE)
                .setChartFontColor(INK);
    }

    private String unit() {
        return switch (job.goal()) {
            case COST -> job.writing().currency().getCurrencyCode();
            case BOARDS -> "boards";
            case WASTE -> "dm3 wasted";
        };
    }

    private BigDecimal amount(BigInteger atoms) {
        return switch (job.goal()) {
            case COST ->
                new BigDecimal(atoms, Math.max(0, job.writing().currency().getDefaultFractionDigits()));
            case BOARDS -> new BigDecimal(atoms);
            case WASTE -> new BigDecimal(atoms).divide(CUBIC_DECIMETRE, 2, RoundingMode.HALF_UP);
        };
    }
}
