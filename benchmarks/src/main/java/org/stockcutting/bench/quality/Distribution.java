package org.stockcutting.bench.quality;

import java.util.List;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.descriptive.DescriptiveStatistics;

/**
 * One figure over many jobs.
 *
 * @param count how many jobs have the figure
 * @param mean its mean, not a number where there are none
 * @param low lower end of the 95 % interval of the mean (Student's t; Student, Biometrika 6, 1908); the mean itself for a single job
 * @param high upper end
 * @param median middle value
 * @param least least value
 * @param most greatest value
 */
record Distribution(int count, double mean, double low, double high, double median, double least, double most) {

    private static final double TAIL = 0.975;
    private static final double MIDDLE = 50;

    /** Of all that are numbers. */
    static Distribution of(List<Double> values) {
        DescriptiveStatistics all = new DescriptiveStatistics();
        values.stream().filter(value -> !value.isNaN()).forEach(all::addValue);
        int n = (int) all.getN();
        double half = n < 2
                ? 0
                : new TDistribution(n - 1).inverseCumulativeProbability(TAIL)
                        * all.getStandardDeviation()
                        / Math.sqrt(n);
        double mean = all.getMean();
        return new Distribution(
                n, mean, mean - half, mean + half, all.getPercentile(MIDDLE), all.getMin(), all.getMax());
    }

    boolean isEmpty() {
        return count == 0;
    }
}
