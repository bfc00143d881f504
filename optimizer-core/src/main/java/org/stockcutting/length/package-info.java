/**
 * Exact lengths and volumes, their text forms, and rounding for print. Nothing here uses floating point.
 */
@NullMarked
package org.stockcutting.length;

import org.jspecify.annotations.NullMarked;
