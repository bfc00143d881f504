package org.stockcutting.bench.quality;

import java.util.List;

/** The report as one page that needs nothing from anywhere. */
final class HtmlReport {

    private static final String STYLE = """
            :root { color-scheme: light; }
            body { margin: 0 auto; padding: 1.5rem 1rem 4rem; max-width: 62rem; background: #fff; color: #332f2a;
              font: 16px/1.5 system-ui, sans-serif; }
            h1 { font-size: 1.6rem; margin: 0 0 .25rem; }
            h2 { font-size: 1.15rem; margin: 2.25rem 0 .25rem; }
            p { margin: .25rem 0 .75rem; max-width: 46rem; }
            .wrong { border-left: .3rem solid #a3261b; padding: .5rem 1rem; background: #fbeeec; }
            .scroll { overflow-x: auto; }
            table { border-collapse: collapse; font-size: .875rem; font-variant-numeric: tabular-nums; }
            th, td { padding: .3rem .75rem .3rem 0; text-align: right; white-space: nowrap; border-bottom: 1px solid #d9d3c7; }
            th:first-child, td:first-child { text-align: left; }
            th { font-weight: 600; border-bottom-color: #332f2a; }
            tr.all td { font-weight: 600; }
            svg { display: block; width: 100%; min-width: 40rem; height: auto; max-width: 860px; margin: .5rem 0; }
            th:first-child, td:first-child { position: sticky; left: 0; background: #fff; }
            @media (max-width: 40rem) {
              th, td { padding-right: .5rem; font-size: .8rem; }
              th:first-child, td:first-child { white-space: normal; overflow-wrap: anywhere; max-width: 9rem; min-width: 6rem; }
            }
            summary { cursor: pointer; margin-top: 2.25rem; font-weight: 600; }
            """;

    private HtmlReport() {}

    /**
     * The page.
     *
     * @param rows what is reported
     * @param heading one sentence on how it was measured
     */
    static String page(List<Row> rows, String heading) {
        Charts charts = new Charts();
        StringBuilder page = new StringBuilder(
                        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
                .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
                .append("<title>Yield report</title>\n<style>\n")
                .append(STYLE)
                .append("</style>\n</head>\n<body>\n<h1>Yield report</h1>\n<p>")
                .append(escape(heading))
                .append("</p>\n");
        contradictions(page, rows);
        for (Section section : Section.all(rows)) {
            section(page, section);
            page.append(picture(charts, section.title(), rows));
        }
        page.append("<details>\n<summary>Every job</summary>\n");
        table(
                page,
                List.of("job", "status", "stopped", "value", "bound", "gap", "pieces", "s"),
                rows.stream().map(Section::job).toList());
        return page.append("</details>\n</body>\n</html>\n").toString();
    }

    /** The picture that stands under a table, if there is one. */
    private static String picture(Charts charts, String title, List<Row> rows) {
        String svg = switch (title) {
            case Section.VALUES -> charts.gaps(rows);
            case Section.WOOD -> charts.wood(Summary.byGroup(rows));
            case Section.YIELDS -> charts.yields(rows);
            default -> "";
        };
        return svg.isEmpty() ? "" : "<div class=\"scroll\">\n" + svg + "\n</div>\n";
    }

    private static void contradictions(StringBuilder page, List<Row> rows) {
        List<String> wrong =
                rows.stream().flatMap(row -> row.contradictions().stream()).toList();
        if (!wrong.isEmpty()) {
            page.append("<div class=\"wrong\">\n<p>These cannot be true; do not believe this report:</p>\n");
            wrong.forEach(line -> page.append("<p>").append(escape(line)).append("</p>\n"));
            page.append("</div>\n");
        }
    }

    private static void section(StringBuilder page, Section section) {
        page.append("<h2>").append(escape(section.title())).append("</h2>\n");
        if (!section.note().isEmpty()) {
            page.append("<p>").append(escape(section.note())).append("</p>\n");
        }
        table(page, section.headers(), section.lines());
    }

    private static void table(StringBuilder page, List<String> headers, List<List<String>> lines) {
        page.append("<div class=\"scroll\">\n<table>\n<thead><tr>");
        headers.forEach(header ->
                page.append("<th scope=\"col\">").append(escape(header)).append("</th>"));
        page.append("</tr></thead>\n<tbody>\n");
        for (List<String> line : lines) {
            page.append(line.get(0).equals("all") ? "<tr class=\"all\">" : "<tr>");
            line.forEach(cell -> page.append("<td>").append(escape(cell)).append("</td>"));
            page.append("</tr>\n");
        }
        page.append("</tbody>\n</table>\n</div>\n");
    }

    private static String escape(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
