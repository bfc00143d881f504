package org.stockcutting.job;

/**
 * One thing wrong with a request.
 *
 * @param pointer RFC 6901 pointer into the job document, such as {@code /parts/3/length}; for CSV {@code row 4, column length}
 * @param code closed set of words, such as {@code not-exact}, {@code missing}, {@code unknown-field}, {@code duplicate-id}
 * @param got what was found, shortened
 * @param expected what is accepted
 * @param text one sentence for a person: what was got, what is wanted, the way out
 */
public record Fault(String pointer, String code, String got, String expected, String text) {}
