/**
 * From finished part to rough piece: every allowance visible, every rough piece with the trail back to its part.
 */
@NullMarked
package org.stockcutting.blank;

import org.jspecify.annotations.NullMarked;
