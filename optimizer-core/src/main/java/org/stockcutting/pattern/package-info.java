/**
 * How one board is cut: placed pieces and the tree of edge-to-edge (guillotine) cuts, as plain records.
 */
@NullMarked
package org.stockcutting.pattern;

import org.jspecify.annotations.NullMarked;
