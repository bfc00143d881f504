package org.stockcutting.wood;

/**
 * Random numbers of one drawn board: SplitMix64 (Steele, Lea, Flood, OOPSLA 2014). The same on every machine; logarithms are those of
 * {@link StrictMath}.
 */
final class Noise {

    private static final long GOLDEN = 0x9E3779B97F4A7C15L;
    private static final double UNIT = 0x1.0p-53;

    private long state;

    private Noise(long state) {
        this.state = state;
    }

    /** A stream of its own for each combination of numbers. */
    static Noise of(long... numbers) {
        long state = GOLDEN;
        for (long number : numbers) {
            state = mix(state + GOLDEN + mix(number));
        }
        return new Noise(state);
    }

    long next() {
        state += GOLDEN;
        return mix(state);
    }

    private static long mix(long value) {
        long z = (value ^ (value >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }

    /** Uniform on [0, 1). */
    double unit() {
        return (next() >>> 11) * UNIT;
    }

    /** Uniform on 0 .. bound - 1; the bias is below one in 2^31 for small bounds. */
    int below(int bound) {
        return (int) ((next() >>> 33) % bound);
    }

    /** Exponential with this mean. */
    double exponential(double mean) {
        return -mean * StrictMath.log(1 - unit());
    }

    /** Erlang with this mean: the sum of {@code shape} exponentials. */
    double erlang(int shape, double mean) {
        double sum = 0;
        for (int i = 0; i < shape; i++) {
            sum += exponential(mean / shape);
        }
        return sum;
    }
}
