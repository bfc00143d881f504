/**
 * What wood and sheets are called and how big they really are: the catalog of nominal sizes, and the grain.
 */
@NullMarked
package org.stockcutting.material;

import org.jspecify.annotations.NullMarked;
