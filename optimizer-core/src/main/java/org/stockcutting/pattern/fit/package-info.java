/** The one place that answers "does it fit": section, size, grain and clear wood of one rough piece on one piece of stock. */
@NullMarked
package org.stockcutting.pattern.fit;

import org.jspecify.annotations.NullMarked;
