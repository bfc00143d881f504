package org.stockcutting.bench.instances;

import java.math.BigDecimal;
import java.util.Currency;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
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
import org.stockcutting.stock.Trim;

/**
 * Cabinet parts from one size of sheet, by a rule of our own: 96 x 48 in, kerf 1/8 in, sizes in sixteenths, four in ten lines held to the
 * grain, every other job with a quarter inch trimmed off all edges. About five pieces a line up to 20 lines, six beyond.
 */
final class PlywoodJobs {

    private static final int FEW_LINES = 20;
    private static final Length SIXTEENTH = Length.inches("0.0625");
    private static final Length QUARTER = Length.inches("0.25");
    private static final Length THICKNESS = Length.inches("0.75");
    private static final String MATERIAL = "birch plywood";
    private static final Price PRICE = new Price(new BigDecimal("64.00"), Currency.getInstance("USD"), PriceUnit.PIECE);

    private PlywoodJobs() {}

    static Instance make(String name, String group, int lines, Random random) {
        JobBuilder job = JobBuilder.inches(name).keep(Form.SHEET, "12", "6");
        int open = lines * (lines <= FEW_LINES ? 5 : 6);
        for (int line = 1; line <= lines; line++) {
            int after = lines - line;
            int drawn = 1 + random.nextInt(2 * open / (after + 1));
            int quantity = after == 0 ? Math.max(1, open) : Math.max(1, Math.min(open - after, drawn));
            open -= quantity;
            job.part(part(line, quantity, random));
        }
        // Drawn last: the first bit of neighbouring seeds is the same.
        @Nullable Trim trim = random.nextBoolean() ? new Trim(QUARTER, QUARTER, QUARTER, QUARTER) : null;
        Length length = Length.inches("96");
        Length width = Length.inches("48");
        job.stock(new StockItem.ForSale(
                "sheet", Form.SHEET, null, length, width, THICKNESS, MATERIAL, Grain.LENGTH, trim, null, PRICE));
        Job built = job.build();
        return new Instance(name, group, built, Known.NOTHING);
    }

    private static Part part(int line, int quantity, Random random) {
        Length one = SIXTEENTH.times(16 * (6 + random.nextInt(43)) + random.nextInt(16));
        Length other = SIXTEENTH.times(16 * (3 + random.nextInt(22)) + random.nextInt(16));
        boolean longer = one.compareTo(other) >= 0;
        Section section = new Section.Measured(longer ? other : one, THICKNESS);
        Grain grain = random.nextInt(10) < 4 ? Grain.LENGTH : Grain.ANY;
        String id = String.format("panel%03d", line);
        Length length = longer ? one : other;
        return new Part(
                id, quantity, length, section, MATERIAL, grain, WoodClass.CLEAR, 0, new Making.AsCut(), null, null);
    }
}
