/**
 * What it is worth to decide board by board whether it is ripped or crosscut first: the same jobs planned free, with rips first only and
 * with crosscuts first only.
 */
@NullMarked
package org.stockcutting.bench.firstcuts;

import org.jspecify.annotations.NullMarked;
