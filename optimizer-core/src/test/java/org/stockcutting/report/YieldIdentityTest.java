package org.stockcutting.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.stockcutting.job.AllowanceProfile;
import org.stockcutting.length.Length;
import org.stockcutting.length.Volume;
import org.stockcutting.material.Grain;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.CutNode.RestLeaf;
import org.stockcutting.pattern.Direction;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.YieldFigures;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Trim;
import org.stockcutting.stock.Zone;

/**
 * Random guillotine layouts on a grid of 1/64 in, painted cell by cell as they are made; the yield must agree with the count of cells of
 * each colour.
 */
class YieldIdentityTest {

    private static final int LONG = 90;
    private static final int WIDE = 50;
    private static final int THICK = 8;
    private static final int ROUNDS = 400;

    private enum Colour {
        NONE,
        PART,
        KERF,
        TRIM,
        KEPT,
        REST
    }

    @Test
    void everyCellIsCountedOnceAndInItsShare() {
        long seed = 31_001;
        Random random = new Random(seed);
        for (int round = 0; round < ROUNDS; round++) {
            Painting painting = new Painting(random);
            YieldFigures yield = painting.derive();
            String where = "seed " + seed + ", round " + round;
            assertThat(yield.used()).as(where).isEqualTo(volume(LONG * WIDE, THICK, painting.repeat));
            assertThat(yield.kerf()).as(where + ", kerf").isEqualTo(painting.volume(Colour.KERF, false));
            assertThat(yield.trim()).as(where + ", trim").isEqualTo(painting.volume(Colour.TRIM, false));
            assertThat(yield.offcutsKept()).as(where + ", kept").isEqualTo(painting.volume(Colour.KEPT, false));
            Volume rest = painting.volume(Colour.REST, false);
            Volume bad = painting.volume(Colour.REST, true);
            assertThat(yield.zones()).as(where + ", zones").isEqualTo(bad);
            assertThat(yield.waste()).as(where + ", waste").isEqualTo(rest.minus(bad));
            Volume finished = volume(painting.finishedCells, 1, painting.repeat);
            assertThat(yield.parts()).as(where + ", parts").isEqualTo(finished);
            assertThat(yield.allowance())
                    .as(where + ", allowance")
                    .isEqualTo(painting.volume(Colour.PART, false).minus(finished));
            assertThat(Bench.sumOfShares(yield)).as(where).isEqualTo(yield.used());
        }
    }

    private static Volume volume(long cells, long thickness, long repeat) {
        return new Volume(BigInteger.valueOf(cells * thickness * repeat)
                .multiply(BigInteger.valueOf(396_875L).pow(3)));
    }

    private static Length units(int count) {
        return Length.ofNanometres(396_875L * count);
    }

    /** One random layout. */
    private static final class Painting {
        final Random random;
        final Bench bench = new Bench();
        final Colour[][] cells = new Colour[LONG][WIDE];
        final boolean[][] bad = new boolean[LONG][WIDE];
        final List<PlacedPiece> pieces = new ArrayList<>();
        final List<Layout.LeftOver> rests = new ArrayList<>();
        final int repeat;
        final int kerf;
        final Layout layout;
        long finishedCells;

        Painting(Random random) {
            this.random = random;
            this.repeat = 1 + random.nextInt(3);
            this.kerf = random.nextInt(4);
            int start = random.nextInt(7);
            int end = random.nextInt(7);
            int edge = random.nextInt(5);
            int farEdge = random.nextInt(5);
            bench.allowances.put(
                    AllowanceProfile.MILLED,
                    new AllowanceProfile(units(1), units(1), units(1), Length.ZERO, Length.ZERO, Length.ZERO));
            for (Colour[] column : cells) {
                Arrays.fill(column, Colour.NONE);
            }
            CutNode inner = random(start, edge, LONG - end, WIDE - farEdge, 0);
            CutNode across = trimmed(Direction.RIP, edge, farEdge, start, LONG - end, WIDE, inner);
            CutNode tree = trimmed(Direction.CROSSCUT, start, end, 0, WIDE, LONG, across);
            Trim trim = new Trim(units(start), units(end), units(edge), units(farEdge));
            bench.onHand.add(new StockItem.OnHand(
                    "s",
                    random.nextBoolean() ? Form.BOARD : Form.SHEET,
                    null,
                    units(LONG),
                    units(WIDE),
                    units(THICK),
                    "wood",
                    Grain.ANY,
                    trim,
                    9,
                    zones()));
            layout = new Layout("s", repeat, units(LONG), units(WIDE), units(THICK), pieces, tree, rests);
        }

        YieldFigures derive() {
            return bench.derive(layout).yield();
        }

        Volume volume(Colour colour, boolean onlyBad) {
            long count = 0;
            for (int x = 0; x < LONG; x++) {
                for (int y = 0; y < WIDE; y++) {
                    count += cells[x][y] == colour && (!onlyBad || bad[x][y]) ? 1 : 0;
                }
            }
            return YieldIdentityTest.volume(count, THICK, repeat);
        }

        private void paint(Colour colour, boolean swap, int a0, int b0, int a1, int b1) {
            for (int a = a0; a < a1; a++) {
                for (int b = b0; b < b1; b++) {
                    int x = swap ? b : a;
                    int y = swap ? a : b;
                    assertThat(cells[x][y]).isEqualTo(Colour.NONE);
                    cells[x][y] = colour;
                }
            }
        }

        /** Trims both sides of a piece that spans b0 to b1 the other way. */
        private CutNode trimmed(Direction cut, int near, int far, int b0, int b1, int whole, CutNode inner) {
            boolean swap = cut == Direction.RIP;
            List<CutNode.Slot> slots = new ArrayList<>();
            List<CutNode> parts = new ArrayList<>();
            if (near > 0) {
                slots.add(slot(Math.max(0, near - kerf), near));
                parts.add(near > kerf ? RestLeaf.TRIM : RestLeaf.SLIVER);
                paint(Colour.TRIM, swap, 0, b0, near, b1);
            }
            parts.add(inner);
            if (far > 0) {
                slots.add(slot(whole - far, Math.min(whole, whole - far + kerf)));
                parts.add(far > kerf ? RestLeaf.TRIM : RestLeaf.SLIVER);
                paint(Colour.TRIM, swap, whole - far, b0, whole, b1);
            }
            return slots.isEmpty() ? inner : new CutNode.Cuts(cut, slots, parts);
        }

        private CutNode random(int x0, int y0, int x1, int y1, int depth) {
            boolean across = random.nextBoolean();
            int from = across ? x0 : y0;
            int to = across ? x1 : y1;
            if (depth == 5 || to - from < 6 || random.nextInt(5) == 0) {
                return leaf(x0, y0, x1, y1);
            }
            List<CutNode.Slot> slots = new ArrayList<>();
            List<CutNode> parts = new ArrayList<>();
            int at = from;
            while (to - at > 2 && slots.size() < 3) {
                int end = at + 1 + random.nextInt(to - at - 1);
                int behind = Math.min(to, end + kerf);
                parts.add(across ? random(at, y0, end, y1, depth + 1) : random(x0, at, x1, end, depth + 1));
                slots.add(slot(end, behind));
                paint(Colour.KERF, !across, end, across ? y0 : x0, behind, across ? y1 : x1);
                at = behind;
            }
            if (at == to) {
                parts.add(RestLeaf.SLIVER);
            } else {
                parts.add(across ? leaf(at, y0, x1, y1) : leaf(x0, at, x1, y1));
            }
            return new CutNode.Cuts(across ? Direction.CROSSCUT : Direction.RIP, slots, parts);
        }

        private CutNode leaf(int x0, int y0, int x1, int y1) {
            if (random.nextInt(5) < 3) {
                paint(Colour.PART, false, x0, y0, x1, y1);
                return part(x0, y0, x1 - x0, y1 - y0);
            }
            boolean keep = random.nextBoolean();
            paint(keep ? Colour.KEPT : Colour.REST, false, x0, y0, x1, y1);
            rests.add(new Layout.LeftOver(units(x0), units(y0), units(x1 - x0), units(y1 - y0), keep));
            return RestLeaf.OFFCUT;
        }

        private CutNode part(int x, int y, int length, int width) {
            String id = "p" + pieces.size();
            boolean milled = length > 1 && width > 1 && random.nextBoolean();
            boolean turned = random.nextBoolean();
            int less = milled ? 1 : 0;
            int own = turned ? width : length;
            int across = turned ? length : width;
            Section section = new Section.Measured(units(across - less), units(THICK - less));
            Making making = milled ? new Making.Milled(AllowanceProfile.MILLED) : new Making.AsCut();
            bench.parts.add(
                    new Part(id, 1, units(own - less), section, "wood", null, WoodClass.ANY, 0, making, null, null));
            finishedCells += (long) (own - less) * (across - less) * (THICK - less);
            pieces.add(
                    new PlacedPiece(id, List.of(1), List.of(), units(x), units(y), units(own), units(across), turned));
            return new CutNode.PartLeaf(id);
        }

        private CutNode.Slot slot(int from, int to) {
            return new CutNode.Slot(units(from), units(to));
        }

        private List<Zone> zones() {
            List<Zone> zones = new ArrayList<>();
            for (int i = random.nextInt(6); i > 0; i--) {
                int x0 = random.nextInt(LONG - 1);
                int x1 = x0 + 1 + random.nextInt(LONG - x0);
                boolean wholeWidth = random.nextInt(3) == 0;
                int y0 = wholeWidth ? 0 : random.nextInt(WIDE - 1);
                int y1 = wholeWidth ? WIDE : y0 + 1 + random.nextInt(WIDE - y0);
                for (int x = x0; x < Math.min(LONG, x1); x++) {
                    for (int y = y0; y < Math.min(WIDE, y1); y++) {
                        bad[x][y] = true;
                    }
                }
                zones.add(new Zone(
                        units(x0),
                        units(x1),
                        wholeWidth ? null : units(y0),
                        wholeWidth ? null : units(y1),
                        random.nextBoolean() ? Zone.Severity.UNUSABLE : Zone.Severity.TIGHT_KNOT,
                        Zone.Face.BOTH,
                        false));
            }
            return zones;
        }
    }
}
