package org.stockcutting.bench.instances;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.job.SawLimits;
import org.stockcutting.length.Length;
import org.stockcutting.material.Grain;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Price;
import org.stockcutting.stock.PriceUnit;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/**
 * Jobs as small shops have them, by rules of our own: inches, saw kerfs, trimmed ends, prices that do not follow the length, rough boards
 * with bad zones, sheets with grain. The size is the number of part lines.
 */
final class ShopJobs {

    private static final Length BOARD_WIDTH = Length.inches("3.5");
    private static final Length BOARD_THICKNESS = Length.inches("1.5");
    private static final Length SHEET_THICKNESS = Length.inches("0.75");
    private static final int MEASURED = 40;
    private static final double NEARLY_ALL = 0.95;
    private static final double TWO_THIRDS = 0.65;
    private static final Currency DOLLARS = Currency.getInstance("USD");

    private final Random random;
    private final JobBuilder job;

    private ShopJobs(String name, Random random) {
        this.random = random;
        this.job = JobBuilder.inches(name)
                .boardTrim("1/2", "1/4")
                .keep(Form.BOARD, "18", "1-1/2")
                .keep(Form.SHEET, "12", "6");
    }

    /** Crosscutting from three or four lengths at odd prices, with a few rough boards on the rack. */
    static Instance boards(String name, String group, int lines, Random random) {
        ShopJobs shop = new ShopJobs(name, random);
        shop.addBoards(lines);
        return new Instance(name, group, shop.job.build(), Known.NOTHING);
    }

    /** Sheets of two sizes, half of the parts with the grain. */
    static Instance sheets(String name, String group, int lines, Random random) {
        ShopJobs shop = new ShopJobs(name, random);
        shop.addSheets(lines);
        return new Instance(name, group, shop.job.build(), Known.NOTHING);
    }

    /** Jobs of {@link #sheets} where the yard has one to four of the square sheets left. */
    static Instance scarce(String name, String group, int lines, Random random) {
        Instance plenty = sheets(name, group, lines, random);
        int left = 1 + random.nextInt(4);
        List<StockItem.ForSale> offers = new ArrayList<>();
        for (StockItem.ForSale offer : plenty.job().forSale()) {
            boolean square = offer.length().equals(offer.width());
            offers.add(square ? offer.withAvailable(left) : offer);
        }
        Job job = plenty.job();
        return new Instance(name, group, job.withLists(job.parts(), offers, job.onHand()), Known.NOTHING);
    }

    /** Jobs of {@link #sheets} on small saws: 16 in between fence and blade, crosscuts through 40 in. */
    static Instance saws(String name, String group, int lines, Random random) {
        Job job = sheets(name, group, lines, random).job();
        SawLimits small =
                new SawLimits(Length.inches("16"), null, Length.inches("40"), null, SawLimits.FirstCut.ANY, null);
        return new Instance(name, group, job.withShop(job.shop().withLimits(small)), Known.NOTHING);
    }

    /** Both in one job. */
    static Instance mixed(String name, String group, int lines, Random random) {
        ShopJobs shop = new ShopJobs(name, random);
        shop.addBoards(lines - lines / 2);
        if (lines > 1) {
            shop.addSheets(lines / 2);
        }
        return new Instance(name, group, shop.job.build(), Known.NOTHING);
    }

    /** A shop that makes the same things again and again: 2 to 24 of each size, from three lengths at prices close to their length. */
    static Instance runs(String name, String group, int lines, Random random) {
        ShopJobs shop = new ShopJobs(name, random);
        for (int i = 1; i <= lines; i++) {
            Section section = new Section.Measured(BOARD_WIDTH, BOARD_THICKNESS);
            shop.part(
                    String.format("size%03d", i),
                    2 * shop.between(1, 12),
                    shop.eighths(8, 70),
                    section,
                    "spruce",
                    null);
        }
        shop.sale("b096", Form.BOARD, 96, BOARD_WIDTH, BOARD_THICKNESS, "spruce", 398);
        shop.sale("b120", Form.BOARD, 120, BOARD_WIDTH, BOARD_THICKNESS, "spruce", 512);
        shop.sale("b144", Form.BOARD, 144, BOARD_WIDTH, BOARD_THICKNESS, "spruce", 595);
        return new Instance(name, group, shop.job.build(), Known.NOTHING);
    }

    /** One product in a series: 1 to 4 of each size a piece, 6 to 30 pieces, from two or three lengths at prices close to their length. */
    static Instance series(String name, String group, int lines, Random random) {
        ShopJobs shop = new ShopJobs(name, random);
        int products = shop.between(6, 30);
        for (int i = 1; i <= lines; i++) {
            Section section = new Section.Measured(BOARD_WIDTH, BOARD_THICKNESS);
            String id = String.format("size%03d", i);
            shop.part(id, products * shop.between(1, 4), shop.eighths(4, 60), section, "spruce", null);
        }
        shop.sale("b096", Form.BOARD, 96, BOARD_WIDTH, BOARD_THICKNESS, "spruce", 398);
        if (random.nextBoolean()) {
            shop.sale("b120", Form.BOARD, 120, BOARD_WIDTH, BOARD_THICKNESS, "spruce", 512);
        }
        shop.sale("b144", Form.BOARD, 144, BOARD_WIDTH, BOARD_THICKNESS, "spruce", 595);
        return new Instance(name, group, shop.job.build(), Known.NOTHING);
    }

    /**
     * Clear parts ripped from 40 measured boards of a rack, each with up to six bad rectangles; what they do not give is bought as clear
     * boards. The parts come to nearly the area of the rack, so more than it gives.
     */
    static Instance measured(String name, String group, int lines, Random random) {
        ShopJobs shop = rack(name, lines, NEARLY_ALL, random);
        shop.sale("clear", Form.BOARD, 96, Length.inches("8"), SHEET_THICKNESS, "oak", 3850);
        shop.sale("clear-long", Form.BOARD, 120, Length.inches("6"), SHEET_THICKNESS, "oak", 3790);
        return new Instance(name, group, shop.job.build(), Known.NOTHING);
    }

    /** The same racks and parts as {@link #measured}, but clear boards in eight sizes by the foot, so that cost follows the wood closely. */
    static Instance byTheFoot(String name, String group, int lines, Random random) {
        ShopJobs shop = rack(name, lines, NEARLY_ALL, random);
        for (int length = 48; length <= 120; length += 24) {
            for (int width : new int[] {6, 8}) {
                String id = String.format(Locale.ROOT, "clear-%03d-%d", length, width);
                int cents = 35 * length * width / 12 + 25;
                shop.sale(id, Form.BOARD, length, Length.inches(width + ""), SHEET_THICKNESS, "oak", cents);
            }
        }
        return new Instance(name, group, shop.job.build(), Known.NOTHING);
    }

    /**
     * The same racks, of which about two thirds are wanted, under the goal to waste least. Nothing is for sale and no offcut is kept, so
     * what counts is the wood that is taken.
     */
    static Instance shelf(String name, String group, int lines, Random random) {
        ShopJobs shop = rack(name, lines, TWO_THIRDS, random);
        Job job = shop.job.goal(Goal.WASTE).build();
        Job kept = job.withShop(job.shop().withKeepOffcuts(List.of()));
        return new Instance(name, group, kept, Known.NOTHING);
    }

    /** @param share what all parts come to, as a share of the area of the boards */
    private static ShopJobs rack(String name, int lines, double share, Random random) {
        ShopJobs shop = new ShopJobs(name, random);
        double rack = 0;
        for (int i = 1; i <= MEASURED; i++) {
            rack += shop.measuredBoard(String.format("oak%02d", i));
        }
        for (int i = 1; i <= lines; i++) {
            Length length = shop.eighths(6, 50);
            Length width = shop.eighths(1, 5);
            double each = square(length, width);
            int quantity = (int) Math.max(1, Math.round(share * rack / lines / each * (0.5 + random.nextDouble())));
            Section section = new Section.Measured(width, SHEET_THICKNESS);
            shop.part(String.format("part%02d", i), Math.min(40, quantity), length, section, "oak", null);
        }
        return shop;
    }

    private double measuredBoard(String id) {
        Length length = eighths(48, 120);
        Length width = eighths(5, 9);
        List<Zone> zones = new ArrayList<>();
        for (int n = between(0, 6); n > 0; n--) {
            Length from = Length.inches("0.125").times(random.nextInt(8 * 44));
            Length edge = Length.inches("0.125").times(random.nextInt(8 * 3));
            zones.add(new Zone(
                    from,
                    from.plus(eighths(1, 4)),
                    edge,
                    edge.plus(eighths(1, 2)),
                    Zone.Severity.UNUSABLE,
                    Zone.Face.BOTH,
                    false));
        }
        zones.sort(java.util.Comparator.comparing(Zone::from));
        job.stock(new StockItem.OnHand(
                id, Form.BOARD, null, length, width, SHEET_THICKNESS, "oak", Grain.LENGTH, null, 1, zones));
        return square(length, width);
    }

    private static double square(Length length, Length width) {
        double inch = Length.inches("1").nanometres();
        return length.nanometres() / inch * (width.nanometres() / inch);
    }

    private void addBoards(int lines) {
        for (int i = 1; i <= lines; i++) {
            Section section = new Section.Measured(BOARD_WIDTH, BOARD_THICKNESS);
            part(String.format("board%03d", i), between(1, 8), eighths(8, 72), section, "spruce", null);
        }
        for (int length : new int[] {96, 120, 144}) {
            sale(
                    "b" + length,
                    Form.BOARD,
                    length,
                    BOARD_WIDTH,
                    BOARD_THICKNESS,
                    "spruce",
                    length * between(38, 46) / 10);
        }
        if (random.nextBoolean()) {
            sale("b192", Form.BOARD, 192, BOARD_WIDTH, BOARD_THICKNESS, "spruce", 192 * between(38, 50) / 10);
        }
        int owned = between(0, 4);
        for (int i = 1; i <= owned; i++) {
            rough("rack" + i);
        }
    }

    private void addSheets(int lines) {
        for (int i = 1; i <= lines; i++) {
            Section section = new Section.Measured(eighths(4, 22), SHEET_THICKNESS);
            Grain grain = random.nextBoolean() ? Grain.LENGTH : Grain.ANY;
            part(String.format("panel%03d", i), between(1, 5), eighths(10, 46), section, "birch plywood", grain);
        }
        sale("p96", Form.SHEET, 96, Length.inches("48"), SHEET_THICKNESS, "birch plywood", between(5800, 6800));
        sale("p60", Form.SHEET, 60, Length.inches("60"), SHEET_THICKNESS, "birch plywood", between(4800, 6000));
    }

    private void part(String id, int quantity, Length length, Section section, String material, @Nullable Grain grain) {
        job.part(new Part(
                id, quantity, length, section, material, grain, WoodClass.CLEAR, 0, new Making.AsCut(), null, null));
    }

    private void sale(String id, Form form, int length, Length width, Length thickness, String material, int cents) {
        Price price = new Price(BigDecimal.valueOf(cents, 2), DOLLARS, PriceUnit.PIECE);
        Length inches = Length.inches("1").times(length);
        job.stock(new StockItem.ForSale(
                id, form, null, inches, width, thickness, material, Grain.LENGTH, null, null, price));
    }

    private void rough(String id) {
        Length length = eighths(40, 110);
        Length from = eighths(5, 30);
        List<Zone> zones = new ArrayList<>();
        zones.add(new Zone(from, from.plus(eighths(1, 4)), null, null, Zone.Severity.UNUSABLE, Zone.Face.BOTH, false));
        job.stock(new StockItem.OnHand(
                id, Form.BOARD, null, length, BOARD_WIDTH, BOARD_THICKNESS, "spruce", Grain.LENGTH, null, 1, zones));
    }

    private int between(int least, int most) {
        return least + random.nextInt(most - least + 1);
    }

    private Length eighths(int leastInches, int mostInches) {
        return Length.inches("0.125").times(between(8 * leastInches, 8 * mostInches));
    }
}
