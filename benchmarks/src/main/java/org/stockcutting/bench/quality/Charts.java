package org.stockcutting.bench.quality;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.apache.batik.dom.GenericDOMImplementation;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.apache.batik.svggen.SVGGraphics2DIOException;
import org.apache.batik.svggen.SVGIDGenerator;
import org.knowm.xchart.CategoryChart;
import org.knowm.xchart.CategoryChartBuilder;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYChartBuilder;
import org.knowm.xchart.internal.chartpart.Chart;
import org.knowm.xchart.style.AxesChartStyler;
import org.knowm.xchart.style.Styler.LegendLayout;
import org.knowm.xchart.style.Styler.LegendPosition;
import org.knowm.xchart.style.markers.SeriesMarkers;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** The pictures of a report as SVG that stands inside a page. */
final class Charts {

    private static final int WIDTH = 860;
    private static final int HEIGHT = 340;
    private static final int BINS = 20;
    private static final double PERCENT = 100;
    private static final int MOST_GROUPS = 16;
    private static final int LABELS = 11;
    private static final Color INK = new Color(0x33, 0x2f, 0x2a);
    private static final Color LINE = new Color(0xd9, 0xd3, 0xc7);
    private static final Color[] WOOD = {
        new Color(0x8a, 0x5a, 0x2b),
        new Color(0xc9, 0x9a, 0x5b),
        new Color(0x5b, 0x6b, 0x73),
        new Color(0x9f, 0xb0, 0xb5),
        new Color(0x7b, 0x2d, 0x26),
        new Color(0x6f, 0x8f, 0x4e),
        new Color(0xe4, 0xdc, 0xcb)
    };

    private int pictures;

    /** Where the wood goes, one bar a group, the largest groups where there are many; empty without a plan. */
    String wood(List<Summary> groups) {
        List<Summary> shown = groups.stream()
                .filter(group -> !group.yield().isEmpty())
                .sorted(Comparator.comparingInt((Summary g) -> g.rows().size())
                        .reversed()
                        .thenComparing(Summary::name))
                .limit(MOST_GROUPS)
                .sorted(Comparator.comparing(Summary::name))
                .toList();
        if (shown.isEmpty()) {
            return "";
        }
        CategoryChart chart = new CategoryChartBuilder()
                .width(WIDTH)
                .height(HEIGHT + 60)
                .yAxisTitle("% of the wood used")
                .build();
        plain(chart.getStyler());
        chart.getStyler().setStacked(true).setAvailableSpaceFill(Math.min(0.7, 0.15 * shown.size()));
        chart.getStyler().setYAxisMin(0.0).setYAxisMax(PERCENT).setXAxisLabelRotation(shown.size() > 4 ? 30 : 0);
        chart.getStyler().setSeriesColors(WOOD);
        List<String> names =
                shown.stream().map(group -> shortName(group.name())).toList();
        for (int i = 0; i < Shares.NAMES.size(); i++) {
            int index = i;
            List<Double> shares = shown.stream()
                    .map(group -> PERCENT * group.share(index).mean())
                    .toList();
            chart.addSeries(
                    Shares.NAMES.get(i).equals("offcutsKept") ? "offcuts kept" : Shares.NAMES.get(i), names, shares);
        }
        return svg(chart);
    }

    /** How many jobs have which yield; empty without a plan. */
    String yields(List<Row> rows) {
        int[] counts = new int[BINS];
        int all = 0;
        for (Row row : rows) {
            if (!row.stock().isEmpty()) {
                counts[Math.min(BINS - 1, (int) (row.yield() * BINS))]++;
                all++;
            }
        }
        if (all == 0) {
            return "";
        }
        List<String> names = new ArrayList<>();
        List<Integer> heights = new ArrayList<>();
        for (int i = 0; i < BINS; i++) {
            names.add(String.valueOf(i * (int) PERCENT / BINS));
            heights.add(counts[i]);
        }
        CategoryChart chart = new CategoryChartBuilder()
                .width(WIDTH)
                .height(HEIGHT)
                .xAxisTitle("yield from, %")
                .yAxisTitle("jobs")
                .build();
        plain(chart.getStyler());
        chart.getStyler().setLegendVisible(false).setSeriesColors(WOOD);
        chart.getStyler().setAvailableSpaceFill(0.9).setYAxisDecimalPattern("0").setYAxisMin(0.0);
        chart.addSeries("jobs", names, heights);
        return svg(chart);
    }

    /** Gap to the bound and to the best known value of all jobs, each sorted; empty where nothing is known of any. */
    String gaps(List<Row> rows) {
        XYChart chart = new XYChartBuilder()
                .width(WIDTH)
                .height(HEIGHT)
                .xAxisTitle("jobs, best first, %")
                .yAxisTitle("% over")
                .build();
        plain(chart.getStyler());
        chart.getStyler().setSeriesColors(new Color[] {WOOD[0], WOOD[2]});
        chart.getStyler().setXAxisMin(0.0).setXAxisMax(PERCENT).setXAxisDecimalPattern("0");
        chart.getStyler().setXAxisMaxLabelCount(LABELS);
        add(chart, "over the bound", rows.stream().map(Row::gap).toList());
        add(chart, "over the best known", rows.stream().map(Row::gapToKnown).toList());
        return chart.getSeriesMap().isEmpty() ? "" : svg(chart);
    }

    private static void add(XYChart chart, String name, List<Double> gaps) {
        double[] sorted = gaps.stream()
                .filter(gap -> !gap.isNaN())
                .mapToDouble(gap -> PERCENT * gap)
                .sorted()
                .toArray();
        if (sorted.length == 0) {
            return;
        }
        double[] places = new double[sorted.length];
        for (int i = 0; i < places.length; i++) {
            places[i] = PERCENT * (i + 1) / places.length;
        }
        chart.addSeries(name, places, sorted)
                .setMarker(sorted.length == 1 ? SeriesMarkers.CIRCLE : SeriesMarkers.NONE)
                .setLineStyle(new BasicStroke(2));
    }

    /** The last folder of a group. */
    private static String shortName(String group) {
        return group.substring(group.lastIndexOf('/') + 1);
    }

    private static void plain(AxesChartStyler styler) {
        Font small = new Font(Font.SANS_SERIF, Font.PLAIN, 12);
        styler.setAxisTickLabelsFont(small).setAxisTitleFont(small).setAxisTickMarksColor(LINE);
        styler.setAxisTickLabelsColor(INK).setPlotGridLinesColor(LINE).setPlotGridVerticalLinesVisible(false);
        styler.setChartTitleVisible(false)
                .setLegendPosition(LegendPosition.OutsideS)
                .setLegendFont(small);
        styler.setChartBackgroundColor(Color.WHITE)
                .setPlotBackgroundColor(Color.WHITE)
                .setPlotBorderVisible(false);
        styler.setLegendBorderColor(Color.WHITE).setLegendBackgroundColor(Color.WHITE);
        styler.setLegendLayout(LegendLayout.Horizontal);
        styler.setChartFontColor(INK);
    }

    private String svg(Chart<?, ?> chart) {
        String prefix = "c" + ++pictures + "-";
        Document document = GenericDOMImplementation.getDOMImplementation()
                .createDocument("http://www.w3.org/2000/svg", "svg", null);
        SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
        context.setComment("");
        context.setIDGenerator(new SVGIDGenerator() {
            @Override
            public String generateID(String kind) {
                return prefix + super.generateID(kind);
            }
        });
        SVGGraphics2D graphics = new SVGGraphics2D(context, false);
        chart.paint(graphics, chart.getWidth(), chart.getHeight());
        Element root = graphics.getRoot();
        root.setAttributeNS(null, "viewBox", "0 0 " + chart.getWidth() + " " + chart.getHeight());
        root.setAttributeNS(null, "role", "img");
        StringWriter out = new StringWriter();
        try {
            graphics.stream(root, out, true, false);
        } catch (SVGGraphics2DIOException e) {
            throw new IllegalStateException("a picture cannot be written", e);
        }
        String text = out.toString();
        return text.substring(text.indexOf("<svg"));
    }
}
