package org.stockcutting.solve.guillotine;

/**
 * Random numbers whose sequence depends on the seed alone and on no library version. SplitMix64: Steele, Lea, Flood, Fast splittable
 * pseudorandom number generators, OOPSLA 2014.
 */
final class Dice {

    private long state;

    Dice(long seed) {
        this.state = seed;
    }

    long next() {
        state += 0x9e3779b97f4a7c15L;
        long z = state;
        z = (z ^ (z >>> 30)) * 0xbf58476d1ce4e5b9L;
        z = (z ^ (z >>> 27)) * 0x94d049bb133111ebL;
        return z ^ (z >>> 31);
    }

    /** Uniform enough over 0 to bound - 1. */
    int below(int bound) {
        return (int) ((next() >>> 33) % bound);
    }

    /** Uniform over 0 (inclusive) to 1 (exclusive). */
    double unit() {
        return (next() >>> 11) * 0x1.0p-53;
    }
}
