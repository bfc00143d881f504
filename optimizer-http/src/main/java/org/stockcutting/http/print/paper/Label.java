package org.stockcutting.http.print.paper;

import org.stockcutting.draw.SafeText;

/**
 * What stands on the label of one rough piece.
 *
 * @param mark mark to chalk
 * @param part id of the part
 * @param number number of the piece, with its stave or ply
 * @param size size as it leaves the saw
 * @param next what is done with it next
 * @param board board that it comes from
 * @param code text of the QR code
 */
record Label(String mark, String part, String number, String size, String next, String board, String code) {

    private static final int JOB = 24;
    private static final int PART = 32;

    /**
     * Job, part and number in one line. Names are cut short, so that the code stays coarse enough for a camera. What a reader that types
     * into a spreadsheet could start a formula with gets an apostrophe in front (OWASP, "CSV Injection").
     */
    static String code(String job, String part, String number) {
        String text = shortened(job, JOB) + " | " + shortened(part, PART) + " | " + number;
        return "=+-@".indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
    }

    private static String shortened(String text, int most) {
        String clean = SafeText.clean(text).strip();
        return clean.codePointCount(0, clean.length()) <= most
                ? clean
                : clean.substring(0, clean.offsetByCodePoints(0, most));
    }
}
