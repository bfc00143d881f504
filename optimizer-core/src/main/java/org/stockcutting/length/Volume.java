package org.stockcutting.length;

import java.math.BigInteger;

/**
 * An exact volume in cubic nanometres. A sheet of plywood is about 5e25 of them, more than a {@code long} holds.
 *
 * @param cubicNanometres the volume
 */
public record Volume(BigInteger cubicNanometres) implements Comparable<Volume> {

    public static final Volume ZERO = new Volume(BigInteger.ZERO);

    public static Volume of(Length length, Length width, Length thickness) {
        return new Volume(BigInteger.valueOf(length.nanometres())
                .multiply(BigInteger.valueOf(width.nanometres()))
                .multiply(BigInteger.valueOf(thickness.nanometres())));
    }

    public Volume plus(Volume other) {
        return new Volume(cubicNanometres.add(other.cubicNanometres));
    }

    public Volume minus(Volume other) {
        return new Volume(cubicNanometres.subtract(other.cubicNanometres));
    }

    public Volume times(long factor) {
        return new Volume(cubicNanometres.multiply(BigInteger.valueOf(factor)));
    }

    @Override
    public int compareTo(Volume other) {
        return cubicNanometres.compareTo(other.cubicNanometres);
    }
}
