/**
 * What parts are cut from: boards and sheets for sale, pieces on hand with their bad zones, prices and trims.
 */
@NullMarked
package org.stockcutting.stock;

import org.jspecify.annotations.NullMarked;
