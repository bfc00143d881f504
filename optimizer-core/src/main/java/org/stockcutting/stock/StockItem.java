package org.stockcutting.stock;

import java.util.List;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.material.Grain;
import org.stockcutting.material.NominalSize;

/**
 * Anything parts can be cut from. Sizes are the measured or actual ones: they decide fit, never the bill.
 *
 * <p>x runs along the length from the raw start end, y across from the edge where 0 is; all positions are before trim.
 */
public sealed interface StockItem {

    /** Unique over everything for sale and on hand. */
    String id();

    Form form();

    /** The catalog row named by the entry, or null where it only has measured sizes. */
    @Nullable NominalSize nominal();

    Length length();

    Length width();

    Length thickness();

    String material();

    /** Axis of the grain; solid stock defaults to the length, a sheet without one has {@link Grain#ANY}. */
    Grain grain();

    /** The entry's own trim, or null where the shop's applies. */
    @Nullable Trim ownTrim();

    /** How many there are; empty means as many as wanted. */
    OptionalInt copies();

    /** Bad zones; always empty for stock for sale. */
    List<Zone> zones();

    /** Name of its grade, or null where nobody graded it. */
    @Nullable String grade();

    /** How true it is; stock for sale is taken to be straight and of one width. */
    default Condition condition() {
        return Condition.TRUE;
    }

    /** The trim that applies where the shop has this one for its form: a good edge needs none, and an entry's own wins. */
    default Trim trimIn(Trim shops) {
        Trim own = ownTrim();
        if (own != null) {
            return own;
        }
        return Boolean.TRUE.equals(condition().straightEdge())
                ? new Trim(shops.start(), shops.end(), Length.ZERO, shops.farEdge())
                : shops;
    }

    /**
     * A length or sheet that can be bought.
     *
     * @param available how many can be had, or null for as many as wanted
     * @param price what it costs, or null only where the job's goal is not money
     * @param grade name of its grade, or null
     * @param offer packs, price breaks and premiums beside that price
     */
    record ForSale(
            String id,
            Form form,
            @Nullable NominalSize nominal,
            Length length,
            Length width,
            Length thickness,
            String material,
            Grain grain,
            @Nullable Trim ownTrim,
            @Nullable Integer available,
            @Nullable Price price,
            @Nullable String grade,
            Offer offer)
            implements StockItem {

        /** An entry that is not graded, sold by the piece at one price. */
        public ForSale(
                String id,
                Form form,
                @Nullable NominalSize nominal,
                Length length,
                Length width,
                Length thickness,
                String material,
                Grain grain,
                @Nullable Trim ownTrim,
                @Nullable Integer available,
                @Nullable Price price) {
            this(
                    id,
                    form,
                    nominal,
                    length,
                    width,
                    thickness,
                    material,
                    grain,
                    ownTrim,
                    available,
                    price,
                    null,
                    Offer.PLAIN);
        }

        /** The same entry of which there are so many, or null for as many as wanted. */
        public ForSale withAvailable(@Nullable Integer other) {
            return new ForSale(
                    id, form, nominal, length, width, thickness, material, grain, ownTrim, other, price, grade, offer);
        }

        /** The same entry of this grade. */
        public ForSale withGrade(@Nullable String other) {
            return new ForSale(
                    id, form, nominal, length, width, thickness, material, grain, ownTrim, available, price, other,
                    offer);
        }

        /** The same entry, sold in another way. */
        public ForSale withOffer(Offer other) {
            return new ForSale(
                    id, form, nominal, length, width, thickness, material, grain, ownTrim, available, price, grade,
                    other);
        }

        /** Pieces in whole packs: of 10 that can be had in packs of 6, six can be bought. */
        @Override
        public OptionalInt copies() {
            return available == null
                    ? OptionalInt.empty()
                    : OptionalInt.of(available - available % Math.max(1, offer.pack()));
        }

        @Override
        public List<Zone> zones() {
            return List.of();
        }
    }

    /**
     * A board, sheet or offcut that is already owned: it costs nothing.
     *
     * @param quantity how many truly equal pieces, at least 1
     * @param condition how true it is
     * @param grade name of its grade, or null
     */
    record OnHand(
            String id,
            Form form,
            @Nullable NominalSize nominal,
            Length length,
            Length width,
            Length thickness,
            String material,
            Grain grain,
            @Nullable Trim ownTrim,
            int quantity,
            List<Zone> zones,
            Condition condition,
            @Nullable String grade)
            implements StockItem {

        public OnHand {
            zones = List.copyOf(zones);
        }

        /** A true board that nobody graded. */
        public OnHand(
                String id,
                Form form,
                @Nullable NominalSize nominal,
                Length length,
                Length width,
                Length thickness,
                String material,
                Grain grain,
                @Nullable Trim ownTrim,
                int quantity,
                List<Zone> zones) {
            this(
                    id,
                    form,
                    nominal,
                    length,
                    width,
                    thickness,
                    material,
                    grain,
                    ownTrim,
                    quantity,
                    zones,
                    Condition.TRUE,
                    null);
        }

        /** The same pieces of this grade. */
        public OnHand withGrade(@Nullable String other) {
            return new OnHand(
                    id, form, nominal, length, width, thickness, material, grain, ownTrim, quantity, zones, condition,
                    other);
        }

        /** So many of the same pieces under another name, with other bad zones. */
        public OnHand pieces(String otherId, int otherQuantity, List<Zone> otherZones) {
            return new OnHand(
                    otherId,
                    form,
                    nominal,
                    length,
                    width,
                    thickness,
                    material,
                    grain,
                    ownTrim,
                    otherQuantity,
                    otherZones,
                    condition,
                    grade);
        }

        @Override
        public OptionalInt copies() {
            return OptionalInt.of(quantity);
        }
    }
}
