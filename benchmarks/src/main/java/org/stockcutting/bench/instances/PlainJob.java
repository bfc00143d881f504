package org.stockcutting.bench.instances;

import java.math.BigDecimal;
import java.util.Currency;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.job.Kerf;
import org.stockcutting.job.SawLimits;
import org.stockcutting.job.ShopRules;
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

/** Makes a job of the bare numbers of an instance: no trims, no saw but where its kerf is said, costs as cents. */
final class PlainJob {

    /** A cost of the instance is so many cents, the atomic units of the goal. */
    private static final Currency CURRENCY = Currency.getInstance("EUR");

    private static final int CENT_DECIMALS = 2;

    private static final String MATERIAL = "wood";
    private static final long MILLIMETRE = 1_000_000;
    private static final long MICROMETRE = 1_000;
    /** A kilometre of millimetres is the longest stock that a job may have. */
    private static final long MOST_MILLIMETRES = 1_000_000;

    private static final Length ACROSS = Length.millimetres("10");

    private final JobBuilder job;
    private final Length unit;
    private final boolean rotate;
    private int parts;
    private int stocks;

    /**
     * @param name name of the job
     * @param goal boards where the instance has no costs, else cost
     * @param largest the largest number that becomes a length
     * @param kerf what the saw takes, in the numbers of the instance
     * @param rotate true if rectangles may be turned
     */
    PlainJob(String name, Goal goal, long largest, long kerf, boolean rotate) {
        this.unit = Length.ofNanometres(largest > MOST_MILLIMETRES ? MICROMETRE : MILLIMETRE);
        this.rotate = rotate;
        this.job = JobBuilder.millimetres(name).goal(goal).shop(shop(unit.times(kerf)));
    }

    private static ShopRules shop(Length kerf) {
        return new ShopRules(
                new Kerf(kerf, kerf), Trim.NONE, Trim.NONE, SawLimits.NONE, List.of(), Length.ZERO, Length.ZERO, null);
    }

    /** A length to be crosscut; nothing if the quantity is 0. */
    void piece(long length, int quantity) {
        add(length, new Section.Measured(ACROSS, ACROSS), quantity, Grain.LENGTH);
    }

    /** A rectangle to be cut from a sheet; nothing if the quantity is 0. */
    void rectangle(long length, long width, int quantity) {
        add(length, new Section.Measured(unit.times(width), ACROSS), quantity, rotate ? Grain.ANY : Grain.LENGTH);
    }

    private void add(long length, Section section, int quantity, Grain grain) {
        if (quantity > 0) {
            String id = String.format("p%04d", ++parts);
            job.part(new Part(
                    id,
                    quantity,
                    unit.times(length),
                    section,
                    MATERIAL,
                    grain,
                    WoodClass.CLEAR,
                    0,
                    new Making.AsCut(),
                    null,
                    null));
        }
    }

    /** A stock length; no price if the cost is null, as many as wanted if the copies are. */
    void board(long length, @Nullable Integer copies, @Nullable Long cost) {
        stock(Form.BOARD, length, ACROSS, copies, cost);
    }

    /** A sheet, as many as wanted. */
    void sheet(long length, long width, @Nullable Long cost) {
        stock(Form.SHEET, length, unit.times(width), null, cost);
    }

    private void stock(Form form, long length, Length width, @Nullable Integer copies, @Nullable Long cost) {
        Price price =
                cost == null ? null : new Price(BigDecimal.valueOf(cost, CENT_DECIMALS), CURRENCY, PriceUnit.PIECE);
        String id = String.format("s%03d", ++stocks);
        job.stock(new StockItem.ForSale(
                id, form, null, unit.times(length), width, ACROSS, MATERIAL, Grain.LENGTH, null, copies, price));
    }

    Job build() {
        return job.build();
    }
}
