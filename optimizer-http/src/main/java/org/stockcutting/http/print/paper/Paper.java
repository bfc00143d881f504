package org.stockcutting.http.print.paper;

import org.stockcutting.job.Job;

/** A size of paper, upright, in points of 1/72 in. */
public enum Paper {
    /** 8-1/2 x 11 in (ANSI/ASME Y14.1, size A). */
    LETTER("letter", 612, 792),
    /** 210 x 297 mm (ISO 216). */
    A4("a4", 210 * 72 / 25.4, 297 * 72 / 25.4);

    private final String word;
    private final double width;
    private final double height;

    Paper(String word, double width, double height) {
        this.word = word;
        this.width = width;
        this.height = height;
    }

    /** The paper that goes with a job's unit: Letter for inches and feet, A4 for metric units. */
    public static Paper of(Job job) {
        return job.writing().unit().isImperial() ? LETTER : A4;
    }

    /** Name of the size, as options spell it. */
    public String word() {
        return word;
    }

    double width() {
        return width;
    }

    double height() {
        return height;
    }
}
