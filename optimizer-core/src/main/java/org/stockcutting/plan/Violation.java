package org.stockcutting.plan;

/**
 * One rule that a plan breaks.
 *
 * @param cause closed set of words, such as {@code overlap}, {@code kerf}, {@code count}, {@code money}, {@code bound}
 * @param pointer RFC 6901 pointer into the plan document
 * @param text what was found and what is right
 */
public record Violation(String cause, String pointer, String text) {}
