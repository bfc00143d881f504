/** One small class for each question of somebody who embeds the library. */
@NullMarked
package org.stockcutting.samples;

import org.jspecify.annotations.NullMarked;
