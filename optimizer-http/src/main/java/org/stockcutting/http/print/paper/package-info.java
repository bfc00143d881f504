/**
 * What a maker takes to the saw on paper, as PDF by PDFBox: buying list, boards, cut sequence, labels. Black and white, letters large
 * enough for arm's length. Sizes on paper are floating-point points (1/72 in); every length that is printed is exact before it is text.
 */
@NullMarked
package org.stockcutting.http.print.paper;

import org.jspecify.annotations.NullMarked;
