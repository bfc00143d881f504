/**
 * Paints one layout on a {@link java.awt.Graphics2D}, so that screen, SVG, PDF and PNG share one drawing. Black, white and grey only;
 * lengths are exact until they are printed, and only positions on paper are floating point.
 */
@NullMarked
package org.stockcutting.draw;

import org.jspecify.annotations.NullMarked;
