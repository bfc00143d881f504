/**
 * What people read of a plan: plain text for a terminal in the maker's words, and drawings as SVG.
 */
@NullMarked
package org.stockcutting.http.print;

import org.jspecify.annotations.NullMarked;
