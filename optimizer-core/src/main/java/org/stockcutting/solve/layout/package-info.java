/**
 * From patterns back to wood: real sizes and positions, the numbers of the parts, spares in the waste, and the tree of cuts with every
 * saw slot.
 */
@NullMarked
package org.stockcutting.solve.layout;

import org.jspecify.annotations.NullMarked;
