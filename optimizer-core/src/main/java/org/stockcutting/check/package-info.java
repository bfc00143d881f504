/**
 * The inspector: recomputes a finished plan from the job alone (rough sizes, fit, cuts, money, yield, bound) and owes nothing to the
 * rooms that made it. It reads records and never sees a planner, a packer or a search.
 */
@NullMarked
package org.stockcutting.check;

import org.jspecify.annotations.NullMarked;
