/**
 * The parts list: finished sizes, how many, and how each part is made.
 */
@NullMarked
package org.stockcutting.part;

import org.jspecify.annotations.NullMarked;
