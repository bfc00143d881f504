package org.stockcutting.plan;

/**
 * Something a maker should know; the plan is valid all the same.
 *
 * @param code closed set of words, such as {@code raw-end}, {@code factory-edge}, {@code thinner}, {@code short-cut}
 * @param pointer RFC 6901 pointer into the plan document
 * @param text one sentence for a person
 */
public record Warning(String code, String pointer, String text) {}
