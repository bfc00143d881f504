package org.stockcutting.io;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.databind.SequenceWriter;
import com.fasterxml.jackson.dataformat.csv.CsvGenerator;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.FaultCode;

/**
 * Tables as text (RFC 4180): comma, semicolon or tab, told by the first line; a byte order mark is skipped. Rows are counted as a
 * spreadsheet counts them: the header is row 1, empty rows count.
 */
final class CsvText {

    private static final int MOST_CHARACTERS = 1 << 20;
    private static final char BYTE_ORDER_MARK = '\uFEFF';
    /** What a spreadsheet may take for a formula at the start of a cell (OWASP, "CSV Injection"). */
    private static final String FORMULA_STARTS = "=+-@\t\r";

    private static final CsvMapper MAPPER = CsvMapper.builder()
            .enable(CsvParser.Feature.WRAP_AS_ARRAY)
            .enable(CsvParser.Feature.TRIM_SPACES)
            .enable(CsvGenerator.Feature.STRICT_CHECK_FOR_QUOTING)
            .build();

    private CsvText() {}

    /** The rows of a table, or null with a fault. */
    static @Nullable List<List<String>> read(String table, String text, Faults faults) {
        if (text.length() > MOST_CHARACTERS) {
            faults.add(
                    table,
                    FaultCode.TOO_LARGE,
                    Integer.toString(text.length()),
                    "at most " + MOST_CHARACTERS,
                    "The table has " + text.length() + " characters; at most " + MOST_CHARACTERS + " are read.");
            return null;
        }
        String plain = !text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK ? text.substring(1) : text;
        CsvSchema schema = CsvSchema.emptySchema().withColumnSeparator(separator(plain));
        try (MappingIterator<String[]> lines =
                MAPPER.readerFor(String[].class).with(schema).readValues(plain)) {
            List<List<String>> rows = new ArrayList<>();
            while (lines.hasNextValue()) {
                rows.add(List.of(lines.nextValue()));
            }
            return rows;
        } catch (JsonProcessingException e) {
            String where =
                    e.getLocation() == null ? "" : " at line " + e.getLocation().getLineNr();
            faults.add(
                    table,
                    FaultCode.NOT_CSV,
                    "other text",
                    "rows of cells",
                    "The table cannot be read" + where + "; look for a quote that is not closed.");
            return null;
        } catch (IOException e) {
            throw new UncheckedIOException("reading from memory failed", e);
        }
    }

    /** The separator that the first line has most of, outside quotes. */
    static char separator(String text) {
        int[] counts = new int[3];
        String separators = ",;\t";
        boolean quoted = false;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '"') {
                quoted = !quoted;
            } else if (!quoted && (c == '\n' || c == '\r')) {
                break;
            } else if (!quoted && separators.indexOf(c) >= 0) {
                counts[separators.indexOf(c)]++;
            }
        }
        int best = 0;
        for (int i = 1; i < counts.length; i++) {
            best = counts[i] > counts[best] ? i : best;
        }
        return separators.charAt(best);
    }

    /** A table with commas and CRLF line ends, as RFC 4180 has it. */
    static String write(List<String> header, List<List<String>> rows) {
        CsvSchema schema = CsvSchema.emptySchema().withLineSeparator("\r\n");
        StringWriter out = new StringWriter();
        try (SequenceWriter writer = MAPPER.writer(schema).writeValues(out)) {
            writer.write(header);
            for (List<String> row : rows) {
                writer.write(row);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("writing to memory failed", e);
        }
        return out.toString();
    }

    /** Text that no spreadsheet takes for a formula. */
    static String guarded(String text) {
        boolean formula = !text.isEmpty() && FORMULA_STARTS.indexOf(text.charAt(0)) >= 0;
        return formula ? "'" + text : text;
    }

    /** The text that {@link #guarded} was given. */
    static String unguarded(String cell) {
        boolean guarded = cell.length() > 1 && cell.charAt(0) == '\'' && FORMULA_STARTS.indexOf(cell.charAt(1)) >= 0;
        return guarded ? cell.substring(1) : cell;
    }
}
