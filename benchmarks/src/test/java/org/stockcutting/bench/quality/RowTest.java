package org.stockcutting.bench.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.stockcutting.bench.quality.Rows.known;
import static org.stockcutting.bench.quality.Rows.row;

import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stockcutting.bench.instances.Known;

class RowTest {

    @TempDir
    Path folder;

    @Test
    void gapsAreOverTheBetterBoundAndTheBestKnown() {
        Row row = row("a", 110, 90, 100, known(null, 88, true), "feasible");

        assertThat(row.gap()).isCloseTo(0.10, within(1e-12));
        assertThat(row.gapToKnown()).isCloseTo(0.25, within(1e-12));
        assertThat(row.isProved()).isFalse();
        assertThat(row("b", 100, 90, 100, Known.NOTHING, "feasible").isProved()).isTrue();
        assertThat(row("c", 90, 90, "partial").gap()).isNaN();
        assertThat(row("d", 0, 0, "optimal").gap()).isZero();
    }

    @Test
    void whatCannotBeTrueIsSaid() {
        assertThat(row("a", 9, 9, null, known(9, 10, true), "optimal").contradictions())
                .isEmpty();
        assertThat(row("a", 8, 8, null, known(9, 10, true), "optimal").contradictions())
                .containsExactly("a: found 8 is below 9, which nothing can be");
        assertThat(row("a", 8, 9, "feasible").contradictions()).containsExactly("a: found 8 is below our own bound 9");
        assertThat(row("a", 12, 11, null, known(9, 10, true), "feasible").contradictions())
                .containsExactly("a: our bound 11 is above 10, which can be had");
        assertThat(row("a", 12, 8, 12, known(9, 10, true), "feasible").contradictions())
                .containsExactly("a: our bound 12 is above 10, which can be had");
        assertThat(row("a", 12, 11, null, known(9, 10, false), "feasible").contradictions())
                .as("a value found under wider rules may be below our bound")
                .isEmpty();
        assertThat(row("a", 5, 5, null, known(9, 9, true), "partial").contradictions())
                .as("a plan that leaves something out costs less")
                .isEmpty();
    }

    @Test
    void aTableIsReadAsItWasWritten() throws Exception {
        Path file = folder.resolve("t/rows.csv");
        List<Row> rows = List.of(
                row("a, \"quoted\"", 110, 90, 100, known(3, 88, false), "feasible"), row("b", null, null, Row.FAILED));
        try (RowTable table = RowTable.open(file)) {
            rows.forEach(table::add);
        }

        assertThat(RowTable.read(file)).isEqualTo(rows);
        Files.writeString(file, Files.readString(file) + "c,set,boa");
        assertThat(RowTable.read(file)).as("a last line that was cut off").isEqualTo(rows);
    }

    @Test
    void anotherTableIsRefused() throws Exception {
        Path other = Files.writeString(folder.resolve("other.csv"), "a,b\n1,2\n");
        Path damaged = folder.resolve("damaged.csv");
        try (RowTable table = RowTable.open(damaged)) {
            table.add(row("a", 1, 1, "optimal"));
        }
        Files.writeString(damaged, Files.readString(damaged).replace("1.250", "soon"));

        assertThatThrownBy(() -> RowTable.read(other)).hasMessageContaining("its columns are [a, b]");
        assertThatThrownBy(() -> RowTable.read(damaged))
                .hasMessageContaining("record 1")
                .hasMessageContaining("soon");
        assertThatThrownBy(() -> StockUse.read("oak|3")).hasMessageContaining("material|length|boards|filled");
    }

    /** Student's t with two degrees of freedom: 4.3027 at 97.5 %, in any table. */
    @Test
    void theIntervalOfAMeanIsStudents() {
        Distribution d = Distribution.of(List.of(1.0, 2.0, 6.0, Double.NaN));

        assertThat(d.count()).isEqualTo(3);
        assertThat(d.mean()).isEqualTo(3.0);
        assertThat(d.median()).isEqualTo(2.0);
        assertThat(d.high() - d.mean()).isCloseTo(4.3027 * Math.sqrt(7) / Math.sqrt(3), within(1e-3));
        assertThat(d.mean() - d.low()).isCloseTo(d.high() - d.mean(), within(1e-12));
        assertThat(Distribution.of(List.of()).isEmpty()).isTrue();
        assertThat(Distribution.of(List.of(0.5)).low()).isEqualTo(0.5);
    }

    @Test
    void fillingIsWeighedByLength() {
        Row row = row("a", 1, 1, "optimal");
        StockUse large = new StockUse("ash", new BigDecimal("3000"), 2, new BigDecimal("1.0000"));
        StockUse small = new StockUse("ash", new BigDecimal("1000"), 2, new BigDecimal("0.6000"));
        Row used = new Row(
                row.file(),
                row.group(),
                row.goal(),
                row.pieces(),
                row.found(),
                row.bound(),
                row.searchedBound(),
                row.known(),
                row.status(),
                row.stopReason(),
                row.unplaced(),
                row.seconds(),
                row.work(),
                row.limit(),
                row.seed(),
                row.yield(),
                row.shares(),
                List.of(large, small),
                row.remark());

        List<Filling> filled = Filling.byMaterial(List.of(used, row));

        assertThat(filled).extracting(Filling::name).containsExactly("ash", "white oak");
        assertThat(filled.get(0).boards()).isEqualTo(4);
        assertThat(filled.get(0).filled().mean()).isCloseTo(0.9, within(1e-12));
        assertThat(Filling.byLength(List.of(used, row)))
                .extracting(Filling::name)
                .containsExactly("1000 mm", "2438.4 mm", "3000 mm");
    }
}
