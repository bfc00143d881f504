/**
 * Layouts of boards and sheets that are ripped as well as crosscut: guillotine trees with kerf, turning, bad zones and saw limits.
 * Starts by shelves and by best fit, improves by ruin and recreate, is exact for jobs of a few pieces, and proposes worths for the
 * certificate.
 */
@NullMarked
package org.stockcutting.solve.guillotine;

import org.jspecify.annotations.NullMarked;
